/** What the ballast can hold at the end of its travel: the moment, and the lean, exactly and as worked by hand. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

/**
 * Righting moment of the ballast, vehicle upright.
 *
 *   T_b = m_b g e
 *
 * @param ballastMass    m_b, kg, not negative
 * @param ballastOffset  e, m from the centre line, not negative; the end of the travel for the largest
 * @returns T_b, N·m about the ground line
 * @throws DomainError  for a negative mass or offset
 * Source: moment of a weight about the ground line.
 */
export function rightingMoment(ballast: {
  readonly ballastMass: number;
  readonly ballastOffset: number;
}): number {
  requireNotNegative('ballast mass', ballast.ballastMass, 'kg');
  requireNotNegative('ballast offset', ballast.ballastOffset, 'm');
  return ballast.ballastMass * standardGravity * ballast.ballastOffset;
}

/**
 * Lean at which the ballast still balances gravity: beyond it the vehicle falls whatever the loop does.
 *
 *   tan φ = m_b e / (M₀ + m_b z_b)
 *
 * In the vehicle's frame gravity has the components g cos φ down and g sin φ to the side of the lean. About the ground
 * line the masses topple with g (M₀ + m_b z_b) sin φ and the ballast, moved to the other side, rights with
 * m_b g e cos φ. No angle is taken as small and g drops out.
 *
 * A hanging arm holds most lean at cos θ = m_b L / (M₀ + m_b h_p). Where its travel goes beyond that angle, more lean
 * is held short of the end; the figure for the end is then on the safe side.
 *
 * @param ballastMass         m_b, kg, not negative
 * @param ballastOffset       e, m from the centre line, not negative
 * @param ballastHeight       z_b, m above the ground line, with the ballast at that offset
 * @param firstMomentWithout  M₀, kg·m, of the vehicle without the ballast about the ground line
 * @returns φ, rad, in [0, π/2)
 * @throws DomainError  where the total first moment is not positive (the vehicle hangs, nothing topples)
 * Source: equilibrium of moments about the ground line.
 */
export function largestLean(vehicle: {
  readonly ballastMass: number;
  readonly ballastOffset: number;
  readonly ballastHeight: number;
  readonly firstMomentWithout: number;
}): number {
  const { ballastMass, ballastOffset, ballastHeight, firstMomentWithout } = vehicle;
  requireNotNegative('ballast mass', ballastMass, 'kg');
  requireNotNegative('ballast offset', ballastOffset, 'm');
  requireFinite('ballast height', ballastHeight, 'm');
  requireFinite('first moment without the ballast', firstMomentWithout, 'kg·m');
  const firstMoment = firstMomentWithout + ballastMass * ballastHeight;
  requirePositive('first moment with the ballast at the end of its travel', firstMoment, 'kg·m');
  return Math.atan((ballastMass * ballastOffset) / firstMoment);
}

/**
 * The same lean as worked by hand, from the moment with the vehicle upright and the centre of gravity of the whole
 * with the ballast centred.
 *
 *   sin φ = T_b / (m g h)
 *
 * It leaves out that the ballast's lever shortens by cos φ and that an arm's ballast drops (or rises) as it swings.
 *
 * @param rightingMoment          T_b, N·m, vehicle upright, not negative
 * @param totalMass               m, kg, ballast included, more than 0
 * @param centreOfGravityHeight   h, m above the ground line, ballast centred, more than 0
 * @returns φ, rad, in [0, π/2]
 * @throws DomainError  where the moment is more than m g h: the hand form has no answer there
 * Source: common practice; equilibrium of moments about the ground line with the ballast's moment taken as constant.
 */
export function largestLeanByHand(vehicle: {
  readonly rightingMoment: number;
  readonly totalMass: number;
  readonly centreOfGravityHeight: number;
}): number {
  requireNotNegative('righting moment', vehicle.rightingMoment, 'N·m');
  requirePositive('total mass', vehicle.totalMass, 'kg');
  requirePositive('height of the centre of gravity', vehicle.centreOfGravityHeight, 'm');
  const topplingMoment = vehicle.totalMass * standardGravity * vehicle.centreOfGravityHeight;
  if (vehicle.rightingMoment > topplingMoment) {
    const most = Number(topplingMoment.toPrecision(4));
    throw new DomainError(
      'righting moment',
      vehicle.rightingMoment,
      `the hand form holds up to m g h, here ${most} N·m; use the exact limit`,
      'N·m',
    );
  }
  return Math.asin(vehicle.rightingMoment / topplingMoment);
}

const ballastMass = { symbol: 'm_b', unit: 'kg', meaning: 'mass of the ballast' } as const;
const ballastOffset = {
  symbol: 'e',
  unit: 'm',
  meaning: 'offset of the ballast from the centre line at the end of its travel',
} as const;

export const ballastLimitCalculations: readonly Calculation[] = [
  calculation({
    id: 'ballast.righting-moment',
    title: 'Righting moment of the ballast',
    equation: String.raw`T_b = m_b\, g\, e`,
    inputs: { ballastMass, ballastOffset },
    outputs: {
      moment: { symbol: 'T_b', unit: 'N·m', meaning: 'righting moment of the ballast, vehicle upright' },
    },
    validity: 'Vehicle upright; at a lean φ the lever shortens by cos φ.',
    source: 'Derived: moment of the ballast’s weight about the ground line',
    compute: (inputs) => ({ moment: rightingMoment(inputs) }),
    example: { ballastMass: 0.073, ballastOffset: 0.0813173 },
    related: ['ballast.largest-lean', 'ballast.largest-lean-by-hand', 'gyro.time-to-stop'],
  }),
  calculation({
    id: 'ballast.largest-lean',
    title: 'Largest lean that the ballast holds',
    equation: String.raw`\tan\varphi_{\max} = \frac{m_b\, e}{M_0 + m_b z_b}`,
    inputs: {
      ballastMass,
      ballastOffset,
      ballastHeight: {
        symbol: 'z_b',
        unit: 'm',
        meaning: 'height of the ballast above the ground line at the end of its travel',
      },
      firstMomentWithout: {
        symbol: 'M_0',
        unit: 'kg·m',
        meaning: 'first moment about the ground line without the ballast',
      },
    },
    outputs: {
      lean: { symbol: String.raw`\varphi_{\max}`, unit: 'rad', meaning: 'largest lean that is held' },
    },
    validity:
      'Static, at any size of lean, the rest of the vehicle balanced about its centre plane; on the safe side for a hanging arm that swings beyond cos θ = m_b L / (M₀ + m_b h_p).',
    source: 'Derived: equilibrium of moments about the ground line',
    compute: (inputs) => ({ lean: largestLean(inputs) }),
    example: {
      ballastMass: 0.59,
      ballastOffset: 0.0813173,
      ballastHeight: 0.2813173,
      firstMomentWithout: 0.11548,
    },
    related: ['ballast.largest-lean-by-hand', 'ballast.arm-position', 'ballast.lateral-limit'],
  }),
  calculation({
    id: 'ballast.largest-lean-by-hand',
    title: 'Largest lean as worked by hand',
    equation: String.raw`\sin\varphi = \frac{T_b}{m g h}`,
    inputs: {
      rightingMoment: {
        symbol: 'T_b',
        unit: 'N·m',
        meaning: 'righting moment of the ballast, vehicle upright',
      },
      totalMass: { symbol: 'm', unit: 'kg', meaning: 'total mass, ballast included' },
      centreOfGravityHeight: {
        symbol: 'h',
        unit: 'm',
        meaning: 'height of the centre of gravity above the ground line, ballast centred',
      },
    },
    outputs: {
      lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'largest lean as worked by hand' },
    },
    validity:
      'Light ballast and small lean: leaves out that the lever shortens with the lean and that the ballast’s height changes along its travel.',
    source: 'Common practice; derived: equilibrium of moments with the ballast’s moment taken as constant',
    compute: (inputs) => ({ lean: largestLeanByHand(inputs) }),
    example: { rightingMoment: 0.0582144, totalMass: 0.955, centreOfGravityHeight: 0.145 },
    related: ['ballast.largest-lean', 'ballast.righting-moment'],
  }),
];
