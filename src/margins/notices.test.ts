import { describe, expect, it } from 'vitest';
import { measured, part, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { assess } from './assess.ts';

function notice(id: string, held: Revision, on: Prototype = prototype): string | undefined {
  return assess(on, held).notices.find((found) => found.id === id)?.text;
}

/** Narrow and ordinary spaces alike. */
const plain = (text: string | undefined): string | undefined => text?.replaceAll('\u202f', ' ');

describe('the weighed total', () => {
  const sum = 2.307;
  // u of the sum: six parts of 0.5 g each, and 1 g of the scale: √(6 × 0.25 + 1) g = 1.58 g

  it('agrees with the parts while they differ by no more than twice their uncertainty', () => {
    expect(
      notice('weighed-total', withValue(revision, 'weighedMass', measured(sum + 0.0031, 0.001))),
    ).toBeUndefined();
    expect(
      notice('weighed-total', withValue(revision, 'weighedMass', measured(sum + 0.0032, 0.001))),
    ).toBeDefined();
    expect(
      notice('weighed-total', withValue(revision, 'weighedMass', measured(sum - 0.0032, 0.001))),
    ).toBeDefined();
  });

  it('says how much is missing, and what it would do to the lean', () => {
    const text = plain(notice('weighed-total', withValue(revision, 'weighedMass', measured(2.427, 0.001))));
    expect(text).toContain('120.0 g more, where the uncertainties allow 3.162 g (k = 2)');
    expect(text).toContain('missing from the table');
    // M₀ + m_b z = 0.028547 / tan 7.7187° = 0.210622; with 0.120 × 0.09774 more it is 0.222351: atan 0.128388 = 7.316°
    expect(text).toContain('it would make the largest lean 7.316° instead of 7.719°');
  });

  it('says from which height on the missing mass would cost the required lean', () => {
    const text = plain(notice('weighed-total', withValue(revision, 'weighedMass', measured(2.427, 0.001))));
    const [, height] = /above ([\d.]+) mm the 5° to recover from would be lost/.exec(text ?? '') ?? [];
    // 0.41 × 0.069628 / tan 5° = 0.326302 = M₀ + m_b z + 0.120 z, with M₀ + m_b z = 0.028547 / tan 7.7187°
    const now = (0.41 * 0.085 * Math.sin((55 * Math.PI) / 180)) / Math.tan((7.7187 * Math.PI) / 180);
    const asked = (0.41 * 0.085 * Math.sin((55 * Math.PI) / 180)) / Math.tan((5 * Math.PI) / 180);
    expect(Number(height)).toBeCloseTo(((asked - now) / 0.12) * 1000, 0);
  });

  it('points at the part that stands twice in the table', () => {
    const text = plain(
      notice('weighed-total', withValue(revision, 'weighedMass', measured(sum - 0.107, 0.001))),
    );
    expect(text).toContain('107.0 g less');
    expect(text).toContain('Tray weighs just that much.');
  });

  it('says what unweighed parts should come to', () => {
    const text = notice('weighed-total', withValue(revision, 'parts/tray/mass', undefined));
    expect(plain(text)).toBe('On the whole vehicle’s weight, Tray should come to 110 g.');
  });

  it('has nothing to say without a weighing', () => {
    expect(notice('weighed-total', withValue(revision, 'weighedMass', undefined))).toBeUndefined();
  });

  it('that is exact disagrees with any other exact sum, but not by rounding', () => {
    const parts = {
      a: part('A', 1, { mass: measured(0.1), z: measured(0.1), y: measured(0) }),
      b: part('B', 2, { mass: measured(0.2), z: measured(0.1), y: measured(0) }),
    };
    expect(notice('weighed-total', { ...revision, parts, weighedMass: measured(0.3) })).toBeUndefined();
    expect(notice('weighed-total', { ...revision, parts, weighedMass: measured(0.301) })).toBeDefined();
  });
});

describe('the mass table', () => {
  it('owns up to what is taken on the centre line', () => {
    expect(notice('assumed-on-centre-line', revision)).toMatch(/^Flywheel is taken/);
    expect(
      notice('assumed-on-centre-line', withValue(revision, 'parts/flywheel/y', measured(0))),
    ).toBeUndefined();
  });

  it('counts one ballast', () => {
    expect(notice('one-ballast', revision)).toBeUndefined();
    expect(notice('one-ballast', withValue(revision, 'parts/pack/role', 'ballast'))).toMatch(
      /^Pack and Ballast are all marked as the ballast; only Pack is counted/,
    );
  });
});

describe('the rotor', () => {
  it('weighs what its sections come to, or it is said by how much not', () => {
    expect(notice('rotor-mass', revision)).toBeUndefined();
    const text = plain(
      notice('rotor-mass', withValue(revision, 'parts/flywheel/mass', measured(0.5, 0.001))),
    );
    expect(text).toContain('17.95 % more'); // 589.73 g from the sections over 500 g
  });

  it('is judged at its working speed where the motor is not known, and that is said', () => {
    expect(notice('judged-speed', revision)).toBeUndefined();
    expect(notice('judged-speed', withValue(revision, 'pack', undefined))).toMatch(/largest working speed/);
    expect(notice('judged-speed', withValue(revision, 'rotor/largestSpeed', measured(2000)))).toMatch(
      /is above the/,
    );
  });

  it('that lies along the roll axis does nothing against roll', () => {
    expect(notice('spin-axis', revision)).toBeUndefined();
    expect(notice('spin-axis', withValue(revision, 'parts/flywheel/body/axis', 'x'))).toMatch(
      /nothing against roll/,
    );
    expect(notice('spin-axis', withValue(revision, 'parts/flywheel/body/axis', 'y'))).toMatch(/resists yaw/);
  });

  it('with much friction damps and does not hold', () => {
    expect(notice('weak-rotor', revision)).toBeUndefined();
    expect(notice('weak-rotor', withValue(revision, 'gimbal/friction', measured(1)))).toMatch(
      /it does not hold/,
    );
  });
});

describe('the gimbal', () => {
  const sprung = withValue(revision, 'gimbal/centring', measured(0.03));

  it('that is sprung spends the time that the rotor bought', () => {
    expect(notice('centring-spring', revision)).toBeUndefined();
    const text = plain(notice('centring-spring', sprung));
    expect(text).toMatch(/^The centring stiffness of 0\.03 N·m\/rad spends the time/);
    expect(text).toMatch(/time constant of 2\.\d+ s; with a free gimbal it would take 48\.\d+ s/);
  });

  it('that is top-heavy swings', () => {
    expect(notice('centring-spring', withValue(revision, 'gimbal/centring', measured(-0.03)))).toMatch(
      /it swings/,
    );
  });

  it('that is free keeps an offset, and the loop is judged without it', () => {
    expect(notice('neutral-gimbal', revision)).toMatch(/stays, whatever the ballast does/);
    expect(notice('neutral-gimbal', sprung)).toBeUndefined();
    expect(notice('neutral-gimbal', withValue(revision, 'rotor', undefined))).toBeUndefined();
  });

  it('does not hold a vehicle without a ballast', () => {
    expect(notice('rotor-alone', revision)).toBeUndefined();
    expect(notice('rotor-alone', withValue(revision, 'ballast', undefined))).toMatch(
      /does not hold the vehicle up/,
    );
  });
});

describe('the loop', () => {
  it('is told when what it takes for the rate is something else', () => {
    const taking = (source: string) => withValue(revision, 'loop/rateSource', source);
    expect(notice('rate-source', taking('rate gyro'))).toBeUndefined();
    expect(notice('rate-source', taking('gimbal rate'))).toMatch(/acts on the lean/);
    expect(notice('rate-source', taking('gimbal tilt'))).toMatch(/something else/);
    const sprung = withValue(taking('gimbal tilt'), 'gimbal/centring', measured(0.3));
    expect(notice('rate-source', sprung)).toBeUndefined();
    expect(notice('rate-source', withValue(taking('gimbal rate'), 'gimbal', undefined))).toMatch(
      /no gimballed rotor/,
    );
    expect(
      notice('rate-source', withValue(taking('gimbal rate'), 'loop/rateGain', measured(0))),
    ).toBeUndefined();
  });
});

describe('the sum by hand', () => {
  it('is let pass while it is near the exact one', () => {
    expect(notice('hand-and-exact', revision)).toBeUndefined();
  });

  it('parts from it where the ballast comes down as it swings out', () => {
    const text = notice('hand-and-exact', withValue(revision, 'ballast/travel', measured(1.3)));
    expect(text).toMatch(/^Worked by hand the largest lean is .*with the ballast centred/);
  });

  it('parts from it where the lean is large', () => {
    const slide = {
      ...revision,
      ballast: { kind: 'slide', height: measured(0.1), travel: measured(0.4) },
    } as const;
    expect(notice('hand-and-exact', slide)).toMatch(/the tangent of the lean counts/);
  });
});
