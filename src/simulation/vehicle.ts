/**
 * What is simulated: the vehicle with its ballast drive, its gimballed rotor, its sensors and its controller, as plain SI
 * figures, with everything that is not ideal about them. What is left out is ideal: no noise, no play, no stop in reach.
 */
import {
  type BalanceController,
  type BalanceHardware,
  balanceLoop,
  type HardwareFigure,
} from '../control/index.ts';
import {
  DomainError,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../mechanics/index.ts';

export type DriveKind = 'upright arm' | 'hanging arm' | 'slide';

export interface VehicleFigures {
  /** M₀, kg·m, first moment about the ground line without the ballast. */
  readonly firstMomentWithout: number;
  /** I₀, kg·m², roll inertia about the roll axis without the ballast. */
  readonly rollInertiaWithout: number;
  /** m_b, kg. */
  readonly ballastMass: number;
  /** h_p or h_s, m: height of the arm's pivot, or of the ballast on its slide. */
  readonly driveHeight: number;
  /** L, m; arms only. */
  readonly armLength?: number;
  /** θ_m, rad, or s_m, m: to one side; for an arm up to π/2. */
  readonly travel: number;
  /** ω_n, rad/s. */
  readonly naturalFrequency: number;
  /** ζ. */
  readonly dampingRatio: number;
  /** rad/s or m/s: the drive moves no faster; as fast as it likes where left out. */
  readonly noLoadSpeed?: number;
  /** rad or m: the drive takes no notice of an error up to this size, to either side. */
  readonly deadBand?: number;
  /** rad or m: whole width of the play between drive and ballast. */
  readonly backlash?: number;
  /** H, N·m·s; 0 or left out where there is no gimballed rotor. */
  readonly spinMomentum?: number;
  /** I_g, kg·m². */
  readonly gimbalInertia?: number;
  /** c, N·m·s/rad. */
  readonly gimbalFriction?: number;
  /** k, N·m/rad. */
  readonly gimbalCentring?: number;
  /** α_m, rad to either stop, up to π/2. */
  readonly gimbalTravel?: number;
  /** F, N·m, dry friction of the gimbal, the same at rest and moving. */
  readonly gimbalDryFriction?: number;
  /** Speed after the gimbal meets its stop by speed before, 0 (dead, where left out) to 1. */
  readonly gimbalRestitution?: number;
}

export interface SensorFigures {
  /** τ_s, s, of lean and lean rate, first order. */
  readonly lag?: number;
  /** rad, standard deviation of each lean reading. */
  readonly leanNoise?: number;
  /** rad, step of the lean reading. */
  readonly leanResolution?: number;
  /** rad, added to every lean reading: a sensor that is not set square. */
  readonly leanOffset?: number;
  /** The same for the lean rate, rad/s. */
  readonly rateNoise?: number;
  readonly rateResolution?: number;
  readonly rateOffset?: number;
  /** The same for the gimbal tilt, rad. */
  readonly tiltNoise?: number;
  readonly tiltResolution?: number;
  readonly tiltOffset?: number;
}

export interface SimulationModel {
  readonly drive: DriveKind;
  readonly vehicle: VehicleFigures;
  readonly sensors?: SensorFigures;
  readonly controller: BalanceController;
}

/** A model with nothing left out. */
export interface CompleteModel {
  readonly drive: DriveKind;
  readonly vehicle: Required<VehicleFigures>;
  readonly sensors: Required<SensorFigures>;
  readonly controller: BalanceController;
}

/** What a figure is that was left out. */
const idealVehicle = {
  armLength: 1,
  noLoadSpeed: Number.POSITIVE_INFINITY,
  deadBand: 0,
  backlash: 0,
  spinMomentum: 0,
  gimbalInertia: 0,
  gimbalFriction: 0,
  gimbalCentring: 0,
  gimbalTravel: Math.PI / 2,
  gimbalDryFriction: 0,
  gimbalRestitution: 0,
};
const idealSensors: Required<SensorFigures> = {
  lag: 0,
  leanNoise: 0,
  leanResolution: 0,
  leanOffset: 0,
  rateNoise: 0,
  rateResolution: 0,
  rateOffset: 0,
  tiltNoise: 0,
  tiltResolution: 0,
  tiltOffset: 0,
};

/**
 * The model with what was left out filled in, every figure checked.
 *
 * @throws DomainError  that names the figure which is outside its range, or two that contradict each other
 */
export function completeModel(model: SimulationModel): CompleteModel {
  const vehicle = { ...idealVehicle, ...model.vehicle };
  const sensors = { ...idealSensors, ...model.sensors };
  const complete: CompleteModel = { drive: model.drive, vehicle, sensors, controller: model.controller };
  requireVehicle(complete);
  for (const [name, text, unit] of sensorNames) {
    if (name.endsWith('Offset')) requireFinite(text, sensors[name], unit);
    else requireNotNegative(text, sensors[name], unit);
  }
  balanceLoop(linearHardware(complete), model.controller); // refuses what no loop can have, by name
  return complete;
}

/**
 * The same vehicle as the linear analysis takes it: about upright with the ballast centred, without stops, friction,
 * play and noise.
 *
 *   M = M₀ + m_b z_b,  I = I₀ + m_b z_b²,  z_b at the centre of the travel
 */
export function linearHardware(model: SimulationModel): BalanceHardware {
  const vehicle = { ...idealVehicle, ...model.vehicle };
  const arm = model.drive === 'slide' ? 0 : model.drive === 'upright arm' ? 1 : -1;
  const height = vehicle.driveHeight + arm * vehicle.armLength;
  return {
    firstMoment: vehicle.firstMomentWithout + vehicle.ballastMass * height,
    rollInertia: vehicle.rollInertiaWithout + vehicle.ballastMass * height ** 2,
    ballastMass: vehicle.ballastMass,
    ballastHeight: height,
    commandToOffset: arm === 0 ? 1 : vehicle.armLength,
    spinMomentum: vehicle.spinMomentum,
    gimbalInertia: vehicle.gimbalInertia,
    gimbalFriction: vehicle.gimbalFriction,
    gimbalCentring: vehicle.gimbalCentring,
    naturalFrequency: vehicle.naturalFrequency,
    dampingRatio: vehicle.dampingRatio,
    sensorLag: model.sensors?.lag ?? 0,
  } satisfies Record<HardwareFigure, number>;
}

function requireVehicle({ drive, vehicle }: CompleteModel): void {
  const along = drive === 'slide' ? 'm' : 'rad';
  requireFinite('first moment without the ballast', vehicle.firstMomentWithout, 'kg·m');
  requirePositive('roll inertia without the ballast', vehicle.rollInertiaWithout, 'kg·m²');
  requirePositive('ballast mass', vehicle.ballastMass, 'kg');
  requireFinite('height of the drive', vehicle.driveHeight, 'm');
  requirePositive('arm length', vehicle.armLength, 'm');
  requirePositive('travel of the ballast', vehicle.travel, along);
  if (drive !== 'slide') requireBetween('travel of the ballast', vehicle.travel, 0, Math.PI / 2, along);
  if (vehicle.noLoadSpeed !== Number.POSITIVE_INFINITY) {
    requirePositive('no-load speed of the drive', vehicle.noLoadSpeed, `${along}/s`);
  }
  requireNotNegative('dead band of the drive', vehicle.deadBand, along);
  requireNotNegative('backlash of the drive', vehicle.backlash, along);
  requireLess('dead band of the drive', vehicle.deadBand, vehicle.travel, along);
  requireLess('backlash of the drive', vehicle.backlash, vehicle.travel, along);
  requirePositive('gimbal travel', vehicle.gimbalTravel, 'rad');
  requireBetween('gimbal travel', vehicle.gimbalTravel, 0, Math.PI / 2, 'rad');
  requireNotNegative('dry friction of the gimbal', vehicle.gimbalDryFriction, 'N·m');
  requireBetween('restitution of the gimbal stop', vehicle.gimbalRestitution, 0, 1, '1');
}

function requireLess(quantity: string, value: number, travel: number, unit: string): void {
  if (value < travel) return;
  throw new DomainError(quantity, value, 'it has to be less than the travel of the ballast', unit);
}

const sensorNames: readonly (readonly [keyof SensorFigures, string, string])[] = [
  ['lag', 'lag of the sensors', 's'],
  ['leanNoise', 'noise of the lean', 'rad'],
  ['leanResolution', 'resolution of the lean', 'rad'],
  ['leanOffset', 'offset of the lean', 'rad'],
  ['rateNoise', 'noise of the lean rate', 'rad/s'],
  ['rateResolution', 'resolution of the lean rate', 'rad/s'],
  ['rateOffset', 'offset of the lean rate', 'rad/s'],
  ['tiltNoise', 'noise of the gimbal tilt', 'rad'],
  ['tiltResolution', 'resolution of the gimbal tilt', 'rad'],
  ['tiltOffset', 'offset of the gimbal tilt', 'rad'],
];
