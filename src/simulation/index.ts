/**
 * `simulation/`: the vehicle in time, with everything that the linear loop leaves out: large leans, stops, dry friction,
 * speed limits, play, noise, pushes, turns, a rotor that runs down. Plain SI numbers in, columns of numbers and the
 * figures read off them out; the same seed gives the same run. Knows the mechanics and the loop, nothing of notebooks or
 * screens.
 */
export type { Disturbance } from './loads.ts';
export type { MotionState } from './motion.ts';
export type { CoastDown } from './rotor-spin.ts';
export { type ColumnName, type Columns, columnNames } from './run-record.ts';
export type { Scenario } from './scenario.ts';
export {
  type Outcome,
  type RunFigures,
  type SimulatedRun,
  type SimulationOptions,
  simulate,
} from './simulate.ts';
export {
  type Proportion,
  probabilityOfStayingUp,
  proportion,
  type Spread,
  type StayingUp,
} from './staying-up.ts';
export {
  type DriveKind,
  linearHardware,
  type SensorFigures,
  type SimulationModel,
  type VehicleFigures,
} from './vehicle.ts';
