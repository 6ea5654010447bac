import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from './change.ts';
import { isPlace, restoring, valueAt, withSetting } from './path.ts';

const name = fc.constantFrom('a', 'b', 'c', '0', '1', '2', '01', 'constructor', 'toString', 'length');
const leaf = fc.oneof(fc.constant(null), fc.boolean(), fc.integer(), fc.constantFrom('', 'x'));
const { tree } = fc.letrec<{ tree: Json; record: Json }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    leaf,
    fc.dictionary(name, tie('tree'), { maxKeys: 4 }),
    fc.array(tie('tree'), { maxLength: 3 }),
  ),
  record: leaf,
}));
const anyRecord = fc.dictionary(name, tree, { maxKeys: 5 }) as fc.Arbitrary<Json>;
const path = fc.array(name, { minLength: 1, maxLength: 5 }).map((names) => names.join('/'));
const setting = fc.record({ path, value: tree }, { requiredKeys: ['path'] });

describe('setting a place of a record', () => {
  it('puts the value there', () => {
    fc.assert(
      fc.property(anyRecord, path, tree, (before, path, value) => {
        fc.pre(isPlace(before, path));
        expect(valueAt(withSetting(before, { path, value }), path)).toEqual(value);
      }),
    );
  });

  it('leaves the record that it was made from as it was', () => {
    fc.assert(
      fc.property(anyRecord, setting, (before, setting) => {
        fc.pre(isPlace(before, setting.path));
        const kept = structuredClone(before);
        withSetting(before, setting);
        expect(before).toEqual(kept);
      }),
    );
  });

  it('is taken back by the setting that restores it, whatever was or was not there', () => {
    fc.assert(
      fc.property(anyRecord, setting, (before, setting) => {
        fc.pre(isPlace(before, setting.path));
        const after = withSetting(before, setting);
        expect(withSetting(after, restoring(before, setting.path))).toEqual(before);
      }),
      { numRuns: 1000 },
    );
  });

  it('twice gives what it gives once, unless an item of a list is removed', () => {
    fc.assert(
      fc.property(anyRecord, path, tree, (before, path, value) => {
        fc.pre(isPlace(before, path));
        const once = withSetting(before, { path, value });
        expect(withSetting(once, { path, value })).toEqual(once);
      }),
    );
  });

  it('shares everything that does not lie on the way', () => {
    const before = {
      parts: { a: { mass: { si: 1 }, x: { si: 2 } }, b: { mass: { si: 3 } } },
      pack: { cells: 3 },
    };
    const after = withSetting(before, { path: 'parts/a/mass/si', value: 9 }) as typeof before;
    expect(after.parts.a.mass).toEqual({ si: 9 });
    expect(after.parts.b).toBe(before.parts.b);
    expect(after.parts.a.x).toBe(before.parts.a.x);
    expect(after.pack).toBe(before.pack);
  });
});

describe('removing a place', () => {
  it('that is not there changes nothing and makes nothing on the way', () => {
    const before = { name: 'cart' };
    for (const path of ['rotor/density', 'rotor', 'name/first', 'constructor/name']) {
      expect(withSetting(before, { path }), path).toBe(before);
    }
  });

  it('takes an item out of a list, so that the later ones move up', () => {
    const before = { steps: ['first', 'second', 'third'] };
    expect(withSetting(before, { path: 'steps/1' })).toEqual({ steps: ['first', 'third'] });
    expect(restoring(before, 'steps/1'), 'the list as a whole').toEqual({
      path: 'steps',
      value: before.steps,
    });
  });
});

describe('a place', () => {
  const record: Json = { steps: ['first', 'second'], parts: {}, name: 'cart' };

  it.each(['steps/0', 'steps/2', 'parts/new/mass/si', 'loop/leanGain', 'parts/constructor', 'name'])(
    '%s can be set',
    (path) => {
      expect(isPlace(record, path)).toBe(true);
    },
  );

  it.each([
    '',
    '/',
    'parts/',
    '/parts',
    'parts//mass',
    '__proto__',
    '__proto__/polluted',
    'parts/__proto__/name',
    'constructor/prototype/__proto__/x',
    'steps/3',
    'steps/-1',
    'steps/1.5',
    'steps/01',
    'steps/1e0',
    'steps/first',
    'steps/length',
    'a/'.repeat(200_000),
    'a'.repeat(401),
  ])('%s cannot', (path) => {
    expect(isPlace(record, path)).toBe(false);
  });
});

describe('what stands at a path', () => {
  const record: Json = { steps: ['first'], name: 'cart', none: null };

  it.each([
    'constructor',
    'constructor/name',
    'toString',
    '__proto__',
    '__proto__/constructor',
    'steps/length',
    'steps/map',
    'steps/-1',
    'steps/1',
    'name/length',
    'name/0',
    'none/x',
    'hasOwnProperty/call',
    '',
    '/name',
    'name/',
  ])('is nothing at %s', (path) => {
    expect(valueAt(record, path)).toBeUndefined();
  });

  it('is what the record itself holds, nought and blank included', () => {
    expect(valueAt({ a: { b: [0, '', null, false] } }, 'a/b')).toEqual([0, '', null, false]);
    expect(valueAt({ a: { b: [0] } }, 'a/b/0')).toBe(0);
    expect(valueAt({ constructor: 'Otto' }, 'constructor')).toBe('Otto');
    expect(valueAt({ none: null }, 'none')).toBeNull();
  });

  it('never touches what every object brings along', () => {
    fc.assert(
      fc.property(anyRecord, fc.string({ maxLength: 60 }), (record, path) => {
        const found = valueAt(record, path);
        expect(typeof found).not.toBe('function');
        expect(found === Object.prototype).toBe(false);
      }),
    );
  });
});
