/**
 * Where the centre of gravity is, by hanging the vehicle up: two plumb lines meet in it, and a known mass moved across a
 * hung vehicle leans it by an angle that gives its distance from the axis.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

/** Lines that cross at less than this are one line, as far as pencil and paper can tell. */
const LEAST_SINE = 1e-3;

/**
 * Centre of gravity where two plumb lines cross, each drawn on the vehicle's side as it hung from another point.
 *
 *   x = x₁ + t sin β₁,   z = z₁ + t cos β₁,   t = [ (x₂ − x₁) cos β₂ − (z₂ − z₁) sin β₂ ] / sin(β₁ − β₂)
 *
 * @param firstForward   x₁, m, and firstHeight z₁, m: any point of the first line, such as the point it hung from
 * @param firstAngle     β₁, rad of the line from the vehicle's upright, positive where its upper end points forward
 * @param secondForward  x₂, secondHeight z₂, secondAngle β₂, the same of the second line
 * @returns forward x, m; height z, m
 * @throws DomainError  for lines that cross at less than 0.06°
 * Source: geometry of two lines; the method in J. K. Moore, Human Control of a Bicycle (2012), physical parameters.
 */
export function hangLines(lines: {
  readonly firstForward: number;
  readonly firstHeight: number;
  readonly firstAngle: number;
  readonly secondForward: number;
  readonly secondHeight: number;
  readonly secondAngle: number;
}): { forward: number; height: number } {
  const { firstForward, firstHeight, firstAngle, secondForward, secondHeight, secondAngle } = lines;
  requireFinite('first point, forward', firstForward, 'm');
  requireFinite('first point, height', firstHeight, 'm');
  requireFinite('angle of the first line', firstAngle, 'rad');
  requireFinite('second point, forward', secondForward, 'm');
  requireFinite('second point, height', secondHeight, 'm');
  requireFinite('angle of the second line', secondAngle, 'rad');
  const crossing = Math.sin(firstAngle - secondAngle);
  if (Math.abs(crossing) < LEAST_SINE) {
    const requirement = 'the lines have to cross; hang the vehicle from a point further round';
    throw new DomainError('angle between the lines', firstAngle - secondAngle, requirement, 'rad');
  }
  const along =
    ((secondForward - firstForward) * Math.cos(secondAngle) -
      (secondHeight - firstHeight) * Math.sin(secondAngle)) /
    crossing;
  return {
    forward: firstForward + along * Math.sin(firstAngle),
    height: firstHeight + along * Math.cos(firstAngle),
  };
}

/**
 * Distance of the centre of gravity from the axis that the vehicle hangs by, from moving a known mass across it.
 *
 *   h = m_w d / (m tan θ)
 *
 * Hung by its wheels (or by a rod along the ground line) the vehicle hangs as far below the axis as it stands above it.
 *
 * @param movedMass  m_w, kg, not negative
 * @param move       d, m across the vehicle, not negative
 * @param totalMass  m, kg, the moved mass included, more than 0
 * @param lean       θ, rad by which the vehicle leans further, more than 0, less than π/2
 * @returns h, m
 * @throws DomainError  outside these ranges
 * Source: the inclining experiment of naval architecture; Nicholls's Seamanship and Nautical Knowledge, exercises on
 * stability.
 */
export function incliningHeight(test: {
  readonly movedMass: number;
  readonly move: number;
  readonly totalMass: number;
  readonly lean: number;
}): number {
  requireNotNegative('moved mass', test.movedMass, 'kg');
  requireNotNegative('move of the mass', test.move, 'm');
  requirePositive('total mass', test.totalMass, 'kg');
  requirePositive('lean of the hung vehicle', test.lean, 'rad');
  requireBetween('lean of the hung vehicle', test.lean, 0, Math.PI / 2, 'rad');
  return (test.movedMass * test.move) / (test.totalMass * Math.tan(test.lean));
}

const point = (symbol: string, meaning: string) => ({ symbol, unit: 'm', meaning }) as const;
const lineAngle = (symbol: string, meaning: string) => ({ symbol, unit: 'rad', meaning }) as const;

export const hangingCalculations: readonly Calculation[] = [
  calculation({
    id: 'weighing.hang-lines',
    title: 'Centre of gravity from two plumb lines',
    equation: String.raw`x = x_1 + t \sin\beta_1, \quad z = z_1 + t \cos\beta_1, \quad t = \frac{\left( x_2 - x_1 \right) \cos\beta_2 - \left( z_2 - z_1 \right) \sin\beta_2}{\sin\left( \beta_1 - \beta_2 \right)}`,
    inputs: {
      firstForward: point('x_1', 'point of the first line, forward'),
      firstHeight: point('z_1', 'point of the first line, height'),
      firstAngle: lineAngle(
        String.raw`\beta_1`,
        'angle of the first line from the vehicle’s upright, upper end forward',
      ),
      secondForward: point('x_2', 'point of the second line, forward'),
      secondHeight: point('z_2', 'point of the second line, height'),
      secondAngle: lineAngle(
        String.raw`\beta_2`,
        'angle of the second line from the vehicle’s upright, upper end forward',
      ),
    },
    outputs: {
      forward: point('x', 'position of the centre of gravity forward'),
      height: point('z', 'height of the centre of gravity'),
    },
    validity: 'Lines that cross steeply; a third line shows by its triangle how good the drawing is.',
    source:
      'J. K. Moore, Human Control of a Bicycle, PhD thesis, UC Davis 2012, physical parameters (centre of mass from hang lines)',
    compute: hangLines,
    example: {
      firstForward: 0.21,
      firstHeight: 0.18,
      firstAngle: 1.34,
      secondForward: -0.02,
      secondHeight: 0.26,
      secondAngle: -0.28,
    },
    related: ['weighing.inclining', 'weighing.board'],
  }),
  calculation({
    id: 'weighing.inclining',
    title: 'Height of the centre of gravity from a lean under a known mass',
    equation: String.raw`h = \frac{m_w\, d}{m \tan\theta}`,
    inputs: {
      movedMass: { symbol: 'm_w', unit: 'kg', meaning: 'known mass that is moved across' },
      move: { symbol: 'd', unit: 'm', meaning: 'distance by which it is moved' },
      totalMass: { symbol: 'm', unit: 'kg', meaning: 'total mass, the moved mass included' },
      lean: { symbol: String.raw`\theta`, unit: 'rad', meaning: 'lean that the move causes' },
    },
    outputs: {
      height: { symbol: 'h', unit: 'm', meaning: 'distance of the centre of gravity from the axis' },
    },
    validity:
      'Vehicle hung by the axis, without friction there; h belongs to the moved mass in its first place, upright before.',
    source:
      'Inclining experiment; Nicholls’s Seamanship and Nautical Knowledge, exercises on stability, nos. 18 and 19',
    compute: (inputs) => ({ height: incliningHeight(inputs) }),
    example: { movedMass: 0.05, move: 0.2, totalMass: 0.955, lean: 0.0722 },
    related: ['weighing.hang-lines', 'swing.distance'],
  }),
];
