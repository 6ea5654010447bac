import { describe, expect, it } from 'vitest';
import { prototype, revision, withValue } from '../../../tests/specimen/vehicle.ts';
import { type DrawnResult, monteCarlo } from '../../margins/index.ts';
import type { Drawing } from '../drawing/primitive.ts';
import { drawsDrawing } from './draws-drawing.ts';

function drawn(name: string): DrawnResult {
  const held = withValue(revision, 'loop', undefined);
  const draws = monteCarlo(prototype, held, { seed: 1, digits: 1, names: [name], most: 10_000 });
  const result = draws.ok ? draws.value.results.get(name) : undefined;
  if (!result?.ok) throw new Error(`no draws of ${name}`);
  return result.value;
}
const words = ({ primitives }: Drawing): string[] =>
  primitives.flatMap((primitive) => (primitive.type === 'text' ? [primitive.text] : []));

describe('the drawing of random draws', () => {
  it('is in the unit that people read a figure in, with its interval', () => {
    const result = drawn('largest_lean');
    const drawing = drawsDrawing(result, 440);
    expect(words(drawing)).toEqual(
      expect.arrayContaining(['largest lean that the ballast can hold, °', '95\u202F% of the draws']),
    );
    const degrees = (result.symmetric[0] * 180) / Math.PI;
    expect(drawing.description).toContain(`between ${degrees.toFixed(2)}°`);
  });

  it('sets what a margin is held against beside what it can do', () => {
    const drawing = drawsDrawing(drawn('lean'), 440);
    expect(words(drawing)).toContain('needs 5°');
    expect(words(drawing).some((text) => /^can \d+\.\d+°$/.test(text))).toBe(true);
  });
});
