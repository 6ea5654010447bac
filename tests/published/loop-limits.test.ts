/** Limits that no gains beat, against the books that state them. */
import { describe, expect, it } from 'vitest';
import { bandwidthLimit, delayLimit, wrongWayLimit } from '../../src/control/index.ts';
import { standardGravity } from '../../src/mechanics/index.ts';
import { expectPrinted, type PublishedCheck } from './printed.ts';

const noLag = { sampleTime: 1e-12, sensorLag: 0, naturalFrequency: 1e12, dampingRatio: 1 };
const sp = 'S. Skogestad, I. Postlethwaite, Multivariable Feedback Control, 2nd ed., chapter 5 (from memory)';
/** Height at which the wrong-way zero is so many times the pole, which is 1. */
const heightFor = (ratio: number): number => standardGravity / ratio ** 2;

const rows: readonly PublishedCheck[] = [
  {
    id: 'L2',
    source: sp,
    what: 'M_T at least e^{pθ}, pθ = 0.5',
    printed: '1.648721270700',
    computed: () => delayLimit({ ...noLag, unstablePole: 1, delay: 0.5 }).peakComplementary,
  },
  ...(
    [
      [2, '3.000000'],
      [4, '1.666667'],
      [6, '1.400000'],
    ] as const
  ).map(([ratio, printed]) => ({
    id: 'L3',
    source: sp,
    what: `M_S at least |z + p|/|z − p|, z = ${ratio} p`,
    printed,
    computed: () => wrongWayLimit({ ballastHeight: heightFor(ratio), unstablePole: 1 }).peakSensitivity,
  })),
  {
    id: 'L5',
    source:
      'K. J. Åström, European Journal of Control 6 (2000): z = 5.83 p by 45° and slope −1 (from memory); here its M_s',
    what: '(z + p)/(z − p) for z = p/tan²(22.5°)',
    printed: '1.4142136', // 1/sin 45°: (1 + tan²)/(1 − tan²) = 1/cos 45°
    computed: () =>
      wrongWayLimit({ ballastHeight: heightFor(1 / Math.tan(Math.PI / 8) ** 2), unstablePole: 1 })
        .peakSensitivity,
  },
  {
    id: 'L7, X-29',
    source: 'G. Stein, IEEE Control Systems Magazine 23 (2003) no. 4, 12 (from memory)',
    what: 'e^{πp/Ω}, p = 6, Ω = 40 rad/s',
    printed: '1.602',
    computed: () => bandwidthLimit({ unstablePole: 6, naturalFrequency: 40 }),
  },
  ...(
    [
      ['point mass at 0.25 m', 9.81 / 0.25, 0.22576182],
      ['rod of 1 m on a hinge', (3 * 9.81) / 2, 0.368667509],
      ['free rod of 0.32 m', (6 * 9.81) / 0.32, 0.104274918],
    ] as const
  ).map(([what, a, critical]) => ({
    id: 'D3–D5',
    source: 'G. Stépán, L. Kollár, Math. Comput. Modelling 31 (2000) 199 (formula from memory): p τ = √2',
    what: `p τ of a ${what} at its critical delay`,
    printed: '1.4142136',
    computed: () => delayLimit({ ...noLag, unstablePole: Math.sqrt(a), delay: critical }).product,
  })),
];

describe('limits that no gains beat', () => {
  it.each(rows)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });

  it('a delay of the whole loop counts command, hold, sensor and drive', () => {
    const { totalDelay } = delayLimit({
      unstablePole: 1,
      delay: 0.018,
      sampleTime: 0.005,
      sensorLag: 0.008,
      naturalFrequency: 32,
      dampingRatio: 0.85,
    });
    expect(totalDelay).toBeCloseTo(0.018 + 0.0025 + 0.008 + 1.7 / 32, 15);
  });
});
