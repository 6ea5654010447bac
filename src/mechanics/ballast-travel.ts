/**
 * The ballast over the whole of its travel: an arm whose pivot does not lie along the vehicle, the arm angle that holds
 * most lean where that is not the end of the travel, and a payload that is not on the centre line.
 */
import { type BallastPosition, requireDirection } from './ballast-position.ts';
import { type Calculation, calculation } from './calculation.ts';
import { requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

interface TiltedArm {
  /** h_p, m above the ground line, on the centre line. */
  readonly pivotHeight: number;
  /** L, m, pivot to centre of gravity of the ballast, more than 0. */
  readonly armLength: number;
  /** d, +1 upright, −1 hanging. */
  readonly direction: number;
  /** γ, rad by which the pivot is tilted from fore-and-aft towards upright, from 0 to π/2; 0 where left out. */
  readonly pivotTilt?: number;
}

function requireArm({ pivotHeight, armLength, direction, pivotTilt = 0 }: TiltedArm): void {
  requireFinite('pivot height', pivotHeight, 'm');
  requirePositive('arm length', armLength, 'm');
  requireDirection(direction);
  requireBetween('tilt of the pivot', pivotTilt, 0, Math.PI / 2, 'rad');
}

/**
 * Position of a ballast on an arm whose pivot is tilted from fore-and-aft towards upright.
 *
 *   e = L sin θ,   z_b = h_p + d L cos θ cos γ,   x_b = x_p + L cos θ sin γ
 *
 * With γ = 0 it is the arm of `armPosition`; with γ = 90° the arm sweeps level like a boom, and its ballast neither rises
 * nor falls. In between, the ballast moves along the vehicle as well.
 *
 * @param angle  θ, rad from the centre line, within ±π/2
 * @returns offset e, m; height z_b, m; forward, m ahead of the pivot
 * @throws DomainError  outside these ranges
 * Source: geometry.
 */
export function tiltedArmPosition(
  arm: TiltedArm & { readonly angle: number },
): BallastPosition & { readonly forward: number } {
  requireArm(arm);
  requireBetween('arm angle', arm.angle, -Math.PI / 2, Math.PI / 2, 'rad');
  const { armLength, angle, pivotTilt = 0 } = arm;
  const out = armLength * Math.cos(angle);
  return {
    offset: armLength * Math.sin(angle),
    height: arm.pivotHeight + arm.direction * out * Math.cos(pivotTilt),
    forward: out * Math.sin(pivotTilt),
  };
}

/**
 * Largest lean that an arm holds anywhere in its travel, and the arm angle that holds it.
 *
 *   tan φ(θ) = m_b L sin θ / ( M_p + d m_b L cos γ cos θ ),   M_p = M₀ + m_b h_p
 *   dφ/dθ = 0  at  cos θ* = −d m_b L cos γ / M_p,   θ = min(θ*, θ_m)
 *
 * An upright arm lowers its ballast as it swings out, so that more is always better and θ* lies beyond 90°. A hanging arm
 * lifts it: past θ* the rise costs more than the further offset brings.
 *
 * @param ballastMass         m_b, kg, not negative
 * @param travel              θ_m, rad to one side, from 0 to π/2
 * @param firstMomentWithout  M₀, kg·m, of the vehicle without the ballast about the ground line
 * @returns lean φ, rad, in [0, π/2); angle θ, rad at which it is held
 * @throws DomainError  outside these ranges, or where the first moment is not positive somewhere in the travel (the
 *                      vehicle hangs there and nothing topples)
 * Source: equilibrium of moments about the ground line, its derivative set to 0.
 */
export function largestLeanOverTravel(
  arm: TiltedArm & {
    readonly ballastMass: number;
    readonly travel: number;
    readonly firstMomentWithout: number;
  },
): { lean: number; angle: number } {
  requireArm(arm);
  const { ballastMass, travel, firstMomentWithout, pivotHeight, armLength, direction, pivotTilt = 0 } = arm;
  requireNotNegative('ballast mass', ballastMass, 'kg');
  requireBetween('arm travel', travel, 0, Math.PI / 2, 'rad');
  requireFinite('first moment without the ballast', firstMomentWithout, 'kg·m');
  const atPivot = firstMomentWithout + ballastMass * pivotHeight;
  const swing = direction * ballastMass * armLength * Math.cos(pivotTilt);
  requirePositive('first moment with the ballast at its pivot', atPivot, 'kg·m');
  requirePositive('first moment with the arm centred', atPivot + swing, 'kg·m');
  const best = Math.acos(Math.max(-swing / atPivot, -1));
  const angle = Math.min(best, travel);
  const firstMoment = atPivot + swing * Math.cos(angle);
  return { lean: Math.atan((ballastMass * armLength * Math.sin(angle)) / firstMoment), angle };
}

/**
 * Largest distance from the centre line at which a payload is balanced, with a lean kept in reserve.
 *
 *   y = [ m_b e − M tan φ_r ] / m_p
 *
 * @param payloadMass    m_p, kg, more than 0
 * @param ballastMass    m_b, kg, not negative
 * @param ballastOffset  e, m, at the end of its travel, not negative
 * @param firstMoment    M, kg·m, of the whole vehicle, ballast at the end of its travel and payload included; 0 if left
 *                       out: no reserve is asked for then
 * @param reserve        φ_r, rad, from 0, less than π/2; 0 if left out
 * @returns y, m; negative where the reserve alone is more than the ballast holds
 * @throws DomainError  outside these ranges
 * Source: equilibrium of moments about the ground line at the lean φ_r.
 */
export function payloadOffset({
  payloadMass,
  ballastMass,
  ballastOffset,
  firstMoment = 0,
  reserve = 0,
}: {
  readonly payloadMass: number;
  readonly ballastMass: number;
  readonly ballastOffset: number;
  readonly firstMoment?: number;
  readonly reserve?: number;
}): number {
  requirePositive('mass of the payload', payloadMass, 'kg');
  requireNotNegative('ballast mass', ballastMass, 'kg');
  requireNotNegative('ballast offset', ballastOffset, 'm');
  requireNotNegative('first moment', firstMoment, 'kg·m');
  requireBetween('reserve for disturbances', reserve, 0, Math.PI / 2, 'rad');
  return (ballastMass * ballastOffset - firstMoment * Math.tan(reserve)) / payloadMass;
}

const arm = {
  pivotHeight: { symbol: 'h_p', unit: 'm', meaning: 'height of the arm’s pivot above the ground line' },
  armLength: { symbol: 'L', unit: 'm', meaning: 'arm length, pivot to centre of gravity of the ballast' },
  direction: { symbol: 'd', unit: '1', meaning: 'direction of the arm, 1 upright, −1 hanging' },
  pivotTilt: {
    symbol: String.raw`\gamma`,
    unit: 'rad',
    meaning: 'tilt of the pivot from fore-and-aft towards upright',
    default: 0,
  },
} as const;
const ballastMass = { symbol: 'm_b', unit: 'kg', meaning: 'mass of the ballast' } as const;

export const ballastTravelCalculations: readonly Calculation[] = [
  calculation({
    id: 'ballast.tilted-arm-position',
    title: 'Position of a ballast on an arm with a tilted pivot',
    equation: String.raw`e = L \sin\theta, \qquad z_b = h_p + d\, L \cos\theta \cos\gamma, \qquad x_b = L \cos\theta \sin\gamma`,
    inputs: {
      ...arm,
      angle: { symbol: String.raw`\theta`, unit: 'rad', meaning: 'angle of the arm from the centre line' },
    },
    outputs: {
      offset: { symbol: 'e', unit: 'm', meaning: 'offset of the ballast from the centre line' },
      height: { symbol: 'z_b', unit: 'm', meaning: 'height of the ballast above the ground line' },
      forward: { symbol: 'x_b', unit: 'm', meaning: 'position of the ballast ahead of the pivot' },
    },
    validity:
      'Stiff arm, pivot on the centre line and in the centre plane; tilt 90° for an arm that sweeps level.',
    source: 'Geometry of the arm',
    compute: tiltedArmPosition,
    example: { pivotHeight: 0.2, armLength: 0.115, direction: 1, pivotTilt: Math.PI / 6, angle: Math.PI / 4 },
    related: ['ballast.arm-position', 'ballast.largest-lean-over-travel'],
  }),
  calculation({
    id: 'ballast.largest-lean-over-travel',
    title: 'Largest lean anywhere in the arm’s travel',
    equation: String.raw`\tan\varphi_{\max} = \frac{m_b\, L \sin\theta}{M_0 + m_b h_p + d\, m_b L \cos\gamma \cos\theta}, \qquad \theta = \min\left( \arccos\frac{-d\, m_b L \cos\gamma}{M_0 + m_b h_p},\; \theta_m \right)`,
    inputs: {
      ballastMass,
      ...arm,
      travel: { symbol: String.raw`\theta_m`, unit: 'rad', meaning: 'travel of the arm to one side' },
      firstMomentWithout: {
        symbol: 'M_0',
        unit: 'kg·m',
        meaning: 'first moment about the ground line without the ballast',
      },
    },
    outputs: {
      lean: { symbol: String.raw`\varphi_{\max}`, unit: 'rad', meaning: 'largest lean that is held' },
      angle: { symbol: String.raw`\theta`, unit: 'rad', meaning: 'arm angle at which it is held' },
    },
    validity:
      'Static, at any size of lean, the rest of the vehicle balanced about its centre plane; for an upright arm the end of the travel always holds most.',
    source: 'Derived: equilibrium of moments about the ground line, its derivative by the arm angle set to 0',
    compute: largestLeanOverTravel,
    example: {
      ballastMass: 0.59,
      pivotHeight: 0.2,
      armLength: 0.115,
      direction: -1,
      pivotTilt: 0,
      travel: 1.4,
      firstMomentWithout: 0.11548,
    },
    related: ['ballast.largest-lean', 'ballast.tilted-arm-position'],
  }),
  calculation({
    id: 'ballast.payload-offset',
    title: 'Largest payload offset',
    equation: String.raw`y = \frac{m_b\, e - M \tan\varphi_r}{m_p}`,
    inputs: {
      payloadMass: { symbol: 'm_p', unit: 'kg', meaning: 'mass of the payload' },
      ballastMass,
      ballastOffset: {
        symbol: 'e',
        unit: 'm',
        meaning: 'offset of the ballast from the centre line at the end of its travel',
      },
      firstMoment: {
        symbol: 'M',
        unit: 'kg·m',
        meaning: 'first moment of the whole vehicle, payload and ballast at the end of its travel included',
        default: 0,
      },
      reserve: {
        symbol: String.raw`\varphi_r`,
        unit: 'rad',
        meaning: 'lean kept in reserve for disturbances',
        default: 0,
      },
    },
    outputs: {
      offset: {
        symbol: 'y',
        unit: 'm',
        meaning: 'largest distance of the payload from the centre line',
      },
    },
    validity:
      'Vehicle held still, the ballast then at the end of its travel; negative where the reserve alone is more than is held.',
    source: 'Derived: equilibrium of moments about the ground line',
    compute: (inputs) => ({ offset: payloadOffset(inputs) }),
    example: {
      payloadMass: 0.25,
      ballastMass: 0.59,
      ballastOffset: 0.0813173,
      firstMoment: 0.31,
      reserve: 0.0349,
    },
    related: ['ballast.largest-lean', 'ballast.cross-slope'],
  }),
];
