/** What your collaborator will ask. */
import { describe, expect, it } from 'vitest';
import { state as demo } from '../../tests/specimen/demo.ts';
import {
  type Change,
  create,
  type FailureReport,
  type NotebookState,
  type Revision,
  set,
} from '../notebook/index.ts';
import { AT, creations, quantity, sample, stateOf } from '../notebook/sample.ts';
import { dossierQuestions, type QuestionKind } from './questions.ts';

const [demoPrototype = ''] = Object.keys(demo.prototype);
const revisionId = Object.keys(demo.revision).at(-1) ?? '';
const newest = demo.revision[revisionId] as Revision;

const ask = (state: NotebookState, id = demoPrototype) => dossierQuestions(state, id);
const kindsOf = (state: NotebookState, id = demoPrototype): QuestionKind[] =>
  ask(state, id).map(({ kind }) => kind);
const textsOf = (state: NotebookState, kind: QuestionKind, id = demoPrototype): string[] =>
  ask(state, id)
    .filter((question) => question.kind === kind)
    .map(({ text }) => text);

function withNewest(change: Partial<Revision>): NotebookState {
  return { ...demo, revision: { ...demo.revision, [revisionId]: { ...newest, ...change } } };
}

function withFailure(change: Partial<FailureReport>): NotebookState {
  const [id = '', failure] = Object.entries(demo.failure)[0] ?? [];
  return { ...demo, failure: { [id]: { ...(failure as FailureReport), ...change } } };
}

describe('a missing measurement', () => {
  it('is asked for once, with the margins that wait for it and the place where it is entered', () => {
    const [partId = '', part] = Object.entries(newest.parts)[0] ?? [];
    const { mass: _, ...weightless } = part ?? {
      name: '',
      order: 1,
      role: 'structure',
      body: { shape: 'point' },
    };
    const state = withNewest({ parts: { ...newest.parts, [partId]: weightless } });
    const questions = ask(state).filter(({ kind }) => kind === 'missing measurement');
    expect(questions).toHaveLength(1);
    expect(questions[0]?.text).toContain(`What is the mass of ${part?.name}?`);
    expect(questions[0]?.text).toContain('Lean to recover from');
    expect(questions[0]?.place).toEqual({
      kind: 'revision',
      id: revisionId,
      page: 'Masses',
      path: `parts/${partId}/mass`,
    });
  });

  it('that somebody has marked as not measured is asked for with the note', () => {
    const gimbal = { ...newest.gimbal, friction: { notMeasured: true as const, note: 'bearing not run in' } };
    const [text = ''] = textsOf(withNewest({ gimbal }), 'missing measurement');
    expect(text).toContain('viscous friction of the gimbal');
    expect(text).toContain('bearing not run in');
  });

  it('is not asked for where it is nought', () => {
    const gimbal = { ...newest.gimbal, centring: quantity(0, 'N·m/rad') };
    expect(textsOf(withNewest({ gimbal }), 'missing measurement')).toEqual([]);
  });

  it('is everything while there is no revision', () => {
    const state = stateOf([creations.notebook, creations.prototype]);
    expect(textsOf(state, 'missing measurement', 'p')).toEqual(['What was built? There is no revision yet.']);
  });
});

describe('a margin', () => {
  const [first = '', second = ''] = Object.keys(demo.revision);
  const upTo = (ids: readonly string[]): NotebookState => ({
    ...demo,
    revision: Object.fromEntries(Object.entries(demo.revision).filter(([id]) => ids.includes(id))),
  });

  it('that fails is asked about with both its sides', () => {
    const texts = textsOf(upTo([first]), 'failing margin');
    expect(texts.length).toBeGreaterThan(0);
    expect(texts[0]).toMatch(/^“Lean to recover from” fails: .+° against 5°\. What is going to change\?$/);
  });

  it('in doubt is asked about with the measurement that would decide it', () => {
    const [text = ''] = textsOf(upTo([first, second]), 'margin in doubt');
    expect(text).toContain('“Lean to recover from” is in doubt');
    expect(text).toContain('Most comes from the');
  });

  it('that holds is not asked about', () => {
    expect(kindsOf(demo)).not.toContain('failing margin');
    expect(kindsOf(demo)).not.toContain('margin in doubt');
  });

  it('is asked for where there is no requirement', () => {
    expect(kindsOf(sample, 'p')[0]).toBe('requirement');
  });
});

describe('a failure', () => {
  it.each([
    ['open', 'It is open.'],
    ['action taken', 'No run has verified it yet.'],
  ] as const)('%s is asked about', (status, words) => {
    expect(textsOf(withFailure({ status }), 'open failure')).toEqual([expect.stringContaining(words)]);
  });

  it('closed is not', () => {
    expect(textsOf(withFailure({ status: 'closed' }), 'open failure')).toEqual([]);
  });
});

describe('a gain', () => {
  const rig = (changes: readonly Change[]): NotebookState =>
    stateOf([
      creations.notebook,
      creations.prototype,
      create('revision', 'a', {
        prototype: 'p',
        letter: 'A',
        createdAt: AT,
        loop: { leanGain: quantity(4.2) },
      }),
      ...changes,
    ]);
  const entry = (text: string): Change =>
    create('entry', 'e', { prototype: 'p', revision: 'a', number: 1, title: '', at: AT, author: 'B', text });
  const second = create('revision', 'b', {
    prototype: 'p',
    letter: 'B',
    from: 'a',
    createdAt: AT,
    loop: { leanGain: quantity(4.2) },
  });

  it('of which nothing says where it is from is asked about, and only that one', () => {
    expect(textsOf(rig([]), 'undocumented gain', 'p')).toEqual([
      expect.stringContaining('gain on the lean of 4.2'),
    ]);
  });

  it.each([
    ['the log speaks of gains', [entry('Raised the gain until it rang, then took a third off.')]],
    ['the log names the figure', [entry('lean_gain from the sweep of today')]],
    ['the reason of the revision does', [set('revision', 'a', { reason: 'Gains from the sweep.' })]],
    [
      'its reading names a method',
      [set('revision', 'a', { 'loop/leanGain/instrument': 'sweep of 3 March' })],
    ],
    ['it is nought', [set('revision', 'a', { 'loop/leanGain': quantity(0) })]],
    ['an earlier revision had it and said so', [entry('The gains are from the sweep.'), second]],
  ])('is documented where %s', (_id, changes) => {
    expect(textsOf(rig(changes), 'undocumented gain', 'p')).toEqual([]);
  });

  it('that was changed since is not documented by what was said of the old one', () => {
    const changed = set('revision', 'b', { 'loop/leanGain': quantity(5) });
    const state = rig([entry('The gains are from the sweep.'), second, changed]);
    expect(textsOf(state, 'undocumented gain', 'p')).toHaveLength(1);
  });

  it('is not documented by words that only look like it', () => {
    expect(
      textsOf(rig([entry('We gained a second; again and against the wall.')]), 'undocumented gain', 'p'),
    ).toHaveLength(1);
  });
});

describe('a file', () => {
  it('that is missing is asked for by its name and hash', () => {
    const missing = [{ name: 'tray.step', sha256: 'ab'.repeat(32) }];
    const [question] = dossierQuestions(demo, demoPrototype, missing).filter(
      ({ kind }) => kind === 'missing file',
    );
    expect(question?.text).toContain('“tray.step” (abababababab)');
  });

  it('of firmware and a drawing are asked for until something like them is attached', () => {
    expect(kindsOf(demo)).toEqual(expect.arrayContaining(['firmware', 'drawing']));
    const [id = '', entry] = Object.entries(demo.entry)[0] ?? [];
    if (!entry) throw new Error('the demo has no entry');
    const file = (name: string, digits: string) => ({
      name,
      sha256: digits.repeat(32),
      mediaType: '',
      size: 1,
      caption: '',
      order: 9,
    });
    const attachments = { a: file('balance.ino', 'ab'), b: file('tray.DXF', 'cd') };
    const state = { ...demo, entry: { ...demo.entry, [id]: { ...entry, attachments } } };
    expect(kindsOf(state)).not.toEqual(expect.arrayContaining(['firmware']));
    expect(kindsOf(state)).not.toEqual(expect.arrayContaining(['drawing']));
  });
});

describe('what stands on other feet than it seems', () => {
  it('a draft is asked about', () => {
    expect(kindsOf(demo)).not.toContain('draft');
    expect(textsOf(withNewest({ status: 'draft' }), 'draft')).toEqual([
      expect.stringContaining('revision C'),
    ]);
  });

  it('a run of other figures is asked about, a void one is not', () => {
    const runs = Object.entries(demo.run);
    const [id = '', run] = runs[0] ?? [];
    if (!run) throw new Error('the demo has no run');
    const changed = (status: 'finished' | 'void'): NotebookState => ({
      ...demo,
      run: { ...demo.run, [id]: { ...run, fingerprint: '0000000000000000', status } },
    });
    const before = textsOf(demo, 'run of other figures').length;
    expect(textsOf(changed('finished'), 'run of other figures')).toHaveLength(before + 1);
    expect(textsOf(changed('void'), 'run of other figures')).toHaveLength(before);
  });

  it('what the data say about themselves is passed on', () => {
    const heavier = withNewest({ weighedMass: { typed: '9 kg', si: 9, u: 0.001, basis: 'measured' } });
    expect(textsOf(heavier, 'data').length).toBeGreaterThan(textsOf(demo, 'data').length);
  });
});

it('there is nothing to ask about a prototype that is not there', () => {
  expect(dossierQuestions(demo, 'nowhere')).toEqual([]);
});
