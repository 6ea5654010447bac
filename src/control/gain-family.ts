/**
 * One loop with all the gains that it could have: whatever does not depend on them is worked out once, and what remains
 * for each set of gains is a few sums and an iteration.
 */
import { type BalanceController, type BalanceLoop, commandRows, plantOptions } from './balance-loop.ts';
import { type ClosedLoopPoles, polesOf } from './closed-loop-poles.ts';
import type { Complex } from './complex.ts';
import { discretise, type HeldPlant } from './discretise.ts';
import { hessenbergEigenvalues } from './eigenvalues.ts';
import { type BalanceHardware, type LinearPlant, linearPlant } from './linear-plant.ts';
import { type ReducedLoop, reduceLoop } from './reduced-loop.ts';

export interface Gains {
  readonly leanGain: number;
  readonly rateGain: number;
  readonly gimbalGain: number;
}
export type GainName = keyof Gains;
export const gainNames: readonly GainName[] = ['leanGain', 'rateGain', 'gimbalGain'];

export interface GainFamily {
  readonly hardware: BalanceHardware;
  readonly controller: BalanceController;
  /** Poles in z of the closed loop, in no particular order. */
  poles(gains: Gains): Complex[];
  /** Largest of their moduli. */
  spectralRadius(gains: Gains): number;
  closedLoopPoles(gains: Gains): ClosedLoopPoles;
  /** What the loop is made of with these gains: which signals are read decides which states there are. */
  member(gains: Gains): FamilyMember;
}

export interface FamilyMember {
  readonly plant: LinearPlant;
  readonly sampled: HeldPlant;
  readonly reduced: ReducedLoop;
}

/**
 * The loops of one vehicle and controller, with any gains.
 *
 * @throws DomainError  as `balanceLoop` does
 * Source: the closed loop's matrix is A + b f, with f linear in the gains; reduced-loop.ts.
 */
export function gainFamily({
  hardware,
  controller,
}: Pick<BalanceLoop, 'hardware' | 'controller'>): GainFamily {
  const members = new Map<string, FamilyMember>();
  const work = new Map<number, Float64Array>();

  const member = (gains: Gains): FamilyMember => {
    const { reads } = plantOptions({ ...controller, ...gains });
    const key = reads.join();
    const known = members.get(key);
    if (known) return known;
    const plant = linearPlant(hardware, { reads });
    const sampled = discretise(plant, controller.sampleTime, controller.delay);
    const made = { plant, sampled, reduced: reduce(plant, sampled, controller) };
    members.set(key, made);
    return made;
  };
  const poles = (gains: Gains): Complex[] => {
    const { reduced } = member(gains);
    const { order, matrix, scale, rows } = reduced;
    const closed = work.get(order) ?? new Float64Array(order * order);
    work.set(order, closed);
    closed.set(matrix);
    gainNames.forEach((name, i) => {
      const share = scale * gains[name];
      if (share === 0) return;
      const row = rows[i];
      for (let j = 0; j < order; j++) closed[j] = (closed[j] ?? 0) + share * (row?.[j] ?? 0);
    });
    return hessenbergEigenvalues(closed, order);
  };
  return {
    hardware,
    controller,
    member,
    poles,
    spectralRadius: (gains) =>
      poles(gains).reduce((most, { re, im }) => Math.max(most, Math.hypot(re, im)), 0),
    closedLoopPoles: (gains) => polesOf(poles(gains), controller.sampleTime),
  };
}

/**
 * The open loop over [x(k); u(k−1) … ; lean measured at k−1], the column by which the command enters, and for each gain
 * the row by which it makes the command.
 */
function reduce(plant: LinearPlant, sampled: HeldPlant, controller: BalanceController): ReducedLoop {
  const { order: n, transition, wholeSamples: m, input, inputBefore } = sampled;
  const kept = m + (inputBefore.some((entry) => entry !== 0) ? 1 : 0);
  const differences = controller.rateSource === 'difference of angle';
  const order = n + kept + (differences ? 1 : 0);
  const matrix = new Float64Array(order * order);
  const column = new Float64Array(order);
  for (let i = 0; i < n; i++) {
    matrix.set(transition.subarray(i * n, (i + 1) * n), i * order);
    if (m > 0) matrix[i * order + n + m - 1] = input[i] ?? 0;
    else column[i] = input[i] ?? 0;
    if (kept > m) matrix[i * order + n + m] = inputBefore[i] ?? 0;
  }
  if (kept > 0) column[n] = 1;
  for (let past = 1; past < kept; past++) matrix[(n + past) * order + n + past - 1] = 1;
  if (differences) matrix.set(plant.signals['measured lean'].subarray(0, n), (order - 1) * order);
  const none = { ...controller, leanGain: 0, rateGain: 0, gimbalGain: 0 };
  const rows = gainNames.map((name) => {
    const { now, before } = commandRows(plant.signals, { ...none, [name]: 1 });
    const row = new Float64Array(order);
    row.set(now.subarray(0, n));
    // u takes −(K_d/T_s) × the lean of the sample before
    if (before) row[order - 1] = -1 / controller.sampleTime;
    return row;
  });
  return reduceLoop(matrix, column, rows);
}
