/** Where the ballast stands: on an arm that swings about a fore-and-aft pivot, or on a slide across the vehicle. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

export interface BallastPosition {
  /** e, m, across the vehicle from its centre line, counted to the side that the arm swings to. */
  readonly offset: number;
  /** z_b, m above the ground line. */
  readonly height: number;
}

/** +1 where the arm stands up from its pivot, −1 where it hangs. */
export function requireDirection(direction: number): void {
  requireFinite('direction of the arm', direction);
  if (direction !== 1 && direction !== -1) {
    throw new DomainError('direction of the arm', direction, 'it has to be 1 (upright) or −1 (hanging)');
  }
}

/**
 * Position of a ballast on an arm, in the vehicle's own frame.
 *
 *   e = L sin θ,   z_b = h_p + d L cos θ
 *
 * @param pivotHeight  h_p, m above the ground line, on the centre line
 * @param armLength    L, m, pivot to centre of gravity of the ballast, more than 0
 * @param direction    d, +1 upright, −1 hanging
 * @param angle        θ, rad from the centre line, within ±π/2; the end of the travel for the limits, 0 for the
 *                     height in the mass table
 * @throws DomainError  outside these ranges
 * Source: geometry.
 */
export function armPosition(arm: {
  readonly pivotHeight: number;
  readonly armLength: number;
  readonly direction: number;
  readonly angle: number;
}): BallastPosition {
  requireFinite('pivot height', arm.pivotHeight, 'm');
  requirePositive('arm length', arm.armLength, 'm');
  requireDirection(arm.direction);
  requireBetween('arm angle', arm.angle, -Math.PI / 2, Math.PI / 2, 'rad');
  return {
    offset: arm.armLength * Math.sin(arm.angle),
    height: arm.pivotHeight + arm.direction * arm.armLength * Math.cos(arm.angle),
  };
}

/**
 * Position of a ballast on a slide across the vehicle, in the vehicle's own frame.
 *
 *   e = s,   z_b = h_s
 *
 * @param slideHeight  h_s, m above the ground line
 * @param travel       s, m from the centre line, not negative; 0 for the height in the mass table
 * @throws DomainError  for a negative travel or a value that is not a number
 * Source: geometry.
 */
export function slidePosition(slide: {
  readonly slideHeight: number;
  readonly travel: number;
}): BallastPosition {
  requireFinite('slide height', slide.slideHeight, 'm');
  requireNotNegative('slide travel', slide.travel, 'm');
  return { offset: slide.travel, height: slide.slideHeight };
}

const outputs = {
  offset: { symbol: 'e', unit: 'm', meaning: 'offset of the ballast from the centre line' },
  height: { symbol: 'z_b', unit: 'm', meaning: 'height of the ballast above the ground line' },
} as const;

export const ballastPositionCalculations: readonly Calculation[] = [
  calculation({
    id: 'ballast.arm-position',
    title: 'Position of a ballast on an arm',
    equation: String.raw`e = L \sin\theta, \qquad z_b = h_p + d\, L \cos\theta`,
    inputs: {
      pivotHeight: { symbol: 'h_p', unit: 'm', meaning: 'height of the arm’s pivot above the ground line' },
      armLength: { symbol: 'L', unit: 'm', meaning: 'arm length, pivot to centre of gravity of the ballast' },
      direction: { symbol: 'd', unit: '1', meaning: 'direction of the arm, 1 upright, −1 hanging' },
      angle: { symbol: String.raw`\theta`, unit: 'rad', meaning: 'angle of the arm from the centre line' },
    },
    outputs,
    validity: 'Stiff arm on a fore-and-aft pivot on the centre line, no play; angle within ±90°.',
    source: 'Geometry of the arm',
    compute: armPosition,
    example: { pivotHeight: 0.2, armLength: 0.115, direction: 1, angle: Math.PI / 4 },
    related: ['ballast.slide-position', 'ballast.largest-lean'],
  }),
  calculation({
    id: 'ballast.slide-position',
    title: 'Position of a ballast on a slide',
    equation: String.raw`e = s, \qquad z_b = h_s`,
    inputs: {
      slideHeight: {
        symbol: 'h_s',
        unit: 'm',
        meaning: 'height of the ballast on its slide above the ground line',
      },
      travel: { symbol: 's', unit: 'm', meaning: 'travel of the slide to one side' },
    },
    outputs,
    validity: 'Straight slide square to the centre plane of the vehicle.',
    source: 'Geometry of the slide',
    compute: slidePosition,
    example: { slideHeight: 0.08, travel: 0.06 },
    related: ['ballast.arm-position', 'ballast.largest-lean'],
  }),
];
