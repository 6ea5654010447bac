/**
 * Voltages of one cell by chemistry, V, each with where it comes from. Data, not advice: the maker's sheet of the cell
 * at hand comes first. Where sources differ the value that stops earlier is taken.
 */

export type CellChemistry = 'lithium-ion' | 'lithium iron phosphate';

export interface CellVoltage {
  /** V of one cell. */
  readonly value: number;
  readonly source: string;
}

export interface CellVoltages {
  /** At full charge; nothing charges beyond it. */
  readonly full: CellVoltage;
  /** What the rated energy is worked with. */
  readonly nominal: CellVoltage;
  /** Below it at rest the pack is put aside. */
  readonly restMinimum: CellVoltage;
  /** Below it under load the run ends. */
  readonly loadCut: CellVoltage;
  readonly storageLow: CellVoltage;
  readonly storageHigh: CellVoltage;
}

const tartu = 'University of Tartu, robotics course 2025, batteries';
const lithiumIronPages = 'Two makers’ and dealers’ pages that agree; low authority';

export const cellVoltages: Readonly<Record<CellChemistry, CellVoltages>> = {
  'lithium-ion': {
    full: { value: 4.2, source: `University of Washington EH&S, lithium battery practices; ${tartu}` },
    nominal: { value: 3.7, source: `${tartu}; cells are also labelled 3.6 V, 3 % less energy` },
    restMinimum: {
      value: 3.0,
      source:
        'University of Washington EH&S (over-discharge line); Duke University combat robotics, 2025 (quarantine)',
    },
    loadCut: { value: 3.3, source: 'Project choice; default hard cut of an open motor controller' },
    storageLow: {
      value: 3.7,
      source: 'University of Maryland robotics facility, rules for lithium polymer packs',
    },
    storageHigh: {
      value: 3.85,
      source: 'Project choice; University of Maryland robotics facility says 3.8 V, about half charge',
    },
  },
  'lithium iron phosphate': {
    full: { value: 3.65, source: `${lithiumIronPages}; a charger maker’s note regulates at 3.60 V` },
    nominal: { value: 3.2, source: 'A dealer’s page; low authority' },
    restMinimum: { value: 2.5, source: `${lithiumIronPages} (2.5 V to 2.8 V)` },
    loadCut: { value: 2.5, source: `${lithiumIronPages} (2.5 V to 2.8 V)` },
    storageLow: { value: 3.25, source: 'Project choice: about half charge at rest' },
    storageHigh: { value: 3.35, source: `${lithiumIronPages} (half charge at 3.27 V to 3.35 V)` },
  },
};
