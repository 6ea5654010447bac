/**
 * Materials that rotors are turned from, to start from until the certificate of the bar at hand is read. Where sources
 * or tempers differ, the figure on the safe side for strength is taken: the lowest yield strength, the higher density,
 * the higher Poisson ratio. Printed plastics are left out: their strength across the layers has no published figure to
 * rely on.
 */

export interface Material {
  readonly name: string;
  /** kg/m³ */
  readonly density: number;
  /** Pa; the lowest of the range */
  readonly yieldStrength: number;
  /** 1 */
  readonly poissonRatio: number;
  readonly source: string;
  /** What the figures leave open. */
  readonly note: string;
}

export const materials: readonly Material[] = [
  {
    name: 'Brass CuZn36Pb3 (C36000, CW603N)',
    density: 8500,
    yieldStrength: 124e6,
    poissonRatio: 0.31,
    source:
      'Fastener maker’s data sheet (124 MPa to 310 MPa by temper, 8490 kg/m³); two mills give 8498 kg/m³',
    note: 'Soft temper; a half-hard bar of 25 mm has 310 MPa. Lists with 8200 kg/m³ are wrong.',
  },
  {
    name: 'Steel S235JR, up to 16 mm thick',
    density: 7850,
    yieldStrength: 235e6,
    poissonRatio: 0.28,
    source: 'EN 10025-2, least yield strength, as given by two materials databases',
    note: 'Thicker stock has less, down to 175 MPa.',
  },
  {
    name: 'Steel A36',
    density: 7850,
    yieldStrength: 250e6,
    poissonRatio: 0.32,
    source: 'Textbook table of material properties (mechanics of materials, appendix C)',
    note: 'Hot rolled.',
  },
  {
    name: 'Stainless steel 304 (1.4301)',
    density: 8000,
    yieldStrength: 205e6,
    poissonRatio: 0.27,
    source:
      'ASTM A240, least yield strength; density of the neighbouring grade 316 (one textbook table has 7860 kg/m³)',
    note: 'Annealed; cold-drawn bar has more.',
  },
  {
    name: 'Aluminium 6061-T6',
    density: 2710,
    yieldStrength: 255e6,
    poissonRatio: 0.35,
    source:
      'Textbook table of material properties (mechanics of materials, appendix C); other tables have 270 MPa and 276 MPa',
    note: 'Falls to about half beside a weld.',
  },
];
