import { describe, expect, it } from 'vitest';
import { cellVoltages } from './cells.ts';
import { cRate, packEnergy, packSag, packVoltage, runTime } from './pack.ts';

describe('the pack', () => {
  it('runs as long as its C-rate says, on the share that may be used', () => {
    const [capacity, current] = [7920, 4.5];
    const time = runTime({ capacity, usableShare: 1, meanCurrent: current });
    expect(time * cRate({ current, capacity })).toBeCloseTo(1, 14);
    expect(runTime({ capacity, usableShare: 0.5, meanCurrent: current })).toBeCloseTo(time / 2, 10);
  });

  it('stores its capacity at its nominal voltage', () => {
    const nominalVoltage = packVoltage({ cells: 6, cellVoltage: 3.7 });
    expect(packEnergy({ capacity: 5 * 3600, nominalVoltage }) / 3600).toBeCloseTo(111, 10);
  });

  it('does not sag where nothing is drawn', () => {
    expect(packSag({ current: 0, resistance: 0.1 })).toBe(0);
    expect(cRate({ current: 0, capacity: 100 })).toBe(0);
  });

  it('refuses a share of more than all, part of a cell, and a current that runs for ever', () => {
    expect(() => runTime({ capacity: 7920, usableShare: 80, meanCurrent: 1 })).toThrow(
      'no more than 1 (100 %)',
    );
    expect(() => runTime({ capacity: 7920, usableShare: 0, meanCurrent: 1 })).toThrow('more than 0');
    expect(() => runTime({ capacity: 7920, usableShare: 0.8, meanCurrent: 0 })).toThrow('mean current');
    expect(() => packVoltage({ cells: 1.5, cellVoltage: 3.7 })).toThrow('number of cells in series');
  });
});

describe('voltages of a cell', () => {
  it.each(Object.entries(cellVoltages))('of %s stand in order, each with its source', (_, cell) => {
    expect(cell.restMinimum.value).toBeLessThan(cell.nominal.value);
    expect(cell.loadCut.value).toBeGreaterThanOrEqual(cell.restMinimum.value);
    expect(cell.loadCut.value).toBeLessThan(cell.nominal.value);
    expect(cell.storageLow.value).toBeLessThan(cell.storageHigh.value);
    expect(cell.storageHigh.value).toBeLessThan(cell.full.value);
    for (const { source } of Object.values(cell)) expect(source).not.toBe('');
  });
});
