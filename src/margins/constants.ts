/** Figures that nobody measures: the constant of gravity, the cell voltages of a chemistry, and settled noughts. */
import { rateSources } from '../control/index.ts';
import { type CellVoltages, cellVoltages, standardGravity } from '../mechanics/index.ts';
import type { Chemistry, Loop, Revision } from '../notebook/index.ts';
import type { FigureSpec } from './figure.ts';
import type { Situation } from './situation.ts';

export interface ConstantFigure {
  readonly spec: FigureSpec;
  readonly value: number;
  readonly source: string;
}

const CELL_FIGURES: readonly (readonly [name: string, title: string, voltage: keyof CellVoltages])[] = [
  ['cell_full_voltage', 'voltage of a full cell', 'full'],
  ['cell_nominal_voltage', 'nominal voltage of a cell', 'nominal'],
  ['cell_rest_minimum_voltage', 'lowest voltage of a cell at rest', 'restMinimum'],
  ['cell_load_cut_voltage', 'voltage of a cell at which the load is cut', 'loadCut'],
  ['cell_storage_low_voltage', 'lowest storage voltage of a cell', 'storageLow'],
  ['cell_storage_high_voltage', 'highest storage voltage of a cell', 'storageHigh'],
];

function cellFigures(chemistry: Chemistry): ConstantFigure[] {
  return CELL_FIGURES.map(([name, title, voltage]) => ({
    spec: { name, title, unit: 'V', display: 'V', group: 'pack' },
    ...cellVoltages[chemistry][voltage],
  }));
}

const GRAVITY: ConstantFigure = {
  spec: {
    name: 'g_n',
    title: 'standard acceleration of free fall',
    unit: 'm/s²',
    display: 'm/s²',
    group: 'mass',
  },
  value: standardGravity,
  source: '3rd CGPM (1901), exact',
};

function constant(
  name: string,
  title: string,
  unit: string,
  display: string,
  group: FigureSpec['group'],
  value: number,
  source: string,
): ConstantFigure {
  return { spec: { name, title, unit, display, group }, value, source };
}

const ON_CENTRE_LINE = constant(
  'ballast_left_centred',
  'distance of the centred ballast to the left',
  'm',
  'mm',
  'ballast',
  0,
  'the ballast is centred',
);
const ARM_CENTRED = constant(
  'arm_angle_centred',
  'angle of the centred arm',
  'rad',
  '°',
  'ballast',
  0,
  'the ballast is centred',
);
const SLIDE_CENTRED = constant(
  'slide_offset_centred',
  'offset of the centred slide',
  'm',
  'mm',
  'ballast',
  0,
  'the ballast is centred',
);
const armDirection = (upright: boolean): ConstantFigure =>
  constant(
    'arm_direction',
    'direction of the arm (+1 upright, −1 hanging)',
    '1',
    '1',
    'ballast',
    upright ? 1 : -1,
    upright ? 'the arm stands up from its pivot' : 'the arm hangs from its pivot',
  );
const NO_SPIN = constant(
  'spin_momentum',
  'spin momentum of the rotor',
  'N·m·s',
  'N·m·s',
  'rotor',
  0,
  'no rotor in this revision',
);

/** What the rate gain acts on, as the loop's calculation numbers it. */
const rateSource = (source: Loop['rateSource']): ConstantFigure =>
  constant(
    'rate_source',
    'number of the rate source (0 rate gyro, 1 difference of angle, 2 gimbal tilt, 3 gimbal rate)',
    '1',
    '1',
    'loop',
    rateSources.indexOf(source),
    `the loop takes its rate from the ${source}`,
  );

/** The constants that hold for a revision. */
export function constantsOf(revision: Revision, situation: Situation): readonly ConstantFigure[] {
  return [
    GRAVITY,
    ...cellFigures(revision.pack?.chemistry ?? 'lithium-ion'),
    ON_CENTRE_LINE,
    ...(situation.drive === 'arm'
      ? [ARM_CENTRED, armDirection(revision.ballast?.kind === 'upright arm')]
      : []),
    ...(situation.drive === 'slide' ? [SLIDE_CENTRED] : []),
    ...(situation.rotor ? [] : [NO_SPIN]),
    ...(revision.loop ? [rateSource(revision.loop.rateSource)] : []),
  ];
}

/** Every constant that some revision has, once each. */
export const constantSpecs: readonly FigureSpec[] = [
  GRAVITY,
  ...cellFigures('lithium-ion'),
  ON_CENTRE_LINE,
  ARM_CENTRED,
  armDirection(true),
  SLIDE_CENTRED,
  rateSource('rate gyro'),
].map(({ spec }) => spec);
