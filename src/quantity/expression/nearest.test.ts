import { describe, expect, test } from 'vitest';
import { nearestName } from './nearest.ts';

const names = ['total_mass', 'ballast_mass', 'turn_speed', 'sin', 'pi', 'g_n'];

describe('the nearest name', () => {
  test.each([
    ['total_mas', 'total_mass'],
    ['totalmass', 'total_mass'],
    ['Total_Mass', 'total_mass'],
    ['turn_spede', 'turn_speed'],
    ['sn', 'sin'],
    ['gn', 'g_n'],
    ['balast_mass', 'ballast_mass'],
  ])('to %s is %s', (name, expected) => {
    expect(nearestName(name, names)).toBe(expected);
  });

  test('is none where too many letters differ', () => {
    expect(nearestName('run_time', names)).toBeUndefined();
    expect(nearestName('x', names)).toBeUndefined();
    expect(nearestName('', names)).toBeUndefined();
  });
});
