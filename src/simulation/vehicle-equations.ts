/**
 * The equations of motion of the vehicle and its gimbal, with the ballast moving in a way that is already known.
 *
 *   P = J φ̇ − m_b (z ė − e ż) + H sin α,   J = I₀ + m_b (e² + z²)
 *   Ṗ = g_n (M sin φ − m_b e cos φ) + a (M cos φ + m_b e sin φ) + T,   M = M₀ + m_b z
 *   I_g α̈ = H (φ̇ cos α − ψ̇ sin α) − c α̇ − k α − F sign α̇
 *
 * φ lean, e offset of the ballast counted against it, z its height, α gimbal tilt, g_n and a what gravity, slope and turn
 * come to square to the road and along it, ψ̇ the yaw rate, positive to the left.
 *
 * P is the whole angular momentum about the roll axis. With P for a state instead of φ̇ the ballast's acceleration drops
 * out, so that a ballast that starts or stops at a blow changes φ̇ by just what it should, and a rotor that loses speed
 * hands Ḣ sin α to the vehicle without a term of its own. With H constant the equations are
 *
 *   J φ̈ + 2 m_b (e ė + z ż) φ̇ = g (M sin φ − m_b e cos φ) + m_b (z ë − e z̈) − H cos α α̇ + T
 *
 * Source: Lagrange's equations for the vehicle with its ballast; angular momentum of the rotor about roll and tilt axis.
 */
import type { Loads } from './loads.ts';
import type { StepCoefficients } from './step-coefficients.ts';
import type { CompleteModel } from './vehicle.ts';

/** The states that are integrated, by their place. */
export const LEAN = 0;
export const MOMENTUM = 1;
export const TILT = 2;
export const TILT_RATE = 3;
export const STATES = 4;

/** Where in the step something is asked for: at its start, its middle or its end. */
export type Stage = 0 | 1 | 2;

/** How the gimbal is held, as its contact has it. */
export interface GimbalHold {
  readonly held: boolean;
  /** Side to which it moves, for its dry friction; 0 where there is none. */
  readonly direction: number;
}

/** Position and rate of the ballast at the three stages of a step: rad on an arm, m on a slide. */
export interface BallastCarrier {
  readonly ballast: Float64Array;
  readonly ballastRate: Float64Array;
}

/** H, N·m·s, at the three stages of a step. */
export interface Rotor {
  readonly momentum: Float64Array;
}

/** A vehicle, what acts on it, and where its ballast and its rotor are at the stages of the step. */
export interface VehicleSystem {
  readonly firstMomentWithout: number;
  readonly rollInertiaWithout: number;
  readonly ballastMass: number;
  readonly driveHeight: number;
  readonly armLength: number;
  /** 1 upright arm, −1 hanging, 0 slide. */
  readonly arm: number;
  readonly byGimbalInertia: number;
  readonly gimbalFriction: number;
  readonly gimbalCentring: number;
  readonly gimbalDryFriction: number;
  readonly loads: Loads;
  readonly hold: GimbalHold;
  /** See the places below; three stages one after the other. */
  readonly stages: Float64Array;
  /** A lean, a tilt and an angle of the arm close by, each with its sine and cosine. */
  readonly base: Float64Array;
}

const BY_INERTIA = 0;
const SWEEP = 1;
const BY_SINE = 2;
const BY_COSINE = 3;
const SPIN = 4;
const WIDTH = 5;

const BASE_LEAN = 0;
const LEAN_SINE = 1;
const LEAN_COSINE = 2;
const BASE_TILT = 3;
const TILT_SINE = 4;
const TILT_COSINE = 5;
const BASE_ARM = 6;
const ARM_SINE = 7;
const ARM_COSINE = 8;

export function vehicleSystem(
  { drive, vehicle }: Pick<CompleteModel, 'drive' | 'vehicle'>,
  loads: Loads,
  hold: GimbalHold,
): VehicleSystem {
  return {
    firstMomentWithout: vehicle.firstMomentWithout,
    rollInertiaWithout: vehicle.rollInertiaWithout,
    ballastMass: vehicle.ballastMass,
    driveHeight: vehicle.driveHeight,
    armLength: vehicle.armLength,
    arm: drive === 'slide' ? 0 : drive === 'upright arm' ? 1 : -1,
    byGimbalInertia: vehicle.gimbalInertia > 0 ? 1 / vehicle.gimbalInertia : 0,
    gimbalFriction: vehicle.gimbalFriction,
    gimbalCentring: vehicle.gimbalCentring,
    gimbalDryFriction: vehicle.gimbalDryFriction,
    loads,
    hold,
    stages: new Float64Array(3 * WIDTH),
    base: Float64Array.of(0, 0, 1, 0, 0, 1, 0, 0, 1),
  };
}

// a division takes several times as long as a product
const ONE_SIXTH = 1 / 6;
const ONE_24TH = 1 / 24;
const ONE_120TH = 1 / 120;
const ONE_720TH = 1 / 720;
const ONE_5040TH = 1 / 5040;
const ONE_40320TH = 1 / 40320;

/**
 * rad: the sines follow from those of an angle close by, which is kept until the state has moved away from it,
 *
 *   sin(x + δ) = sin x cos δ + cos x sin δ,  cos δ and sin δ by their series, remainder below 10⁻¹⁶ for |δ| ≤ 0.06:
 *
 * a run asks for tens of them a step, and the sines themselves would take most of its time.
 */
const NEAR = 0.06;

/** Puts ballast and rotor where they are at a stage of the step. */
export function place(system: VehicleSystem, stage: Stage, carrier: BallastCarrier, rotor: Rotor): void {
  const { stages, base, loads, driveHeight, armLength, arm, ballastMass } = system;
  const ballast = carrier.ballast[stage] ?? 0;
  const ballastRate = carrier.ballastRate[stage] ?? 0;
  let offset = ballast;
  let height = driveHeight;
  let sweep = driveHeight * ballastRate; // z ė − e ż
  if (arm !== 0) {
    let turned = ballast - (base[BASE_ARM] ?? 0);
    if (!(turned < NEAR && turned > -NEAR)) {
      base[BASE_ARM] = ballast;
      base[ARM_SINE] = Math.sin(ballast);
      base[ARM_COSINE] = Math.cos(ballast);
      turned = 0;
    }
    const t2 = turned * turned;
    const t4 = t2 * t2;
    const cosTurned = 1 - 0.5 * t2 + t4 * (ONE_24TH - t2 * ONE_720TH + t4 * ONE_40320TH);
    const sinTurned = turned * (1 - t2 * ONE_SIXTH + t4 * (ONE_120TH - t2 * ONE_5040TH));
    const armSine = base[ARM_SINE] ?? 0;
    const armCosine = base[ARM_COSINE] ?? 0;
    const along = armLength * (armCosine * cosTurned - armSine * sinTurned);
    offset = armLength * (armSine * cosTurned + armCosine * sinTurned);
    height = driveHeight + arm * along;
    sweep = (driveHeight * along + arm * armLength * armLength) * ballastRate;
  }
  const moment = system.firstMomentWithout + ballastMass * height;
  const off = ballastMass * offset;
  const at = WIDTH * stage;
  stages[at + BY_INERTIA] =
    1 / (system.rollInertiaWithout + ballastMass * (offset * offset + height * height));
  stages[at + SWEEP] = ballastMass * sweep;
  stages[at + BY_SINE] = loads.downwards * moment + loads.sideways * off;
  stages[at + BY_COSINE] = loads.sideways * moment - loads.downwards * off;
  stages[at + SPIN] = rotor.momentum[stage] ?? 0;
}

/** A state and its rates of change, and what they are a step later. */
export interface VehicleStep {
  readonly now: Float64Array;
  readonly rates: Float64Array;
  /** Whether `rates` are those of `now`: those found at the end of a step serve the next. */
  readonly ratesKnown: boolean;
  readonly next: Float64Array;
  readonly nextRates: Float64Array;
}

/**
 * One step of the equations above by the classical Runge–Kutta method of fourth order.
 *
 *   y₁ = y₀ + h/6 (k₁ + 2 k₂ + 2 k₃ + k₄)
 *   k₁ = f(y₀),  k₂ = f(y₀ + h k₁/2),  k₃ = f(y₀ + h k₂/2),  k₄ = f(y₀ + h k₃)
 *
 * Error over a given time in proportion to h⁴; a decay of rate λ is followed for h λ < 2.785. Method and equations are one
 * loop without arrays between its stages, because a run is nothing but this.
 *
 * Ballast and rotor have to be placed at all three stages. Writes `next` and `nextRates`, and `rates` where unknown.
 * Source: W. Kutta, Z. Math. Phys. 46 (1901) 435.
 */
export function stepVehicle(
  system: VehicleSystem,
  { now, rates, ratesKnown, next, nextRates }: VehicleStep,
  { step }: StepCoefficients,
): void {
  const { stages, base, loads, gimbalFriction, gimbalCentring } = system;
  const { moment, yawRate } = loads;
  const dryFriction = system.gimbalDryFriction * system.hold.direction;
  const byInertia = system.hold.held ? 0 : system.byGimbalInertia;
  const lean0 = now[LEAN] ?? 0;
  const momentum0 = now[MOMENTUM] ?? 0;
  const tilt0 = now[TILT] ?? 0;
  const tiltRate0 = now[TILT_RATE] ?? 0;
  let baseLean = base[BASE_LEAN] ?? 0;
  let baseTilt = base[BASE_TILT] ?? 0;
  let leanSine = base[LEAN_SINE] ?? 0;
  let leanCosine = base[LEAN_COSINE] ?? 0;
  let tiltSine = base[TILT_SINE] ?? 0;
  let tiltCosine = base[TILT_COSINE] ?? 0;
  // k of the stage before, and k₁ + 2 k₂ + 2 k₃ + k₄ so far
  let kLean = rates[LEAN] ?? 0;
  let kMomentum = rates[MOMENTUM] ?? 0;
  let kTilt = rates[TILT] ?? 0;
  let kTiltRate = rates[TILT_RATE] ?? 0;
  let sumLean = kLean;
  let sumMomentum = kMomentum;
  let sumTilt = kTilt;
  let sumTiltRate = kTiltRate;

  for (let k = ratesKnown ? 2 : 1; k <= 5; k++) {
    let lean = lean0;
    let momentum = momentum0;
    let tilt = tilt0;
    let tiltRate = tiltRate0;
    if (k === 5) {
      const sixth = step * ONE_SIXTH;
      lean += sixth * sumLean;
      momentum += sixth * sumMomentum;
      tilt += sixth * sumTilt;
      tiltRate += sixth * sumTiltRate;
    } else if (k > 1) {
      const part = k === 4 ? step : 0.5 * step;
      lean += part * kLean;
      momentum += part * kMomentum;
      tilt += part * kTilt;
      tiltRate += part * kTiltRate;
    }
    let leant = lean - baseLean;
    let tilted = tilt - baseTilt;
    if (!(leant < NEAR && leant > -NEAR && tilted < NEAR && tilted > -NEAR)) {
      baseLean = lean;
      baseTilt = tilt;
      leanSine = Math.sin(lean);
      leanCosine = Math.cos(lean);
      tiltSine = Math.sin(tilt);
      tiltCosine = Math.cos(tilt);
      leant = 0;
      tilted = 0;
      base[BASE_LEAN] = baseLean;
      base[LEAN_SINE] = leanSine;
      base[LEAN_COSINE] = leanCosine;
      base[BASE_TILT] = baseTilt;
      base[TILT_SINE] = tiltSine;
      base[TILT_COSINE] = tiltCosine;
    }
    const l2 = leant * leant;
    const l4 = l2 * l2;
    const cosLeant = 1 - 0.5 * l2 + l4 * (ONE_24TH - l2 * ONE_720TH + l4 * ONE_40320TH);
    const sinLeant = leant * (1 - l2 * ONE_SIXTH + l4 * (ONE_120TH - l2 * ONE_5040TH));
    const t2 = tilted * tilted;
    const t4 = t2 * t2;
    const cosTilted = 1 - 0.5 * t2 + t4 * (ONE_24TH - t2 * ONE_720TH + t4 * ONE_40320TH);
    const sinTilted = tilted * (1 - t2 * ONE_SIXTH + t4 * (ONE_120TH - t2 * ONE_5040TH));
    const sinTilt = tiltSine * cosTilted + tiltCosine * sinTilted;
    const cosTilt = tiltCosine * cosTilted - tiltSine * sinTilted;

    const at = k === 1 ? 0 : k < 4 ? WIDTH : 2 * WIDTH;
    const spin = stages[at + SPIN] ?? 0;
    kLean = (momentum + (stages[at + SWEEP] ?? 0) - spin * sinTilt) * (stages[at + BY_INERTIA] ?? 0);
    kMomentum =
      (stages[at + BY_SINE] ?? 0) * (leanSine * cosLeant + leanCosine * sinLeant) +
      (stages[at + BY_COSINE] ?? 0) * (leanCosine * cosLeant - leanSine * sinLeant) +
      moment;
    kTilt = tiltRate;
    kTiltRate =
      byInertia *
      (spin * (kLean * cosTilt - yawRate * sinTilt) -
        gimbalFriction * tiltRate -
        gimbalCentring * tilt -
        dryFriction);

    if (k === 5) {
      next[LEAN] = lean;
      next[MOMENTUM] = momentum;
      next[TILT] = tilt;
      next[TILT_RATE] = tiltRate;
      nextRates[LEAN] = kLean;
      nextRates[MOMENTUM] = kMomentum;
      nextRates[TILT] = kTilt;
      nextRates[TILT_RATE] = kTiltRate;
    } else if (k === 1) {
      sumLean = kLean;
      sumMomentum = kMomentum;
      sumTilt = kTilt;
      sumTiltRate = kTiltRate;
      rates[LEAN] = kLean;
      rates[MOMENTUM] = kMomentum;
      rates[TILT] = kTilt;
      rates[TILT_RATE] = kTiltRate;
    } else {
      const weight = k === 4 ? 1 : 2;
      sumLean += weight * kLean;
      sumMomentum += weight * kMomentum;
      sumTilt += weight * kTilt;
      sumTiltRate += weight * kTiltRate;
    }
  }
}

/** φ̇ that belongs to a state. */
export function leanRateOf({ stages }: VehicleSystem, state: Float64Array, stage: Stage): number {
  const at = WIDTH * stage;
  const spin = (stages[at + SPIN] ?? 0) * Math.sin(state[TILT] ?? 0);
  return ((state[MOMENTUM] ?? 0) + (stages[at + SWEEP] ?? 0) - spin) * (stages[at + BY_INERTIA] ?? 0);
}

/** P that belongs to a lean rate at the start of a step. */
export function momentumOf({ stages }: VehicleSystem, leanRate: number, tilt: number): number {
  return leanRate / (stages[BY_INERTIA] ?? 0) - (stages[SWEEP] ?? 0) + (stages[SPIN] ?? 0) * Math.sin(tilt);
}

/** Moment about the tilt axis on a gimbal at rest: what dry friction or a stop has to hold. */
export function tiltMoment(system: VehicleSystem, state: Float64Array, stage: Stage): number {
  const tilt = state[TILT] ?? 0;
  const turned = leanRateOf(system, state, stage) * Math.cos(tilt) - system.loads.yawRate * Math.sin(tilt);
  return (system.stages[WIDTH * stage + SPIN] ?? 0) * turned - system.gimbalCentring * tilt;
}
