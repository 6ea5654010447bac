import { describe, expect, it } from 'vitest';
import { workedHardware } from '../../tests/specimen/balance-loop.ts';
import { eigenvalues } from './eigenvalues.ts';
import {
  type BalanceHardware,
  type HardwareFigure,
  linearPlant,
  linearPlantSlopes,
  neutralModeText,
  type PlantOptions,
} from './linear-plant.ts';

const everything: PlantOptions = { reads: ['measured lean', 'measured rate', 'gimbal tilt', 'gimbal rate'] };
const leanOnly: PlantOptions = { reads: ['measured lean'] };
const free: BalanceHardware = { ...workedHardware, gimbalCentring: 0 };

const poles = (hardware: BalanceHardware, options: PlantOptions): number[][] => {
  const { a, order } = linearPlant(hardware, options);
  return eigenvalues(a, order)
    .map(({ re, im }) => [re, im])
    .sort(([a1 = 0, a2 = 0], [b1 = 0, b2 = 0]) => a1 - b1 || a2 - b2);
};

describe('the linear plant', () => {
  it('has eight states with a sprung gimbal, lagging sensors and a rate gyro', () => {
    expect(linearPlant(workedHardware, everything).states).toEqual([
      'lean',
      'lean rate',
      'gimbal tilt',
      'gimbal rate',
      'ballast offset',
      'ballast rate',
      'lagged lean',
      'lagged rate',
    ]);
  });

  it('leaves out what is not there or not read', () => {
    const bare = { ...workedHardware, spinMomentum: 0, sensorLag: 0 };
    expect(linearPlant(bare, leanOnly).states).toEqual([
      'lean',
      'lean rate',
      'ballast offset',
      'ballast rate',
    ]);
    expect(linearPlant(workedHardware, leanOnly).states).not.toContain('lagged rate');
  });

  it('pushes the vehicle the wrong way first when a ballast above the ground is accelerated to the right', () => {
    const { b, states } = linearPlant(workedHardware, leanOnly);
    expect(b[states.indexOf('ballast rate')]).toBeGreaterThan(0);
    expect(b[states.indexOf('lean rate')]).toBeGreaterThan(0); // the offset rights only later, by gravity
  });

  it('takes the neutral mode of a free gimbal out, and nothing else', () => {
    const reduced = poles(free, everything);
    const full = poles(free, { ...everything, keepNeutralModes: true });
    const zero = full.findIndex(([re = 1, im = 1]) => Math.hypot(re, im) < 1e-9);
    expect(zero).toBeGreaterThanOrEqual(0);
    full.splice(zero, 1);
    expect(full.length).toBe(reduced.length);
    full.forEach((pole, i) => {
      pole.forEach((part, k) => {
        expect(part).toBeCloseTo(reduced[i]?.[k] ?? Number.NaN, 7);
      });
    });
    expect(linearPlant(free, everything).neutralModes).toEqual(['gimbal offset']);
    expect(linearPlant(workedHardware, everything).neutralModes).toEqual([]);
  });

  it('takes the tilt out as well where nothing holds it and nothing reads it', () => {
    const frictionless = { ...free, gimbalFriction: 0 };
    expect(linearPlant(frictionless, leanOnly).neutralModes).toEqual(['gimbal offset', 'gimbal tilt']);
    expect(linearPlant(frictionless, everything).neutralModes).toEqual(['gimbal offset']);
    for (const text of Object.values(neutralModeText)) expect(text).toContain('left out of the margins');
  });

  it('keeps a top-heavy gimbal of a rotor at rest only where the controller listens to it', () => {
    const topHeavy = { ...workedHardware, spinMomentum: 0, gimbalCentring: -0.1 };
    expect(linearPlant(topHeavy, leanOnly).states).not.toContain('gimbal tilt');
    expect(linearPlant(topHeavy, everything).states).toContain('gimbal tilt');
  });

  it('drives an arm like a slide with the arm length as gain', () => {
    const slide = linearPlant(workedHardware, leanOnly);
    const arm = linearPlant({ ...workedHardware, commandToOffset: 0.15 }, leanOnly);
    expect([...arm.a]).toEqual([...slide.a]);
    arm.b.forEach((entry, i) => {
      expect(entry).toBeCloseTo(0.15 * (slide.b[i] ?? Number.NaN), 12);
    });
  });

  it('has derivatives that central differences confirm, coefficient by coefficient', () => {
    for (const hardware of [workedHardware, free, { ...workedHardware, sensorLag: 0 }]) {
      const { order } = linearPlant(hardware, everything);
      for (const { figure, entries } of linearPlantSlopes(hardware, everything)) {
        const found = new Float64Array(order * (order + 1));
        for (const { row, column, value } of entries) {
          found[row * (order + 1) + column] = (found[row * (order + 1) + column] ?? 0) + value;
        }
        if (hardware[figure] === 0) continue;
        const step = 1e-4 * hardware[figure];
        const at = (change: number): Float64Array => {
          const { a, b } = linearPlant({ ...hardware, [figure]: hardware[figure] + change }, everything);
          return Float64Array.from({ length: order * (order + 1) }, (_, k) => {
            const [i, j] = [Math.floor(k / (order + 1)), k % (order + 1)];
            return (j === order ? b[i] : a[i * order + j]) ?? 0;
          });
        };
        const [above, below] = [at(step), at(-step)];
        found.forEach((slope, k) => {
          const difference = ((above[k] ?? 0) - (below[k] ?? 0)) / (2 * step);
          expect(Math.abs(slope - difference)).toBeLessThan(1e-6 * (Math.abs(slope) + 1e-3));
        });
      }
    }
  });

  it.each<[HardwareFigure, number, string]>([
    ['firstMoment', 0, 'first moment'],
    ['rollInertia', -1, 'roll inertia'],
    ['ballastMass', 0, 'ballast mass'],
    ['ballastHeight', Number.NaN, 'ballast height'],
    ['commandToOffset', 0, 'ballast offset by unit of command'],
    ['spinMomentum', -0.1, 'spin momentum'],
    ['gimbalInertia', 0, 'a spinning rotor in its gimbal'],
    ['gimbalFriction', -0.1, 'gimbal friction'],
    ['gimbalCentring', Number.POSITIVE_INFINITY, 'gimbal centring'],
    ['naturalFrequency', 0, 'natural frequency'],
    ['dampingRatio', 0, 'damping ratio'],
    ['sensorLag', -0.001, 'sensor lag'],
  ])('refuses %s = %s by name', (figure, value, words) => {
    expect(() => linearPlant({ ...workedHardware, [figure]: value }, everything)).toThrow(words);
  });
});
