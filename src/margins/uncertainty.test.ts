/**
 * First-order propagation through the whole chain against Monte Carlo (JCGM 101:2008): every fact is drawn anew from a
 * normal distribution, every margin assessed with the drawn facts, and the spread of the margins compared with their
 * stated uncertainty. Where one weighing enters a margin by several ways, only a chain that keeps account of it agrees.
 */
import { describe, expect, it } from 'vitest';
import { measured, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import { isKnown, type Prototype, type QuantityField, type Revision } from '../notebook/index.ts';
import { standardUncertainty } from '../quantity/index.ts';
import { assess } from './assess.ts';

/** Uniform draws on (0, 1): a linear congruential generator with the multiplier of Knuth's MMIX, upper bits taken. */
function uniformDraws(seed: bigint): () => number {
  let state = seed;
  return () => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffff_ffff_ffff_ffffn;
    return (Number(state >> 11n) + 0.5) / 2 ** 53;
  };
}

/** Normal draws by the transformation of Box and Muller. */
function normalDraws(seed: bigint): () => number {
  const uniform = uniformDraws(seed);
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** The record with every quantity drawn anew, and stated as exact. */
function drawn<T>(value: T, normal: () => number): T {
  if (typeof value !== 'object' || value === null) return value;
  if ('si' in value && isKnown(value as unknown as QuantityField)) {
    const { si, u } = value as unknown as { si: number; u: number };
    return { ...value, si: si + u * normal(), u: 0 };
  }
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, drawn(member, normal)])) as T;
}

function safetyOf(on: Prototype, held: Revision, id: string): { readonly value: number; readonly u: number } {
  const margin = assess(on, held).margins.find((candidate) => candidate.id === id);
  if (!margin || margin.verdict === 'unknown') throw new Error(`no ${id}`);
  return { value: margin.marginOfSafety.value, u: standardUncertainty(margin.marginOfSafety) };
}

const DRAWS = 2000;

/** A loop is not wanted here: its margins are far from linear in these uncertainties. */
const withoutLoop = withValue(revision, 'loop', undefined);
const asked: Prototype = {
  ...prototype,
  requirements: withValue(
    withValue(prototype.requirements, 'gainMargin', undefined),
    'delayMargin',
    undefined,
  ),
};

describe('the uncertainty of a margin', () => {
  const normal = normalDraws(20250301n);
  const spreads = new Map<string, number[]>();
  for (let draw = 0; draw < DRAWS; draw++) {
    const assessed = assess(drawn(asked, normal), drawn(withoutLoop, normal));
    for (const margin of assessed.margins) {
      if (margin.verdict === 'unknown') continue;
      const values = spreads.get(margin.id) ?? [];
      values.push(margin.marginOfSafety.value);
      spreads.set(margin.id, values);
    }
  }

  it.each([
    'lean',
    'lateral',
    'turn',
    'cross-slope',
    'rotor-strength',
    'gimbal-time',
    'actuator',
    'pack-current',
    'run-time',
  ])('of %s is the spread over random draws of every fact', (id) => {
    const values = spreads.get(id) ?? [];
    expect(values.length).toBe(DRAWS);
    const mean = values.reduce((sum, value) => sum + value, 0) / DRAWS;
    const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (DRAWS - 1));
    const stated = safetyOf(asked, withoutLoop, id);
    // a standard deviation from n draws scatters by 1/√(2n), 1.1 %; four times that, and 2 % for second-order terms
    expect(Math.abs(spread / stated.u - 1)).toBeLessThan(4 / Math.sqrt(2 * DRAWS) + 0.02);
    // and its mean by u/√n, with u²-terms of the quotient besides
    expect(Math.abs(mean - stated.value)).toBeLessThan(stated.u * (4 / Math.sqrt(DRAWS) + 0.1));
  });

  it('of a figure that one weighing enters twice is not that of independent inputs', () => {
    const heavy = withValue(withoutLoop, 'parts/ballast/mass', measured(0.41, 0.04));
    const assessed = assess(asked, heavy);
    const u = (name: string): number => {
      const result = assessed.figures.get(name)?.result;
      return result?.ok ? standardUncertainty(result.value) / result.value.value : Number.NaN;
    };
    // the moment that is needed depends on the ballast's mass twice over, by its weight and by the lean that it holds
    const dependent = u('actuator_moment_needed');
    const asIfIndependent = Math.hypot(u('ballast_mass'), u('largest_lean'));
    expect(Math.abs(dependent / asIfIndependent - 1)).toBeGreaterThan(0.02);
  });
});

describe('the uncertainty of the loop’s margins', () => {
  it('is the spread over random draws, where the draws are close enough together to be linear', () => {
    const normal = normalDraws(7n);
    const close = shrunk(revision, 0.05);
    const draws = 300;
    const values = Array.from(
      { length: draws },
      () => safetyOf(prototype, drawn(close, normal), 'delay').value,
    );
    const mean = values.reduce((sum, value) => sum + value, 0) / draws;
    const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (draws - 1));
    const stated = safetyOf(prototype, close, 'delay').u;
    expect(Math.abs(spread / stated - 1)).toBeLessThan(4 / Math.sqrt(2 * draws) + 0.02);
  });
});

/** Every uncertainty of the record made smaller. */
function shrunk<T>(value: T, factor: number): T {
  if (typeof value !== 'object' || value === null) return value;
  if ('u' in value && typeof value.u === 'number') return { ...value, u: value.u * factor };
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, shrunk(member, factor)])) as T;
}
