/**
 * How far the balance loop is from losing its balance: every gain scaled together, up and down; more delay; the
 * distance to the critical point. All on the exact sampled model.
 */
import { type BalanceLoop, closedLoopMatrix, type SampledLoop } from './balance-loop.ts';
import { type ClosedLoopPoles, closedLoopPoles } from './closed-loop-poles.ts';
import { type DelayMargin, delayMargin } from './delay-margin.ts';
import { eigenvalues } from './eigenvalues.ts';
import { frequencySweep } from './frequency-sweep.ts';
import type { NeutralMode } from './linear-plant.ts';
import {
  type GainMargins,
  gainMargins,
  type PeakSensitivity,
  type PhaseMargin,
  peakSensitivity,
  phaseMargin,
} from './nyquist.ts';

export interface StableLoop extends ClosedLoopPoles, GainMargins {
  readonly stable: true;
  readonly neutralModes: readonly NeutralMode[];
  readonly phaseMargin: PhaseMargin;
  readonly delayMargin: DelayMargin;
  readonly peakSensitivity: PeakSensitivity;
}

/** A loop that does not balance: there is nothing to have a margin of. */
export interface UnstableLoop extends ClosedLoopPoles {
  readonly stable: false;
  readonly neutralModes: readonly NeutralMode[];
}

export type LoopMargins = StableLoop | UnstableLoop;

/**
 * Closed-loop poles and margins of a balance loop.
 *
 * An unstable loop is a value, not an error. Neutral modes (linear-plant.ts) are left out of the poles and named.
 * Source: Nyquist criterion on the unit circle; a loop that is stable as it stands loses its stability where
 * κ L(e^{jθ}) e^{−jω δ} first passes −1.
 */
export function loopMargins(loop: BalanceLoop): LoopMargins {
  const poles = closedLoopPoles(loop, loop.controller.sampleTime);
  const { neutralModes } = loop.plant;
  if (poles.spectralRadius >= 1) return { stable: false, neutralModes, ...poles };
  const sweep = frequencySweep(
    loop,
    eigenvalues(loop.sampled.transition, loop.sampled.order),
    poles.modes.map(({ z }) => z),
  );
  return {
    stable: true,
    neutralModes,
    ...poles,
    ...gainMargins(sweep),
    phaseMargin: phaseMargin(sweep),
    delayMargin: delayMargin(sweep, loop.plant, loop.controller.delay),
    peakSensitivity: peakSensitivity(sweep),
  };
}

/** Largest modulus of the closed-loop poles: below 1 where the loop balances. */
export function spectralRadius(loop: SampledLoop): number {
  const { matrix, order } = closedLoopMatrix(loop);
  return eigenvalues(matrix, order).reduce((largest, { re, im }) => Math.max(largest, Math.hypot(re, im)), 0);
}
