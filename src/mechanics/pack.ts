/** The pack: voltage, energy, C-rate, run time, sag. A capacity is a charge, in coulombs: 1 A·h is 3600 C. */
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireWholeNumber,
} from './domain.ts';

/**
 * Voltage of a pack: V = n V_c, V.
 *
 * @param cells        n, cells in series, a whole number
 * @param cellVoltage  V_c, V of one cell: full, nominal, at rest, under load
 * @throws DomainError  outside these ranges
 * Source: cells in series, all alike.
 */
export function packVoltage(pack: { readonly cells: number; readonly cellVoltage: number }): number {
  requireWholeNumber('number of cells in series', pack.cells, 1);
  requirePositive('voltage of a cell', pack.cellVoltage, 'V');
  return pack.cells * pack.cellVoltage;
}

/**
 * Energy of a full pack as it is rated: E = Q V, J.
 *
 * @param capacity        Q, C, more than 0
 * @param nominalVoltage  V, V of the pack, more than 0
 * @throws DomainError  outside these ranges
 * Source: the watt-hour rating of transport rules, 49 CFR 171.8: rated capacity times nominal voltage.
 */
export function packEnergy(pack: { readonly capacity: number; readonly nominalVoltage: number }): number {
  requirePositive('capacity of the pack', pack.capacity, 'C');
  requirePositive('nominal voltage of the pack', pack.nominalVoltage, 'V');
  return pack.capacity * pack.nominalVoltage;
}

/**
 * C-rate of a current: r = I / Q, 1/s; times 3600 it is the “C” that packs are marked with.
 *
 * @param current   I, A, not negative
 * @param capacity  Q, C, more than 0
 * @throws DomainError  outside these ranges
 * Source: by definition: the inverse of the time in which the current would empty the pack.
 */
export function cRate(pack: { readonly current: number; readonly capacity: number }): number {
  requireNotNegative('current', pack.current, 'A');
  requirePositive('capacity of the pack', pack.capacity, 'C');
  return pack.current / pack.capacity;
}

/**
 * Run time on the part of the capacity that may be used: t = s Q / I, s.
 *
 * @param capacity     Q, C, more than 0
 * @param usableShare  s, more than 0, up to 1
 * @param meanCurrent  I, A, mean over the run, more than 0
 * @throws DomainError  outside these ranges
 * Source: charge is current times time.
 */
export function runTime(pack: {
  readonly capacity: number;
  readonly usableShare: number;
  readonly meanCurrent: number;
}): number {
  requirePositive('capacity of the pack', pack.capacity, 'C');
  requireFinite('usable share of the capacity', pack.usableShare);
  if (pack.usableShare <= 0 || pack.usableShare > 1) {
    const requirement = 'it has to be more than 0 and no more than 1 (100 %)';
    throw new DomainError('usable share of the capacity', pack.usableShare, requirement);
  }
  requirePositive('mean current', pack.meanCurrent, 'A');
  return (pack.usableShare * pack.capacity) / pack.meanCurrent;
}

/**
 * Sag of the pack's voltage under a current: ΔV = I R, V.
 *
 * @param current     I, A, not negative
 * @param resistance  R, Ω, of the whole pack with its leads and plugs, not negative
 * @throws DomainError  outside these ranges
 * Source: Ohm's law.
 */
export function packSag(pack: { readonly current: number; readonly resistance: number }): number {
  requireNotNegative('current', pack.current, 'A');
  requireNotNegative('resistance of the pack', pack.resistance, 'Ω');
  return pack.current * pack.resistance;
}

const capacity = { symbol: 'Q', unit: 'C', meaning: 'capacity of the pack' } as const;
const current = { symbol: 'I', unit: 'A', meaning: 'current drawn from the pack' } as const;

export const packCalculations: readonly Calculation[] = [
  calculation({
    id: 'pack.voltage',
    title: 'Voltage of the pack',
    equation: 'V = n V_c',
    inputs: {
      cells: { symbol: 'n', unit: '1', meaning: 'number of cells in series' },
      cellVoltage: { symbol: 'V_c', unit: 'V', meaning: 'voltage of one cell' },
    },
    outputs: { voltage: { symbol: 'V', unit: 'V', meaning: 'voltage of the pack' } },
    validity: 'All cells at the same voltage; measure each cell where they may differ.',
    source: 'Derived: voltages in series add',
    compute: (inputs) => ({ voltage: packVoltage(inputs) }),
    example: { cells: 3, cellVoltage: 4.2 },
    related: ['pack.energy', 'rotor.runaway-speed'],
  }),
  calculation({
    id: 'pack.energy',
    title: 'Energy of the pack',
    equation: 'E = Q V',
    inputs: {
      capacity,
      nominalVoltage: { symbol: 'V', unit: 'V', meaning: 'nominal voltage of the pack' },
    },
    outputs: { energy: { symbol: 'E', unit: 'J', meaning: 'rated energy of the pack' } },
    validity: 'Rated capacity of a new pack; the energy delivered at high current is less.',
    source: 'Watt-hour rating: 49 CFR 171.8 (rated capacity times nominal voltage)',
    compute: (inputs) => ({ energy: packEnergy(inputs) }),
    example: { capacity: 7920, nominalVoltage: 11.1 },
    related: ['pack.run-time', 'pack.c-rate'],
  }),
  calculation({
    id: 'pack.c-rate',
    title: 'C-rate of a current',
    equation: String.raw`r = \frac{I}{Q}`,
    inputs: { current, capacity },
    outputs: { rate: { symbol: 'r', unit: '1/s', meaning: 'C-rate of the current' } },
    validity: 'The “C” marked on packs is this rate per hour.',
    source: 'By definition; University of Tartu, robotics course 2025, batteries (1 A·h at 10C gives 10 A)',
    compute: (inputs) => ({ rate: cRate(inputs) }),
    example: { current: 22, capacity: 7920 },
    related: ['pack.sag', 'pack.run-time'],
  }),
  calculation({
    id: 'pack.run-time',
    title: 'Run time',
    equation: String.raw`t = \frac{s\, Q}{I}`,
    inputs: {
      capacity,
      usableShare: { symbol: 's', unit: '1', meaning: 'usable share of the capacity' },
      meanCurrent: { symbol: 'I', unit: 'A', meaning: 'mean current over a run' },
    },
    outputs: { time: { symbol: 't', unit: 's', meaning: 'run time' } },
    validity: 'Capacity as it is at the current drawn and the pack’s age and temperature.',
    source: 'Derived: charge is current times time',
    compute: (inputs) => ({ time: runTime(inputs) }),
    example: { capacity: 7920, usableShare: 0.8, meanCurrent: 4.5 },
    related: ['pack.energy', 'pack.c-rate'],
  }),
  calculation({
    id: 'pack.sag',
    title: 'Sag of the pack',
    equation: String.raw`\Delta V = I R`,
    inputs: {
      current,
      resistance: { symbol: 'R', unit: 'Ω', meaning: 'resistance of the pack with its leads and plugs' },
    },
    outputs: { voltage: { symbol: String.raw`\Delta V`, unit: 'V', meaning: 'sag of the pack’s voltage' } },
    validity: 'First seconds of a load, at the temperature and charge at which the resistance was measured.',
    source: 'Ohm’s law',
    compute: (inputs) => ({ voltage: packSag(inputs) }),
    example: { current: 7.5, resistance: 0.14 },
    related: ['pack.voltage', 'pack.c-rate'],
  }),
];
