import { describe, expect, it } from 'vitest';
import { asPrinted, cell, figure } from './markdown.ts';

describe('figures in generated pages', () => {
  it.each([
    [0, '0'],
    [-0.25, '−0.25'],
    [1 / 3, '0.333333'],
    [-1.5e-7, '−1.5 × 10⁻⁷'],
    [2.05e11, '2.05 × 10¹¹'],
    [123456.7, '123457'],
  ])('%d reads %s', (value, text) => {
    expect(figure(value)).toBe(text);
  });

  it('a printed figure keeps its noughts', () => {
    expect(asPrinted('5.260e5')).toBe('5.260 × 10⁵');
    expect(asPrinted('-0.40')).toBe('−0.40');
  });

  it('no figure is made of what is not a number', () => {
    expect(() => figure(Number.NaN)).toThrow('not a number');
  });

  it('an upright bar does not end a cell', () => {
    expect(cell('|n f − f|\nnext')).toBe('\\|n f − f\\| next');
  });
});
