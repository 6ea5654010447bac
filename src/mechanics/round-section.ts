/** Round sections, solid or bored: what shafts, arms and axles share. */
import { DomainError, requireNotNegative, requirePositive } from './domain.ts';

/** A bore that leaves a wall; 0 is a solid bar. */
export function requireHollow(what: string, diameter: number, bore: number): void {
  requirePositive(`diameter of the ${what}`, diameter, 'm');
  requireNotNegative(`bore of the ${what}`, bore, 'm');
  if (bore >= diameter) {
    const requirement = `it has to be less than the diameter, ${diameter} m`;
    throw new DomainError(`bore of the ${what}`, bore, requirement, 'm');
  }
}

/** Second moment of area about a diameter, J = π (D⁴ − d⁴)/64, m⁴; about the axis it is twice as much. */
export function secondMoment(diameter: number, bore: number): number {
  return (Math.PI * (diameter ** 2 + bore ** 2) * (diameter ** 2 - bore ** 2)) / 64;
}
