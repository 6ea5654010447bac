/** The journal inside a dossier: the same as the desk reads, and nothing less than sound. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entries, state } from '../../tests/specimen/demo.ts';
import { journalOf, NOTEBOOK, smallChanges } from '../../tests/specimen/dossier.ts';
import { noHash, seal, sealGroup } from '../desk/journal-line.ts';
import { readJournal } from '../desk/journal-reading.ts';
import { set } from '../notebook/index.ts';
import { entriesOf } from '../notebook/sample.ts';
import { readJournalExtract } from './journal-extract.ts';

const small = journalOf(entriesOf(smallChanges));

/** A journal of lines that are sealed as they are, whatever is in them. */
function sealed(contents: readonly object[]): Uint8Array {
  let before = noHash;
  const lines = contents.map((content) => {
    const line = seal(content, before);
    before = line.hash;
    return line.bytes;
  });
  return new Uint8Array(Buffer.concat(lines));
}

const HEADING = {
  format: 'counterpoise journal',
  version: 1,
  notebook: NOTEBOOK,
  createdAt: '2026-03-01T09:00:00Z',
};
const entry = (seq: number, more?: number): object => ({
  seq,
  at: '2026-03-01T09:00:00Z',
  by: 'B',
  ...(more ? { more } : {}),
  change: { ...smallChanges[0], id: `n${seq}` },
});

describe('a sound journal', () => {
  it('is read as the desk reads it', () => {
    const journal = journalOf(entries);
    const [extract, reading] = [readJournalExtract(journal), readJournal(journal)];
    if (!extract.ok || !reading.ok) throw new Error('the demo’s journal is not read');
    expect(extract.value.entries).toEqual(reading.value.entries);
    expect(extract.value.head).toBe(reading.value.head);
    expect(extract.value.notebook).toBe(reading.value.heading.notebook);
    expect(extract.value.state).toEqual(state);
  });

  it('may have groups of lines, and entries that a merge has brought', () => {
    const merged = { seq: 9, hash: 'a'.repeat(64) };
    const group = sealGroup(entriesOf(smallChanges.slice(0, 3)), seal(HEADING, noHash).hash);
    const grouped = new Uint8Array(Buffer.concat([seal(HEADING, noHash).bytes, group.bytes]));
    expect(readJournalExtract(grouped)).toMatchObject({ ok: true, value: { head: group.hash } });
    const read = readJournalExtract(sealed([HEADING, { ...entry(1), merged }]));
    expect(read.ok && read.value.entries[0]).toMatchObject({ merged });
  });
});

const deep = (levels: number): unknown => JSON.parse(`${'['.repeat(levels)}${']'.repeat(levels)}`);

describe('a journal that is not sound', () => {
  it.each([
    ['is empty', new Uint8Array(), 'line 1', 'no end'],
    ['has no end', small.subarray(0, small.length - 1), 'line 1', 'no end'],
    ['is something else', sealed([{ format: 'something else' }]), 'line 1', 'heading'],
    ['has a line of text', new TextEncoder().encode('hello\n'), 'line 1', 'no hash'],
    ['leaves a number out', sealed([HEADING, entry(2)]), 'line 2', 'where 1 is due'],
    ['breaks a group off', sealed([HEADING, entry(1, 1)]), 'line 2', 'group'],
    ['mixes groups', sealed([HEADING, entry(1, 2), entry(2)]), 'line 3', 'line before'],
    [
      'has an entry of another kind',
      sealed([HEADING, { seq: 1, at: '', by: '', change: { op: 'erase' } }]),
      'line 2',
      'not an entry',
    ],
    ['is nested without end', sealed([HEADING, { ...entry(1), x: deep(500) }]), 'line 2', 'levels deep'],
    [
      'has a record that does not fit',
      sealed([HEADING, { ...entry(1), change: { op: 'create', kind: 'notebook', id: 'n', value: {} } }]),
      'line 2',
      'does not fit',
    ],
    [
      'changes what is not there',
      journalOf(entriesOf([set('notebook', 'n', { name: 'x' })])),
      'line 2',
      'does not fit',
    ],
  ])('%s: refused', (_id, journal, place, reason) => {
    const read = readJournalExtract(journal);
    expect(read).toMatchObject({
      ok: false,
      problem: { code: 'dossier.invalid', place: `journal, ${place}` },
    });
    expect(read.ok || String(read.problem.figures.detail)).toContain(reason);
  });

  it('is of a newer program: said so', () => {
    expect(readJournalExtract(sealed([{ ...HEADING, version: 2 }]))).toMatchObject({
      ok: false,
      problem: { code: 'dossier.newer', figures: { version: 2, known: 1 } },
    });
  });

  it('has any single byte changed, or any line moved or taken away', () => {
    fc.assert(
      fc.property(fc.nat(small.length - 1), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const spoilt = small.slice();
        spoilt[at] = (spoilt[at] ?? 0) ^ change;
        expect(readJournalExtract(spoilt).ok).toBe(false);
      }),
      { numRuns: 400 },
    );
    const lines = new TextDecoder().decode(small).split('\n').slice(0, -1);
    for (let index = 0; index < lines.length - 1; index++) {
      const without = `${lines.filter((_, other) => other !== index).join('\n')}\n`;
      expect(readJournalExtract(new TextEncoder().encode(without)).ok, `without line ${index + 1}`).toBe(
        false,
      );
    }
  });
});
