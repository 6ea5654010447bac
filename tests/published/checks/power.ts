/** Packs, wires and the supply against published figures. */
import { cellVoltages } from '../../../src/mechanics/index.ts';
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';

const MIT =
  'MIT course 2.007, battery safety: 2 cells, 0.5 A·h, 0.14 Ω, 7.5 A at most, window 6.0 V to 8.4 V';
const GAUGES = 'a published table of wire gauges, inches to four digits (ASTM B258)';
const lithiumIon = cellVoltages['lithium-ion'];
const ampereHours = (capacity: number): number => capacity * 3600;
const wattHours = (energy: number): number => energy / 3600;

const packVoltage = through('pack.voltage', 'voltage');
const packEnergy = through('pack.energy', 'energy');
const packSag = through('pack.sag', 'voltage');
const diameter = through('wire.gauge', 'diameter');
const preChargeTime = through('power.pre-charge', 'time');

/** A battery that gives 0.3 A into 60 Ω and 0.5 A into 30 Ω. */
const twoLoads = { firstCurrent: 0.3, firstVoltage: 18, secondCurrent: 0.5, secondVoltage: 15 };

export const powerChecks: readonly MechanicsCheck[] = [
  {
    id: 'course pack, full',
    source: MIT,
    status: 'read',
    what: 'highest voltage of two cells, V',
    printed: '8.4',
    computed: () => packVoltage({ cells: 2, cellVoltage: lithiumIon.full.value }),
  },
  {
    id: 'course pack, empty',
    source: MIT,
    status: 'read',
    what: 'lowest voltage of two cells, V',
    printed: '6.0',
    computed: () => packVoltage({ cells: 2, cellVoltage: lithiumIon.restMinimum.value }),
  },
  {
    id: 'course pack, sag',
    source: `${MIT}; product by independent computation`,
    status: 'independent',
    what: 'sag at the largest current, V',
    printed: '1.05',
    computed: () => packSag({ current: 7.5, resistance: 0.14 }),
  },
  {
    id: 'course pack, from 7.0 V at rest',
    source: `${MIT}; difference by independent computation`,
    status: 'independent',
    what: 'voltage under load, V',
    printed: '5.95',
    computed: () => packVoltage({ cells: 2, cellVoltage: 3.5 }) - packSag({ current: 7.5, resistance: 0.14 }),
  },
  {
    id: 'four iron phosphate cells',
    source: 'Charger maker’s application note: 4 cells regulate at 14.4 V, 3.60 V a cell',
    status: 'read',
    what: 'voltage, V',
    printed: '14.4',
    computed: () => packVoltage({ cells: 4, cellVoltage: 3.6 }),
  },
  {
    id: 'nominal voltage of two cells',
    source: 'US DOT, letter of interpretation on a pack of 2 cells, 7.4 V, 1100 mA·h',
    status: 'read',
    what: 'nominal voltage, V',
    printed: '7.4',
    computed: () => packVoltage({ cells: 2, cellVoltage: lithiumIon.nominal.value }),
  },
  {
    id: 'rated energy of two cells',
    source: 'US DOT, the same letter; product by independent computation',
    status: 'independent',
    what: 'energy, W·h',
    printed: '8.14',
    computed: () => wattHours(packEnergy({ capacity: ampereHours(1.1), nominalVoltage: 7.4 })),
  },
  {
    id: 'tool pack that may fly',
    source: 'Shipping guide, worked example: 20 V, 1.3 A·h',
    status: 'read',
    what: 'energy, W·h',
    printed: '26',
    computed: () => wattHours(packEnergy({ capacity: ampereHours(1.3), nominalVoltage: 20 })),
  },
  {
    id: 'tool pack that may not fly',
    source: 'Shipping guide, worked example: 20 V, 6 A·h',
    status: 'read',
    what: 'energy, W·h',
    printed: '120',
    computed: () => wattHours(packEnergy({ capacity: ampereHours(6), nominalVoltage: 20 })),
  },
  {
    id: 'C-rate',
    source: 'University of Tartu, robotics course 2025: 1 A·h at 10C gives 10 A',
    status: 'read',
    what: 'C-rate of 10 A, 1/h',
    printed: '10',
    computed: () => through('pack.c-rate', 'rate')({ current: 10, capacity: ampereHours(1) }) * 3600,
  },
  {
    id: 'C-rate as a time',
    source: 'University of Tartu, the same; time by independent computation',
    status: 'independent',
    what: 'run time of 1 A·h at 10C, min',
    printed: '6',
    computed: () =>
      through('pack.run-time', 'time')({ capacity: ampereHours(1), usableShare: 1, meanCurrent: 10 }) / 60,
  },
  {
    id: 'C-rate as a duty of one state',
    source: 'University of Tartu, the same, 20 A for half of the time; time by independent computation',
    status: 'independent',
    what: 'run time, min',
    printed: '6',
    computed: () =>
      through(
        'pack.duty',
        'time',
      )({ currents: [20, 0], shares: [0.5, 0.5], capacity: ampereHours(1), usableShare: 1 }) / 60,
  },
  {
    id: 'battery under two loads, resistance',
    source: 'a worked question (in Hindi): 0.3 A into 60 Ω, 0.5 A into 30 Ω',
    status: 'read',
    what: 'internal resistance, Ω',
    printed: '15',
    computed: () => through('pack.resistance', 'resistance')(twoLoads),
  },
  {
    id: 'battery under two loads, voltage',
    source: 'a worked question (in Hindi): 0.3 A into 60 Ω, 0.5 A into 30 Ω',
    status: 'read',
    what: 'voltage without load, V',
    printed: '22.5',
    computed: () => through('pack.resistance', 'restVoltage')(twoLoads),
  },
  {
    id: 'gauge 10, diameter',
    source: 'a page on wire gauges, worked for gauge 10',
    status: 'read',
    what: 'diameter, mm',
    printed: '2.588',
    computed: () => 1000 * diameter({ gauge: 10 }),
  },
  {
    id: 'gauge 10, area',
    source: 'a page on wire gauges, worked for gauge 10',
    status: 'read',
    what: 'cross-section, mm²',
    printed: '5.261',
    computed: () => 1e6 * through('wire.gauge', 'area')({ gauge: 10 }),
  },
  ...(
    [
      [-3, '0.4600'],
      [10, '0.1019'],
      [12, '0.0808'],
      [14, '0.0641'],
      [16, '0.0508'],
      [36, '0.0050'],
    ] as const
  ).map(
    ([gauge, printed]): MechanicsCheck => ({
      id: `gauge ${gauge === -3 ? '0000' : gauge}, inches`,
      source: GAUGES,
      status: 'read',
      what: 'diameter, in',
      printed,
      computed: () => diameter({ gauge }) / 0.0254,
    }),
  ),
  ...(
    [
      [10, '3.277'],
      [14, '8.285'],
      [18, '20.948'],
      [24, '84.213'],
    ] as const
  ).map(
    ([gauge, printed]): MechanicsCheck => ({
      id: `gauge ${gauge}, resistance`,
      source:
        'independent computation from diameter and annealed copper, 1.7241e-8 Ω·m; handbooks agree to 0.2 %',
      status: 'independent',
      what: 'resistance of one wire, Ω/km',
      printed,
      computed: () =>
        through(
          'wire.drop',
          'resistance',
        )({ length: 500, area: through('wire.gauge', 'area')({ gauge }), current: 0 }),
    }),
  ),
  {
    id: 'lamp 20 m away on 12 V',
    source: 'a page on solar wiring: 1 A through 20 m of 1.3 mm², 0.01785 Ω·mm²/m',
    status: 'read',
    what: 'drop there and back, V',
    printed: '0.549',
    computed: () =>
      through('wire.drop', 'drop')({ length: 20, area: 1.3e-6, current: 1, resistivity: 1.785e-8 }),
  },
  {
    id: 'capacitor charged to 89 %',
    source: 'an answer of a tutors’ page, no. 349199: 0.02 F through 350 Ω',
    status: 'read',
    what: 'time, s',
    printed: '15',
    computed: () => preChargeTime({ resistance: 350, capacitance: 0.02, voltage: 1, share: 0.89 }),
  },
  {
    id: 'capacitor charged to 90 %',
    source: 'a worked textbook question: 10 V, 2.0 MΩ and 3.0 µF',
    status: 'read',
    what: 'time, s',
    printed: '14',
    computed: () => preChargeTime({ resistance: 2e6, capacitance: 3e-6, voltage: 10, share: 0.9 }),
  },
  {
    id: 'pre-charge to 90 %',
    source: 'independent computation: −ln 0.1',
    status: 'independent',
    what: 'time over R C',
    printed: '2.30',
    computed: () => preChargeTime({ resistance: 1, capacitance: 1, voltage: 1 }),
  },
  {
    id: 'pre-charge to 95 %',
    source: 'independent computation: −ln 0.05',
    status: 'independent',
    what: 'time over R C',
    printed: '3.00',
    computed: () => preChargeTime({ resistance: 1, capacitance: 1, voltage: 1, share: 0.95 }),
  },
  {
    id: 'battery of 9.00 V that reads 8.00 V under 1.40 Ω',
    source: 'a worked question on internal resistance (statement read); solved by independent computation',
    status: 'independent',
    what: 'internal resistance, Ω',
    printed: '0.175',
    computed: () => {
      const voltage = through('power.stall', 'voltage');
      const drop = (packResistance: number): number =>
        9 - voltage({ restVoltage: 9, packResistance, motorResistance: 1.4 });
      return solveRising(drop, 1, 0, 10);
    },
  },
  {
    id: 'inrush without pre-charge',
    source: 'independent computation: 25.2 V over 0.05 Ω',
    status: 'independent',
    what: 'current, A',
    printed: '504',
    computed: () => through('power.inrush', 'current')({ voltage: 25.2, resistance: 0.05 }),
  },
];
