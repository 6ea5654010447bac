/** One calculation by its id, with uncertainties: for the command line, which has no revision to draw on. */
import { type Calculation, DomainError, type SymbolSpec } from '../mechanics/index.ts';
import {
  bad,
  good,
  independent,
  type Problem,
  propagate,
  type Result,
  standardUncertainty,
  type Uncertain,
} from '../quantity/index.ts';
import { outOfDomain } from './evaluate.ts';
import { registry } from './registry.ts';

/** In SI. */
export interface StatedValue {
  readonly value: number;
  readonly standardUncertainty: number;
}
type Single = number | StatedValue;
export type CalculationInput = Single | readonly Single[];

export interface CalculationOutput extends StatedValue {
  readonly unit: string;
  readonly meaning: string;
  /** Input, `masses[2]` for one of a list (counted from 0) → its signed share (∂y/∂x)·u(x), in `unit`. */
  readonly contributions: ReadonlyMap<string, number>;
}

/**
 * @param id      of the calculation, `ballast.largest-lean`
 * @param inputs  by the names of the calculation, SI; those with a default may be left out
 * @returns       every output with its standard uncertainty; or what is wrong with the inputs
 */
export function runCalculation(
  id: string,
  inputs: Readonly<Record<string, CalculationInput>>,
): Result<Readonly<Record<string, CalculationOutput>>> {
  const calculation = registry.get(id);
  if (!calculation) return bad('calculation.unknown', id, { id });
  const problem = unfit(calculation, inputs);
  if (problem) return { ok: false, problem };
  const uncertain: Record<string, Uncertain | readonly Uncertain[]> = {};
  for (const [name, input] of Object.entries(inputs)) {
    uncertain[name] = isList(input)
      ? input.map((single, index) => stated(`${name}[${index}]`, single))
      : stated(name, input);
  }
  try {
    const values = propagate(calculation.compute, uncertain, calculation.partials);
    return good(
      Object.fromEntries(
        Object.entries(calculation.outputs).map(([name, spec]) => [name, output(spec, values[name])]),
      ),
    );
  } catch (error) {
    if (error instanceof DomainError) return { ok: false, problem: outOfDomain(error, id) };
    throw error;
  }
}

function output(spec: SymbolSpec, result: Uncertain | undefined): CalculationOutput {
  if (!result) throw new Error(`no ${spec.meaning} was computed`);
  return {
    value: result.value,
    standardUncertainty: standardUncertainty(result),
    unit: spec.unit,
    meaning: spec.meaning,
    contributions: result.contributions,
  };
}

function unfit(
  { id, inputs: specs }: Calculation,
  inputs: Readonly<Record<string, CalculationInput>>,
): Problem | undefined {
  for (const name of Object.keys(inputs)) {
    if (Object.hasOwn(specs, name)) continue;
    const names = Object.keys(specs).join(', ');
    return { code: 'calculation.unknown-input', place: id, figures: { id, name, names } };
  }
  for (const [name, spec] of Object.entries(specs)) {
    const input = Object.hasOwn(inputs, name) ? inputs[name] : undefined;
    if (input === undefined) {
      if (spec.default !== undefined) continue;
      const figures = { name, meaning: spec.meaning, unit: spec.unit };
      return { code: 'calculation.missing-input', place: id, figures };
    }
    if (isList(input) !== (spec.list === true)) {
      const code = spec.list ? 'calculation.list-wanted' : 'calculation.single-wanted';
      return { code, place: id, figures: { name } };
    }
    for (const single of isList(input) ? input : [input]) {
      const wrong = unfitNumber(id, name, single);
      if (wrong) return wrong;
    }
  }
  return undefined;
}

function unfitNumber(id: string, name: string, single: Single): Problem | undefined {
  const { value, standardUncertainty: u } = statedValue(single);
  if (!Number.isFinite(value)) return { code: 'calculation.not-finite', place: id, figures: { name, value } };
  if (Number.isFinite(u) && u >= 0) return undefined;
  return { code: 'calculation.bad-uncertainty', place: id, figures: { name, value: u } };
}

function stated(name: string, single: Single): Uncertain {
  const { value, standardUncertainty: u } = statedValue(single);
  return independent(name, value, u);
}

function statedValue(single: Single): StatedValue {
  return typeof single === 'number' ? { value: single, standardUncertainty: 0 } : single;
}

function isList(input: CalculationInput): input is readonly Single[] {
  return Array.isArray(input);
}
