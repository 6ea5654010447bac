import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../tests/durability/random.ts';
import { create, type JournalEntry, set } from '../notebook/index.ts';
import { noHash, seal, sealGroup } from './journal-line.ts';
import { readJournal } from './journal-reading.ts';

const at = '2026-03-01T09:00:00.000+01:00';
const entry = (seq: number, name: string): JournalEntry => ({
  seq,
  at,
  by: 'B',
  change: seq === 1 ? create('notebook', 'n', { name, createdAt: at }) : set('notebook', 'n', { name }),
});

/** A journal of the groups given by their lengths, `1 3 1` for five entries of which three belong together. */
function written(lengths: readonly number[]): { bytes: Buffer; ends: readonly number[]; head: string } {
  const heading = seal({ format: 'counterpoise journal', version: 1, notebook: 'id', createdAt: at }, noHash);
  const pieces = [Buffer.from(heading.bytes)];
  const ends = [heading.bytes.length];
  let { hash } = heading;
  let seq = 0;
  for (const length of lengths) {
    const group = sealGroup(
      Array.from({ length }, () => entry(++seq, `name ${seq} µ`)),
      hash,
    );
    pieces.push(Buffer.from(group.bytes));
    ends.push((ends.at(-1) ?? 0) + group.bytes.length);
    hash = group.hash;
  }
  return { bytes: Buffer.concat(pieces), ends, head: hash };
}

const sound = written([1, 3, 1]);

describe('a journal line', () => {
  it('is hashed as docs/journal.md says: the hash before it, then its bytes without the hash member', () => {
    const lines = sound.bytes.toString('utf8').trimEnd().split('\n');
    let before = '0'.repeat(64);
    for (const line of lines) {
      const [, body = '', hash] = /^(.*),"hash":"([0-9a-f]{64})"\}$/.exec(line) ?? [];
      expect(createHash('sha256').update(`${before}${body}}`).digest('hex')).toBe(hash);
      expect(JSON.parse(line)).toHaveProperty('hash', hash);
      before = hash ?? '';
    }
    expect(lines).toHaveLength(6);
    expect(before).toBe(sound.head);
  });

  it('says how many lines of its group follow', () => {
    const lines = sound.bytes.toString('utf8').trimEnd().split('\n').slice(1);
    expect(lines.map((line) => (JSON.parse(line) as { more?: number }).more)).toEqual([
      undefined,
      2,
      1,
      undefined,
      undefined,
    ]);
  });
});

describe('a sound journal', () => {
  it('is read back as it was written', () => {
    const read = readJournal(sound.bytes);
    expect(read).toMatchObject({
      ok: true,
      value: { soundLength: sound.bytes.length, soundLines: 6, head: sound.head },
    });
    expect(read.ok && read.value.entries.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5]);
    expect(read.ok && read.value.entries[2]).toEqual(entry(3, 'name 3 µ'));
    expect(read.ok && (read.value.torn ?? read.value.damage)).toBeUndefined();
  });

  it('may hold no entries yet', () => {
    expect(readJournal(written([]).bytes)).toMatchObject({ ok: true, value: { entries: [], soundLines: 1 } });
  });
});

describe('a journal cut off at any byte', () => {
  it('keeps each group that is whole and sets the rest apart as torn', () => {
    const heading = sound.ends[0] ?? 0;
    for (let length = heading; length < sound.bytes.length; length++) {
      const read = readJournal(sound.bytes.subarray(0, length));
      const whole = sound.ends.filter((end) => end <= length).length - 1;
      const end = sound.ends[whole] ?? 0;
      expect(read, `cut at ${length}`).toMatchObject({ ok: true, value: { soundLength: end } });
      if (!read.ok) continue;
      expect(read.value.entries).toHaveLength([0, 1, 4, 5][whole] ?? -1);
      expect(read.value.torn?.bytes.length ?? 0).toBe(length - end);
      expect(read.value.damage).toBeUndefined();
    }
  });

  it('is no journal when the heading itself is cut', () => {
    for (let length = 0; length < (sound.ends[0] ?? 0); length++) {
      const read = readJournal(sound.bytes.subarray(0, length));
      expect(read).toMatchObject({ ok: false, problem: { code: 'journal.not-a-journal' } });
    }
  });
});

describe('a single changed byte', () => {
  it('is detected wherever it stands and whatever it becomes', () => {
    const random = seededRandom(7);
    const anyByte = (): number => Math.floor(random() * 256);
    const special = [0, 10, 32, 34, 48, 92, 125];
    const given = [1, 2, 3, 4, 5].map((seq) => JSON.stringify(entry(seq, `name ${seq} µ`)));
    const heading = sound.ends[0] ?? 0;
    const unseen: string[] = [];
    for (let place = 0; place < sound.bytes.length; place++) {
      const old = sound.bytes[place] ?? 0;
      for (const value of [old ^ 1, old ^ 0x80, anyByte(), ...special]) {
        if (value === old) continue;
        const changed = Buffer.from(sound.bytes);
        changed[place] = value;
        const read = readJournal(changed);
        const seen = read.ok
          ? (read.value.torn ?? read.value.damage) !== undefined &&
            read.value.entries.length < 5 &&
            // What is given out as sound is untouched.
            read.value.entries.every((each, index) => JSON.stringify(each) === given[index])
          : place < heading; // only a changed heading makes it no journal at all
        if (!seen) unseen.push(`byte ${place} becomes ${value}`);
      }
    }
    expect(unseen).toEqual([]);
  });

  it('in the middle is damage with its line number, never a torn end', () => {
    const changed = Buffer.from(sound.bytes);
    changed[sound.ends[0] ?? 0] = 0x41; // line 2, not JSON any more
    expect(readJournal(changed)).toMatchObject({
      ok: true,
      value: { damage: { line: 2, detail: 'it is not JSON' }, soundLines: 1, entries: [] },
    });
  });

  it('in the last line is damage as long as the line is JSON', () => {
    const place = sound.bytes.lastIndexOf('name 5');
    const changed = Buffer.from(sound.bytes);
    changed.write('none', place);
    const read = readJournal(changed);
    expect(read).toMatchObject({ ok: true, value: { damage: { line: 6 }, soundLines: 5 } });
    expect(read.ok && read.value.torn).toBeUndefined();
  });
});

describe('lines moved about', () => {
  const lines = sound.bytes.toString('utf8').trimEnd().split('\n');
  const read = (order: readonly number[]) =>
    readJournal(Buffer.from(order.map((index) => `${lines[index] ?? ''}\n`).join('')));

  it.each([
    ['a line left out', [0, 1, 3, 4, 5], 3],
    ['two lines exchanged', [0, 2, 1, 3, 4, 5], 2],
    ['a line twice', [0, 1, 1, 2, 3, 4, 5], 3],
  ])('%s is damage', (_what, order, line) => {
    expect(read(order)).toMatchObject({ ok: true, value: { damage: { line } } });
  });

  it('a group without its last line is torn as a whole', () => {
    expect(read([0, 1, 2, 3])).toMatchObject({ ok: true, value: { torn: { line: 3 }, soundLines: 2 } });
  });
});

describe('a hole of zero bytes after a power cut', () => {
  it('in the last group takes the whole group with it', () => {
    const { bytes, ends } = written([1, 3]);
    const holed = Buffer.from(bytes);
    holed.fill(0, (ends[1] ?? 0) + 20, (ends[1] ?? 0) + 60);
    expect(readJournal(holed)).toMatchObject({ ok: true, value: { torn: { line: 3 }, soundLines: 2 } });
  });

  it('before a later group is damage: that group was promised after it', () => {
    const holed = Buffer.from(sound.bytes);
    holed.fill(0, (sound.ends[1] ?? 0) + 20, (sound.ends[1] ?? 0) + 60);
    expect(readJournal(holed)).toMatchObject({ ok: true, value: { damage: { line: 3 } } });
  });
});

describe('a line that fits the chain but not this program', () => {
  const followedBy = (content: object) => {
    const { bytes, head } = written([1]);
    return readJournal(Buffer.concat([bytes, seal(content, head).bytes]));
  };
  it('is damage, so that nothing is written after it', () => {
    expect(
      followedBy({ seq: 2, at, by: 'B', change: { op: 'fold', kind: 'notebook', id: 'n' } }),
    ).toMatchObject({
      ok: true,
      value: { damage: { line: 3, detail: 'it is not an entry that this program knows' } },
    });
  });
  it('counts its entries without a gap', () => {
    expect(followedBy({ ...entry(3, 'x') })).toMatchObject({
      ok: true,
      value: { damage: { line: 3, detail: 'its number is 3 where 2 is due' } },
    });
  });
  it('belongs to its group by number', () => {
    const { bytes, head } = written([1]);
    const first = seal({ ...entry(2, 'x'), more: 2 }, head);
    const second = seal({ ...entry(3, 'x'), more: 7 }, first.hash);
    expect(readJournal(Buffer.concat([bytes, first.bytes, second.bytes]))).toMatchObject({
      ok: true,
      value: { damage: { line: 4, detail: 'it does not belong to the line before' } },
    });
  });
});

describe('a heading', () => {
  it('of a newer version is named with both versions', () => {
    const { bytes } = seal(
      { format: 'counterpoise journal', version: 2, notebook: 'id', createdAt: at },
      noHash,
    );
    expect(readJournal(bytes)).toMatchObject({
      ok: false,
      problem: { code: 'journal.newer', figures: { version: 2, known: 1 } },
    });
  });
  it.each([
    ['another format', { format: 'diary', version: 1, notebook: 'id', createdAt: at }],
    ['no identity', { format: 'counterpoise journal', version: 1, notebook: '', createdAt: at }],
  ])('with %s is refused', (_what, content) => {
    expect(readJournal(seal(content, noHash).bytes)).toMatchObject({
      ok: false,
      problem: { code: 'journal.not-a-journal' },
    });
  });
});
