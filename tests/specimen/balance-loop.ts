/** Balance loops to test with: the worked case, and as many others as are wanted, always the same ones. */
import { type BalanceController, type BalanceHardware, rateSources } from '../../src/control/index.ts';

/** Ballast slide on a vehicle with a sprung gimbal; its results were computed independently of this project. */
export const workedHardware: BalanceHardware = {
  firstMoment: 0.42 + 0.9 * 0.08,
  rollInertia: 0.085 + 0.9 * 0.08 ** 2,
  ballastMass: 0.9,
  ballastHeight: 0.08,
  commandToOffset: 1,
  spinMomentum: 0.55,
  gimbalInertia: 9e-4,
  gimbalFriction: 0.005,
  gimbalCentring: 0.15,
  naturalFrequency: 32,
  dampingRatio: 0.85,
  sensorLag: 0.008,
};

export const workedController: BalanceController = {
  sampleTime: 0.005,
  delay: 0.018,
  leanGain: 0.95,
  rateGain: 0.04,
  gimbalGain: 0.14,
  rateSource: 'rate gyro',
};

/** Pulls all gains by one factor. */
export function scaled(controller: BalanceController, factor: number): BalanceController {
  return {
    ...controller,
    leanGain: controller.leanGain * factor,
    rateGain: controller.rateGain * factor,
    gimbalGain: controller.gimbalGain * factor,
  };
}

/** Numbers in [0, 1) that look random and are the same every time (a linear congruence, constants of Knuth's). */
export function repeatable(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

export interface LoopCase {
  readonly hardware: BalanceHardware;
  readonly controller: BalanceController;
}

/** Any vehicle from a toy to a child's bicycle, with any rotor, gimbal, drive, sensors and gains: mostly unstable. */
export function someLoop(random: () => number): LoopCase {
  const between = (low: number, high: number): number => low * (high / low) ** random();
  const firstMoment = between(0.05, 5);
  const height = between(0.05, 0.5);
  const kind = Math.floor(random() * 6);
  const hardware: BalanceHardware = {
    firstMoment,
    rollInertia: firstMoment * height * (1 + random()),
    ballastMass: (firstMoment * between(0.5, 3)) / height / 3,
    ballastHeight: (random() * 1.2 - 0.2) * height,
    commandToOffset: random() < 0.5 ? 1 : between(0.03, 0.3),
    spinMomentum: kind === 0 ? 0 : between(0.2, 4) * Math.sqrt(0.01 * firstMoment),
    gimbalInertia: between(3e-4, 3e-3),
    gimbalFriction: kind === 1 ? 0 : between(1e-4, 0.3),
    gimbalCentring: kind <= 3 ? 0 : kind === 4 ? between(0.001, 1) : -between(0.001, 0.05),
    naturalFrequency: between(15, 150),
    dampingRatio: between(0.3, 1.5),
    sensorLag: random() < 0.3 ? 0 : between(0.0005, 0.02),
  };
  const sampleTime = between(0.002, 0.04);
  const leanGain = (firstMoment / hardware.ballastMass / hardware.commandToOffset) * between(0.9, 5);
  const whole = random() < 0.4;
  const controller: BalanceController = {
    sampleTime,
    delay: whole ? sampleTime * Math.floor(random() * 3) : between(0.0005, 0.04),
    leanGain,
    rateGain: random() < 0.1 ? 0 : leanGain * between(0.01, 0.5),
    gimbalGain: random() < 0.4 ? 0 : leanGain * (random() - 0.4),
    rateSource: rateSources[Math.floor(random() * rateSources.length)] ?? 'rate gyro',
  };
  return { hardware, controller };
}
