import { describe, expect, it } from 'vitest';
import { registry } from './registry.ts';
import { remembered, withMemory } from './remembered.ts';

describe('a calculation with a memory', () => {
  const counted = () => {
    let times = 0;
    const compute = withMemory((inputs) => {
      times += 1;
      return {
        sum: Object.values(inputs)
          .flat()
          .reduce((a, b) => a + b, 0),
      };
    });
    return { compute, times: () => times };
  };

  it('is carried out once for the same numbers, in whatever order they come', () => {
    const { compute, times } = counted();
    expect(compute({ a: 1, b: 2 })).toBe(compute({ b: 2, a: 1 }));
    expect(times()).toBe(1);
  });

  it('is carried out again for any other number, however near', () => {
    const { compute, times } = counted();
    compute({ a: 1, b: 2 });
    expect(compute({ a: 1 + Number.EPSILON, b: 2 })).toEqual({ sum: 3 + Number.EPSILON });
    compute({ a: [1, 2] });
    compute({ a: [12] });
    expect(times()).toBe(4);
  });

  it('forgets the oldest', () => {
    const { compute, times } = counted();
    for (let a = 0; a < 100; a++) compute({ a });
    compute({ a: 99 });
    expect(times()).toBe(100);
    compute({ a: 0 });
    expect(times()).toBe(101);
  });

  it('fails each time as it failed first', () => {
    const failing = withMemory(() => {
      throw new RangeError('no');
    });
    expect(() => failing({ a: 1 })).toThrow('no');
    expect(() => failing({ a: 1 })).toThrow('no');
  });

  it('is only the costly one: the others are themselves', () => {
    for (const [id, calculation] of registry) {
      expect(remembered(calculation) === calculation, id).toBe(id !== 'loop.margins');
    }
  });
});
