/**
 * Figures and margins by random draws: every fact that carries an uncertainty is drawn from what is known about it, and
 * everything that follows is worked out anew. For results that first order may get wrong, and for the probability that
 * a margin holds.
 *
 * Source: JCGM 101:2008 (propagation of distributions), clause 8 (validation of first-order results); JCGM 106:2012 7.2
 * (conformance probability).
 */
import type { Prototype, Revision } from '../notebook/index.ts';
import { adaptiveDraws, bad, good, type Result } from '../quantity/index.ts';
import { originsOf } from './binding.ts';
import { drawPlan, isCostlyFigure } from './draw-plan.ts';
import { type DrawnResult, type DrawSubject, figureSubject, marginSubject } from './draw-subject.ts';
import { evaluation } from './evaluate.ts';
import { marginSpecsOf } from './margin.ts';
import { randomInputs } from './random-inputs.ts';

export interface RandomDrawOptions {
  /** Whole number, not negative: the same seed draws the same. */
  readonly seed: number;
  /** Significant digits of u to which results are to stand still, 1 or 2. */
  readonly digits: number;
  /** Names of figures, and margins by their id; every margin of the revision where left out. */
  readonly names?: readonly string[];
  /** Draws after which it ends, settled or not. */
  readonly most?: number;
  /** The same for what follows from the loop, which takes milliseconds a draw; 0 leaves that out. */
  readonly mostOfLoop?: number;
  /** Told after every batch how many draws were made. */
  readonly progress?: (draws: number) => void;
}

export interface MonteCarlo {
  readonly seed: number;
  readonly digits: number;
  /** By name, in the order asked for; a problem where there is nothing to draw, or no value to draw it about. */
  readonly results: ReadonlyMap<string, Result<DrawnResult>>;
}

const MOST = 2_000_000;
const MOST_OF_LOOP = 1000;
const BATCH_OF_LOOP = 100;
/** The rule alone would be content with two batches, which may agree by luck. */
const FEWEST_BATCHES = 10;
/** Of the tolerance, so that the draws can confirm a first-order result: JCGM 101:2008 8.2. */
const PART = 1 / 5;

/** @returns a problem for a seed or digits that are none, and for an uncertainty that is negative or no number */
export function monteCarlo(
  prototype: Prototype,
  revision: Revision,
  options: RandomDrawOptions,
): Result<MonteCarlo> {
  const { seed, digits, most = MOST, mostOfLoop = MOST_OF_LOOP } = options;
  if (!(Number.isSafeInteger(seed) && seed >= 0)) return bad('draws.bad-seed', 'random draws', { seed });
  if (digits !== 1 && digits !== 2) return bad('draws.bad-digits', 'random draws', { digits });
  const origins = originsOf(prototype, revision);
  const inputs = randomInputs(origins);
  if (!inputs.ok) return inputs;

  const { figure } = evaluation(origins);
  const specs = new Map(marginSpecsOf(prototype, revision).map((spec) => [spec.id, spec]));
  const names = [...new Set(options.names ?? specs.keys())];
  const costly = new Set(
    names.filter((name) => {
      const spec = specs.get(name);
      return (spec ? [spec.capability, spec.demand] : [name]).some((each) => isCostlyFigure(origins, each));
    }),
  );
  const results = new Map<string, Result<DrawnResult>>();
  let drawn = 0;

  const drawTogether = (together: readonly string[], limits: { most: number; batch?: number }): void => {
    const plan = drawPlan(origins, figure, inputs.value, seed);
    const subjects: DrawSubject[] = [];
    for (const name of together) {
      const spec = specs.get(name);
      const subject = spec ? marginSubject(spec, figure, plan) : figureSubject(name, figure, plan);
      if (subject.ok) subjects.push(subject.value);
      else results.set(name, subject);
    }
    if (subjects.length === 0) return;
    const drawBatch = (into: readonly Float64Array[]): void => {
      const size = into[0]?.length ?? 0;
      for (let i = 0; i < size; i++) {
        plan.draw();
        for (let k = 0; k < subjects.length; k++) {
          const [values, subject] = [into[k], subjects[k]];
          if (values && subject) values[i] = subject.read();
        }
      }
    };
    const rule = { digits, part: PART, fewestBatches: FEWEST_BATCHES, ...limits };
    const told = (draws: number): void => options.progress?.(drawn + draws);
    adaptiveDraws(drawBatch, subjects.length, rule, told).forEach((spread, index) => {
      const subject = subjects[index];
      if (subject) results.set(subject.name, subject.result(spread));
      if (index === 0) drawn += spread.draws;
    });
  };

  drawTogether(
    names.filter((name) => !costly.has(name)),
    { most },
  );
  if (mostOfLoop > 0) drawTogether([...costly], { most: mostOfLoop, batch: BATCH_OF_LOOP });
  const inOrder = names.flatMap((name) => {
    const result = results.get(name);
    return result ? [[name, result] as const] : [];
  });
  return good({ seed, digits, results: new Map(inOrder) });
}
