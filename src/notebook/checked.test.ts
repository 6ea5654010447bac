/** Reading again only what was touched has to find what reading the whole record finds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change, Json, Setting } from './change.ts';
import { type RecordKind, schemas } from './kinds.ts';
import { isPlace, withSetting } from './path.ts';
import { quantity, sample } from './sample.ts';
import { apply } from './state.ts';

const ids = { revision: 'r', run: 'x', failure: 'f', entry: 'e', card: 'c', prototype: 'p' } as const;
const kind = fc.constantFrom(...(Object.keys(ids) as (keyof typeof ids)[]));
const place = fc.constantFrom(
  ...[
    'parts',
    'parts/frame',
    'parts/frame/mass',
    'parts/disc/body',
    'parts/new',
    'parts/new/order',
    'weighedMass',
  ],
  ...[
    'answers',
    'answers/list.plug',
    'answers/list.plug/met',
    'answers/list.plug/reading',
    'items',
    'items/0',
  ],
  ...[
    'items/0/hold',
    'items/1',
    'readings',
    'readings/lean',
    'notes/n',
    'status',
    'summary',
    'title',
    'text',
  ],
  ...[
    'attachments',
    'attachments/a',
    'attachments/a/order',
    'causes',
    'causes/0',
    'requirements/runTime',
    'name',
  ],
  ...[
    'predictions/m',
    'predictions/m/u',
    'steps/1',
    'fittings',
    'fittings/radio',
    'rotor/sections/s',
    'nothing',
  ],
);
const sound: readonly Json[] = [
  quantity(1),
  { name: 'Box', order: 3 },
  { at: 'now', initials: 'B', met: true },
  { sha256: 'a'.repeat(64), name: 'a', mediaType: 'text/csv', size: 3, order: 1 },
  { name: 'm', label: 'm', unit: 'kg', value: 1, u: 0 },
  { at: 'now', text: 'x', author: 'B' },
  { shape: 'point' },
  { a: quantity(2) },
];
const value = fc.option(
  fc.constantFrom<Json>(...sound, null, '', 'x', 7, true, [], {}, ['x'], 'issued', 'void'),
  {
    nil: undefined,
  },
);
const setting = fc
  .tuple(place, value)
  .map(([path, held]): Setting => (held === undefined ? { path } : { path, value: held }));

describe('a change of a sound record', () => {
  it('is taken or refused as the whole record would be, and makes the same of it', () => {
    let taken = 0;
    let refused = 0;
    fc.assert(
      fc.property(kind, fc.array(setting, { minLength: 1, maxLength: 3 }), (of, settings) => {
        const before = sample[of][ids[of]] as Json;
        fc.pre(settings.every(({ path }) => isPlace(before, path)));
        let wanted = before;
        for (const each of settings) {
          fc.pre(isPlace(wanted, each.path));
          wanted = withSetting(wanted, each);
        }
        const whole = schemas[of as RecordKind].safeParse(wanted);
        const change: Change = { op: 'set', kind: of, id: ids[of], set: settings };
        const made = apply(sample, change);
        expect(made.ok).toBe(whole.success);
        if (made.ok) expect(made.value[of][ids[of]]).toStrictEqual(whole.data);
        if (made.ok) taken += 1;
        else refused += 1;
      }),
      { numRuns: 2000 },
    );
    expect(Math.min(taken, refused), 'both have come up').toBeGreaterThan(100);
  });
});
