/** Packs against published figures. */
import { describe, it } from 'vitest';
import { cellVoltages, cRate, packEnergy, packSag, packVoltage, runTime } from '../../src/mechanics/index.ts';
import { expectPrinted, type PublishedCheck } from './printed.ts';

const MIT =
  'MIT course 2.007, battery safety: 2 cells, 0.5 A·h, 0.14 Ω, 7.5 A at most, window 6.0 V to 8.4 V';
const ampereHours = (capacity: number): number => capacity * 3600;
const wattHours = (energy: number): number => energy / 3600;
const lithiumIon = cellVoltages['lithium-ion'];

const checks: readonly PublishedCheck[] = [
  {
    id: 'course pack, full',
    source: MIT,
    what: 'highest voltage of two cells, V',
    printed: '8.4',
    computed: () => packVoltage({ cells: 2, cellVoltage: lithiumIon.full.value }),
  },
  {
    id: 'course pack, empty',
    source: MIT,
    what: 'lowest voltage of two cells, V',
    printed: '6.0',
    computed: () => packVoltage({ cells: 2, cellVoltage: lithiumIon.restMinimum.value }),
  },
  {
    id: 'course pack, sag',
    source: `${MIT}; product by independent computation`,
    what: 'sag at the largest current, V',
    printed: '1.05',
    computed: () => packSag({ current: 7.5, resistance: 0.14 }),
  },
  {
    id: 'course pack, from 7.0 V at rest',
    source: `${MIT}; difference by independent computation`,
    what: 'voltage under load, V',
    printed: '5.95',
    computed: () => packVoltage({ cells: 2, cellVoltage: 3.5 }) - packSag({ current: 7.5, resistance: 0.14 }),
  },
  {
    id: 'four iron phosphate cells',
    source: 'Charger maker’s application note: 4 cells regulate at 14.4 V, 3.60 V a cell',
    what: 'voltage, V',
    printed: '14.4',
    computed: () => packVoltage({ cells: 4, cellVoltage: 3.6 }),
  },
  {
    id: 'nominal voltage of two cells',
    source: 'US DOT, letter of interpretation on a pack of 2 cells, 7.4 V, 1100 mA·h',
    what: 'nominal voltage, V',
    printed: '7.4',
    computed: () => packVoltage({ cells: 2, cellVoltage: lithiumIon.nominal.value }),
  },
  {
    id: 'rated energy of two cells',
    source: 'US DOT, the same letter; product by independent computation',
    what: 'energy, W·h',
    printed: '8.14',
    computed: () => wattHours(packEnergy({ capacity: ampereHours(1.1), nominalVoltage: 7.4 })),
  },
  {
    id: 'tool pack that may fly',
    source: 'Shipping guide, worked example: 20 V, 1.3 A·h',
    what: 'energy, W·h',
    printed: '26',
    computed: () => wattHours(packEnergy({ capacity: ampereHours(1.3), nominalVoltage: 20 })),
  },
  {
    id: 'tool pack that may not fly',
    source: 'Shipping guide, worked example: 20 V, 6 A·h',
    what: 'energy, W·h',
    printed: '120',
    computed: () => wattHours(packEnergy({ capacity: ampereHours(6), nominalVoltage: 20 })),
  },
  {
    id: 'C-rate',
    source: 'University of Tartu, robotics course 2025: 1 A·h at 10C gives 10 A',
    what: 'C-rate of 10 A, 1/h',
    printed: '10',
    computed: () => cRate({ current: 10, capacity: ampereHours(1) }) * 3600,
  },
  {
    id: 'C-rate as a time',
    source: 'University of Tartu, the same; time by independent computation',
    what: 'run time of 1 A·h at 10C, min',
    printed: '6',
    computed: () => runTime({ capacity: ampereHours(1), usableShare: 1, meanCurrent: 10 }) / 60,
  },
];

describe('packs as published', () => {
  it.each(checks)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});
