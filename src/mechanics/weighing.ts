/**
 * Where the centre of gravity is, by weighing the built vehicle instead of summing its drawing: on two scales, with one
 * end raised, on a board, on an edge. Readings are what scales show, in kilograms; g drops out of every one of them.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

/**
 * Mass and centre of gravity along the vehicle from the readings under its two axles.
 *
 *   m = m_f + m_r,   x = L m_f / m
 *
 * @param frontReading  m_f, kg, not negative
 * @param rearReading   m_r, kg, not negative; together more than 0
 * @param wheelbase     L, m, more than 0
 * @returns totalMass m, kg; position x, m ahead of the rear axle
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, example 12.1.
 */
export function twoAxles(scales: {
  readonly frontReading: number;
  readonly rearReading: number;
  readonly wheelbase: number;
}): { totalMass: number; position: number } {
  requireNotNegative('reading under the front axle', scales.frontReading, 'kg');
  requireNotNegative('reading under the rear axle', scales.rearReading, 'kg');
  requirePositive('wheelbase', scales.wheelbase, 'm');
  const totalMass = scales.frontReading + scales.rearReading;
  requirePositive('sum of the readings', totalMass, 'kg');
  return { totalMass, position: (scales.wheelbase * scales.frontReading) / totalMass };
}

/**
 * Centre of gravity across the vehicle from readings under a left and a right support.
 *
 *   y = b (m_l − m_r) / ( 2 (m_l + m_r + m_c) )
 *
 * @param leftReading    m_l, kg, not negative; likewise m_r to the right
 * @param centreReading  m_c, kg, under whatever else carries the vehicle on its centre line, not negative; 0 if left out
 * @param track          b, m between the supports, which stand alike to both sides of the centre line, more than 0
 * @returns y, m to the left of the centre line; negative to the right
 * @throws DomainError  outside these ranges, or where nothing is weighed
 * Source: SFTE Reference Handbook 2013, section 7.2 (moments of the readings about the centre line).
 */
export function leftAndRight({
  leftReading,
  rightReading,
  centreReading = 0,
  track,
}: {
  readonly leftReading: number;
  readonly rightReading: number;
  readonly centreReading?: number;
  readonly track: number;
}): number {
  requireNotNegative('reading to the left', leftReading, 'kg');
  requireNotNegative('reading to the right', rightReading, 'kg');
  requireNotNegative('reading on the centre line', centreReading, 'kg');
  requirePositive('distance between the supports', track, 'm');
  const total = leftReading + rightReading + centreReading;
  requirePositive('sum of the readings', total, 'kg');
  return (track * (leftReading - rightReading)) / (2 * total);
}

/**
 * Height of the centre of gravity from weighing one axle level and again with the other axle raised.
 *
 *   h = r + L (m₂ − m₁) / (m tan θ),   sin θ = H / L
 *
 * @param wheelbase      L, m, more than 0
 * @param totalMass      m, kg, more than 0
 * @param levelReading   m₁, kg, under the axle that stays down, not negative
 * @param raisedReading  m₂, kg, under the same axle with the other raised, not negative
 * @param raise          H, m by which the other axle is lifted, more than 0, less than the wheelbase
 * @param axleHeight     r, m of the axles above the ground line when level (the wheel's radius under load)
 * @returns height h, m above the ground line; tilt θ, rad
 * @throws DomainError  outside these ranges
 * Source: moments about the axle that stays down; the same algebra in the body builders' guideline of a maker of vans
 * (section 3.5) and in R. Gray's derivation of 1997.
 */
export function raisedEnd(scales: {
  readonly wheelbase: number;
  readonly totalMass: number;
  readonly levelReading: number;
  readonly raisedReading: number;
  readonly raise: number;
  readonly axleHeight: number;
}): { height: number; tilt: number } {
  const { wheelbase, totalMass, levelReading, raisedReading, raise, axleHeight } = scales;
  requirePositive('wheelbase', wheelbase, 'm');
  requirePositive('total mass', totalMass, 'kg');
  requireNotNegative('reading when level', levelReading, 'kg');
  requireNotNegative('reading when raised', raisedReading, 'kg');
  requirePositive('raise of the other axle', raise, 'm');
  requireFinite('height of the axles', axleHeight, 'm');
  if (raise >= wheelbase) {
    const requirement = `it has to be less than the wheelbase, ${wheelbase} m`;
    throw new DomainError('raise of the other axle', raise, requirement, 'm');
  }
  const tilt = Math.asin(raise / wheelbase);
  const aboveAxles = (wheelbase * (raisedReading - levelReading)) / (totalMass * Math.tan(tilt));
  return { height: axleHeight + aboveAxles, tilt };
}

/**
 * Distance of the centre of gravity from the fixed edge of a board whose other edge rests on a scale: lay the vehicle on
 * its side along the board with its wheels at the edge, and the distance is its height.
 *
 *   x = L (m₁ − m₀) / m
 *
 * @param boardLength   L, m between the edges, more than 0
 * @param totalMass     m, kg of the vehicle, more than 0
 * @param emptyReading  m₀, kg with the board alone, not negative
 * @param fullReading   m₁, kg with the vehicle on it, not negative
 * @returns x, m from the edge that does not rest on the scale
 * @throws DomainError  outside these ranges
 * Source: moments about the fixed edge; the reaction board of Knight, Physics for Scientists and Engineers, ch. 12.
 */
export function boardDistance(scales: {
  readonly boardLength: number;
  readonly totalMass: number;
  readonly emptyReading: number;
  readonly fullReading: number;
}): number {
  requirePositive('length of the board between its edges', scales.boardLength, 'm');
  requirePositive('total mass', scales.totalMass, 'kg');
  requireNotNegative('reading with the board alone', scales.emptyReading, 'kg');
  requireNotNegative('reading with the vehicle', scales.fullReading, 'kg');
  return (scales.boardLength * (scales.fullReading - scales.emptyReading)) / scales.totalMass;
}

/**
 * Distance of the centre of gravity from an edge on which the vehicle balances with a known mass on the other side.
 *
 *   d = m_a a / m
 *
 * @param totalMass        m, kg of the vehicle, more than 0
 * @param counterMass      m_a, kg of the known mass, not negative; 0 if left out: the centre then stands over the edge
 * @param counterDistance  a, m of the known mass from the edge, not negative; 0 if left out
 * @returns d, m from the edge, on the side away from the known mass
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, example 12.3 (torque balance about the support).
 */
export function balanceEdge({
  totalMass,
  counterMass = 0,
  counterDistance = 0,
}: {
  readonly totalMass: number;
  readonly counterMass?: number;
  readonly counterDistance?: number;
}): number {
  requirePositive('total mass', totalMass, 'kg');
  requireNotNegative('known mass', counterMass, 'kg');
  requireNotNegative('distance of the known mass', counterDistance, 'm');
  return (counterMass * counterDistance) / totalMass;
}

/**
 * What would explain that the weighed vehicle and the sum of its parts disagree: one mass at one height.
 *
 *   Δm = m − Σ mᵢ,   z = (m h − Σ mᵢ zᵢ) / Δm
 *
 * @param weighedMass        m, kg, more than 0
 * @param weighedHeight      h, m of the centre of gravity as measured
 * @param summedMass         Σ mᵢ, kg, not negative
 * @param summedFirstMoment  Σ mᵢ zᵢ, kg·m
 * @returns mass Δm, kg (negative where the table counts too much); height z, m, at which it would have to sit
 * @throws DomainError  outside these ranges, or where both masses are the same: no single mass explains a moment then
 * Source: first moment about the ground line, with and without the part.
 */
export function missingMass(vehicle: {
  readonly weighedMass: number;
  readonly weighedHeight: number;
  readonly summedMass: number;
  readonly summedFirstMoment: number;
}): { mass: number; height: number } {
  requirePositive('weighed mass', vehicle.weighedMass, 'kg');
  requireFinite('measured height of the centre of gravity', vehicle.weighedHeight, 'm');
  requireNotNegative('sum of the masses', vehicle.summedMass, 'kg');
  requireFinite('summed first moment', vehicle.summedFirstMoment, 'kg·m');
  const mass = vehicle.weighedMass - vehicle.summedMass;
  if (mass === 0) {
    const requirement =
      'it equals the sum of the parts, so that no missing mass explains a difference in height';
    throw new DomainError('weighed mass', vehicle.weighedMass, requirement, 'kg');
  }
  const moment = vehicle.weighedMass * vehicle.weighedHeight - vehicle.summedFirstMoment;
  return { mass, height: moment / mass };
}

const kilograms = (symbol: string, meaning: string) => ({ symbol, unit: 'kg', meaning }) as const;
const metres = (symbol: string, meaning: string) => ({ symbol, unit: 'm', meaning }) as const;
const totalMass = kilograms('m', 'total mass of the vehicle');
const wheelbase = metres('L', 'wheelbase');

export const weighingCalculations: readonly Calculation[] = [
  calculation({
    id: 'weighing.two-axles',
    title: 'Centre of gravity from two axle readings',
    equation: String.raw`m = m_f + m_r, \qquad x = \frac{L\, m_f}{m}`,
    inputs: {
      frontReading: kilograms('m_f', 'reading under the front axle'),
      rearReading: kilograms('m_r', 'reading under the rear axle'),
      wheelbase,
    },
    outputs: { totalMass, position: metres('x', 'distance of the centre of gravity ahead of the rear axle') },
    validity:
      'Vehicle level, wheels free to roll; both axles read at the same time or on scales of one height.',
    source: 'OpenStax, University Physics Volume 1, example 12.1',
    compute: twoAxles,
    example: { frontReading: 0.512, rearReading: 0.443, wheelbase: 0.3 },
    related: ['weighing.raised-end', 'mass.centre-of-gravity'],
  }),
  calculation({
    id: 'weighing.left-and-right',
    title: 'Centre of gravity across from left and right readings',
    equation: String.raw`y = \frac{b \left( m_l - m_r \right)}{2 \left( m_l + m_r + m_c \right)}`,
    inputs: {
      leftReading: kilograms('m_l', 'reading to the left'),
      rightReading: kilograms('m_r', 'reading to the right'),
      centreReading: { ...kilograms('m_c', 'reading on the centre line'), default: 0 },
      track: metres('b', 'distance between the supports'),
    },
    outputs: { left: metres('y', 'distance of the centre of gravity to the left of the centre line') },
    validity: 'Vehicle upright, supports alike to both sides of the centre line.',
    source: 'Society of Flight Test Engineers, Reference Handbook 2013, section 7.2',
    compute: (inputs) => ({ left: leftAndRight(inputs) }),
    example: { leftReading: 0.481, rightReading: 0.474, centreReading: 0, track: 0.18 },
    related: ['weighing.two-axles', 'mass.centre-of-gravity'],
  }),
  calculation({
    id: 'weighing.raised-end',
    title: 'Height of the centre of gravity with one end raised',
    equation: String.raw`h = r + \frac{L \left( m_2 - m_1 \right)}{m \tan\theta}, \qquad \sin\theta = \frac{H}{L}`,
    inputs: {
      wheelbase,
      totalMass,
      levelReading: kilograms('m_1', 'reading under the axle that stays down, vehicle level'),
      raisedReading: kilograms('m_2', 'reading under the same axle, the other raised'),
      raise: metres('H', 'height by which the other axle is raised'),
      axleHeight: metres('r', 'height of the axles above the ground line'),
    },
    outputs: {
      height: metres('h', 'height of the centre of gravity above the ground line'),
      tilt: { symbol: String.raw`\theta`, unit: 'rad', meaning: 'tilt of the vehicle when raised' },
    },
    validity:
      'Springs locked, wheels free to roll, axles of one height, nothing that swings or flows; one gram of reading is worth L/(m tan θ) of height, so raise high.',
    source:
      'Derived: moments about the axle that stays down; the same algebra in a van maker’s body builders’ guideline, section 3.5',
    compute: raisedEnd,
    example: {
      wheelbase: 0.3,
      totalMass: 0.955,
      levelReading: 0.512,
      raisedReading: 0.642,
      raise: 0.1,
      axleHeight: 0.03,
    },
    related: ['weighing.board', 'weighing.inclining', 'weighing.missing-mass'],
  }),
  calculation({
    id: 'weighing.board',
    title: 'Centre of gravity on a board with one scale',
    equation: String.raw`x = \frac{L \left( m_1 - m_0 \right)}{m}`,
    inputs: {
      boardLength: metres('L', 'length of the board between its edges'),
      totalMass,
      emptyReading: kilograms('m_0', 'reading with the board alone'),
      fullReading: kilograms('m_1', 'reading with the vehicle'),
    },
    outputs: { distance: metres('x', 'distance of the centre of gravity from the fixed edge') },
    validity:
      'Board level in both readings and stiff; laid on its side with the wheels at the fixed edge, the vehicle gives its height.',
    source:
      'Derived: moments about the fixed edge; reaction board in R. D. Knight, Physics for Scientists and Engineers, ch. 12',
    compute: (inputs) => ({ distance: boardDistance(inputs) }),
    example: { boardLength: 0.5, totalMass: 0.955, emptyReading: 0.31, fullReading: 0.587 },
    related: ['weighing.raised-end', 'weighing.balance-edge'],
  }),
  calculation({
    id: 'weighing.balance-edge',
    title: 'Centre of gravity on a balance edge',
    equation: String.raw`d = \frac{m_a\, a}{m}`,
    inputs: {
      totalMass,
      counterMass: { ...kilograms('m_a', 'known mass on the other side'), default: 0 },
      counterDistance: { ...metres('a', 'distance of the known mass from the edge'), default: 0 },
    },
    outputs: {
      distance: metres('d', 'distance of the centre of gravity from the edge, away from the known mass'),
    },
    validity: 'Sharp edge, vehicle level in balance; without a known mass the centre stands over the edge.',
    source: 'OpenStax, University Physics Volume 1, example 12.3',
    compute: (inputs) => ({ distance: balanceEdge(inputs) }),
    example: { totalMass: 0.955, counterMass: 0.05, counterDistance: 0.12 },
    related: ['weighing.board', 'weighing.inclining'],
  }),
  calculation({
    id: 'weighing.missing-mass',
    title: 'Mass and height that would explain a difference',
    equation: String.raw`\Delta m = m - \sum_i m_i, \qquad z = \frac{m h - \sum_i m_i z_i}{\Delta m}`,
    inputs: {
      weighedMass: kilograms('m', 'weighed mass of the vehicle'),
      weighedHeight: metres('h', 'measured height of the centre of gravity'),
      summedMass: kilograms(String.raw`\sum_i m_i`, 'sum of the masses in the table'),
      summedFirstMoment: {
        symbol: String.raw`\sum_i m_i z_i`,
        unit: 'kg·m',
        meaning: 'first moment of the table about the ground line',
      },
    },
    outputs: {
      mass: kilograms(String.raw`\Delta m`, 'mass that the table lacks'),
      height: metres('z', 'height at which that mass would have to sit'),
    },
    validity:
      'One missing (or doubled) part; where several are wrong the height may lie outside the vehicle, which says so.',
    source: 'Derived: first moment about the ground line with and without the part',
    compute: missingMass,
    example: { weighedMass: 0.982, weighedHeight: 0.146, summedMass: 0.955, summedFirstMoment: 0.138475 },
    related: ['weighing.raised-end', 'mass.first-moment'],
  }),
];
