/**
 * Every calculation holds in any system of units: with all inputs expressed in other units of length, mass, time and
 * current, each output changes as its own unit says. An equation with a wrong power or a forgotten factor does not.
 *
 * Where standard gravity enters, it stands in the code as a number of m/s², so the units of length and time have to change
 * together such that g stays: length by λ², time by λ. Everything else has to hold for each unit on its own, and a
 * calculation in which it does not is one that uses g.
 */
import { describe, expect, it } from 'vitest';
import { type Calculation, DomainError, mechanicsCalculations } from '../src/mechanics/index.ts';
import { type Dimension, dimension, parseUnit } from '../src/quantity/index.ts';

type Scales = Readonly<Record<'kg' | 'm' | 's' | 'A', number>>;
type UnitOf = (spec: Calculation['inputs'][string]) => string;

const siUnit: UnitOf = ({ unit }) => unit;
const unitForSlide: UnitOf = ({ unit, slideUnit }) => slideUnit ?? unit;

const usesGravity = [
  'mass.toppling',
  'swing.period',
  'swing.inertia',
  'swing.two-pivots',
  'swing.distance',
  'swing.bifilar',
  'swing.trifilar',
  'ballast.righting-moment',
  'ballast.largest-lean-by-hand',
  'ballast.wrong-way-zero',
  'ballast.arm-moment-rate',
  'ballast.slide-moment-rate',
  'ballast.lateral-limit',
  'turn.lean',
  'turn.lean-with-momentum',
  'turn.friction-needed',
  'turn.slide-speed',
  'turn.tip-over',
  'shaft.rayleigh',
  'gyro.bearing-load',
  'gyro.heavy-top',
  'actuator.arm-holding-moment',
  'actuator.slide-holding-force',
  'actuator.arm-moving-moment',
  'actuator.slide-moving-force',
  'load.axles',
  'load.wheel-side',
  'load.arm-root',
  'load.drop',
  'load.stop',
];

const independent: Scales = { kg: 1.7, m: 2.3, s: 0.6, A: 3.1 };
const keepingGravity: Scales = { kg: 1.7, m: 1.3 ** 2, s: 1.3, A: 3.1 };

const factor = ({ kg, m, s, A }: Dimension, by: Scales): number =>
  by.kg ** kg * by.m ** m * by.s ** s * by.A ** A;

/**
 * Largest relative difference between the outputs in the other units and the outputs turned into the other units;
 * infinite where the other units make the same case one that is refused.
 */
function parting(calculation: Calculation, by: Scales, unitOf: UnitOf = siUnit): number {
  const { inputs, outputs, example } = calculation;
  const other = Object.fromEntries(
    Object.entries(inputs).map(([name, spec]) => {
      const scale = factor(dimension(unitOf(spec)), by);
      const value = example[name] ?? spec.default ?? Number.NaN;
      return [name, typeof value === 'number' ? value * scale : value.map((item) => item * scale)];
    }),
  );
  const here = calculation.compute(example);
  const there = allowed(calculation, other);
  if (there === undefined) return Number.POSITIVE_INFINITY;
  const differences = Object.entries(outputs).map(([name, spec]) => {
    const expected = (here[name] ?? Number.NaN) * factor(dimension(unitOf(spec)), by);
    return Math.abs((there[name] ?? Number.NaN) / expected - 1);
  });
  return Math.max(...differences);
}

function allowed(calculation: Calculation, inputs: Calculation['example']) {
  try {
    return calculation.compute(inputs);
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

describe('dimensions', () => {
  it.each(mechanicsCalculations)(
    'every unit of $id is an SI unit that can be read',
    ({ inputs, outputs }) => {
      for (const { unit, slideUnit } of [...Object.values(inputs), ...Object.values(outputs)]) {
        for (const text of slideUnit === undefined ? [unit] : [unit, slideUnit]) {
          const parsed = parseUnit(text);
          expect(parsed.ok && parsed.value.factor).toBe(1);
        }
      }
    },
  );

  it.each(mechanicsCalculations)('$id holds in other units that keep g', (calculation) => {
    expect(parting(calculation, keepingGravity)).toBeLessThan(1e-12);
  });

  it.each(mechanicsCalculations.filter(({ id }) => !usesGravity.includes(id)))(
    '$id holds in any other units',
    (calculation) => {
      expect(parting(calculation, independent)).toBeLessThan(1e-12);
    },
  );

  it.each(mechanicsCalculations.filter(({ id }) => usesGravity.includes(id)))(
    '$id uses g, and so does not hold in units that change it',
    (calculation) => {
      expect(parting(calculation, independent)).toBeGreaterThan(1e-3);
    },
  );

  it('a stroke is timed alike for an arm in radians and a slide in metres', () => {
    const stroke = mechanicsCalculations.find(({ id }) => id === 'actuator.stop-to-stop');
    expect(stroke && parting(stroke, independent, unitForSlide)).toBeLessThan(1e-12);
  });
});
