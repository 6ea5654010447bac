import { describe, expect, it } from 'vitest';
import { measured, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import { assess } from './assess.ts';
import { explainFigure, explainMargin } from './explain.ts';
import { locateFact } from './locate.ts';
import { sourceText } from './trace.ts';

const assessed = assess(prototype, revision);

function explained(id: string, of = assessed) {
  const found = id.includes('_') ? explainFigure(of, id) : explainMargin(of, id);
  if (!found.ok) throw new Error(id);
  return found.value;
}

describe('the explanation', () => {
  it('of a calculated figure gives its equation and its inputs in order', () => {
    const { calculation, inputs } = explained('largest_lean');
    expect(calculation?.id).toBe('ballast.largest-lean');
    expect(inputs.map(({ input, figures }) => [input, figures.map(({ name }) => name)])).toEqual([
      ['ballastMass', ['ballast_mass']],
      ['ballastOffset', ['ballast_offset_max']],
      ['ballastHeight', ['ballast_height_at_limit']],
      ['firstMomentWithout', ['rest_first_moment']],
    ]);
  });

  it('of a sum lists every part', () => {
    const [masses] = explained('total_mass').inputs;
    expect(masses?.figures.map(({ title }) => title)).toEqual([
      'mass of Frame',
      'mass of Tray',
      'mass of Flywheel',
      'mass of Pack',
      'mass of Wheels',
      'mass of Ballast',
    ]);
  });

  it('says where a default was taken', () => {
    const tilt = explained('gimbal_stop_time').inputs.find(({ input }) => input === 'initialTilt');
    expect(tilt).toMatchObject({ figures: [], taken: 0 });
    const unknownMotor = assess(prototype, withValue(revision, 'rotor/motorSpeedConstant', undefined));
    const runaway = explained('judged_speed', unknownMotor).inputs.find(
      ({ input }) => input === 'runawaySpeed',
    );
    expect(runaway?.taken).toBe(0);
    expect(runaway?.figures.map(({ name }) => name)).toEqual(['runaway_speed']);
  });

  it('of a margin leads to capability and demand', () => {
    const { calculation, inputs } = explained('lean');
    expect(calculation?.id).toBe('margin.of-safety');
    expect(inputs.flatMap(({ figures }) => figures.map(({ name }) => name))).toEqual([
      'largest_lean',
      'required_lean',
    ]);
  });

  it('of a fact has no equation', () => {
    const { calculation, inputs, budget } = explained('ballast_mass');
    expect(calculation).toBeUndefined();
    expect(inputs).toEqual([]);
    expect(budget.map(({ label, share }) => [label, share])).toEqual([['mass of Ballast, measured', 1]]);
  });

  it('is refused for a name that is not there', () => {
    expect(explainFigure(assessed, 'largest_leen')).toMatchObject({
      ok: false,
      problem: { code: 'figure.unknown' },
    });
    expect(explainMargin(assessed, 'leen')).toMatchObject({ ok: false, problem: { code: 'margin.unknown' } });
  });
});

describe('the budget', () => {
  it('shares out the whole variance, greatest first', () => {
    for (const id of ['lean', 'gimbal-time', 'rotor-strength', 'delay', 'roll_inertia']) {
      const { budget } = explained(id);
      expect(budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      expect(budget.map(({ share }) => share)).toEqual(
        budget.map(({ share }) => share).toSorted((a, b) => b - a),
      );
    }
  });

  it('speaks of inputs as people do, with how they were got', () => {
    const labels = explained('rotor-strength').budget.map(({ label }) => label);
    expect(labels).toContain('yield strength of the rotor, data sheet');
    expect(labels).toContain('outer diameter of Disc, measured');
  });

  it('points at the input that is worth measuring better', () => {
    const loose = assess(prototype, withValue(revision, 'parts/frame/z', measured(0.075, 0.02, 'estimated')));
    const { budget, advice } = explained('lean', loose);
    expect(budget[0]).toMatchObject({ name: 'part_frame_height', label: 'height of Frame, estimated' });
    expect(advice).toMatch(/^Most comes from the height of Frame, 9\d % of the variance\. Measure it:/);
  });

  it('points at none where none stands out', () => {
    const { advice, budget } = explained('total_mass');
    expect(budget[0]?.share).toBeCloseTo(1 / 6, 9);
    expect(advice).toMatch(/no single measurement/);
  });

  it('is empty for what is unknown, and names what claims to be exact', () => {
    const lacking = assess(prototype, withValue(revision, 'parts/tray/mass', undefined));
    expect(explained('lean', lacking).budget).toEqual([]);
    const names = explained(
      'lean',
      assess(prototype, withValue(revision, 'parts/tray/mass/u', 0)),
    ).takenAsExact;
    expect(names.map(({ name }) => name)).toEqual(['part_tray_mass']);
  });
});

describe('a source', () => {
  it('is the reading with its instrument and day', () => {
    const weighed = {
      ...measured(0.073, 0.0002),
      typed: '73.0(2) g',
      instrument: 'kitchen scale',
      on: '2025-03-01',
    };
    const figure = assess(prototype, withValue(revision, 'parts/ballast/mass', weighed)).figures.get(
      'ballast_mass',
    );
    expect(figure && sourceText(figure)).toBe('73.0(2) g, measured with kitchen scale on 2025-03-01');
  });

  it('is said for what is blank, not measured, constant or calculated', () => {
    const source = (name: string, of = assessed): string | undefined => {
      const figure = of.figures.get(name);
      return figure && sourceText(figure);
    };
    const lacking = assess(
      prototype,
      withValue(withValue(revision, 'weighedMass', undefined), 'parts/tray/mass', {
        notMeasured: true,
        note: 'glued in',
      }),
    );
    expect(source('weighed_mass', lacking)).toBe('not entered');
    expect(source('part_tray_mass', lacking)).toBe('not measured: glued in');
    expect(source('gimbal_centring')).toBe('left blank');
    expect(source('cells_in_series')).toBe('as counted');
    expect(source('required_lean')).toMatch(/, required$/);
    expect(source('total_mass')).toBe('calculated by mass.total');
    expect(source('g_n')).toMatch(/CGPM/);
  });
});

describe('what is missing', () => {
  it('can be found on its page', () => {
    const lacking = assess(
      prototype,
      withValue(withValue(revision, 'parts/tray/mass', undefined), 'ballast', undefined),
    );
    expect(locateFact(lacking, 'part_tray_mass')).toEqual({
      title: 'mass of Tray',
      record: 'revision',
      path: 'parts/tray/mass',
      page: 'Masses',
    });
    expect(locateFact(lacking, 'ballast_drive')).toMatchObject({ path: 'ballast/kind', page: 'Ballast' });
    expect(locateFact(lacking, 'rotor_density')).toMatchObject({
      path: 'rotor/density',
      page: 'Rotor and gimbal',
    });
    expect(locateFact(lacking, 'section_disc_thickness')).toMatchObject({ page: 'Rotor and gimbal' });
    expect(locateFact(lacking, 'required_lean')).toMatchObject({ record: 'prototype', page: 'Requirements' });
    expect(locateFact(lacking, 'largest_lean')).toBeUndefined();
  });

  it('can always be found on its page', () => {
    const empty = assess({ ...prototype, requirements: {} }, {
      ...revision,
      parts: {},
      rotor: undefined,
      gimbal: undefined,
      ballast: undefined,
      loop: undefined,
      pack: undefined,
      actuator: undefined,
    } as unknown as typeof revision);
    const missing = new Set(
      [...empty.figures.values()].flatMap(({ result }) => (result.ok ? [] : result.missing)),
    );
    expect(missing.size).toBeGreaterThan(10);
    for (const name of missing) expect(locateFact(empty, name), name).toBeDefined();
  });
});
