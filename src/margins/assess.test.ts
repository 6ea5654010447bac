import { describe, expect, it } from 'vitest';
import { measured, part, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { covariance, phrase, standardUncertainty, type Uncertain } from '../quantity/index.ts';
import { assess } from './assess.ts';
import type { Assessment, Margin } from './figure.ts';
import { isRowFigure } from './part-figures.ts';
import { figureNames } from './scope.ts';
import { factsBehind, isFact } from './trace.ts';

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;

function known(assessment: Assessment, name: string): Uncertain {
  const result = assessment.figures.get(name)?.result;
  if (!result?.ok)
    throw new Error(`${name} is unknown: ${result ? phrase(result.problem).reason : 'no such figure'}`);
  return result.value;
}

const value = (assessment: Assessment, name: string): number => known(assessment, name).value;
const u = (assessment: Assessment, name: string): number => standardUncertainty(known(assessment, name));

function margin(assessment: Assessment, id: string): Margin {
  const found = assessment.margins.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`no margin ${id}`);
  return found;
}

function missing(assessment: Assessment, name: string): readonly string[] {
  const result = assessment.figures.get(name)?.result;
  return result && !result.ok ? result.missing : [];
}

/** A bare rig: a body and a ballast on a slide, every mass and height typed in here. */
function rig(body: Parameters<typeof measured>, ballast: Parameters<typeof measured>): Revision {
  return {
    prototype: 'rig',
    letter: 'A',
    status: 'draft',
    reason: '',
    createdAt: '2025-03-01T09:00:00Z',
    parts: {
      body: part('Body', 1, { mass: measured(...body), y: measured(0), z: measured(0.2) }),
      ballast: part('Ballast', 2, { role: 'ballast', mass: measured(...ballast) }),
    },
    ballast: { kind: 'slide', height: measured(0.3), travel: measured(0.1) },
    fittings: { radio: false, independentKill: false, driven: false },
  };
}

describe('a heavier ballast', () => {
  // Common practice, no source: 955 g at 145 mm in all, with 73 g on an arm of 115 mm at 200 mm that swings ±45°.
  // Without the 73 g at 315 mm there are 882 g with a first moment of 0.955 × 0.145 − 0.073 × 0.315 = 0.11548 kg·m.
  const restHeight = (0.955 * 0.145 - 0.073 * 0.315) / 0.882;
  const withBallast = (mass: number): Revision => ({
    ...rig([0.882], [mass]),
    parts: {
      body: part('Body', 1, { mass: measured(0.882), y: measured(0), z: measured(restHeight) }),
      ballast: part('Ballast', 2, { role: 'ballast', mass: measured(mass, 0.0005) }),
    },
    ballast: {
      kind: 'upright arm',
      pivotHeight: measured(0.2),
      armLength: measured(0.115),
      travel: measured(radians(45)),
    },
  });
  const asked: Prototype = { ...prototype, requirements: { leanToRecover: measured(radians(12)) } };
  const light = assess(asked, withBallast(0.073));
  const heavy = assess(asked, withBallast(0.59));

  it('of 590 g instead of 73 g holds 9.7°, where the old total and height promise 20°', () => {
    expect(value(light, 'total_mass')).toBeCloseTo(0.955, 9);
    expect(value(light, 'cg_height')).toBeCloseTo(0.145, 9);
    expect(degrees(value(light, 'largest_lean'))).toBeCloseTo(2.5, 1);
    const stale =
      value(heavy, 'righting_moment') / (9.80665 * value(light, 'total_mass') * value(light, 'cg_height'));
    expect(degrees(Math.asin(stale))).toBeCloseTo(20, 0);
    expect(degrees(value(heavy, 'largest_lean'))).toBeCloseTo(9.7, 1);
  });

  it('moves the total, the centre of gravity and the inertia with it: nothing uses a stale total', () => {
    expect(value(heavy, 'total_mass')).toBeCloseTo(1.472, 9);
    expect(value(heavy, 'cg_height')).toBeCloseTo((0.11548 + 0.59 * 0.315) / 1.472, 5);
    expect(value(heavy, 'roll_inertia')).toBeCloseTo(0.882 * restHeight ** 2 + 0.59 * 0.315 ** 2, 9);
    expect(value(heavy, 'rest_first_moment')).toBeCloseTo(value(light, 'rest_first_moment'), 12);
    expect(value(heavy, 'first_moment')).toBeCloseTo(
      value(heavy, 'total_mass') * value(heavy, 'cg_height'),
      12,
    );
  });

  it('does not meet a lean of 12° that the sum by hand would have passed', () => {
    expect(margin(heavy, 'lean').verdict).toBe('fails');
    expect(margin(light, 'lean').verdict).toBe('fails');
  });
});

describe('one weighing that enters several sums', () => {
  it('drops out of the toppling time of a single part: τ² = z/g whatever it weighs', () => {
    const bare = {
      ...rig([2, 0.1], [1e-9]),
      parts: { body: rig([2, 0.1], [1]).parts.body ?? part('', 0, {}) },
    };
    const single = assess(prototype, bare);
    expect(value(single, 'toppling_time')).toBeCloseTo(Math.sqrt(0.2 / 9.80665), 12);
    // not nought to the last digit: the slopes of this calculation are found by differences
    expect(u(single, 'toppling_time')).toBeLessThan(1e-9 * value(single, 'toppling_time'));
    expect(u(single, 'first_moment')).toBeCloseTo(0.1 * 0.2, 12);
    expect(u(single, 'roll_inertia')).toBeCloseTo(0.1 * 0.2 ** 2, 12);
  });

  it('reaches the largest lean by the ballast’s own moment and by the first moment, with their signs', () => {
    // tan φ = m_b e / (M₀ + m_b z): with u in m_b alone, d tan φ / dm_b = e M₀ / (M₀ + m_b z)²
    const assessed = assess(prototype, rig([1.5], [0.4, 0.02]));
    const [rest, e, z, mass] = [1.5 * 0.2, 0.1, 0.3, 0.4];
    const tangent = (mass * e) / (rest + mass * z);
    const slope = ((e * rest) / (rest + mass * z) ** 2) * (1 / (1 + tangent ** 2));
    expect(value(assessed, 'largest_lean')).toBeCloseTo(Math.atan(tangent), 12);
    expect(u(assessed, 'largest_lean')).toBeCloseTo(slope * 0.02, 9);
  });

  it('leaves total and first moment correlated as the arithmetic says', () => {
    const assessed = assess(prototype, rig([1.5, 0.03], [0.4, 0.02]));
    const together = covariance(known(assessed, 'total_mass'), known(assessed, 'first_moment'));
    expect(together).toBeCloseTo(0.03 ** 2 * 0.2 + 0.02 ** 2 * 0.3, 12);
  });
});

describe('the margins of the specimen', () => {
  const assessed = assess(prototype, revision);

  it('are those of its requirements and its hardware', () => {
    expect(assessed.margins.map(({ id }) => id)).toEqual([
      'lean',
      'lateral',
      'turn',
      'cross-slope',
      'rotor-strength',
      'gimbal-time',
      'actuator',
      'pack-current',
      'run-time',
      'gain-up',
      'gain-down',
      'delay',
    ]);
    expect(assessed.margins.filter(({ verdict }) => verdict === 'unknown')).toEqual([]);
  });

  it('exist only where something is asked or fitted', () => {
    const bare = assess({ ...prototype, requirements: {} }, rig([1], [0.2]));
    expect(bare.margins).toEqual([]);
    const one = assess({ ...prototype, requirements: { turnRadius: measured(2) } }, rig([1], [0.2]));
    expect(one.margins.map(({ id }) => id)).toEqual(['turn']);
    expect(margin(one, 'turn')).toMatchObject({ verdict: 'unknown', missing: ['turn_speed'] });
  });

  it('compare force with force on a slide and moment with moment on an arm', () => {
    const slide = assess(prototype, {
      ...revision,
      ballast: { kind: 'slide', height: measured(0.1), travel: measured(0.06) },
      actuator: { ...revision.actuator, stallForce: measured(12, 1) },
    });
    expect(margin(assessed, 'actuator').capability).toBe('actuator_stall_moment');
    expect(margin(slide, 'actuator').capability).toBe('actuator_stall_force');
    expect(margin(slide, 'actuator').verdict).toBe('holds');
    expect(slide.figures.has('actuator_moment_needed')).toBe(false);
  });

  it('take the speed that the motor could run away to', () => {
    const factor = 1.2;
    expect(value(assessed, 'judged_speed')).toBeCloseTo(factor * value(assessed, 'runaway_speed'), 9);
    const unknownMotor = assess(prototype, withValue(revision, 'rotor/motorSpeedConstant', undefined));
    expect(value(unknownMotor, 'judged_speed')).toBeCloseTo(factor * value(unknownMotor, 'rotor_speed'), 9);
    expect(margin(unknownMotor, 'rotor-strength').verdict).toBe('holds');
  });

  it('fail for a loop that does not balance, with the reason', () => {
    const loose = assess(prototype, withValue(revision, 'loop/delay', measured(0.05)));
    for (const id of ['gain-up', 'gain-down', 'delay']) {
      expect(margin(loose, id)).toMatchObject({ verdict: 'fails', lowerBound: -1 });
    }
    const reason = loose.figures.get('gain_margin_up')?.result;
    expect(reason && !reason.ok && phrase(reason.problem).reason).toMatch(/stable/);
    expect(loose.notices.map(({ id }) => id)).toContain('unstable-loop');
  });

  it('fail for a rotor too slow to hold anything', () => {
    const slow = assess(prototype, withValue(revision, 'rotor/largestSpeed', measured(1)));
    expect(margin(slow, 'gimbal-time').verdict).toBe('fails');
    const still = assess(prototype, withValue(revision, 'rotor/largestSpeed', measured(0)));
    expect(margin(still, 'gimbal-time').verdict).toBe('fails');
  });

  it('are the same object for the same two records, and the same values for equal ones', () => {
    expect(assess(prototype, revision)).toBe(assessed);
    const again = assess({ ...prototype }, { ...revision });
    expect(again).not.toBe(assessed);
    expect(again).toEqual(assessed);
  });
});

describe('what is missing', () => {
  it('is named by part, and the sentence leads to the page', () => {
    const lacking = assess(prototype, withValue(revision, 'parts/tray/mass', undefined));
    expect(missing(lacking, 'total_mass')).toEqual(['part_tray_mass']);
    const lean = margin(lacking, 'lean');
    expect(lean.verdict === 'unknown' && phrase(lean.problem)).toEqual({
      place: 'largest lean that the ballast can hold',
      reason: 'mass of Tray is missing.',
      remedy: 'Enter it on the page “Masses”.',
    });
  });

  it('is no height for the total, but for the first moment', () => {
    const lacking = assess(prototype, withValue(revision, 'parts/tray/z', undefined));
    expect(missing(lacking, 'total_mass')).toEqual([]);
    expect(missing(lacking, 'first_moment')).toEqual(['part_tray_height']);
    expect(missing(lacking, 'cg_forward')).toEqual([]);
  });

  it('is told apart from what was looked at and not measured', () => {
    const lacking = assess(prototype, withValue(revision, 'parts/tray/mass', { notMeasured: true }));
    const result = lacking.figures.get('total_mass')?.result;
    expect(result && !result.ok && phrase(result.problem).reason).toBe(
      'mass of Tray is marked as not measured.',
    );
  });

  it('is counted when there is more of it', () => {
    const lacking = assess(
      prototype,
      withValue(withValue(revision, 'parts/tray/mass', undefined), 'parts/pack/mass', undefined),
    );
    const result = lacking.figures.get('total_mass')?.result;
    expect(result && !result.ok && phrase(result.problem).reason).toBe(
      'mass of Tray (with 1 more) is missing.',
    );
    expect(missing(lacking, 'total_mass')).toEqual(['part_tray_mass', 'part_pack_mass']);
  });

  it('is the kind of drive, the ballast, the loop, where they are not chosen yet', () => {
    expect(missing(assess(prototype, withValue(revision, 'ballast', undefined)), 'largest_lean')).toEqual([
      'ballast_drive',
    ]);
    expect(
      missing(assess(prototype, withValue(revision, 'parts/ballast/role', 'structure')), 'righting_moment'),
    ).toEqual(['ballast_part']);
    expect(missing(assess(prototype, withValue(revision, 'loop', undefined)), 'delay_margin')).toEqual([
      'loop',
    ]);
    expect(missing(assess(prototype, withValue(revision, 'gimbal', undefined)), 'gimbal_stop_time')).toEqual([
      'gimbal',
    ]);
    expect(missing(assess(prototype, withValue(revision, 'parts', {})), 'total_mass')).toEqual([
      'mass_table',
    ]);
    expect(missing(assess(prototype, withValue(revision, 'rotor/sections', {})), 'rotor_inertia')).toEqual([
      'rotor_sections',
    ]);
  });

  it('is not a blank centring, reserve or distance to the left: these have a meaning', () => {
    const blank = assess(
      withValue(prototype, 'requirements/disturbanceReserve', undefined),
      withValue(withValue(revision, 'gimbal/centring', undefined), 'parts/tray/y', undefined),
    );
    expect(value(blank, 'gimbal_centring')).toBe(0);
    expect(value(blank, 'cross_slope_held')).toBeCloseTo(value(blank, 'largest_lean'), 12);
    expect(missing(blank, 'roll_inertia')).toEqual([]);
    expect(margin(blank, 'gimbal-time').verdict).toBe('holds');
  });

  it('is a centring that has still to be measured: the gimbal may not be free', () => {
    const unmeasured = assess(prototype, withValue(revision, 'gimbal/centring', { notMeasured: true }));
    expect(missing(unmeasured, 'slow_toppling_time')).toEqual(['gimbal_centring']);
  });

  it('is nothing where a value lies outside the equation: the reason names it', () => {
    const bored = assess(prototype, withValue(revision, 'parts/wheels/body/bore', measured(0.2)));
    const result = bored.figures.get('roll_inertia')?.result;
    expect(result && !result.ok && result.missing).toEqual([]);
    expect(result && !result.ok && phrase(result.problem)).toMatchObject({
      place: 'own roll inertia of Wheels',
      reason: expect.stringContaining('bore'),
    });
  });
});

describe('each fact', () => {
  const before = assess(prototype, revision);
  const facts = [...before.figures.values()]
    .filter(isFact)
    .filter(({ trace }) => trace.field && 'si' in trace.field);

  /** Facts that no sum asks for: recorded for the checklist, or for what the notices say. */
  const FEEDS_NOTHING = new Set([
    'weighed_mass',
    'fuse_rating',
    'part_frame_body_length',
    'part_tray_body_length',
    'part_pack_body_length',
    'part_ballast_body_length',
  ]);

  it.each(facts.map((fact) => [fact.name, fact] as const))(
    '%s changes what depends on it and nothing else',
    (_, fact) => {
      const si = fact.result.ok ? fact.result.value.value : 0;
      const nudged = si === 0 ? 1e-3 : si * 0.999;
      const { record, path } = fact.trace;
      const after =
        record === 'prototype'
          ? assess(withValue(prototype, `${path}/si`, nudged), revision)
          : assess(prototype, withValue(revision, `${path}/si`, nudged));
      const changed = [...before.figures.values()]
        .filter(({ trace }) => trace.kind === 'calculation')
        .filter(({ name }) => value(after, name) !== value(before, name))
        .map(({ name }) => name);
      const dependents = [...before.figures.values()]
        .filter(({ trace }) => trace.kind === 'calculation')
        .filter(({ name }) => factsBehind(before, name).some(({ trace }) => trace.path === path))
        .map(({ name }) => name);
      expect(dependents).toEqual(expect.arrayContaining(changed));
      const feedsMargin = before.margins.some(({ capability, demand }) =>
        [capability, demand].includes(fact.name),
      );
      expect(changed.length > 0 || feedsMargin, `${fact.name} changed ${changed.length} figures`).toBe(
        !FEEDS_NOTHING.has(fact.name),
      );
    },
  );
});

describe('the mass table', () => {
  const sums = ['total_mass', 'first_moment', 'cg_height', 'cg_left', 'roll_inertia', 'largest_lean'];

  it('gives the same sums in any order', () => {
    const before = assess(prototype, revision);
    const turned = Object.fromEntries(
      Object.entries(revision.parts).map(([id, row]) => [id, { ...row, order: -row.order }]),
    );
    const after = assess(prototype, { ...revision, parts: turned });
    for (const name of sums) {
      expect(value(after, name)).toBeCloseTo(value(before, name), 12);
      expect(u(after, name)).toBeCloseTo(u(before, name), 12);
    }
  });

  it('gives the same sums with a part split in two at its place', () => {
    const { frame, ...others } = revision.parts;
    if (!frame) throw new Error('the specimen has a frame');
    const half = (order: number) => part(`Half ${order}`, order, { ...frame, mass: measured(0.305) });
    const before = assess(prototype, revision);
    const after = assess(prototype, { ...revision, parts: { ...others, left: half(1), right: half(2) } });
    for (const name of sums) expect(value(after, name)).toBeCloseTo(value(before, name), 12);
  });
});

describe('the names', () => {
  it('of every figure in every kind of vehicle are documented', () => {
    const slide: Revision = {
      ...revision,
      ballast: { kind: 'slide', height: measured(0.1), travel: measured(0.06) },
    };
    const documented = new Set(figureNames.map(({ name }) => name));
    const seen = new Set<string>();
    for (const held of [
      revision,
      slide,
      withValue(revision, 'gimbal/centring', measured(0.02)),
      withValue(revision, 'ballast', undefined),
      withValue(revision, 'rotor', undefined),
      withValue(revision, 'loop', undefined),
    ]) {
      for (const name of assess(prototype, held).figures.keys()) if (!isRowFigure(name)) seen.add(name);
    }
    for (const name of seen) expect(documented, name).toContain(name);
    expect([...documented].toSorted()).toEqual([...seen].toSorted());
  });
});
