/** Random draws of figures and margins: what they are drawn from, what they add up to, and what they refuse. */
import { describe, expect, it } from 'vitest';
import { measured, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import type { KnownQuantity, Prototype, Revision } from '../notebook/index.ts';
import type { DrawnFigure, DrawnMargin } from './draw-subject.ts';
import { marginSpecs } from './margin.ts';
import { type MonteCarlo, monteCarlo, type RandomDrawOptions } from './monte-carlo.ts';
import { figureNames } from './scope.ts';

const withoutLoop = withValue(revision, 'loop', undefined);
const asked: Prototype = {
  ...prototype,
  requirements: withValue(
    withValue(prototype.requirements, 'gainMargin', undefined),
    'delayMargin',
    undefined,
  ),
};
/** Enough for the questions below, in a tenth of a second. */
const FEW = 20_000;

function draw(
  options: Partial<RandomDrawOptions> = {},
  held: Revision = withoutLoop,
  on = asked,
): MonteCarlo {
  const drawn = monteCarlo(on, held, { seed: 1, digits: 1, most: FEW, ...options });
  if (!drawn.ok) throw new Error(drawn.problem.code);
  return drawn.value;
}

function figure(
  name: string,
  held: Revision = withoutLoop,
  options: Partial<RandomDrawOptions> = {},
): DrawnFigure {
  const result = draw({ names: [name], ...options }, held).results.get(name);
  if (!result?.ok || result.value.kind !== 'figure') throw new Error(`no draws of ${name}`);
  return result.value;
}

function margin(
  id: string,
  held: Revision = withoutLoop,
  options: Partial<RandomDrawOptions> = {},
): DrawnMargin {
  const result = draw({ names: [id], ...options }, held).results.get(id);
  if (!result?.ok || result.value.kind !== 'margin') throw new Error(`no draws of ${id}`);
  return result.value;
}

function refusal(result: ReturnType<typeof monteCarlo>): string {
  return result.ok ? 'none' : result.problem.code;
}

describe('random draws', () => {
  it('are of every margin of the revision, where nothing else is asked for', () => {
    expect([...draw().results.keys()]).toEqual([
      'lean',
      'lateral',
      'turn',
      'cross-slope',
      'rotor-strength',
      'gimbal-time',
      'actuator',
      'pack-current',
      'run-time',
    ]);
  });

  it('are the same for the same seed, and others for another', () => {
    expect(draw()).toEqual(draw());
    expect(draw({ seed: 2 }).results.get('lean')).not.toEqual(draw().results.get('lean'));
  });

  it('of one margin are those of all margins together', () => {
    const all = draw();
    for (const id of ['lean', 'actuator', 'run-time']) {
      expect(draw({ names: [id] }).results.get(id)).toEqual(all.results.get(id));
    }
  });

  it('go on until the digits asked for stand still, and tell on the way how many were made', () => {
    const told: number[] = [];
    const { draws, settled } = margin('lean', withoutLoop, {
      most: 1e6,
      progress: (count) => told.push(count),
    });
    expect(settled).toBe(true);
    expect(told.at(-1)).toBe(draws);
    expect(told.length).toBeGreaterThanOrEqual(10);
    expect(margin('lean')).toMatchObject({ draws: FEW, settled: false, confirmed: undefined });
  });

  it('have a name for every margin that is not the name of a figure', () => {
    const names: readonly string[] = figureNames.map(({ name }) => name);
    expect(marginSpecs.filter(({ id }) => names.includes(id))).toEqual([]);
  });
});

describe('random draws and first order', () => {
  it('agree where the figure is a sum of what was weighed', () => {
    const drawn = figure('total_mass', withoutLoop, { most: 2e6, digits: 2 });
    expect(drawn.confirmed).toBe(true);
    expect(Math.abs(drawn.u / drawn.firstOrder.u - 1)).toBeLessThan(0.01);
    expect(Math.abs(drawn.mean - drawn.firstOrder.value)).toBeLessThan(drawn.tolerance);
  });

  it('agree for every margin, as far as its own curvature lets them', () => {
    for (const [id, result] of draw().results) {
      if (!result.ok) throw new Error(id);
      const { u, firstOrder } = result.value;
      // a standard deviation from n draws scatters by 1/√(2n); four times that, and 2 % for second-order terms
      expect(Math.abs(u / firstOrder.u - 1)).toBeLessThan(4 / Math.sqrt(2 * FEW) + 0.02);
    }
  });

  it('part where a quotient has an uncertain divisor, and the draws say so', () => {
    const vague = withValue(withoutLoop, 'pack/meanCurrent', {
      ...measured(8, 3.5 / Math.sqrt(3)),
      typed: '8 A ± 3.5 A',
    });
    const { confirmed, mean, firstOrder, symmetric } = figure('run_time', vague, { most: 1e6 });
    expect(confirmed).toBe(false);
    expect(mean).toBeGreaterThan(firstOrder.value);
    expect(symmetric[1] - mean).toBeGreaterThan(1.5 * (mean - symmetric[0]));
  });
});

describe('what a fact is drawn from', () => {
  const current = (field: Partial<KnownQuantity>): DrawnFigure =>
    figure(
      'pack_peak_current',
      withValue(withoutLoop, 'pack/peakCurrent', {
        typed: '22 A',
        si: 22,
        u: 1,
        basis: 'measured',
        ...field,
      }),
      { most: 200_000 },
    );
  /** Half of the interval that covers 95 %, in standard uncertainties: 0.95 √3 for even bounds, 1.96 for normal ones. */
  const half = ({ symmetric, firstOrder }: DrawnFigure): string =>
    ((symmetric[1] - symmetric[0]) / 2 / firstOrder.u).toFixed(1);

  it.each<[string, Partial<KnownQuantity>, string]>([
    ['even within a bound stated apart', { uncertainty: { typed: '± 1.7 A', kind: 'bound' } }, '1.6'],
    ['even within the step of a display', { uncertainty: { typed: '3.5 A', kind: 'resolution' } }, '1.6'],
    ['even within what stands after ±', { typed: '22 A ± 1.7 A' }, '1.6'],
    [
      'normal about a standard uncertainty stated apart',
      { uncertainty: { typed: '1 A', kind: 'standard' } },
      '2.0',
    ],
    ['normal about figures in brackets', { typed: '22.0(10) A' }, '2.0'],
    ['normal where only the standard uncertainty is left', {}, '2.0'],
    [
      'what is stated apart, before what is typed',
      { typed: '22 A ± 1 A', uncertainty: { typed: '1 A', kind: 'standard' } },
      '2.0',
    ],
  ])('is %s', (_, field, expected) => {
    expect(half(current(field))).toBe(expected);
  });

  it('is one weighing for a part that stands under two names', () => {
    const [role, row] = ['ballast_mass', 'part_ballast_mass'].map((name) => figure(name));
    expect(role?.mean).toBe(row?.mean);
    expect(role?.symmetric).toEqual(row?.symmetric);
  });
});

describe('the probability that a margin holds', () => {
  it('is near one half where the margin is nought, and 95 % where its lower bound is', () => {
    const { requirements } = asked;
    const at = (si: number): DrawnMargin => {
      const on = { ...asked, requirements: { ...requirements, leanToRecover: measured(si) } };
      const result = draw({ names: ['lean'], most: 100_000 }, withoutLoop, on).results.get('lean');
      if (!result?.ok || result.value.kind !== 'margin') throw new Error('no draws');
      return result.value;
    };
    const { mean, u } = figure('largest_lean');
    expect(at(mean).probability).toBeCloseTo(0.5, 1);
    expect(at(mean - 1.645 * u).probability).toBeCloseTo(0.95, 2);
    expect(at(mean - 1.645 * u).lowerBound).toBeCloseTo(0, 3);
  });

  it('counts draws without a value as not holding, and tells them with the reason', () => {
    const loose = withValue(withoutLoop, 'gimbal/friction', measured(0.004, 0.004));
    const { outside, draws, because, probability } = margin('gimbal-time', loose);
    expect(outside / draws).toBeCloseTo(0.159, 1);
    expect(because).toMatchObject({ code: 'calculation.out-of-domain' });
    expect(Math.round(probability * draws)).toBeLessThanOrEqual(draws - outside);
  });

  it('counts draws in which the loop is not stable as margins of −1, not as unknown ones', () => {
    const late = withValue(revision, 'loop/delay', measured(0.03, 0.01));
    const drawn = monteCarlo(prototype, late, { seed: 1, digits: 1, names: ['delay'], mostOfLoop: 100 });
    const result = drawn.ok ? drawn.value.results.get('delay') : undefined;
    if (!result?.ok || result.value.kind !== 'margin') throw new Error('no draws');
    expect(result.value.symmetric[0]).toBe(-1);
    expect(result.value.outside).toBe(0);
    expect(result.value.probability).toBeGreaterThan(0);
    expect(result.value.probability).toBeLessThan(1);
  });
});

describe('draws of the loop', () => {
  it('are fewer, and say that they have not settled', () => {
    const drawn = monteCarlo(prototype, revision, {
      seed: 1,
      digits: 1,
      names: ['delay', 'lean'],
      most: FEW,
      mostOfLoop: 100,
    });
    if (!drawn.ok) throw new Error(drawn.problem.code);
    const [delay, lean] = [...drawn.value.results.values()].map((result) => result.ok && result.value);
    expect(delay).toMatchObject({ draws: 100, settled: false, confirmed: undefined });
    expect(lean).toMatchObject({ draws: FEW });
  });

  it('can be left out', () => {
    expect(draw({ mostOfLoop: 0 }, revision, prototype).results.has('delay')).toBe(false);
  });
});

describe('the picture of the draws', () => {
  it('has all draws but the farthest thousandth in its bins', () => {
    const { bins, mean } = figure('largest_lean');
    const total = bins.shares.reduce((sum, share) => sum + share, 0);
    expect(total).toBeGreaterThan(0.998);
    expect(total).toBeLessThanOrEqual(1);
    const centre = bins.shares.reduce(
      (sum, share, i) => sum + share * (bins.from + (i + 0.5) * bins.width),
      0,
    );
    expect(centre / total).toBeCloseTo(mean, 3);
  });

  it('of a margin has capability and demand in the unit of the margin', () => {
    const { capability, demand, figures } = margin('rotor-strength');
    expect(figures).toEqual({ unit: 'Pa', display: 'MPa' });
    expect(capability.from).toBeGreaterThan(2e8);
    expect(demand.from).toBeLessThan(capability.from);
    expect(margin('lean').demand).toEqual({ from: (5 * Math.PI) / 180, width: 0, shares: [1] });
  });
});

describe('what cannot be drawn', () => {
  const certain = <T>(value: T): T => {
    if (typeof value !== 'object' || value === null) return value;
    if ('u' in value) return { ...value, u: 0 };
    return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, certain(member)])) as T;
  };

  it('says that there is nothing to draw where no input has an uncertainty', () => {
    const drawn = draw({}, certain(withoutLoop), certain(asked));
    expect(drawn.results.size).toBe(9);
    for (const result of drawn.results.values()) {
      expect(result).toMatchObject({ ok: false, problem: { code: 'draws.nothing' } });
    }
  });

  it('says so of one margin, and draws the others', () => {
    const known = certain(withoutLoop.pack);
    const drawn = draw({}, withValue(withoutLoop, 'pack', known));
    expect(drawn.results.get('run-time')).toMatchObject({ ok: false, problem: { code: 'draws.nothing' } });
    expect(drawn.results.get('lean')).toMatchObject({ ok: true });
  });

  it('says what is missing, as the margin does', () => {
    const drawn = draw({}, withValue(withoutLoop, 'pack/capacity', undefined));
    expect(drawn.results.get('run-time')).toMatchObject({
      ok: false,
      problem: { code: 'calculation.missing' },
    });
  });

  it('says why where no draw has a value', () => {
    const stiff = withValue(withoutLoop, 'gimbal/friction', measured(-1, 0.001));
    const drawn = draw({ names: ['slow_toppling_time'] }, stiff).results.get('slow_toppling_time');
    expect(drawn).toMatchObject({ ok: false, problem: { code: 'calculation.out-of-domain' } });
  });

  it('does not know a name that is none', () => {
    expect(draw({ names: ['lift'] }).results.get('lift')).toMatchObject({
      ok: false,
      problem: { code: 'draws.unknown', figures: { name: 'lift' } },
    });
  });

  it.each([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 60])('refuses the seed %s', (seed) => {
    expect(refusal(monteCarlo(asked, withoutLoop, { seed, digits: 1 }))).toBe('draws.bad-seed');
  });

  it.each([0, 3, 1.5, Number.NaN])('refuses %s digits', (digits) => {
    expect(refusal(monteCarlo(asked, withoutLoop, { seed: 1, digits }))).toBe('draws.bad-digits');
  });

  it.each([-0.001, Number.NaN, Number.POSITIVE_INFINITY])(
    'refuses an uncertainty of %s and names the fact',
    (u) => {
      const drawn = monteCarlo(asked, withValue(withoutLoop, 'parts/tray/mass', measured(0.107, u)), {
        seed: 1,
        digits: 1,
      });
      expect(drawn).toMatchObject({
        ok: false,
        problem: { code: 'calculation.bad-uncertainty', figures: { name: 'mass of Tray' } },
      });
    },
  );
});
