import { describe, expect, it } from 'vitest';
import { motorStall } from './motor.ts';
import { packEnergy, packSag } from './pack.ts';
import {
  converterHeat,
  dutyRunTime,
  inrushCurrent,
  packResistance,
  preCharge,
  stallOnSupply,
} from './supply.ts';
import { fuseShares, wireDrop, wireGauge } from './wiring.ts';

describe('wires', () => {
  it('six gauges up halve the diameter, three the area, nearly', () => {
    expect(wireGauge({ gauge: 20 }).diameter / wireGauge({ gauge: 14 }).diameter).toBeCloseTo(0.5, 2);
    expect(wireGauge({ gauge: 17 }).area / wireGauge({ gauge: 14 }).area).toBeCloseTo(0.5, 2);
    expect(wireGauge({ gauge: 36 }).diameter).toBe(1.27e-4);
    expect(() => wireGauge({ gauge: 41 })).toThrow('between −3 (0000) and 40');
  });

  it('lose voltage times current as heat, and more of it when warm', () => {
    const wire = { length: 0.25, area: 2.081e-6, current: 7.5 };
    const cold = wireDrop(wire);
    expect(cold.heat).toBeCloseTo(cold.drop * 7.5, 15);
    expect(wireDrop({ ...wire, temperatureRise: 100 }).drop / cold.drop).toBeCloseTo(1.393, 12);
    expect(() => wireDrop({ ...wire, temperatureRise: -300 })).toThrow('not a superconductor');
  });
});

describe('a fuse', () => {
  it('is judged against load, wire and voltage apart', () => {
    const fuse = {
      fuseRating: 15,
      continuousCurrent: 7.5,
      wireCurrent: 20,
      fuseVoltage: 32,
      packVoltage: 12.6,
    };
    const shares = fuseShares(fuse);
    expect(shares).toEqual({ continuousShare: 0.5, wireShare: 0.75, voltageShare: 12.6 / 32 });
    // A larger fuse spares itself and endangers the wire.
    const larger = fuseShares({ ...fuse, fuseRating: 30 });
    expect(larger.continuousShare).toBeLessThan(shares.continuousShare);
    expect(larger.wireShare).toBeGreaterThan(1);
  });
});

describe('the supply', () => {
  it('a pack under two loads gives back the resistance that it sags with', () => {
    const sag = (current: number): number => packSag({ current, resistance: 0.14 });
    const { resistance, restVoltage } = packResistance({
      firstCurrent: 0.5,
      firstVoltage: 12.4 - sag(0.5),
      secondCurrent: 7.5,
      secondVoltage: 12.4 - sag(7.5),
    });
    expect(resistance).toBeCloseTo(0.14, 13);
    expect(restVoltage).toBeCloseTo(12.4, 13);
  });

  it('a pack whose voltage rises under load was not at rest', () => {
    const steps = { firstCurrent: 1, firstVoltage: 12, secondCurrent: 2, secondVoltage: 12.1 };
    expect(() => packResistance(steps)).toThrow('resistance of the pack');
    expect(() => packResistance({ ...steps, secondCurrent: 1 })).toThrow('difference of the currents');
  });

  it('a duty heats by more than its mean', () => {
    const duty = { shares: [0.7, 0.25, 0.05], capacity: 7920, usableShare: 0.8 };
    const uneven = dutyRunTime({ ...duty, currents: [2.2, 6, 11] });
    expect(uneven.effectiveCurrent).toBeGreaterThan(uneven.meanCurrent);
    const even = dutyRunTime({ ...duty, currents: [3, 3, 3] });
    expect(even.effectiveCurrent).toBeCloseTo(3, 14);
    expect(even.time).toBeCloseTo((0.8 * 7920) / 3, 10);
    expect(() => dutyRunTime({ ...duty, shares: [0.5, 0.25, 0.05], currents: [1, 1, 1] })).toThrow(
      'together they have to make 1',
    );
  });

  it('pre-charge takes as much energy as the capacitor gets, whatever the resistor', () => {
    const bus = { capacitance: 1e-3, voltage: 12.6 };
    const slow = preCharge({ ...bus, resistance: 100 });
    const fast = preCharge({ ...bus, resistance: 10 });
    expect(slow.energy).toBe(fast.energy);
    expect(slow.time / fast.time).toBeCloseTo(10, 12);
    expect(fast.peakPower).toBeCloseTo(12.6 * inrushCurrent({ voltage: 12.6, resistance: 10 }), 12);
    expect(() => preCharge({ ...bus, resistance: 10, share: 1 })).toThrow('takes for ever');
  });

  it('a stalled motor pulls the pack down to where its own sag leaves it', () => {
    const supply = { restVoltage: 7.4, packResistance: 0.14, motorResistance: 1.3, otherCurrent: 0.6 };
    const { current, voltage } = stallOnSupply(supply);
    expect(7.4 - packSag({ current: current + 0.6, resistance: 0.14 })).toBeCloseTo(voltage, 13);
    expect(motorStall({ voltage, resistance: 1.3, torqueConstant: 1 }).current).toBeCloseTo(current, 13);
    expect(() => stallOnSupply({ ...supply, otherCurrent: 60 })).toThrow('left by the other loads');
  });

  it('a converter loses nothing but its heat', () => {
    const converter = { outputVoltage: 5, outputCurrent: 2.5, inputVoltage: 9.9, efficiency: 0.88 };
    const { inputCurrent, heat, temperatureRise, headroom } = converterHeat({
      ...converter,
      thermalResistance: 20,
    });
    expect(inputCurrent * 9.9).toBeCloseTo(12.5 + heat, 12);
    expect(temperatureRise).toBeCloseTo(20 * heat, 12);
    expect(headroom).toBeCloseTo(4.9, 14);
    // A linear regulator draws the current that it gives.
    const linear = converterHeat({ ...converter, efficiency: 5 / 9.9 });
    expect(linear.inputCurrent).toBeCloseTo(2.5, 13);
    expect(linear.heat).toBeCloseTo(4.9 * 2.5, 12);
  });

  it('the rated energy lasts for the run time at the nominal voltage', () => {
    const { time, meanCurrent } = dutyRunTime({ currents: [4], shares: [1], capacity: 7920, usableShare: 1 });
    expect(meanCurrent * time * 11.1).toBeCloseTo(packEnergy({ capacity: 7920, nominalVoltage: 11.1 }), 8);
  });
});
