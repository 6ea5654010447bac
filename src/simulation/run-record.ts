/** The time series of a run: one column of numbers for each quantity, one row for each sample. */
import { leanRate as leanRateNow, type Motion } from './motion.ts';
import type { SampledController } from './sampled-controller.ts';
import { LEAN, TILT, TILT_RATE } from './vehicle-equations.ts';

export const columnNames = [
  'time',
  'lean',
  'leanRate',
  'gimbalTilt',
  'gimbalRate',
  'ballastPosition',
  'command',
  'leanReading',
  'rateReading',
  'spinMomentum',
] as const;
export type ColumnName = (typeof columnNames)[number];
export type Columns = Readonly<Record<ColumnName, Float64Array>>;

export interface RunRecord {
  /** One more row. */
  write(motion: Motion, controller: SampledController): void;
  /** The rows written so far. */
  columns(): Columns;
}

/** @param rows  how many there will be at most */
export function runRecord(rows: number): RunRecord {
  const kept = columnNames.map(() => new Float64Array(rows));
  const [time, lean, leanRate, tilt, tiltRate, ballast, command, leanReading, rateReading, spin] = kept as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let row = 0;
  return {
    write(motion, controller) {
      time[row] = motion.time;
      lean[row] = motion.now[LEAN] ?? 0;
      leanRate[row] = leanRateNow(motion);
      tilt[row] = motion.now[TILT] ?? 0;
      tiltRate[row] = motion.now[TILT_RATE] ?? 0;
      ballast[row] = motion.drive.ballast[0] ?? 0;
      command[row] = controller.command;
      leanReading[row] = controller.leanReading;
      rateReading[row] = controller.rateReading;
      spin[row] = motion.spin.momentum[0] ?? 0;
      row++;
    },
    columns: () =>
      Object.fromEntries(columnNames.map((name, i) => [name, kept[i]?.subarray(0, row)])) as Columns,
  };
}
