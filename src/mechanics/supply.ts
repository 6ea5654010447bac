/** The supply around the pack: its resistance as measured, duty, what a capacitor draws when it is plugged in, converters. */
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireBetween,
  requireEach,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireSameLength,
} from './domain.ts';

/**
 * Resistance of a pack and its voltage without load, from two loads.
 *
 *   R = (V₁ − V₂)/(I₂ − I₁),   V₀ = V₁ + I₁ R
 *
 * @param firstCurrent  I₁, A, not negative (0 at rest); firstVoltage V₁, V
 * @param secondCurrent I₂, A, more than I₁; secondVoltage V₂, V
 * @returns resistance R, Ω; restVoltage V₀, V
 * @throws DomainError  outside these ranges, or where the voltage rises with the current
 * Source: Ohm's law in two states.
 */
export function packResistance(steps: {
  readonly firstCurrent: number;
  readonly firstVoltage: number;
  readonly secondCurrent: number;
  readonly secondVoltage: number;
}): { resistance: number; restVoltage: number } {
  requireNotNegative('current of the first load', steps.firstCurrent, 'A');
  requireFinite('voltage under the first load', steps.firstVoltage, 'V');
  requireFinite('voltage under the second load', steps.secondVoltage, 'V');
  requireNotNegative('current of the second load', steps.secondCurrent, 'A');
  requirePositive('difference of the currents', steps.secondCurrent - steps.firstCurrent, 'A');
  const resistance = (steps.firstVoltage - steps.secondVoltage) / (steps.secondCurrent - steps.firstCurrent);
  requireNotNegative('resistance of the pack', resistance, 'Ω');
  return { resistance, restVoltage: steps.firstVoltage + steps.firstCurrent * resistance };
}

/**
 * Mean and effective current of a duty cycle, and the run time on it.
 *
 *   Ī = Σ d_i I_i,   I_e = √( Σ d_i I_i² ),   t = s Q/Ī
 *
 * @param currents     I_i, A, not negative
 * @param shares       d_i of the time, not negative, together 1
 * @param capacity     Q, C, more than 0
 * @param usableShare  s, from 0 to 1
 * @returns meanCurrent Ī, A; effectiveCurrent I_e, A, which heats; time t, s
 * @throws DomainError  outside these ranges, for shares that do not make 1, and for no current at all
 * Source: charge is current times time.
 */
export function dutyRunTime(duty: {
  readonly currents: readonly number[];
  readonly shares: readonly number[];
  readonly capacity: number;
  readonly usableShare: number;
}): { meanCurrent: number; effectiveCurrent: number; time: number } {
  const { currents, shares, capacity, usableShare } = duty;
  requireEach('current', currents, 'A', 0);
  requireEach('share of the time', shares, '1', 0);
  requireSameLength('share of the time', shares, 'current', currents);
  requirePositive('capacity of the pack', capacity, 'C');
  requireBetween('usable share of the capacity', usableShare, 0, 1, '1');
  const whole = shares.reduce((sum, share) => sum + share, 0);
  if (Math.abs(whole - 1) > 1e-6) {
    throw new DomainError('sum of the shares of the time', whole, 'together they have to make 1 (100 %)');
  }
  let [mean, square] = [0, 0];
  currents.forEach((current, i) => {
    mean += current * (shares[i] ?? 0);
    square += current ** 2 * (shares[i] ?? 0);
  });
  requirePositive('mean current', mean, 'A');
  return { meanCurrent: mean, effectiveCurrent: Math.sqrt(square), time: (usableShare * capacity) / mean };
}

/**
 * Pre-charging a bus capacitor through a resistor.
 *
 *   t = −R C ln(1 − s),   P = V²/R,   E = ½ C V²
 *
 * @param resistance   R, Ω, more than 0
 * @param capacitance  C, F, more than 0
 * @param voltage      V, V, not negative
 * @param share        s of the voltage to be reached, from 0 to less than 1; 0.9 if left out
 * @returns time t, s; peakPower P, W, in the resistor at the start; energy E, J, that it takes in the end
 * @throws DomainError  outside these ranges
 * Source: charging of a capacitor; 90 % before the main contact closes, student electric vehicle rules.
 */
export function preCharge({
  resistance,
  capacitance,
  voltage,
  share = 0.9,
}: {
  readonly resistance: number;
  readonly capacitance: number;
  readonly voltage: number;
  readonly share?: number;
}): { time: number; peakPower: number; energy: number } {
  requirePositive('pre-charge resistance', resistance, 'Ω');
  requirePositive('capacitance of the bus', capacitance, 'F');
  requireNotNegative('voltage', voltage, 'V');
  requireBetween('share of the voltage', share, 0, 1, '1');
  if (share === 1) throw new DomainError('share of the voltage', 1, 'the last of it takes for ever');
  return {
    time: -resistance * capacitance * Math.log1p(-share),
    peakPower: voltage ** 2 / resistance,
    energy: 0.5 * capacitance * voltage ** 2,
  };
}

/**
 * Current into an empty capacitor, or a short circuit: I = V/R, A.
 *
 * @param voltage     V, V, not negative
 * @param resistance  R, Ω, of pack, leads, contact and capacitor together, more than 0
 * @throws DomainError  outside these ranges
 * Source: Ohm's law.
 */
export function inrushCurrent(circuit: { readonly voltage: number; readonly resistance: number }): number {
  requireNotNegative('voltage', circuit.voltage, 'V');
  requirePositive('resistance of the circuit', circuit.resistance, 'Ω');
  return circuit.voltage / circuit.resistance;
}

/**
 * Voltage that is left for everything else while a motor is held still on the same pack.
 *
 *   I = (V₀ − R_p I_o) / (R_m + R_p),   V = I R_m
 *
 * @param restVoltage      V₀, V of the pack without load, not negative
 * @param packResistance   R_p, Ω, of pack, leads and plugs, not negative
 * @param motorResistance  R_m, Ω, of the motor with its bridge, more than 0
 * @param otherCurrent     I_o, A, that the rest draws meanwhile, not negative; 0 if left out
 * @returns current I, A, of the stalled motor; voltage V, V
 * @throws DomainError  outside these ranges, or where the rest alone pulls the pack below 0
 * Source: Ohm's law for two loads on one resistance.
 */
export function stallOnSupply({
  restVoltage,
  packResistance: inner,
  motorResistance,
  otherCurrent = 0,
}: {
  readonly restVoltage: number;
  readonly packResistance: number;
  readonly motorResistance: number;
  readonly otherCurrent?: number;
}): { current: number; voltage: number } {
  requireNotNegative('voltage without load', restVoltage, 'V');
  requireNotNegative('resistance of the pack', inner, 'Ω');
  requirePositive('resistance of the motor', motorResistance, 'Ω');
  requireNotNegative('current of the other loads', otherCurrent, 'A');
  const left = restVoltage - inner * otherCurrent;
  requireNotNegative('voltage left by the other loads', left, 'V');
  const current = left / (motorResistance + inner);
  return { current, voltage: current * motorResistance };
}

/**
 * A converter: what it draws, how warm it gets, and how much voltage it has left.
 *
 *   I_i = V_o I_o/(η V_i),   P = V_o I_o (1/η − 1),   Δϑ = P R_ϑ,   V_h = V_i − V_o
 *
 * @param outputVoltage      V_o, V, more than 0; outputCurrent I_o, A, not negative
 * @param inputVoltage       V_i, V, least under load, more than 0
 * @param efficiency         η, more than 0, up to 1; of a linear regulator V_o/V_i
 * @param thermalResistance  R_ϑ, K/W, to the air, not negative; 0 if left out
 * @returns inputCurrent I_i, A; heat P, W; temperatureRise Δϑ, K; headroom V_h, V
 * @throws DomainError  outside these ranges
 * Source: balance of power.
 */
export function converterHeat({
  outputVoltage,
  outputCurrent,
  inputVoltage,
  efficiency,
  thermalResistance = 0,
}: {
  readonly outputVoltage: number;
  readonly outputCurrent: number;
  readonly inputVoltage: number;
  readonly efficiency: number;
  readonly thermalResistance?: number;
}): { inputCurrent: number; heat: number; temperatureRise: number; headroom: number } {
  requirePositive('output voltage', outputVoltage, 'V');
  requireNotNegative('output current', outputCurrent, 'A');
  requirePositive('input voltage', inputVoltage, 'V');
  requireFinite('efficiency', efficiency);
  if (efficiency <= 0 || efficiency > 1) {
    throw new DomainError('efficiency', efficiency, 'it has to be more than 0 and no more than 1');
  }
  requireNotNegative('thermal resistance', thermalResistance, 'K/W');
  const output = outputVoltage * outputCurrent;
  const heat = output * (1 / efficiency - 1);
  return {
    inputCurrent: output / (efficiency * inputVoltage),
    heat,
    temperatureRise: heat * thermalResistance,
    headroom: inputVoltage - outputVoltage,
  };
}

const volts = (symbol: string, meaning: string) => ({ symbol, unit: 'V', meaning }) as const;
const amperes = (symbol: string, meaning: string) => ({ symbol, unit: 'A', meaning }) as const;

export const supplyCalculations: readonly Calculation[] = [
  calculation({
    id: 'pack.resistance',
    title: 'Resistance of the pack from two loads',
    equation: String.raw`R = \frac{V_1 - V_2}{I_2 - I_1}, \qquad V_0 = V_1 + I_1 R`,
    inputs: {
      firstCurrent: amperes('I_1', 'current of the first load'),
      firstVoltage: volts('V_1', 'voltage under the first load'),
      secondCurrent: amperes('I_2', 'current of the second load'),
      secondVoltage: volts('V_2', 'voltage under the second load'),
    },
    outputs: {
      resistance: { symbol: 'R', unit: 'Ω', meaning: 'resistance of the pack with its leads and plugs' },
      restVoltage: volts('V_0', 'voltage without load'),
    },
    validity: 'Both readings within seconds of each other, pack warm as in use; cold it is more.',
    source: 'Ohm’s law in two states',
    compute: packResistance,
    example: { firstCurrent: 0.5, firstVoltage: 12.38, secondCurrent: 7.5, secondVoltage: 11.4 },
    related: ['pack.sag', 'power.inrush'],
  }),
  calculation({
    id: 'pack.duty',
    title: 'Run time on a duty cycle',
    equation: String.raw`\bar I = \sum_i d_i I_i, \qquad I_e = \sqrt{\sum_i d_i I_i^2}, \qquad t = \frac{s\, Q}{\bar I}`,
    inputs: {
      currents: { symbol: 'I_i', unit: 'A', meaning: 'currents of the states', list: true },
      shares: { symbol: 'd_i', unit: '1', meaning: 'shares of the time in each state', list: true },
      capacity: { symbol: 'Q', unit: 'C', meaning: 'capacity of the pack' },
      usableShare: { symbol: 's', unit: '1', meaning: 'usable share of the capacity' },
    },
    outputs: {
      meanCurrent: amperes(String.raw`\bar I`, 'mean current'),
      effectiveCurrent: amperes('I_e', 'effective current, which heats'),
      time: { symbol: 't', unit: 's', meaning: 'run time' },
    },
    validity: 'States that repeat much faster than the pack empties; spin-up once at the start counts apart.',
    source: 'Derived: charge is current times time',
    compute: dutyRunTime,
    example: { currents: [2.2, 6, 11], shares: [0.7, 0.25, 0.05], capacity: 7920, usableShare: 0.8 },
    related: ['pack.run-time', 'pack.energy'],
  }),
  calculation({
    id: 'power.pre-charge',
    title: 'Pre-charge of the bus',
    equation: String.raw`t = -R C \ln\left( 1 - s \right), \qquad P = \frac{V^2}{R}, \qquad E = \tfrac{1}{2} C V^2`,
    inputs: {
      resistance: { symbol: 'R', unit: 'Ω', meaning: 'pre-charge resistance' },
      capacitance: { symbol: 'C', unit: 'F', meaning: 'capacitance of the bus' },
      voltage: volts('V', 'voltage of the pack freshly charged'),
      share: { symbol: 's', unit: '1', meaning: 'share of the voltage to be reached', default: 0.9 },
    },
    outputs: {
      time: { symbol: 't', unit: 's', meaning: 'time to that share' },
      peakPower: { symbol: 'P', unit: 'W', meaning: 'power in the resistor at the start' },
      energy: { symbol: 'E', unit: 'J', meaning: 'energy that the resistor takes' },
    },
    validity: 'Bus empty at the start and no load on it; with a load it never gets there.',
    source: 'Charging of a capacitor; 90 % as in student electric vehicle rules',
    compute: preCharge,
    example: { resistance: 47, capacitance: 1e-3, voltage: 12.6, share: 0.9 },
    related: ['power.inrush'],
  }),
  calculation({
    id: 'power.inrush',
    title: 'Inrush or short-circuit current',
    equation: String.raw`I = \frac{V}{R}`,
    inputs: {
      voltage: volts('V', 'voltage of the pack'),
      resistance: { symbol: 'R', unit: 'Ω', meaning: 'resistance of pack, leads, contact and capacitor' },
    },
    outputs: { current: amperes('I', 'largest current') },
    validity: 'First instant; the inductance of long leads makes it less.',
    source: 'Ohm’s law',
    compute: (inputs) => ({ current: inrushCurrent(inputs) }),
    example: { voltage: 12.6, resistance: 0.08 },
    related: ['power.pre-charge', 'fuse.shares', 'pack.resistance'],
  }),
  calculation({
    id: 'power.stall',
    title: 'Supply while a motor is held still',
    equation: String.raw`I = \frac{V_0 - R_p I_o}{R_m + R_p}, \qquad V = I R_m`,
    inputs: {
      restVoltage: volts('V_0', 'voltage of the pack without load'),
      packResistance: { symbol: 'R_p', unit: 'Ω', meaning: 'resistance of pack, leads and plugs' },
      motorResistance: { symbol: 'R_m', unit: 'Ω', meaning: 'resistance of the motor with its bridge' },
      otherCurrent: { ...amperes('I_o', 'current of the other loads'), default: 0 },
    },
    outputs: {
      current: amperes('I', 'current of the stalled motor'),
      voltage: volts('V', 'voltage left at the plug'),
    },
    validity:
      'No current limit; a controller that resets below its least voltage lets go of the vehicle at that moment.',
    source: 'Derived: Ohm’s law for two loads on one resistance',
    compute: stallOnSupply,
    example: { restVoltage: 7.4, packResistance: 0.14, motorResistance: 1.3, otherCurrent: 0.6 },
    related: ['motor.stall', 'pack.resistance', 'power.converter'],
  }),
  calculation({
    id: 'power.converter',
    title: 'Converter: current, heat and headroom',
    equation: String.raw`I_i = \frac{V_o I_o}{\eta V_i}, \qquad P = V_o I_o \left( \frac{1}{\eta} - 1 \right), \qquad \Delta\vartheta = P R_\vartheta, \qquad V_h = V_i - V_o`,
    inputs: {
      outputVoltage: volts('V_o', 'output voltage'),
      outputCurrent: amperes('I_o', 'output current'),
      inputVoltage: volts('V_i', 'least input voltage under load'),
      efficiency: {
        symbol: String.raw`\eta`,
        unit: '1',
        meaning: 'efficiency, of a linear regulator output over input voltage',
      },
      thermalResistance: {
        symbol: String.raw`R_\vartheta`,
        unit: 'K/W',
        meaning: 'thermal resistance to the air',
        default: 0,
      },
    },
    outputs: {
      inputCurrent: amperes('I_i', 'input current'),
      heat: { symbol: 'P', unit: 'W', meaning: 'heat' },
      temperatureRise: {
        symbol: String.raw`\Delta\vartheta`,
        unit: 'K',
        meaning: 'temperature above the air',
      },
      headroom: volts('V_h', 'voltage left between input and output'),
    },
    validity:
      'A step-down converter needs some headroom of its own (data sheet); a servo’s stall draws its peak.',
    source: 'Derived: balance of power',
    compute: converterHeat,
    example: {
      outputVoltage: 5,
      outputCurrent: 2.5,
      inputVoltage: 9.9,
      efficiency: 0.88,
      thermalResistance: 22,
    },
    related: ['power.stall', 'motor.stall'],
  }),
];
