/** The plan of the draws against the assessment: one draw is one revision with other facts, and gives its figures. */
import { describe, expect, it } from 'vitest';
import { measured, part, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { assess } from './assess.ts';
import { originsOf } from './binding.ts';
import { type DrawPlan, drawPlan, isCostlyFigure } from './draw-plan.ts';
import { evaluation } from './evaluate.ts';
import { randomInputs } from './random-inputs.ts';

interface Laid {
  readonly plan: DrawPlan;
  /** Every figure of the revision that has a value, with its place. */
  readonly places: ReadonlyMap<string, number>;
  /** The two records with the facts of the last draw in them. */
  readonly drawn: () => { readonly on: Prototype; readonly held: Revision };
}

function laid(on: Prototype, held: Revision, seed = 1): Laid {
  const origins = originsOf(on, held);
  const inputs = randomInputs(origins);
  if (!inputs.ok) throw new Error(inputs.problem.code);
  const { figure } = evaluation(origins);
  const plan = drawPlan(origins, figure, inputs.value, seed);
  const names = [...origins.keys()].filter((name) => figure(name)?.result.ok);
  const places = new Map(names.map((name) => [name, plan.place(name)]));
  return {
    plan,
    places,
    drawn() {
      let records = { prototype: on, revision: held };
      for (const [name, place] of places) {
        const origin = origins.get(name);
        if (origin?.kind !== 'fact' || !plan.varies(place)) continue;
        const record = withValue(records[origin.record], `${origin.path}/si`, plan.value(place));
        records = { ...records, [origin.record]: record };
      }
      return { on: records.prototype, held: records.revision };
    },
  };
}

function expectSame(laidOut: Laid): void {
  const { on, held } = laidOut.drawn();
  const { figures } = assess(on, held);
  for (const [name, place] of laidOut.places) {
    const result = figures.get(name)?.result;
    const value = laidOut.plan.value(place);
    if (!result?.ok) expect(`${name} is ${value}`).toBe(`${name} is NaN`);
    else expect(`${name} ${value.toPrecision(10)}`).toBe(`${name} ${result.value.value.toPrecision(10)}`);
  }
}

const slide = withValue(
  withValue(withValue(revision, 'loop', undefined), 'actuator/stallForce', measured(40, 2)),
  'ballast',
  { kind: 'slide', height: measured(0.08, 0.0005), travel: measured(0.06, 0.0005) },
);

describe('a draw', () => {
  it('gives the figures of a revision that has its facts', () => {
    const laidOut = laid(prototype, revision);
    for (let count = 0; count < 3; count++) {
      laidOut.plan.draw();
      expectSame(laidOut);
    }
  });

  it.each([
    ['on a slide', slide],
    ['with a sprung gimbal', withValue(slide, 'gimbal/centring', measured(0.03, 0.002))],
    ['without a rotor', withValue(withValue(slide, 'rotor', undefined), 'gimbal', undefined)],
    ['without a speed to run away to', withValue(slide, 'rotor/motorSpeedConstant', undefined)],
    [
      'with a part more',
      withValue(
        slide,
        'parts/mast',
        part('Mast', 7, { mass: measured(0.1, 0.01), x: measured(0), z: measured(0.3, 0.01) }),
      ),
    ],
  ])('does so %s', (_, held) => {
    const laidOut = laid(prototype, held, 5);
    for (let count = 0; count < 20; count++) {
      laidOut.plan.draw();
      expectSame(laidOut);
    }
  });

  it('gives a fact that stands under two names one value', () => {
    const { plan } = laid(prototype, slide);
    expect(plan.place('ballast_mass')).toBe(plan.place('part_ballast_mass'));
  });

  it('leaves what does not vary as it is', () => {
    const { plan, places } = laid(prototype, slide);
    plan.draw();
    for (const name of ['g_n', 'required_lean', 'pack_full_voltage', 'cells_in_series']) {
      expect(plan.varies(places.get(name) ?? -1)).toBe(false);
    }
    expect(plan.value(plan.place('pack_full_voltage'))).toBeCloseTo(12.6, 10);
  });

  it('has no value, and says why, where it leaves the domain of a calculation, until a draw that does not', () => {
    const loose = withValue(slide, 'gimbal/friction', measured(0.004, 0.004));
    const { plan } = laid(prototype, loose);
    const time = plan.place('gimbal_stop_time');
    const friction = plan.place('gimbal_friction');
    let outside = 0;
    for (let count = 0; count < 200; count++) {
      plan.draw();
      expect(Number.isNaN(plan.value(time))).toBe(plan.value(friction) <= 0);
      if (!Number.isNaN(plan.value(time))) continue;
      outside += 1;
      expect(plan.problem(time)).toMatchObject({ code: 'calculation.out-of-domain' });
    }
    // 16 % of a normal spread lie below nought
    expect(outside).toBeGreaterThan(10);
    expect(outside).toBeLessThan(60);
  });
});

describe('a figure that takes long', () => {
  it('is one that follows from the loop', () => {
    const origins = originsOf(prototype, revision);
    const costly = [...origins.keys()].filter((name) => isCostlyFigure(origins, name));
    expect(costly.sort()).toEqual([
      'delay_margin',
      'gain_margin_down',
      'gain_margin_down_factor',
      'gain_margin_up',
      'peak_sensitivity',
    ]);
  });
});
