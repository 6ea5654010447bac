/**
 * What flies when a rotor comes apart, and what is left in the vehicle when it seizes instead. Figures for whoever designs
 * the guard. None of them says that a guard holds, and none that anything is safe.
 */
import { type Calculation, calculation } from './calculation.ts';
import { requireNotNegative, requirePositive, requireWholeNumber } from './domain.ts';
import { requireSections } from './rotor.ts';

/**
 * Energy of one piece of a disc or ring that parts into equal sectors.
 *
 *   r_c = (2/3) (b³ − a³)/(b² − a²) · sin(π/n)/(π/n),   v = Ω r_c,   E_t = ½ (m/n) v²,   E_1 = E/n,   s = E_t/E_1
 *
 * @param mass           m, kg of the whole rotor, not negative
 * @param outerDiameter  D = 2b, m; boreDiameter d = 2a, m, 0 where solid
 * @param speed          Ω, rad/s, not negative
 * @param pieces         n, whole, at least 2
 * @returns pieceSpeed v, m/s, of its centre of gravity; flightEnergy E_t, J, of that motion; pieceEnergy E_1, J, tumbling
 *          included; share s
 * @throws DomainError  outside these ranges
 * Source: rigid sectors that leave with the velocities of the disc.
 */
export function fragmentEnergy(rotor: {
  readonly mass: number;
  readonly outerDiameter: number;
  readonly boreDiameter: number;
  readonly speed: number;
  readonly pieces: number;
}): { pieceSpeed: number; flightEnergy: number; pieceEnergy: number; share: number } {
  const { mass, outerDiameter, boreDiameter, speed, pieces } = rotor;
  requireNotNegative('mass of the rotor', mass, 'kg');
  requireSections({ outerDiameters: [outerDiameter], boreDiameters: [boreDiameter] });
  requireNotNegative('rotor speed', speed, 'rad/s');
  requireWholeNumber('number of pieces', pieces, 2);
  const [b, a] = [outerDiameter / 2, boreDiameter / 2];
  const half = Math.PI / pieces;
  const centre = ((2 / 3) * (b * b + a * b + a * a) * Math.sin(half)) / (half * (a + b));
  const pieceSpeed = speed * centre;
  const share = (2 * centre ** 2) / (a ** 2 + b ** 2);
  const flightEnergy = (0.5 * mass * pieceSpeed ** 2) / pieces;
  return {
    pieceSpeed,
    flightEnergy,
    pieceEnergy: (mass * (a ** 2 + b ** 2) * speed ** 2) / (4 * pieces),
    share,
  };
}

/**
 * A piece's energy beside that of a test of protective eyewear: n = E_t/E_r. A caution, never a promise.
 *
 * @param flightEnergy  E_t, J, not negative
 * @param testEnergy    E_r, J, more than 0; if left out 4.40 J, the high-velocity test of a face shield in
 *                      ANSI Z87.1-2003: a steel ball of 6.35 mm at 91.4 m/s
 * @returns n
 * @throws DomainError  outside these ranges
 * Source: ANSI Z87.1-2003 (ball and speed); its energy from mass and speed.
 */
export function fragmentCaution({
  flightEnergy,
  testEnergy = 4.4,
}: {
  readonly flightEnergy: number;
  readonly testEnergy?: number;
}): number {
  requireNotNegative('energy of the piece', flightEnergy, 'J');
  requirePositive('energy of the test', testEnergy, 'J');
  return flightEnergy / testEnergy;
}

/**
 * What the vehicle turns with when the rotor seizes in it.
 *
 *   ω = H / (I_b + I_s),   s = I_b / (I_b + I_s)
 *
 * @param spinMomentum  H, N·m·s, not negative
 * @param rotorInertia  I_s, kg·m², more than 0
 * @param bodyInertia   I_b, kg·m², of the rest about the spin axis, more than 0
 * @returns bodyRate ω, rad/s; lostShare s of the energy that goes into heat and damage
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, example 11.7 (angular momentum kept).
 */
export function rotorSeizure(rotor: {
  readonly spinMomentum: number;
  readonly rotorInertia: number;
  readonly bodyInertia: number;
}): { bodyRate: number; lostShare: number } {
  requireNotNegative('spin momentum', rotor.spinMomentum, 'N·m·s');
  requirePositive('rotor inertia', rotor.rotorInertia, 'kg·m²');
  requirePositive('inertia of the rest about the spin axis', rotor.bodyInertia, 'kg·m²');
  const together = rotor.rotorInertia + rotor.bodyInertia;
  return { bodyRate: rotor.spinMomentum / together, lostShare: rotor.bodyInertia / together };
}

const flightEnergy = {
  symbol: 'E_t',
  unit: 'J',
  meaning: 'energy of one piece in flight, without its tumbling',
} as const;

export const fragmentCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.fragment-energy',
    title: 'Energy of a piece of a burst rotor',
    equation: String.raw`\begin{gathered} r_c = \frac{2}{3}\, \frac{b^3 - a^3}{b^2 - a^2}\, \frac{\sin\left( \pi/n \right)}{\pi/n}, \quad v = \Omega\, r_c, \quad E_t = \frac{m v^2}{2 n}, \quad E_1 = \frac{m \left( a^2 + b^2 \right) \Omega^2}{4 n}, \quad s = \frac{E_t}{E_1} \\ a = \frac{d}{2}, \qquad b = \frac{D}{2} \end{gathered}`,
    inputs: {
      mass: { symbol: 'm', unit: 'kg', meaning: 'mass of the rotor' },
      outerDiameter: { symbol: 'D', unit: 'm', meaning: 'outer diameter' },
      boreDiameter: { symbol: 'd', unit: 'm', meaning: 'bore diameter, 0 where solid' },
      speed: { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed of the rotor' },
      pieces: { symbol: 'n', unit: '1', meaning: 'number of equal pieces' },
    },
    outputs: {
      pieceSpeed: { symbol: 'v', unit: 'm/s', meaning: 'speed of the centre of gravity of a piece' },
      flightEnergy,
      pieceEnergy: { symbol: 'E_1', unit: 'J', meaning: 'whole energy of one piece, tumbling included' },
      share: { symbol: 's', unit: '1', meaning: 'share of the piece’s energy that is flight' },
    },
    validity:
      'Uniform disc or ring in equal rigid sectors; three are the usual assumption, many small ones the usual finding. For the designer of the guard: it never says that a guard holds.',
    source: 'Derived: rigid sectors that leave with the velocities of the disc',
    compute: fragmentEnergy,
    example: { mass: 0.3, outerDiameter: 0.1, boreDiameter: 0.08, speed: 1047.2, pieces: 3 },
    related: ['rotor.energy', 'rotor.fragment-caution', 'rotor.burst-estimate'],
  }),
  calculation({
    id: 'rotor.fragment-caution',
    title: 'A piece beside a test of protective eyewear',
    equation: String.raw`n = \frac{E_t}{E_r}`,
    inputs: {
      flightEnergy,
      testEnergy: { symbol: 'E_r', unit: 'J', meaning: 'energy of the eyewear test', default: 4.4 },
    },
    outputs: { ratio: { symbol: 'n', unit: '1', meaning: 'energy of the piece over that of the test' } },
    validity:
      'A caution only: above 1 a face shield was never tested for such a piece, and below 1 it still promises nothing. 4.4 J is the face-shield ball test.',
    source: 'ANSI Z87.1-2003, high-velocity test (6.35 mm steel ball at 91.4 m/s); energy derived',
    compute: (inputs) => ({ ratio: fragmentCaution(inputs) }),
    example: { flightEnergy: 76.9, testEnergy: 4.4 },
    related: ['rotor.fragment-energy'],
  }),
  calculation({
    id: 'rotor.seizure',
    title: 'Vehicle after the rotor has seized',
    equation: String.raw`\omega = \frac{H}{I_b + I_s}, \qquad s = \frac{I_b}{I_b + I_s}`,
    inputs: {
      spinMomentum: { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of the rotor' },
      rotorInertia: { symbol: 'I_s', unit: 'kg·m²', meaning: 'inertia of the rotor about its spin axis' },
      bodyInertia: { symbol: 'I_b', unit: 'kg·m²', meaning: 'inertia of the rest about the spin axis' },
    },
    outputs: {
      bodyRate: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'rate at which the vehicle turns' },
      lostShare: { symbol: 's', unit: '1', meaning: 'share of the energy that goes into heat and damage' },
    },
    validity: 'Vehicle free to turn about the spin axis; on its wheels the ground takes part of it.',
    source: 'OpenStax, University Physics Volume 1, example 11.7',
    compute: rotorSeizure,
    example: { spinMomentum: 0.445, rotorInertia: 5e-4, bodyInertia: 4.2e-3 },
    related: ['rotor.momentum', 'rotor.energy'],
  }),
];
