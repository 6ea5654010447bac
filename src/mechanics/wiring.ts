/** Wires and fuses between pack and load: how thick, how warm, how much voltage is lost, what the fuse protects. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

/**
 * Diameter and cross-section of a wire by its American gauge number.
 *
 *   d = d_36 · 92^((36 − n)/39),   A = π d²/4
 *
 * @param gauge          n, from −3 (0000) to 40; 0 for 0, −1 for 00
 * @param gauge36        d_36, m; if left out 0.127 mm, by definition
 * @returns diameter d, m; area A, m², of the copper of a solid wire; a stranded one of the number has about the same area
 * @throws DomainError  outside these ranges
 * Source: ASTM B258.
 */
export function wireGauge({
  gauge,
  gauge36 = 1.27e-4,
}: {
  readonly gauge: number;
  readonly gauge36?: number;
}): {
  diameter: number;
  area: number;
} {
  requireFinite('gauge number', gauge);
  if (gauge < -3 || gauge > 40) {
    throw new DomainError('gauge number', gauge, 'it has to lie between −3 (0000) and 40');
  }
  requirePositive('diameter of gauge 36', gauge36, 'm');
  const diameter = gauge36 * 92 ** ((36 - gauge) / 39);
  return { diameter, area: (Math.PI * diameter ** 2) / 4 };
}

/**
 * Resistance of a pair of wires, the voltage that it takes and the heat that it makes.
 *
 *   R = 2 l ρ (1 + α Δϑ)/A,   ΔV = I R,   P = I² R
 *
 * @param length                  l, m, one way, not negative
 * @param area                    A, m² of one wire, more than 0
 * @param current                 I, A, not negative
 * @param resistivity             ρ, Ω·m; if left out 1.7241e-8, annealed copper at 20 °C
 * @param temperatureRise         Δϑ, K above 20 °C; 0 if left out
 * @param temperatureCoefficient  α, 1/K; if left out 0.00393, copper
 * @returns resistance R, Ω; drop ΔV, V; heat P, W
 * @throws DomainError  outside these ranges, or for a temperature at which the straight line is below 0
 * Source: Ohm's law; resistivity and coefficient of annealed copper (IACS), from memory.
 */
export function wireDrop({
  length,
  area,
  current,
  resistivity = 1.7241e-8,
  temperatureRise = 0,
  temperatureCoefficient = 0.00393,
}: {
  readonly length: number;
  readonly area: number;
  readonly current: number;
  readonly resistivity?: number;
  readonly temperatureRise?: number;
  readonly temperatureCoefficient?: number;
}): { resistance: number; drop: number; heat: number } {
  requireNotNegative('length of the wires, one way', length, 'm');
  requirePositive('cross-section of a wire', area, 'm²');
  requireNotNegative('current', current, 'A');
  requirePositive('resistivity', resistivity, 'Ω·m');
  requireFinite('temperature above 20 °C', temperatureRise, 'K');
  requireNotNegative('temperature coefficient', temperatureCoefficient, '1/K');
  const warm = 1 + temperatureCoefficient * temperatureRise;
  if (warm <= 0) {
    throw new DomainError(
      'temperature above 20 °C',
      temperatureRise,
      'the wire is not a superconductor',
      'K',
    );
  }
  const resistance = (2 * length * resistivity * warm) / area;
  return { resistance, drop: current * resistance, heat: current ** 2 * resistance };
}

/**
 * A fuse beside what it carries, what it protects and what it has to break.
 *
 *   s_c = I_c/I_f,   s_w = I_f/I_w,   s_v = V/V_f
 *
 * @param fuseRating         I_f, A, more than 0
 * @param continuousCurrent  I_c, A, not negative: up to 0.75 to 0.8 of the rating, or the fuse ages
 * @param wireCurrent        I_w, A that the wire carries for good, more than 0: the fuse not above it
 * @param fuseVoltage        V_f, V direct, that the fuse can break, more than 0
 * @param packVoltage        V, V of the pack freshly charged, not negative: not above the fuse's
 * @returns continuousShare s_c; wireShare s_w; voltageShare s_v
 * @throws DomainError  outside these ranges
 * Source: overcurrent device not above the wire's ampacity, direct voltage rating not below the pack's (student vehicle
 * rules); 75 % to 80 % from memory.
 */
export function fuseShares(fuse: {
  readonly fuseRating: number;
  readonly continuousCurrent: number;
  readonly wireCurrent: number;
  readonly fuseVoltage: number;
  readonly packVoltage: number;
}): { continuousShare: number; wireShare: number; voltageShare: number } {
  requirePositive('rating of the fuse', fuse.fuseRating, 'A');
  requireNotNegative('continuous current', fuse.continuousCurrent, 'A');
  requirePositive('current that the wire carries', fuse.wireCurrent, 'A');
  requirePositive('voltage rating of the fuse', fuse.fuseVoltage, 'V');
  requireNotNegative('voltage of the pack', fuse.packVoltage, 'V');
  return {
    continuousShare: fuse.continuousCurrent / fuse.fuseRating,
    wireShare: fuse.fuseRating / fuse.wireCurrent,
    voltageShare: fuse.packVoltage / fuse.fuseVoltage,
  };
}

const share = (symbol: string, meaning: string) => ({ symbol, unit: '1', meaning }) as const;
const amperes = (symbol: string, meaning: string) => ({ symbol, unit: 'A', meaning }) as const;

export const wiringCalculations: readonly Calculation[] = [
  calculation({
    id: 'wire.gauge',
    title: 'Wire by its American gauge number',
    equation: String.raw`d = d_{36} \cdot 92^{\left( 36 - n \right)/39}, \qquad A = \frac{\pi d^2}{4}`,
    inputs: {
      gauge: { symbol: 'n', unit: '1', meaning: 'gauge number, 0 for 0, −1 for 00' },
      gauge36: { symbol: 'd_{36}', unit: 'm', meaning: 'diameter of gauge 36', default: 1.27e-4 },
    },
    outputs: {
      diameter: { symbol: 'd', unit: 'm', meaning: 'diameter of the copper' },
      area: { symbol: 'A', unit: 'm²', meaning: 'cross-section of the copper' },
    },
    validity:
      'Solid wire; a stranded wire of the number has about the same cross-section and a larger diameter.',
    source: 'ASTM B258 (ratio of 39 steps of 92; 0.127 mm for gauge 36)',
    compute: wireGauge,
    example: { gauge: 14, gauge36: 1.27e-4 },
    related: ['wire.drop'],
  }),
  calculation({
    id: 'wire.drop',
    title: 'Voltage drop and heat of a pair of wires',
    equation: String.raw`R = \frac{2\, l\, \rho \left( 1 + \alpha\, \Delta\vartheta \right)}{A}, \qquad \Delta V = I R, \qquad P = I^2 R`,
    inputs: {
      length: { symbol: 'l', unit: 'm', meaning: 'length of the wires, one way' },
      area: { symbol: 'A', unit: 'm²', meaning: 'cross-section of a wire' },
      current: amperes('I', 'current'),
      resistivity: {
        symbol: String.raw`\rho`,
        unit: 'Ω·m',
        meaning: 'resistivity at 20 °C',
        default: 1.7241e-8,
      },
      temperatureRise: {
        symbol: String.raw`\Delta\vartheta`,
        unit: 'K',
        meaning: 'temperature above 20 °C',
        default: 0,
      },
      temperatureCoefficient: {
        symbol: String.raw`\alpha`,
        unit: '1/K',
        meaning: 'temperature coefficient',
        default: 0.00393,
      },
    },
    outputs: {
      resistance: { symbol: 'R', unit: 'Ω', meaning: 'resistance there and back' },
      drop: { symbol: String.raw`\Delta V`, unit: 'V', meaning: 'voltage drop' },
      heat: { symbol: 'P', unit: 'W', meaning: 'heat in the wires' },
    },
    validity: 'Direct current; plugs, switch and fuse come on top and are often as much.',
    source: 'Ohm’s law; resistivity and coefficient of annealed copper (IACS), from memory',
    compute: wireDrop,
    example: {
      length: 0.25,
      area: 2.081e-6,
      current: 7.5,
      resistivity: 1.7241e-8,
      temperatureRise: 20,
      temperatureCoefficient: 0.00393,
    },
    related: ['wire.gauge', 'pack.sag', 'fuse.shares'],
  }),
  calculation({
    id: 'fuse.shares',
    title: 'Fuse against load, wire and voltage',
    equation: String.raw`s_c = \frac{I_c}{I_f}, \qquad s_w = \frac{I_f}{I_w}, \qquad s_v = \frac{V}{V_f}`,
    inputs: {
      fuseRating: amperes('I_f', 'rating of the fuse'),
      continuousCurrent: amperes('I_c', 'continuous current of the load'),
      wireCurrent: amperes('I_w', 'current that the wire carries for good'),
      fuseVoltage: { symbol: 'V_f', unit: 'V', meaning: 'direct voltage that the fuse can break' },
      packVoltage: { symbol: 'V', unit: 'V', meaning: 'voltage of the pack freshly charged' },
    },
    outputs: {
      continuousShare: share('s_c', 'load over fuse, up to 0.75'),
      wireShare: share('s_w', 'fuse over wire, up to 1'),
      voltageShare: share('s_v', 'pack voltage over fuse voltage, up to 1'),
    },
    validity:
      'A fuse protects the wire, not the motor; the figures for single wires in free air are several times those for bundles.',
    source:
      'Student vehicle rules (fuse not above the wire, voltage rating not below the pack); 75 % for continuous load from memory',
    compute: fuseShares,
    example: { fuseRating: 15, continuousCurrent: 7.5, wireCurrent: 20, fuseVoltage: 32, packVoltage: 12.6 },
    related: ['wire.drop', 'pack.c-rate', 'power.inrush'],
  }),
];
