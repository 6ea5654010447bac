/**
 * What is known about an input as a distribution, for drawing it at random.
 *
 * Source: JCGM 101:2008 6.4.2 (limits are known: rectangular), 6.4.7 (a best estimate and its standard uncertainty are
 * known: normal).
 */
import type { StatedAs } from './standard.ts';

export type DistributionShape = 'normal' | 'rectangular';

/** A source of random numbers, as `control/` has one that is the same on every machine. */
export interface RandomSource {
  /** Evenly spread in [0, 1). */
  even(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
}

/** A bound ±a and a display that steps by d are limits; a standard uncertainty comes with no limit. */
export function shapeOf(statedAs: StatedAs): DistributionShape {
  return statedAs === 'standard' ? 'normal' : 'rectangular';
}

/** The next deviation from the best estimate, in standard uncertainties: mean 0, standard deviation 1. */
export function deviation(shape: DistributionShape, random: RandomSource): number {
  return shape === 'normal' ? random.normal() : Math.sqrt(3) * (2 * random.even() - 1);
}
