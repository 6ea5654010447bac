/** From a notebook to a dossier and back, and dossiers that nobody should take in. */
import { beforeAll, describe, expect, it } from 'vitest';
import { craftedZip } from '../../tests/specimen/crafted-zip.ts';
import {
  attachedBytes,
  attachedSum,
  attaching,
  bagged,
  journalOf,
  NOTEBOOK,
  payloadOf,
  smallChanges,
  sourceOf,
  withFile,
  written,
} from '../../tests/specimen/dossier.ts';
import { type Change, create, type JournalEntry, replay } from '../notebook/index.ts';
import { AT, entriesOf, quantity } from '../notebook/sample.ts';
import { readZip } from './archive/zip-read.ts';
import { writeZip } from './archive/zip-write.ts';
import type { DossierDescription } from './description.ts';
import { readDossier } from './read.ts';
import { type WrittenDossier, writeDossier } from './write.ts';

const changes: readonly Change[] = [
  ...smallChanges,
  attaching('Läufe/../lean, first try.csv', attachedSum, attachedBytes.length),
  create('prototype', 'other', { name: 'Secret car', kind: 'monorail car', createdAt: AT }),
];
const contents = new Map([[attachedSum, attachedBytes]]);
const source = sourceOf(changes, 'p', contents);

let made: WrittenDossier;
let payload: Map<string, Uint8Array>;
beforeAll(async () => {
  made = await written(source);
  payload = payloadOf(made.bytes);
}, 60_000);

const text = (path: string): string => new TextDecoder().decode(payload.get(path));

describe('a dossier that is read again', () => {
  it('holds the notebook: the same journal, the same records, the same files', () => {
    const read = readDossier(made.bytes);
    if (!read.ok) throw new Error(JSON.stringify(read.problem));
    const { journal, entries, state, attachments, missing, warnings, description } = read.value;
    expect(journal).toEqual(source.journal);
    expect(entries).toEqual(entriesOf(changes));
    expect(state).toEqual(replay(entriesOf(changes)).state);
    expect([...attachments]).toEqual([[attachedSum, attachedBytes]]);
    expect([missing, warnings]).toEqual([[], []]);
    expect(description).toMatchObject({
      notebook: NOTEBOOK,
      entries: changes.length,
      prototype: { id: 'p', name: 'Rig' },
    });
  });

  it('is the same to the last byte when it is written again', async () => {
    expect((await written(source)).bytes).toEqual(made.bytes);
  });

  it('may have been packed again by somebody, in its folder or without it', () => {
    const files = readZip(made.bytes);
    if (!files.ok) throw new Error('not read');
    const bare = [...files.value].map(([path, content]) => [path.replace(/^[^/]+\//, ''), content] as const);
    expect(readDossier(writeZip(new Map(bare), '2030-01-01')).ok).toBe(true);
    const beside = new Map([...files.value, ['__MACOSX/x', new Uint8Array()]]);
    expect(readDossier(writeZip(beside, '2030-01-01')).ok).toBe(true);
  });

  it('says which files the sender did not have', async () => {
    const without = await written({ ...source, attachment: async () => undefined });
    expect(without.questions.some(({ kind }) => kind === 'missing file')).toBe(true);
    const read = readDossier(without.bytes);
    expect(read.ok && read.value.missing).toEqual([
      { sha256: attachedSum, name: 'Läufe/../lean, first try.csv' },
    ]);
  });

  it('has no file that is not what was attached', async () => {
    const altered = await written({ ...source, attachment: async () => new TextEncoder().encode('other') });
    expect(altered.description.missing).toHaveLength(1);
  });
});

describe('the payload', () => {
  it('is about one prototype, and the journal about the whole notebook, which is said', () => {
    for (const path of payload.keys()) {
      if (path === 'README.txt' || path.startsWith('journal/')) continue;
      expect(text(path), path).not.toContain('Secret car');
    }
    expect(text('README.txt').replace(/\s+/g, ' ')).toContain('It therefore also tells of Secret car');
    expect(text('journal/journal.jsonl')).toContain('Secret car');
  });

  it('gives attached files plain names, and says which ones they had', () => {
    expect(payload.get('files/Laufe-..-lean-first-try.csv')).toEqual(attachedBytes);
    expect(text('tables/files.csv')).toContain('"Läufe/../lean, first try.csv"');
  });

  it('keeps files that only the history names beside the journal', async () => {
    const removed: Change[] = [
      ...changes,
      { op: 'set', kind: 'entry', id: 'with-file', set: [{ path: 'attachments/a' }] },
    ];
    const { bytes } = await written({ ...source, journal: journalOf(entriesOf(removed)) });
    expect(payloadOf(bytes).get(`journal/other-files/${attachedSum}`)).toEqual(attachedBytes);
    expect(readDossier(bytes).ok).toBe(true);
  });

  it('lists what is open in the README as it is listed before the export', () => {
    const words = text('README.txt').replace(/\s+/g, ' ');
    expect(made.questions.length).toBeGreaterThan(0);
    for (const { text: question } of made.questions) expect(words).toContain(question.replace(/\s+/g, ' '));
  });

  it('has no name that any computer could stumble over', () => {
    const files = readZip(made.bytes);
    for (const path of files.ok ? files.value.keys() : []) expect(path).toMatch(/^[\w.-]+(\/[\w.-]+)*$/);
  });
});

it('a prototype of which nothing is recorded yet has a dossier too', async () => {
  const { bytes, questions, suggestedName } = await written(sourceOf(changes, 'other'));
  expect(questions[0]?.text).toBe('What was built? There is no revision yet.');
  expect(suggestedName).toBe('dossier-secret-car.zip');
  expect(readDossier(bytes).ok).toBe(true);
});

describe('a dossier that cannot be written', () => {
  it.each([
    ['its prototype is not there', { prototypeId: 'nobody' }, 'record.unknown'],
    [
      'its prototype is named like a member of every object',
      { prototypeId: 'constructor' },
      'record.unknown',
    ],
    ['its journal is torn', { journal: journalOf(entriesOf(changes)).subarray(0, -5) }, 'dossier.invalid'],
  ])('because %s: says so', async (_id, change, code) => {
    expect(await writeDossier({ ...source, ...change })).toMatchObject({ ok: false, problem: { code } });
  });
});

/** The payload with its description changed to fit a changed journal, as somebody would who spoils it on purpose. */
function withJournal(entries: readonly JournalEntry[]): Map<string, Uint8Array> {
  const journal = journalOf(entries);
  const head = /"hash":"([0-9a-f]{64})"\}\n$/.exec(new TextDecoder().decode(journal))?.[1] ?? '';
  return withDescription(
    { head, entries: entries.length },
    withFile(payload, 'journal/journal.jsonl', journal),
  );
}

function withDescription(
  change: Partial<DossierDescription> | { readonly [member: string]: unknown },
  files = payload,
) {
  const description = JSON.parse(new TextDecoder().decode(files.get('dossier.json')));
  return withFile(files, 'dossier.json', JSON.stringify({ ...description, ...change }));
}

const nested = (levels: number): string => `${'['.repeat(levels)}${']'.repeat(levels)}`;

describe('a hostile dossier with sound checksums', () => {
  const refused = (files: ReadonlyMap<string, Uint8Array>) => {
    const read = readDossier(bagged(files));
    return read.ok
      ? { code: 'taken in', place: '', detail: '' }
      : { ...read.problem, detail: String(read.problem.figures.detail) };
  };

  it('would be taken in if it were not spoilt', () => {
    expect(refused(payload).code).toBe('taken in');
    expect(refused(withJournal(entriesOf(changes))).code).toBe('taken in');
  });

  it.each([
    [
      'another bag',
      () => new Map([['hello.txt', new Uint8Array()]]),
      'dossier.foreign',
      'dossier.json',
      'missing',
    ],
    [
      'another description',
      () => withFile(payload, 'dossier.json', '{"format":"x"}'),
      'dossier.foreign',
      'dossier.json',
      'something else',
    ],
    [
      'a description that is null',
      () => withFile(payload, 'dossier.json', 'null'),
      'dossier.foreign',
      'dossier.json',
      'something else',
    ],
    [
      'a description that is no JSON',
      () => withFile(payload, 'dossier.json', '{'),
      'dossier.invalid',
      'dossier.json',
      'not JSON',
    ],
    [
      'a description without end',
      () => withFile(payload, 'dossier.json', nested(100_000)),
      'dossier.invalid',
      'dossier.json',
      'levels deep',
    ],
    [
      'a description of a newer program',
      () => withDescription({ version: 2 }),
      'dossier.newer',
      'dossier.json',
      '',
    ],
    [
      'a description that lacks a member',
      () => withDescription({ questions: 7 }),
      'dossier.invalid',
      'dossier.json',
      '“questions”',
    ],
    [
      'another head',
      () => withDescription({ head: 'a'.repeat(64) }),
      'dossier.invalid',
      'dossier.json',
      'head',
    ],
    [
      'another notebook',
      () => withDescription({ notebook: 'x' }),
      'dossier.invalid',
      'dossier.json',
      'another notebook',
    ],
    ['another count', () => withDescription({ entries: 1 }), 'dossier.invalid', 'dossier.json', 'entries'],
    [
      'another prototype',
      () => withDescription({ prototype: { id: 'p', name: 'Safe car' } }),
      'dossier.invalid',
      'dossier.json',
      'prototype',
    ],
    [
      'no journal',
      () => withFile(payload, 'journal/journal.jsonl', undefined),
      'dossier.invalid',
      'journal/journal.jsonl',
      'missing',
    ],
    [
      'a journal cut short',
      () => withFile(payload, 'journal/journal.jsonl', source.journal.subarray(0, 900)),
      'dossier.invalid',
      'journal, line 1',
      'no end',
    ],
    [
      'an entry left out',
      () => withJournal(entriesOf(changes).filter(({ seq }) => seq !== 5)),
      'dossier.invalid',
      'journal, line 6',
      'where 5 is due',
    ],
    [
      'an issued revision changed',
      () => withJournal(changedAfterIssue()),
      'dossier.invalid',
      'journal, line 10',
      'does not fit',
    ],
    [
      'a record that names what every object has',
      () =>
        withJournal(
          entriesOf([
            ...changes,
            create('revision', 'x', { prototype: 'constructor', letter: 'B', createdAt: AT }),
          ]),
        ),
      'dossier.invalid',
      'journal/journal.jsonl',
      'cannot be one',
    ],
    [
      'an attached file altered',
      () => withFile(payload, 'files/Laufe-..-lean-first-try.csv', 'other'),
      'dossier.invalid',
      'files/Laufe-..-lean-first-try.csv',
      'no entry',
    ],
    [
      'an attached file taken away',
      () => withFile(payload, 'files/Laufe-..-lean-first-try.csv', undefined),
      'dossier.invalid',
      'files',
      'is missing',
    ],
    [
      'a file smuggled in',
      () => withFile(payload, 'files/tool.exe', 'MZ'),
      'dossier.invalid',
      'files/tool.exe',
      'no entry',
    ],
    [
      'records that are no JSON',
      () => withFile(payload, 'records/run.json', 'x'),
      'dossier.invalid',
      'records/run.json',
      'not JSON',
    ],
    [
      'records without end',
      () => withFile(payload, 'records/run.json', nested(100_000)),
      'dossier.invalid',
      'records/run.json',
      'levels deep',
    ],
    [
      'records of no kind',
      () => withFile(payload, 'records/x.json', '{"kind":"constructor","records":{}}'),
      'dossier.invalid',
      'records/x.json',
      'not a file of records',
    ],
    [
      'a record that does not fit its schema',
      () => withFile(payload, 'records/prototype.json', '{"kind":"prototype","records":{"p":{"name":1}}}'),
      'dossier.invalid',
      'records/prototype.json',
      '“p”',
    ],
  ] as const)('%s: refused, with place and reason', (_id, files, code, place, reason) => {
    const found = refused(files() as ReadonlyMap<string, Uint8Array>);
    expect([found.code, found.place]).toEqual([code, place]);
    expect(found.detail).toContain(reason);
  });

  it('has names that are shown without obeying them', () => {
    const found = refused(withFile(payload, 'files/a.txt', 'x'));
    expect(found.code).toBe('dossier.invalid');
    const zip = craftedZip({ files: [{ name: 'a\x1b[2J\u202e.txt' }] });
    const read = readDossier(zip);
    expect(read.ok || read.problem.place).toBe('a\ufffd[2J\ufffd.txt');
  });
});

function changedAfterIssue(): readonly JournalEntry[] {
  const later: Change[] = [
    { op: 'set', kind: 'revision', id: 'r', set: [{ path: 'status', value: 'issued' }] },
    { op: 'set', kind: 'revision', id: 'r', set: [{ path: 'weighedMass', value: quantity(9) }] },
  ];
  return entriesOf([...changes, ...later]);
}
