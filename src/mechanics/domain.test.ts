import { describe, expect, it } from 'vitest';
import {
  DomainError,
  requireBetween,
  requireEach,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireSameLength,
  requireWholeNumber,
} from './domain.ts';

/** What the guard says, or that it lets through. */
function message(guard: () => void): string {
  try {
    guard();
    return 'let through';
  } catch (error) {
    if (error instanceof DomainError) return error.message;
    throw error;
  }
}

describe('the guards at the door', () => {
  it('name the quantity, its value with the unit, and what is allowed', () => {
    expect(message(() => requirePositive('arm length', -0.115, 'm'))).toBe(
      'arm length is −0.115 m, but it has to be more than 0 m',
    );
    expect(message(() => requireNotNegative('ballast mass', -0.59, 'kg'))).toBe(
      'ballast mass is −0.59 kg, but it cannot be less than 0 kg',
    );
    expect(message(() => requireBetween('Poisson ratio', 0.6, 0, 0.5, '1'))).toBe(
      'Poisson ratio is 0.6, but it has to lie between 0 and 0.5',
    );
    expect(message(() => requireWholeNumber('number of cells in series', 2.5, 1))).toBe(
      'number of cells in series is 2.5, but it has to be a whole number of at least 1',
    );
  });

  it('speak of angles in degrees', () => {
    expect(message(() => requireBetween('arm travel', 1.6, 0, Math.PI / 2, 'rad'))).toBe(
      'arm travel is 91.6732°, but it has to lie between 0° and 90°',
    );
  });

  it('say that a figure is missing rather than print NaN', () => {
    expect(message(() => requireFinite('roll inertia', Number.NaN))).toBe(
      'roll inertia is missing or not a number, but a finite number is needed',
    );
  });

  it('say which part of a list is at fault, counting from one', () => {
    expect(message(() => requireEach('mass of part', [1, 2, -3], 'kg', 0))).toBe(
      'mass of part 3 is −3 kg, but it cannot be less than 0 kg',
    );
    expect(message(() => requireEach('height of part', [1, Number.NaN], 'm'))).toContain(
      'height of part 2 is missing',
    );
    expect(message(() => requireSameLength('height', [1], 'mass', [1, 2]))).toBe(
      'number of figures for height is 1, but there has to be one for each mass (2)',
    );
  });

  it('let the limits themselves through', () => {
    expect(message(() => requireBetween('Poisson ratio', 0.5, 0, 0.5, '1'))).toBe('let through');
    expect(message(() => requireNotNegative('bore diameter', 0, 'm'))).toBe('let through');
    expect(message(() => requireEach('mass of part', [], 'kg', 0))).toBe('let through');
  });

  it('carry the figures apart from the sentence', () => {
    const error = new DomainError('arm travel', Math.PI, 'it has to lie between 0° and 90°', 'rad');
    expect(error).toMatchObject({ quantity: 'arm travel', value: Math.PI, written: '180°' });
    expect(error).toBeInstanceOf(RangeError);
  });
});
