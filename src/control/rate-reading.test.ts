import { describe, expect, it } from 'vitest';
import { workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import { workedVehicle } from '../../tests/specimen/motion.ts';
import type { RateSource } from './balance-loop.ts';
import { rateReading } from './rate-reading.ts';

const read = (rateSource: RateSource, hardware: Partial<typeof workedHardware>, frequency: number) =>
  rateReading(
    { hardware: { ...workedHardware, ...hardware }, controller: { ...workedController, rateSource } },
    frequency,
  );

describe('what the rate source reads', () => {
  it('a sprung gimbal tilts with the roll rate, H/k for each rad/s', () => {
    const { byRate, leanShare, text, followsRateBelow } = read('gimbal tilt', {}, 1);
    expect(byRate).toBeCloseTo(0.55 / 0.15, 1);
    expect(leanShare).toBeLessThan(0.05);
    expect(followsRateBelow).toBeCloseTo(30, 9);
    expect(text).toBe(
      'At 1 rad/s the gimbal tilt reads 0.124 rad for each radian of lean and 3.68 rad for each rad/s of roll rate. ' +
        'The rate gain acts on the roll rate, with 3 % of lean in it.',
    );
  });

  it('a gimbal held by friction tilts with the lean, H/c for each radian', () => {
    const { byLean, leanShare, text } = read('gimbal tilt', { gimbalCentring: 0, gimbalFriction: 0.2 }, 5);
    expect(byLean).toBeCloseTo(0.55 / 0.2, 2);
    expect(leanShare).toBeGreaterThan(0.95);
    expect(text).toContain('acts on the lean, 98 %');
  });

  it('the rate of a free gimbal follows the lean, H/I_g for each radian', () => {
    const { byLean, leanShare } = read('gimbal rate', { gimbalCentring: 0, gimbalFriction: 0 }, 5);
    expect(byLean).toBeCloseTo(0.55 / 9e-4, 6);
    expect(leanShare).toBe(1);
  });

  it('a free gimbal by its tilt has the roll rate turned round', () => {
    const { byRate, text } = read('gimbal tilt', { gimbalCentring: 0, gimbalFriction: 0.001 }, 5);
    expect(byRate).toBeLessThan(0);
    expect(text).toContain('The sign is turned round');
  });

  it('a rate gyro reads the rate, late by its lag', () => {
    const { byLean, byRate, leanShare } = read('rate gyro', {}, 10);
    expect(byRate).toBeCloseTo(1, 1);
    expect(byLean).toBeCloseTo(10 * 10 * 0.008, 1);
    expect(leanShare).toBeLessThan(0.1);
  });

  it('a difference of angles is late by half a sample more', () => {
    const none = { sensorLag: 0 };
    const { byLean, byRate } = read('difference of angle', none, 10);
    expect(byRate).toBeCloseTo(1, 3);
    expect(byLean).toBeCloseTo(10 * 10 * 0.0025, 3);
  });

  it('adds up what all gains together do', () => {
    const { leanGain, rateGain } = read('gimbal tilt', { sensorLag: 0 }, 2);
    const tilt = read('gimbal tilt', { sensorLag: 0 }, 2);
    expect(leanGain).toBeCloseTo(0.95 + (0.04 + 0.14) * tilt.byLean, 12);
    expect(rateGain).toBeCloseTo((0.04 + 0.14) * tilt.byRate, 12);
  });

  it('reads nothing from a gimbal whose rotor stands', () => {
    const { text, leanShare } = read('gimbal rate', { spinMomentum: 0 }, 5);
    expect(leanShare).toBe(0);
    expect(text).toContain('without a spinning rotor');
  });

  it('looks at the speed of toppling where no frequency is given, and refuses none', () => {
    const { frequency } = rateReading({ hardware: workedHardware, controller: workedVehicle.controller });
    expect(frequency).toBeCloseTo(1 / 0.137152698, 6);
    expect(() => read('rate gyro', {}, 0)).toThrow('frequency is 0 rad/s');
  });
});
