/**
 * A second opinion on motion: the equations of the vehicle as they are usually written, in φ̈ and with the ballast's
 * acceleration, and a plain Runge–Kutta method for any equations. Slow, and shares nothing with the simulation.
 */
import type { MotionState, SimulationModel } from '../../src/simulation/index.ts';
import { workedController, workedHardware } from './balance-loop.ts';

/** The worked loop as a whole vehicle: travel far beyond what it uses. */
export const workedVehicle: SimulationModel = {
  drive: 'slide',
  vehicle: {
    firstMomentWithout: 0.42,
    rollInertiaWithout: 0.085,
    ballastMass: workedHardware.ballastMass,
    driveHeight: workedHardware.ballastHeight,
    travel: 0.08,
    naturalFrequency: workedHardware.naturalFrequency,
    dampingRatio: workedHardware.dampingRatio,
    spinMomentum: workedHardware.spinMomentum,
    gimbalInertia: workedHardware.gimbalInertia,
    gimbalFriction: workedHardware.gimbalFriction,
    gimbalCentring: workedHardware.gimbalCentring,
  },
  sensors: { lag: workedHardware.sensorLag },
  controller: workedController,
};

/** The same without a controller: what happens, happens. */
export function unattended(model: SimulationModel): SimulationModel {
  return { ...model, controller: { ...model.controller, leanGain: 0, rateGain: 0, gimbalGain: 0 } };
}

export type Equations = (state: readonly number[], time: number) => number[];

/** y at the end of so many equal steps. */
export function integrate(f: Equations, start: readonly number[], duration: number, steps: number): number[] {
  const h = duration / steps;
  const along = (y: readonly number[], k: readonly number[], part: number): number[] =>
    y.map((value, i) => value + part * (k[i] ?? 0));
  let y = [...start];
  for (let step = 0; step < steps; step++) {
    const t = step * h;
    const k1 = f(y, t);
    const k2 = f(along(y, k1, h / 2), t + h / 2);
    const k3 = f(along(y, k2, h / 2), t + h / 2);
    const k4 = f(along(y, k3, h), t + h);
    y = y.map(
      (value, i) => value + (h / 6) * ((k1[i] ?? 0) + 2 * (k2[i] ?? 0) + 2 * (k3[i] ?? 0) + (k4[i] ?? 0)),
    );
  }
  return y;
}

export interface OutsideLoads {
  readonly gravity: number;
  /** m/s² along the level, to the right. */
  readonly sideways?: number;
  readonly slope?: number;
  readonly yawRate?: number;
  readonly moment?: number;
}

/**
 * φ, φ̇, α, α̇, q, q̇ with the drive going to a position:
 *
 *   [I₀ + m_b(e² + z²)] φ̈ + 2 m_b (e ė + z ż) φ̇ = moments of weight and inertia forces + m_b (z ë − e z̈) − H cos α α̇ + T
 *   I_g α̈ = H (cos α φ̇ − sin α ψ̇) − c α̇ − k α
 */
export function vehicleEquations(model: SimulationModel, target: number, loads: OutsideLoads): Equations {
  const { vehicle: v, drive } = model;
  const [H, Ig, c, k] = [
    v.spinMomentum ?? 0,
    v.gimbalInertia ?? 1,
    v.gimbalFriction ?? 0,
    v.gimbalCentring ?? 0,
  ];
  const { gravity, sideways = 0, slope = 0, yawRate = 0, moment = 0 } = loads;
  const L = v.armLength ?? 1;
  const d = drive === 'upright arm' ? 1 : -1;
  const m = v.ballastMass;
  return ([phi = 0, phiRate = 0, alpha = 0, alphaRate = 0, q = 0, qRate = 0]) => {
    const qq = v.naturalFrequency ** 2 * (target - q) - 2 * v.dampingRatio * v.naturalFrequency * qRate;
    const slide = drive === 'slide';
    const e = slide ? q : L * Math.sin(q);
    const ed = slide ? qRate : L * Math.cos(q) * qRate;
    const edd = slide ? qq : L * (Math.cos(q) * qq - Math.sin(q) * qRate ** 2);
    const z = slide ? v.driveHeight : v.driveHeight + d * L * Math.cos(q);
    const zd = slide ? 0 : -d * L * Math.sin(q) * qRate;
    const zdd = slide ? 0 : -d * L * (Math.sin(q) * qq + Math.cos(q) * qRate ** 2);
    const M = v.firstMomentWithout + m * z;
    // weight and inertia force at the lean from the vertical
    const psi = phi + slope;
    const weight = gravity * (M * Math.sin(psi) - m * e * Math.cos(psi));
    const thrown = sideways * (M * Math.cos(psi) + m * e * Math.sin(psi));
    const phiAcceleration =
      (weight +
        thrown +
        moment +
        m * (z * edd - e * zdd) -
        H * Math.cos(alpha) * alphaRate -
        2 * m * (e * ed + z * zd) * phiRate) /
      (v.rollInertiaWithout + m * (e * e + z * z));
    const alphaAcceleration =
      (H * (Math.cos(alpha) * phiRate - Math.sin(alpha) * yawRate) - c * alphaRate - k * alpha) / Ig;
    return [phiRate, phiAcceleration, alphaRate, alphaAcceleration, qRate, qq];
  };
}

export function asList(state: MotionState): number[] {
  const { lean, leanRate, gimbalTilt, gimbalRate, ballastPosition, ballastRate } = state;
  return [lean, leanRate, gimbalTilt, gimbalRate, ballastPosition, ballastRate];
}
