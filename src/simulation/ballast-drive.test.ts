import { describe, expect, it } from 'vitest';
import {
  type BallastDrive,
  ballastDrive,
  type DriveLimits,
  follow,
  go,
  lock,
  look,
  lookTo,
} from './ballast-drive.ts';
import { stepCoefficients } from './step-coefficients.ts';

const ideal: DriveLimits = {
  naturalFrequency: 40,
  dampingRatio: 0.7,
  travel: 1,
  noLoadSpeed: Number.POSITIVE_INFINITY,
  deadBand: 0,
  backlash: 0,
};

/** Goes on for a time, in steps of at most the length given. */
function run(drive: BallastDrive, duration: number, step: number): void {
  let left = duration;
  while (left > 1e-12) {
    const length = Math.min(step, left);
    const parts = { ...drive.limits, lag: 0 };
    look(drive, stepCoefficients(parts, length));
    const event = drive.eventTime;
    if (event < length) lookTo(drive, stepCoefficients(parts, event));
    go(drive);
    left -= event;
  }
}

/** Ballast and drive after each of many commands, a new one every 20 ms. */
function course(limits: DriveLimits, step: number): number[] {
  const drive = ballastDrive(limits, 0.1, 0);
  return [0.6, 0.6, -0.3, 0.9, 2, 2, -2, 0, 0.01, 0.02, 0.02, 0, -0.5, -0.49, 1].flatMap((command) => {
    follow(drive, command);
    run(drive, 0.02, step);
    return [drive.position, drive.rate, drive.ballast[0] ?? Number.NaN];
  });
}

describe('the drive of the ballast', () => {
  it.each([
    ['that is ideal', {}],
    ['without a damper to speak of', { dampingRatio: 0.05 }],
    ['with critical damping', { dampingRatio: 1 }],
    ['with much damping', { dampingRatio: 3 }],
    ['with a speed limit', { noLoadSpeed: 5 }],
    ['with a dead band', { deadBand: 0.03 }],
    ['with play', { backlash: 0.05 }],
    ['with all of it', { noLoadSpeed: 5, deadBand: 0.02, backlash: 0.04, dampingRatio: 0.3 }],
  ])('%s is where it is, however long the steps', (_, change) => {
    const limits = { ...ideal, ...change };
    const long = course(limits, 0.002);
    const short = course(limits, 0.00037);
    long.forEach((value, i) => {
      expect(value).toBeCloseTo(short[i] ?? Number.NaN, 9);
    });
  });

  it('goes to its command as a mass on a spring with a damper would', () => {
    const drive = ballastDrive(ideal, 0, 0);
    follow(drive, 0.5);
    run(drive, 0.03, 0.03);
    const [w, zeta, t] = [40, 0.7, 0.03];
    const turn = w * Math.sqrt(1 - zeta ** 2);
    const left = Math.exp(-zeta * w * t) * (Math.cos(turn * t) + ((zeta * w) / turn) * Math.sin(turn * t));
    expect(drive.position).toBeCloseTo(0.5 * (1 - left), 14);
  });

  it('keeps to its speed, and slows down for its aim in time', () => {
    const drive = ballastDrive({ ...ideal, noLoadSpeed: 2, dampingRatio: 1 }, -0.9, 0);
    follow(drive, 0.9);
    let fastest = 0;
    for (let i = 0; i < 3000; i++) {
      run(drive, 0.0007, 0.0007);
      fastest = Math.max(fastest, drive.rate);
    }
    expect(fastest).toBe(2);
    expect(drive.position).toBeCloseTo(0.9, 9);
  });

  it('stops dead at the end of its travel', () => {
    const drive = ballastDrive({ ...ideal, dampingRatio: 0.1 }, 0, 0);
    follow(drive, 5);
    run(drive, 0.05, 0.001);
    expect(drive.target).toBe(1);
    expect(drive.position).toBe(1);
    expect(drive.rate).toBe(0);
  });

  it('takes no notice of an error within its dead band', () => {
    const drive = ballastDrive({ ...ideal, deadBand: 0.05 }, 0.2, 0);
    follow(drive, 0.249);
    run(drive, 1, 0.001);
    expect(drive.position).toBe(0.2);
    follow(drive, 0.3);
    run(drive, 2, 0.001);
    expect(drive.position).toBeGreaterThan(0.25 - 1e-9);
    expect(drive.position).toBeLessThan(0.35);
  });

  it('crosses its play before the ballast moves', () => {
    const drive = ballastDrive({ ...ideal, backlash: 0.1, dampingRatio: 1 }, 0, 0);
    follow(drive, 0.04);
    run(drive, 1, 0.001);
    expect(drive.ballast[0]).toBe(0);
    follow(drive, 0.3);
    run(drive, 1, 0.001);
    expect(drive.ballast[0]).toBeCloseTo(0.25, 9);
    follow(drive, 0.22);
    run(drive, 1, 0.001);
    expect(drive.ballast[0]).toBeCloseTo(0.25, 9);
    follow(drive, 0);
    run(drive, 1, 0.001);
    expect(drive.ballast[0]).toBeCloseTo(0.05, 9);
  });

  it('stays where it is locked', () => {
    const drive = ballastDrive(ideal, 0, 3);
    follow(drive, 0.5);
    run(drive, 0.01, 0.001);
    const { position } = drive;
    lock(drive);
    follow(drive, -0.5);
    run(drive, 1, 0.001);
    expect(drive.position).toBe(position);
    expect(drive.rate).toBe(0);
  });
});
