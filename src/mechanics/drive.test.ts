import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { armHoldingMoment, slideHoldingForce } from './actuator.ts';
import { armMovingMoment, sineDemand, slideMovingForce, strokeDemand } from './actuator-demand.ts';
import { actuatorPower, momentAtSpeed, speedAtLoad } from './actuator-line.ts';
import { bestRatio, gearReflection } from './gearing.ts';
import { beltDrive, leadScrew, screwThrust } from './linear-drive.ts';
import { motorAtLoad, motorAtSpeed, motorStall, noLoadTest, torqueConstant } from './motor.ts';

const servo = { stallMoment: 1.4, noLoadSpeed: 7 };

describe('the line of an actuator', () => {
  it('ends at the stall moment and at the no-load speed, both in step with the voltage', () => {
    expect(momentAtSpeed({ ...servo, speed: 0 })).toBe(1.4);
    expect(momentAtSpeed({ ...servo, speed: 7 })).toBeCloseTo(0, 15);
    expect(momentAtSpeed({ ...servo, speed: 0, voltageRatio: 0.8 })).toBeCloseTo(1.12, 15);
    expect(speedAtLoad({ ...servo, load: 0, voltageRatio: 0.8 })).toBeCloseTo(5.6, 14);
  });

  it('reads the same both ways', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 10, noNaN: true }), (speed) => {
        const load = momentAtSpeed({ ...servo, speed });
        fc.pre(load >= 0);
        expect(speedAtLoad({ ...servo, load })).toBeCloseTo(speed, 12);
      }),
    );
  });

  it('gives most power at half the no-load speed', () => {
    const power = (speed: number): number => momentAtSpeed({ ...servo, speed }) * speed;
    const most = actuatorPower(servo);
    expect(power(3.5)).toBeCloseTo(most, 14);
    for (const speed of [1, 3, 4, 6]) expect(power(speed)).toBeLessThan(most);
  });

  it('is the motor’s own line', () => {
    const motor = { voltage: 7.4, resistance: 2.1, torqueConstant: 0.0042 };
    const { moment: stallMoment } = motorStall(motor);
    const line = { stallMoment, noLoadSpeed: motor.voltage / motor.torqueConstant };
    expect(momentAtSpeed({ ...line, speed: 900 })).toBeCloseTo(
      motorAtSpeed({ ...motor, speed: 900 }).moment,
      14,
    );
  });
});

describe('what a stroke asks', () => {
  const arm = { ballastMass: 0.59, armLength: 0.115, direction: 1, travel: 0.8, lean: 0.17 };

  it('without acceleration and friction is what holding asks', () => {
    expect(armMovingMoment({ ...arm, acceleration: 0 })).toBe(armHoldingMoment(arm));
    expect(slideMovingForce({ ballastMass: 0.9, lean: 0.1, acceleration: 0 })).toBe(
      slideHoldingForce({ ballastMass: 0.9, lean: 0.1 }),
    );
  });

  it('grows with m L² for an arm and with m for a slide', () => {
    const more = armMovingMoment({ ...arm, acceleration: 40 }) - armHoldingMoment(arm);
    expect(more).toBeCloseTo(0.59 * 0.115 ** 2 * 40, 14);
  });

  it('a stroke of that acceleration arrives in that time', () => {
    const { speed, acceleration } = strokeDemand({ travel: 0.8, time: 0.5 });
    expect(speed).toBeCloseTo(acceleration * 0.25, 14);
    expect(2 * (0.5 * acceleration * 0.25 ** 2)).toBeCloseTo(1.6, 14);
  });

  it('a swing in a sine of the same travel and half period asks for π²/8 times the acceleration', () => {
    const stroke = strokeDemand({ travel: 0.8, time: 0.5 });
    const sine = sineDemand({ amplitude: 0.8, frequency: Math.PI / 0.5 });
    expect(sine.acceleration / stroke.acceleration).toBeCloseTo(Math.PI ** 2 / 8, 14);
  });
});

describe('gears', () => {
  it('the best ratio is the best of all', () => {
    const positive = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(
        positive,
        positive,
        positive,
        positive,
        (motorMoment, motorInertia, loadInertia, loadMoment) => {
          const { ratio, acceleration } = bestRatio({ motorMoment, motorInertia, loadInertia, loadMoment });
          const at = (i: number): number =>
            (motorMoment * i - loadMoment) / (motorInertia * i * i + loadInertia);
          for (const factor of [0.5, 0.9, 0.99, 1.01, 1.1, 2]) {
            expect(at(ratio * factor)).toBeLessThanOrEqual(acceleration * (1 + 1e-12));
          }
        },
      ),
    );
  });

  it('motor and load share the moment evenly where nothing holds the load', () => {
    const { ratio, acceleration } = bestRatio({ motorMoment: 1, motorInertia: 2, loadInertia: 50 });
    expect(ratio).toBe(5);
    expect(2 * ratio * acceleration).toBeCloseTo(0.5, 14);
  });

  it('keep power but for their loss', () => {
    const { moment } = gearReflection({
      motorInertia: 0,
      loadInertia: 0,
      loadMoment: 2,
      ratio: 8,
      efficiency: 0.8,
    });
    expect(moment * 8 * 0.8).toBeCloseTo(2, 15);
    const geared = { motorInertia: 0, loadInertia: 1, loadMoment: 0, ratio: 8 };
    expect(() => gearReflection({ ...geared, efficiency: 1.1 })).toThrow('no more than 1');
  });
});

describe('screws and belts', () => {
  const screw = { force: 12, meanDiameter: 0.007, lead: 0.008, friction: 0.12 };

  it('without friction a screw is an ideal lever that the load drives back', () => {
    const { raiseMoment, lowerMoment, efficiency } = leadScrew({ ...screw, friction: 0 });
    expect(raiseMoment).toBeCloseTo((12 * 0.008) / (2 * Math.PI), 15);
    expect(lowerMoment).toBeCloseTo(-raiseMoment, 15);
    expect(efficiency).toBeCloseTo(1, 14);
  });

  it('holds itself where the friction is more than the slope of the thread, and is then less than half efficient', () => {
    const slope = screw.lead / (Math.PI * screw.meanDiameter);
    expect(leadScrew({ ...screw, friction: slope * 0.99 }).lowerMoment).toBeLessThan(0);
    const holding = leadScrew({ ...screw, friction: slope * 1.01 });
    expect(holding.lowerMoment).toBeGreaterThan(0);
    expect(holding.efficiency).toBeLessThan(0.5);
  });

  it('a slanted flank counts as more friction', () => {
    const flankAngle = Math.PI / 12;
    expect(leadScrew({ ...screw, flankAngle })).toEqual(
      leadScrew({ ...screw, friction: 0.12 / Math.cos(flankAngle) }),
    );
  });

  it('a thread too steep for its friction is refused', () => {
    expect(() => leadScrew({ ...screw, lead: 0.2, friction: 0.2 })).toThrow('no moment moves');
  });

  it('thrust from the efficiency is what the friction gives', () => {
    const { raiseMoment, efficiency } = leadScrew(screw);
    const { force, backMoment } = screwThrust({
      moment: raiseMoment,
      lead: 0.008,
      efficiency,
      load: 12,
      reverseEfficiency: 0.5,
    });
    expect(force).toBeCloseTo(12, 12);
    expect(backMoment).toBeCloseTo((12 * 0.008 * 0.5) / (2 * Math.PI), 15);
  });

  it('a belt keeps power and kinetic energy', () => {
    const belt = beltDrive({ moment: 0.12, speed: 30, pulleyDiameter: 0.0127, movedMass: 0.9 });
    expect(belt.force * belt.beltSpeed).toBeCloseTo(0.12 * 30, 13);
    expect(0.5 * belt.inertia * 30 ** 2).toBeCloseTo(0.5 * 0.9 * belt.beltSpeed ** 2, 13);
  });
});

describe('a motor', () => {
  const motor = { voltage: 11.1, resistance: 0.12, torqueConstant: 0.0106, dragMoment: 0.006 };

  it('turns all of its power into work, drag and heat', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1400, noNaN: true }), (speed) => {
        const { current, power, heat } = motorAtSpeed({ ...motor, speed });
        const drawn = motor.voltage * current;
        expect(power + motor.dragMoment * speed + heat).toBeCloseTo(drawn, 9);
      }),
    );
  });

  it('is the same asked by speed and by load', () => {
    const { moment, current } = motorAtSpeed({ ...motor, speed: 800 });
    const back = motorAtLoad({ ...motor, moment });
    expect(back.speed).toBeCloseTo(800, 9);
    expect(back.current).toBeCloseTo(current, 12);
  });

  it('run without load gives back its constant and its drag', () => {
    const free = motorAtLoad({ ...motor, moment: 0 });
    const test = noLoadTest({ voltage: 11.1, current: free.current, resistance: 0.12, speed: free.speed });
    expect(test.torqueConstant).toBeCloseTo(0.0106, 14);
    expect(test.dragMoment).toBeCloseTo(0.006, 14);
  });

  it('held still makes nothing but heat', () => {
    const { current, heat } = motorStall(motor);
    expect(heat).toBeCloseTo(11.1 * current, 10);
    expect(() => noLoadTest({ voltage: 1, current: 10, resistance: 0.2, speed: 5 })).toThrow('beside I₀ R');
  });

  it('has one constant for moment and for voltage', () => {
    expect(torqueConstant({ speedConstant: 94.2 }) * 94.2).toBeCloseTo(1, 15);
  });
});
