import { describe, expect, it } from 'vitest';
import { sentence } from '../quantity/index.ts';
import { type Change, create, type Json, set } from './change.ts';
import { creations, quantity, sample, stateOf } from './sample.ts';
import { apply, emptyState, invert } from './state.ts';

function refusal(change: Change, state = sample): string {
  const made = apply(state, change);
  return made.ok ? 'made' : sentence(made.problem);
}

describe('creating a record', () => {
  it.each(Object.entries(creations))('a %s needs no more than this', (kind, change) => {
    const made = apply(emptyState, change);
    expect(made.ok && Object.keys(made.value[change.kind])).toEqual([change.id]);
    expect(kind).toBe(change.kind);
  });

  it('fills in what may be left out', () => {
    expect(sample.revision.r?.status).toBe('draft');
    expect(sample.revision.r?.parts.frame?.role).toBe('structure');
    expect(sample.revision.r?.parts.frame?.body).toEqual({ shape: 'point' });
    expect(sample.revision.r?.fittings).toEqual({ radio: false, independentKill: false, driven: false });
  });

  it('is refused where one of that name exists, whatever it holds', () => {
    for (const change of Object.values(creations)) expect(refusal(change)).toMatch(/exists already/);
  });

  it('has no inverse: it stays on record', () => {
    expect(invert(emptyState, creations.prototype)).toBeUndefined();
    expect(invert(sample, creations.prototype)).toBeUndefined();
  });

  it('with bad data is refused with the path of the first fault', () => {
    const bad = (value: object): string => refusal(create('prototype', 'q', value as never), emptyState);
    expect(bad({ name: 'Rig', kind: 'boat', createdAt: '' })).toMatch(/^prototype, kind: /);
    expect(bad({ name: '', kind: 'pendulum rig', createdAt: '' })).toMatch(/^prototype, name: /);
    expect(bad({ name: 'Rig', kind: 'pendulum rig' })).toMatch(/^prototype, createdAt: /);
    expect(bad({ name: 'Rig', kind: 'pendulum rig', createdAt: '', wheels: 2 })).toMatch(/wheels/);
    expect(bad([])).toMatch(/^prototype: /);
  });
});

describe('setting', () => {
  it('changes what it names and nothing else, and keeps the objects of everything else', () => {
    const after = stateOf(
      [set('revision', 'r', { 'parts/frame/mass': quantity(0.7, 'kg') as Json })],
      sample,
    );
    expect(after.revision.r?.parts.frame?.mass).toEqual(quantity(0.7, 'kg'));
    expect(after.revision.r?.parts.frame?.z).toBe(sample.revision.r?.parts.frame?.z);
    expect(after.revision.r?.parts.disc).toBe(sample.revision.r?.parts.disc);
    expect(after.revision.r?.rotor).toBe(sample.revision.r?.rotor);
    expect(after.prototype).toBe(sample.prototype);
    expect(after.entry).toBe(sample.entry);
  });

  it('makes a group that is not there yet, with its defaults', () => {
    const after = stateOf([set('revision', 'r', { 'loop/leanGain': quantity(2) as Json })], sample);
    expect(after.revision.r?.loop).toEqual({ leanGain: quantity(2), rateSource: 'rate gyro' });
  });

  it('an absent value removes', () => {
    const after = stateOf(
      [set('revision', 'r', { weighedMass: undefined, 'parts/disc': undefined })],
      sample,
    );
    expect(after.revision.r && 'weighedMass' in after.revision.r).toBe(false);
    expect(Object.keys(after.revision.r?.parts ?? {})).toEqual(['frame']);
  });

  it('keeps nought, “not measured” and blank apart', () => {
    const after = stateOf(
      [
        set('revision', 'r', {
          'gimbal/travel': quantity(0) as Json,
          'gimbal/friction': { notMeasured: true },
          'gimbal/inertia': undefined,
        }),
      ],
      sample,
    );
    expect(after.revision.r?.gimbal).toEqual({
      centring: quantity(0, 'N·m/rad'),
      travel: quantity(0),
      friction: { notMeasured: true },
    });
  });

  it('several places at once are set together or not at all', () => {
    const change = set('revision', 'r', { reason: 'heavier', 'parts/frame/order': 'first', letter: 'B' });
    expect(refusal(change)).toMatch(/^revision, parts\/frame\/order: /);
    expect(sample.revision.r?.reason).toBe('');
  });

  it('is refused for a record that is not there', () => {
    expect(refusal(set('revision', 'none', { reason: 'x' }))).toMatch(/none/);
    for (const id of ['constructor', '__proto__', 'toString']) {
      expect(refusal(set('revision', id, { reason: 'x' })), id).toMatch(/^revision: /);
      expect(invert(sample, set('revision', id, { reason: 'x' })), id).toBeUndefined();
    }
  });

  it.each([
    ['revision', 'r', { letter: 'I' }, /^revision, letter: .*Y14\.35/],
    ['revision', 'r', { letter: undefined }, /^revision, letter: /],
    ['revision', 'r', { weighedMass: 2.3 }, /^revision, weighedMass: /],
    ['revision', 'r', { weighedMass: '2.3 kg' }, /^revision, weighedMass: /],
    ['revision', 'r', { weighedMass: null }, /^revision, weighedMass: /],
    ['revision', 'r', { 'weighedMass/u': -0.1 }, /^revision, weighedMass\/u: /],
    ['revision', 'r', { 'weighedMass/si': '2.3' }, /^revision, weighedMass\/si: /],
    ['revision', 'r', { 'weighedMass/basis': 'guessed' }, /^revision, weighedMass\/basis: /],
    ['revision', 'r', { 'weighedMass/unit': 'kg' }, /^revision, weighedMass: .*unit/],
    ['revision', 'r', { 'weighedMass/notMeasured': true }, /^revision, weighedMass: .*notMeasured/],
    [
      'revision',
      'r',
      { 'parts/frame': undefined, 'parts/frame/mass': { notMeasured: true } },
      /^revision, parts\/frame\/name: /,
    ],
    ['revision', 'r', { 'parts/frame/body/shape': 'blob' }, /^revision, parts\/frame\/body\/shape: /],
    ['revision', 'r', { 'parts/disc/body/shape': 'box' }, /^revision, parts\/disc\/body: .*axis/],
    ['revision', 'r', { 'parts/frame/role': 'hat' }, /^revision, parts\/frame\/role: /],
    [
      'revision',
      'r',
      { 'ballast/kind': 'hanging arm', 'ballast/height': { notMeasured: true } },
      /^revision, ballast: .*height/,
    ],
    ['revision', 'r', { 'pack/cellsInSeries': 2.5 }, /^revision, pack\/cellsInSeries: /],
    ['revision', 'r', { 'pack/cellsInSeries': 0 }, /^revision, pack\/cellsInSeries: /],
    ['revision', 'r', { status: 'released' }, /^revision, status: /],
    ['revision', 'r', { 'name/first': 'x' }, /name/],
    ['revision', 'r', { 'letter/first': 'x' }, /^revision, letter: /],
    ['prototype', 'p', { name: '' }, /^prototype, name: /],
    ['prototype', 'p', { name: 'n'.repeat(121) }, /^prototype, name: /],
    [
      'prototype',
      'p',
      { 'requirements/topSpeed': { notMeasured: true } },
      /^prototype, requirements: .*topSpeed/,
    ],
    ['entry', 'e', { number: 0 }, /^entry, number: /],
    [
      'entry',
      'e',
      { 'attachments/a': { sha256: 'beef', name: 'a', mediaType: 'b', size: 1, order: 1 } },
      /^entry, attachments\/a\/sha256: /,
    ],
    ['card', 'c', { 'steps/3': 4 }, /^card, steps\/3: /],
    ['card', 'c', { 'steps/0': undefined, steps: 'none' }, /^card, steps: /],
    [
      'run',
      'x',
      { 'answers/list.plug': { at: '', initials: '', met: true } },
      /^run, answers\/list\.plug\/initials: /,
    ],
    ['failure', 'f', { severity: 'V' }, /^failure, severity: /],
    ['failure', 'f', { 'causes/0': null }, /^failure, causes\/0: /],
  ] as const)('%s %s %j is refused, and the message names the place', (kind, id, settings, message) => {
    expect(refusal(set(kind, id, settings as Record<string, Json | undefined>))).toMatch(message);
  });

  it.each([
    '__proto__/polluted',
    'parts/__proto__/mass',
    'parts/frame/__proto__',
    'constructor/prototype/polluted',
    'parts/frame/constructor/prototype/polluted',
    'parts//name',
    'parts/frame/',
    '/letter',
    `${'a/'.repeat(150)}a`,
    'a/'.repeat(100_000),
    `parts/${'x'.repeat(1_000_000)}`,
  ])('at %s is refused and touches nothing', (path) => {
    const before = JSON.stringify(sample);
    const message = refusal({ op: 'set', kind: 'revision', id: 'r', set: [{ path, value: 'x' }] });
    expect(message).toMatch(/^revision/);
    expect(message.length).toBeLessThan(400);
    expect(JSON.stringify(sample)).toBe(before);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect((Object as unknown as Record<string, unknown>).polluted).toBeUndefined();
  });

  it.each(['causes/first', 'causes/-1', 'causes/1.0', 'causes/3', 'causes/length', 'causes/01'])(
    'an item of a list at %s is refused',
    (path) => {
      expect(refusal(set('failure', 'f', { [path]: 'x' }))).toMatch(/no place/);
      expect(refusal(set('failure', 'f', { [path]: undefined }))).toMatch(/no place/);
    },
  );

  it('an item of a list is set, appended and removed', () => {
    const causes = (settings: Record<string, Json | undefined>) =>
      stateOf([set('failure', 'f', settings)], sample).failure.f?.causes;
    expect(causes({ 'causes/0': 'It slid' })).toEqual(['It slid', 'The seat is wide']);
    expect(causes({ 'causes/2': 'The reamer' })).toEqual(['It moved', 'The seat is wide', 'The reamer']);
    expect(causes({ 'causes/0': undefined })).toEqual(['The seat is wide']);
    expect(causes({ 'causes/2': undefined }), 'nothing is there').toEqual(['It moved', 'The seat is wide']);
  });
});

describe('an issued revision', () => {
  const issued = stateOf(
    [set('revision', 'r', { status: 'issued', issuedAt: 'then', issuedBy: 'B' })],
    sample,
  );

  it.each([
    [{ status: 'draft' }],
    [{ reason: 'better' }],
    [{ 'parts/frame/mass': { notMeasured: true } }],
    [{ 'parts/frame': undefined }],
    [{ status: 'issued' }],
    [{ weighedMass: undefined }],
  ] as const)('refuses %j', (settings) => {
    expect(refusal(set('revision', 'r', settings as Record<string, Json | undefined>), issued)).toMatch(
      /issued/,
    );
  });

  it('is not put back to a draft by the inverse of issuing it', () => {
    const issuing = set('revision', 'r', { status: 'issued' });
    const back = invert(sample, issuing);
    expect(back).toEqual(set('revision', 'r', { status: 'draft' }));
    expect(refusal(back as Change, issued)).toMatch(/issued/);
  });

  it('leaves other revisions, and the records about it, free', () => {
    const other = { ...creations.revision, id: 's' } as Change;
    const after = stateOf(
      [other, set('revision', 's', { reason: 'x' }), set('entry', 'e', { title: 'y' })],
      issued,
    );
    expect(after.revision.s?.reason).toBe('x');
    expect(after.revision.r).toBe(issued.revision.r);
  });
});

describe('undoing', () => {
  const back = (change: Change): unknown => {
    const inverse = invert(sample, change);
    return inverse && stateOf([change, inverse], sample);
  };

  it.each([
    ['the first field of a group', set('revision', 'r', { 'loop/leanGain': quantity(2) as Json })],
    [
      'two fields of a group that was not there',
      set('revision', 'r', { 'loop/leanGain': quantity(2) as Json, 'loop/rateGain': quantity(1) as Json }),
    ],
    [
      'the first section of a rotor',
      set('revision', 'r', { 'rotor/sections/rim': { name: 'rim', order: 1 } }),
    ],
    ['a part with everything in it', set('revision', 'r', { 'parts/disc': undefined })],
    ['a group', set('revision', 'r', { rotor: undefined, gimbal: undefined })],
    ['a kind of drive', set('revision', 'r', { ballast: { kind: 'upright arm' } })],
    ['an item of a list', set('failure', 'f', { 'causes/0': undefined })],
    [
      'all items of a list, one by one',
      { op: 'set', kind: 'failure', id: 'f', set: [{ path: 'causes/0' }, { path: 'causes/0' }] },
    ],
    ['an appended item', set('failure', 'f', { 'causes/2': 'The reamer' })],
    [
      'a place set twice',
      {
        op: 'set',
        kind: 'revision',
        id: 'r',
        set: [
          { path: 'reason', value: 'a' },
          { path: 'reason', value: 'b' },
        ],
      },
    ],
    [
      'a whole and then a piece of it',
      {
        op: 'set',
        kind: 'revision',
        id: 'r',
        set: [
          { path: 'gimbal', value: {} },
          { path: 'gimbal/travel', value: { notMeasured: true } },
        ],
      },
    ],
    [
      'a piece and then the whole',
      {
        op: 'set',
        kind: 'revision',
        id: 'r',
        set: [
          { path: 'gimbal/travel', value: { notMeasured: true } },
          { path: 'gimbal', value: {} },
        ],
      },
    ],
    ['something that was not there to be removed', set('revision', 'r', { 'loop/delay': undefined })],
  ] as readonly (readonly [string, Change])[])('%s gives the state back', (_what, change) => {
    expect(back(change)).toEqual(sample);
  });
});
