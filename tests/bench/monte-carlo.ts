/**
 * Random draws a second of processor time: of every margin but the loop's, of one, and of the same one written with a
 * library's units (as it would be written in an afternoon), from the same distributions.
 */
import { add, atan, divide, multiply, subtract, type Unit, unit } from 'mathjs';
import { randomNumbers } from '../../src/control/index.ts';
import { monteCarlo } from '../../src/margins/index.ts';
import { isKnown, type QuantityField } from '../../src/notebook/index.ts';
import { deviation } from '../../src/quantity/index.ts';
import { readDemoState } from '../demo-state.ts';

const { state } = readDemoState();
const prototype = Object.values(state.prototype)[0];
const revision = Object.values(state.revision).at(-1);
if (!prototype || !revision || revision.ballast?.kind !== 'slide')
  throw new Error('the demo has no revision on a slide');
const { ballast, parts } = revision;
const { leanToRecover } = prototype.requirements;

interface Timed {
  readonly draws: number;
  /** Of the margin of safety. */
  readonly mean: number;
}

/** The second of two runs, by processor time, so that what else runs on the machine does not count. */
function timed(what: string, run: () => Timed): number {
  run();
  const before = process.cpuUsage();
  const { draws, mean } = run();
  const { user, system } = process.cpuUsage(before);
  const rate = draws / ((user + system) / 1e6);
  console.log(`${what}: ${Math.round(rate)} draws a second (${draws} draws, mean MS ${mean.toFixed(4)})`);
  return rate;
}

const ours = (names: readonly string[] | undefined, most: number) => (): Timed => {
  if (!prototype || !revision) throw new Error('nothing to draw');
  const drawn = monteCarlo(prototype, revision, {
    seed: 1,
    digits: 2,
    most,
    mostOfLoop: 0,
    ...(names ? { names } : {}),
  });
  if (!drawn.ok) throw new Error(drawn.problem.code);
  const [first] = drawn.value.results.values();
  if (!first?.ok) throw new Error('nothing was drawn');
  return first.value;
};

/** Lean to recover from, in units all the way. The demo states bounds, so that every fact is drawn evenly. */
const naive = (draws: number) => (): Timed => {
  const random = randomNumbers(1);
  const drawn = (field: QuantityField | undefined, of: string): Unit => {
    if (!isKnown(field)) throw new Error('a fact is missing');
    return unit(field.si + field.u * deviation('rectangular', random), of);
  };
  let sum = 0;
  for (let i = 0; i < draws; i++) {
    let moment = unit(0, 'kg m');
    for (const part of Object.values(parts)) {
      if (part.role === 'ballast') continue;
      moment = add(moment, multiply(drawn(part.mass, 'kg'), drawn(part.z, 'm')) as Unit);
    }
    const weight = drawn(Object.values(parts).find(({ role }) => role === 'ballast')?.mass, 'kg');
    const righting = multiply(weight, drawn(ballast.travel, 'm')) as Unit;
    const total = add(moment, multiply(weight, drawn(ballast.height, 'm')) as Unit);
    const lean = unit(atan(divide(righting, total) as unknown as number), 'rad');
    const safety = divide(subtract(lean, drawn(leanToRecover, 'rad')), drawn(leanToRecover, 'rad'));
    sum += safety as unknown as number;
  }
  return { draws, mean: sum / draws };
};

timed('every margin but the loop’s', ours(undefined, 300_000));
timed('time to the gimbal stop', ours(['gimbal-time'], 300_000));
const lean = timed('lean to recover from', ours(['lean'], 1_000_000));
const peer = timed('the same with a library’s units', naive(10_000));
console.log(`ratio ${(lean / peer).toFixed(0)}`);
timed('delay margin of the loop', () => {
  if (!prototype || !revision) throw new Error('nothing to draw');
  const drawn = monteCarlo(prototype, revision, { seed: 1, digits: 1, names: ['delay'], mostOfLoop: 200 });
  const result = drawn.ok ? drawn.value.results.get('delay') : undefined;
  if (!result?.ok) throw new Error('nothing was drawn');
  return result.value;
});
