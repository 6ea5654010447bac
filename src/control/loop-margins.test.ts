import { describe, expect, it } from 'vitest';
import { repeatable, someLoop } from '../../tests/specimen/balance-loop.ts';
import { DomainError } from '../mechanics/index.ts';
import { rateSourceCode } from './balance-loop.ts';
import { type LoopFigures, loopMarginsCalculation } from './loop-margins.ts';

type Numbers = Readonly<Record<string, number>>;
const compute = (figures: Numbers): Numbers => loopMarginsCalculation.compute(figures);
const partials = (figures: Numbers): Readonly<Record<string, Numbers>> =>
  (loopMarginsCalculation.partials?.(figures) ?? {}) as Readonly<Record<string, Numbers>>;
const example = loopMarginsCalculation.example as Numbers;

function stableFigures(seed: number, count: number): Numbers[] {
  const random = repeatable(seed);
  const found: Numbers[] = [];
  while (found.length < count) {
    const { hardware, controller } = someLoop(random);
    const figures: LoopFigures = {
      ...hardware,
      ...controller,
      rateSource: rateSourceCode(controller.rateSource),
    };
    try {
      compute({ ...figures });
      found.push({ ...figures });
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
    }
  }
  return found;
}

/**
 * Fourth-order central differences of every output by one figure; an output is left out where it bends too much to
 * tell (two critical points competing), all of them where a side is outside the domain.
 */
function byDifference(figures: Numbers, name: string): Map<string, number> {
  const value = figures[name] ?? 0;
  const step = 2e-4 * Math.abs(value);
  const slopes = new Map<string, number>();
  try {
    const [a, b, c, d] = [1, -1, 2, -2].map((n) => compute({ ...figures, [name]: value + n * step }));
    for (const output of Object.keys(a ?? {})) {
      const inner = ((a?.[output] ?? 0) - (b?.[output] ?? 0)) / (2 * step);
      const outer = ((c?.[output] ?? 0) - (d?.[output] ?? 0)) / (4 * step);
      const slope = (4 * inner - outer) / 3;
      if (Math.abs(inner - outer) <= 1e-3 * Math.abs(slope) + 1e-9) slopes.set(output, slope);
    }
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
  }
  return slopes;
}

describe('loop.margins', () => {
  it('has partial derivatives that central differences confirm, for every figure of every kind of loop', () => {
    let compared = 0;
    for (const figures of [example, { ...example, rateSource: 1 }, ...stableFigures(8, 20)]) {
      const values = compute(figures);
      const slopes = partials(figures);
      const { delay = 0, sampleTime = 1 } = figures;
      for (const [name, value] of Object.entries(figures)) {
        if (name === 'rateSource' || value === 0) continue;
        // at a delay of whole samples the second derivative jumps, and differences lose their order
        if ((name === 'delay' || name === 'sampleTime') && Number.isInteger(delay / sampleTime)) continue;
        for (const [output, numerical] of byDifference(figures, name)) {
          const scale = Math.abs((values[output] ?? 0) / value);
          const found = slopes[output]?.[name] ?? 0;
          const allowed = 2e-5 * Math.abs(numerical) + 2e-6 * scale + 1e-15;
          const what = `${output} by ${name} of ${JSON.stringify(figures)}`;
          expect(Math.abs(found - numerical), what).toBeLessThan(allowed);
          compared++;
        }
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });

  it('has a delay margin that a delay uses up second for second', () => {
    expect(partials(example).delayMargin?.delay).toBeCloseTo(-1, 12);
  });

  it('has gain margins that all gains together use up factor for factor', () => {
    const slopes = partials(example);
    for (const output of ['gainMarginUp', 'gainMarginDown']) {
      const together = ['leanGain', 'rateGain', 'gimbalGain'].reduce(
        (sum, gain) => sum + (slopes[output]?.[gain] ?? 0) * (example[gain] ?? 0),
        0,
      );
      expect(together).toBeCloseTo(-(compute(example)[output] ?? Number.NaN), 10);
    }
  });

  it('gives slopes by gains that are 0 and by a centring that is 0', () => {
    const figures = {
      ...(stableFigures(8, 25).find((f) => f.gimbalCentring === 0 && f.gimbalGain === 0) ?? {}),
    };
    expect(figures.spinMomentum).toBeGreaterThan(0);
    for (const [name, step] of [
      ['gimbalGain', 1e-5],
      ['gimbalCentring', 1e-6],
    ] as const) {
      const slope = partials(figures).gainMarginUp?.[name] ?? Number.NaN;
      const rise =
        (compute({ ...figures, [name]: step }).gainMarginUp ?? 0) - (compute(figures).gainMarginUp ?? 0);
      expect(slope).not.toBe(0);
      expect(rise / step / slope).toBeCloseTo(1, 2);
    }
  });

  it('gives the slope by a sensor lag that is only beginning', () => {
    const figures = { ...example, sensorLag: 0 };
    for (const output of Object.keys(compute(figures))) {
      const slope = partials(figures)[output]?.sensorLag ?? 0;
      const step = 1e-6;
      const rise = (compute({ ...figures, sensorLag: step })[output] ?? 0) - (compute(figures)[output] ?? 0);
      expect(Math.abs(rise / step - slope)).toBeLessThan(2e-3 * Math.abs(slope) + 1e-5);
    }
  });

  it('does not depend on the units of mass, length and time', () => {
    // g stays: a length scaled by λ² goes with a time scaled by λ
    const [mass, time] = [3, 1.7];
    const length = time ** 2;
    const factors: Numbers = {
      firstMoment: mass * length,
      rollInertia: mass * length ** 2,
      ballastMass: mass,
      ballastHeight: length,
      spinMomentum: (mass * length ** 2) / time,
      gimbalInertia: mass * length ** 2,
      gimbalFriction: (mass * length ** 2) / time,
      gimbalCentring: (mass * length ** 2) / time ** 2,
      naturalFrequency: 1 / time,
      sensorLag: time,
      sampleTime: time,
      delay: time,
      leanGain: length,
      rateGain: length * time,
      gimbalGain: length,
    };
    const rescaled = Object.fromEntries(
      Object.entries(example).map(([name, value]) => [name, value * (factors[name] ?? 1)]),
    );
    const [here, there] = [compute(example), compute(rescaled)];
    for (const output of ['gainMarginUp', 'gainMarginDown', 'peakSensitivity']) {
      expect(there[output]).toBeCloseTo(here[output] ?? Number.NaN, 9);
    }
    expect(there.delayMargin).toBeCloseTo(time * (here.delayMargin ?? Number.NaN), 10);
  });

  it('is the same for an arm as for a slide whose gains are longer by the arm', () => {
    const arm = { ...example, commandToOffset: 0.2 };
    const slide: Record<string, number> = { ...example };
    for (const gain of ['leanGain', 'rateGain', 'gimbalGain']) slide[gain] = 0.2 * (example[gain] ?? 0);
    const longer: Record<string, number> = { ...arm };
    for (const gain of ['leanGain', 'rateGain', 'gimbalGain']) longer[gain] = (example[gain] ?? 0) / 0.2;
    expect(compute(longer).delayMargin).toBeCloseTo(compute(example).delayMargin ?? Number.NaN, 12);
    expect(() => compute(arm)).toThrow('spectral radius');
    expect(() => compute(slide)).toThrow('spectral radius');
  });

  it('says what is wrong with an unstable loop, by its spectral radius', () => {
    const unstable = { ...example, leanGain: 0.5 };
    expect(() => compute(unstable)).toThrow(
      /spectral radius of the balance loop is 1\.\d+, but margins need a loop that is stable/,
    );
    expect(() => partials(unstable)).toThrow(DomainError);
    expect(() => compute({ ...example, rateSource: 7 })).toThrow('rate source is 7');
  });

  it('works its own example, and names every figure that it takes', () => {
    expect(compute(example).gainMarginUp).toBeCloseTo(2.29664705, 8); // independent computation
    expect(Object.keys(example).sort()).toEqual(Object.keys(loopMarginsCalculation.inputs).sort());
  });

  it('answers or refuses, and never with something that is not a number, whatever the figures', () => {
    const random = repeatable(4);
    const absurd = [0, 1e-300, 1e300, -1, 1e-12, 1e12, 1e-6, 1e6];
    let answered = 0;
    for (let i = 0; i < 600; i++) {
      const figures = Object.fromEntries(
        Object.entries(example).map(([name, value]): [string, number] => {
          if (name === 'rateSource') return [name, Math.floor(random() * 4)];
          if (i % 2 === 0) return [name, value * 10 ** (3 * (random() - 0.5))];
          return [name, random() < 0.15 ? (absurd[Math.floor(random() * absurd.length)] ?? 0) : value];
        }),
      );
      try {
        const values = compute(figures);
        const slopes = partials(figures);
        answered++;
        for (const value of [
          ...Object.values(values),
          ...Object.values(slopes).flatMap(Object.values<number>),
        ]) {
          expect(value, JSON.stringify(figures)).not.toBeNaN();
        }
      } catch (error) {
        if (!(error instanceof DomainError)) throw error;
      }
    }
    expect(answered).toBeGreaterThan(30);
  });
});
