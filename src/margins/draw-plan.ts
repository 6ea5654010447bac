/**
 * The wiring laid out for random draws: the same calculations on plain numbers, in order, without propagation. What
 * does not depend on anything that is drawn is worked out once; a figure that two others share is worked out once a
 * draw, so that correlations look after themselves.
 */
import { type RandomNumbers, randomNumbers } from '../control/index.ts';
import { type Calculation, DomainError } from '../mechanics/index.ts';
import { deviation, type Problem } from '../quantity/index.ts';
import { type Evaluation, outOfDomain } from './evaluate.ts';
import type { CalculationOrigin, CalculationUse, Origins } from './origin.ts';
import type { RandomInput, RandomInputs } from './random-inputs.ts';
import { registry } from './registry.ts';
import { isCostly } from './remembered.ts';
import { contributionName } from './trace.ts';

export interface DrawPlan {
  /** Takes a figure into the plan, with everything that it is made from, and tells its place among the values. */
  place(name: string): number;
  /** Whether it differs from draw to draw. */
  varies(place: number): boolean;
  /** Draws every input anew and works everything out from them. */
  draw(): void;
  /** Of the last draw, SI; NaN where it left the domain of a calculation. */
  value(place: number): number;
  /** Why the last draw has no value there. */
  problem(place: number): Problem | undefined;
}

/** Everything of one draw by place: a value, or why there is none. */
interface Draw {
  readonly values: number[];
  readonly problems: (Problem | undefined)[];
}

interface Input extends RandomInput {
  readonly place: number;
  readonly random: RandomNumbers;
}

/** One use of a calculation. `given` is filled anew for every draw; a calculation does not keep what it is given. */
interface Step {
  readonly calculation: Calculation;
  readonly title: string;
  readonly given: Record<string, number | number[]>;
  readonly singles: readonly { readonly input: string; readonly place: number }[];
  readonly lists: readonly { readonly list: number[]; readonly places: readonly number[] }[];
  readonly outputs: { readonly output: string; readonly place: number }[];
}

/**
 * @param figure  the figures of the best estimates: what does not vary is taken from them, and an input that they do
 *                without is left to its default
 */
export function drawPlan(
  origins: Origins,
  figure: Evaluation['figure'],
  inputs: RandomInputs,
  seed: number,
): DrawPlan {
  const draw: Draw = { values: [], problems: [] };
  const varying: boolean[] = [];
  const places = new Map<string, number>();
  const drawn: Input[] = [];
  const steps: Step[] = [];
  const stepOf = new Map<CalculationUse, Step | undefined>();

  const add = (value: number, varies: boolean, problem?: Problem): number => {
    draw.values.push(value);
    draw.problems.push(problem);
    return varying.push(varies) - 1;
  };

  const place = (name: string): number => {
    const origin = origins.get(name);
    const key = origin?.kind === 'fact' ? contributionName(origin) : name;
    const known = places.get(key);
    if (known !== undefined) return known;
    const input = origin?.kind === 'fact' ? inputs.get(key) : undefined;
    const output = origin?.kind === 'calculation' ? addOutput(origin) : undefined;
    const found = input ? addInput(input) : (output ?? addConstant(name));
    places.set(key, found);
    return found;
  };

  const addInput = (input: RandomInput): number => {
    const at = add(input.value, true);
    drawn.push({ ...input, place: at, random: randomNumbers(seed, input.stream) });
    return at;
  };

  const addConstant = (name: string): number => {
    const result = figure(name)?.result;
    return result?.ok ? add(result.value.value, false) : add(Number.NaN, false, result?.problem);
  };

  /** Undefined where nothing that the calculation is fed with varies. */
  const addOutput = (origin: CalculationOrigin): number | undefined => {
    const step = stepOf.has(origin.use) ? stepOf.get(origin.use) : stepFor(origin);
    if (step && !stepOf.has(origin.use)) steps.push(step);
    stepOf.set(origin.use, step);
    if (!step) return undefined;
    const at = add(Number.NaN, true);
    step.outputs.push({ output: origin.output, place: at });
    return at;
  };

  const stepFor = ({ use, spec }: CalculationOrigin): Step | undefined => {
    const calculation = registry.get(use.calculation);
    if (!calculation) throw new Error(`“${use.calculation}” is not registered`);
    const given = defaultsOf(calculation);
    const singles: { input: string; place: number }[] = [];
    const lists: { list: number[]; places: number[] }[] = [];
    for (const [input, feed] of Object.entries(use.inputs)) {
      if (typeof feed.from === 'string') {
        const hasDefault = calculation.inputs[input]?.default !== undefined;
        if (feed.optional && hasDefault && !figure(feed.from)?.result.ok) continue;
        singles.push({ input, place: place(feed.from) });
      } else {
        const list: number[] = [];
        given[input] = list;
        lists.push({ list, places: feed.from.map(place) });
      }
    }
    const fed = [...singles.map((each) => each.place), ...lists.flatMap((each) => each.places)];
    if (!fed.some((at) => varying[at])) return undefined;
    const title = Object.keys(calculation.outputs).length === 1 ? spec.title : calculation.title;
    return { calculation, title, given, singles, lists, outputs: [] };
  };

  return {
    place,
    varies: (at) => varying[at] === true,
    draw() {
      for (const { place: at, value, u, shape, random } of drawn) {
        draw.values[at] = value + u * deviation(shape, random);
      }
      for (const step of steps) carryOut(step, draw);
    },
    value: (at) => draw.values[at] ?? Number.NaN,
    problem: (at) => draw.problems[at],
  };
}

function defaultsOf({ inputs }: Calculation): Step['given'] {
  const defaults: Step['given'] = {};
  for (const [name, { default: taken }] of Object.entries(inputs)) {
    if (taken !== undefined) defaults[name] = taken;
  }
  return defaults;
}

function carryOut(step: Step, draw: Draw): void {
  const { calculation, given, outputs } = step;
  const lacking = fill(step, draw.values);
  if (lacking !== undefined) {
    leaveOut(step, draw, draw.problems[lacking]);
    return;
  }
  try {
    const results = calculation.bare(given);
    for (const { output, place } of outputs) {
      const value = results[output] ?? Number.NaN;
      if (!Number.isFinite(value)) calculation.compute(given); // says what is wrong
      draw.values[place] = value;
    }
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    leaveOut(step, draw, outOfDomain(error, step.title));
  }
}

/** Fills in what the calculation is fed with. @returns the place of an input that has no value, if there is one */
function fill({ given, singles, lists }: Step, values: readonly number[]): number | undefined {
  for (const { input, place } of singles) {
    const value = values[place] ?? Number.NaN;
    if (Number.isNaN(value)) return place;
    given[input] = value;
  }
  for (const { list, places } of lists) {
    for (let i = 0; i < places.length; i++) {
      const place = places[i] ?? 0;
      const value = values[place] ?? Number.NaN;
      if (Number.isNaN(value)) return place;
      list[i] = value;
    }
  }
  return undefined;
}

function leaveOut({ outputs }: Step, { values, problems }: Draw, problem: Problem | undefined): void {
  for (const { place } of outputs) {
    values[place] = Number.NaN;
    problems[place] = problem;
  }
}

/** Whether a figure is made by a calculation that takes milliseconds, itself or further back. */
export function isCostlyFigure(origins: Origins, name: string): boolean {
  const seen = new Set<string>();
  const visit = (at: string): boolean => {
    const origin = origins.get(at);
    if (seen.has(at) || origin?.kind !== 'calculation') return false;
    seen.add(at);
    const feeds = Object.values(origin.use.inputs).flatMap(({ from }) => from);
    return isCostly(origin.use.calculation) || feeds.some(visit);
  };
  return visit(name);
}
