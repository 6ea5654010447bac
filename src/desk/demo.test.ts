/** The demo notebook on the disk: its journal, its picture, and a story that will not be told wrongly. */
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  attached,
  entries,
  letters,
  picture,
  refused,
  state,
  story,
  storyText,
} from '../../tests/specimen/demo.ts';
import { demoEntries } from './demo-notebook.ts';
import { verify } from './verify.ts';
import { writeDemo } from './write-demo.ts';

describe('the demo’s journal', () => {
  it('has no entry that does not fit', () => {
    expect(refused).toEqual([]);
    expect(letters).toEqual(['A', 'B', 'C']);
  });

  it('goes forward in time, on the clocks of one place, wherever it is written', () => {
    const times = entries.map(({ at }) => at);
    for (const at of times) expect(at).toMatch(/^2026-03-\d\dT\d\d:\d\d:\d\d\+01:00$/);
    expect(times).toEqual([...times].sort());
  });

  it('counts entries, cards, runs and failures from one without a gap', () => {
    for (const kind of ['entry', 'card', 'run', 'failure'] as const) {
      const numbers = Object.values(state[kind]).map(({ number }) => number);
      expect(numbers, kind).toEqual(numbers.map((_, index) => index + 1));
    }
  });

  it('names only records that there are', () => {
    for (const { prototype, revision } of [
      ...Object.values(state.entry),
      ...Object.values(state.card),
      ...Object.values(state.run),
      ...Object.values(state.failure),
    ]) {
      expect(state.prototype).toHaveProperty(prototype);
      expect(state.revision).toHaveProperty(revision);
    }
    for (const { from } of Object.values(state.revision))
      if (from) expect(state.revision).toHaveProperty(from);
    for (const { part, revision } of Object.values(state.failure)) {
      expect(state.revision[revision]?.parts).toHaveProperty(part ?? '');
    }
  });

  it('names people and dates, and no product', () => {
    const texts =
      JSON.stringify(story, (key, value) => (key === 'set' ? undefined : value)).match(/"[^"]*"/g) ?? [];
    const named = texts.flatMap((text) => text.slice(1, -1).match(/(?<=[a-z0-9,;–] )[A-Z]\w+/g) ?? []);
    expect([...new Set(named)].sort()).toEqual(['Brandt', 'March', 'Okafor']);
    expect(texts.join()).not.toMatch(/[®™©]|\b(Ltd|Inc|GmbH)\b/);
  });
});

describe('the demo on the disk', () => {
  let home: string;
  beforeEach(async () => {
    home = await mkdtemp(join(tmpdir(), 'counterpoise-'));
  });
  afterEach(() => rm(home, { recursive: true, force: true }));

  it('verifies, attachments included', async () => {
    const folder = join(home, 'Demo');
    expect(await writeDemo(folder)).toMatchObject({ ok: true });
    const verified = await verify(folder);
    expect(verified).toMatchObject({
      ok: true,
      value: { chain: 'whole', problems: [], attachments: { named: 1, sound: 1 }, entries: entries.length },
    });
  });

  it('is not written over what is there', async () => {
    const folder = join(home, 'Demo');
    await writeDemo(folder);
    const before = await readdir(folder);
    expect(await writeDemo(folder)).toMatchObject({ ok: false, problem: { code: 'notebook.exists' } });
    expect(await readdir(folder)).toEqual(before);
  });
});

describe('the demo’s picture', () => {
  it('is a picture for a page: 1200 pixels wide, not heavy, and not blank', () => {
    expect(picture.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
    expect(picture.readUInt32BE(16)).toBe(1200);
    expect(picture.readUInt32BE(20)).toBeGreaterThan(300);
    expect(picture.length).toBeLessThan(120_000);
    const pieces: Buffer[] = [];
    for (let at = 8; at < picture.length; at += 12 + picture.readUInt32BE(at)) {
      const kind = picture.toString('latin1', at + 4, at + 8);
      if (kind === 'IDAT') pieces.push(picture.subarray(at + 8, at + 8 + picture.readUInt32BE(at)));
    }
    const shades = new Set(inflateSync(Buffer.concat(pieces)));
    expect(shades.size).toBeGreaterThan(100);
  });
});

describe('a story with a mistake in it is not told:', () => {
  const fuse = '"pack-inspection.fuse": "25 A"';
  const telling = (from: string, to: string) => () => {
    const text = storyText.replace(from, to);
    if (from !== to && text === storyText) throw new RangeError(`the story does not say ${from}`);
    return demoEntries(JSON.parse(text), attached);
  };

  it.each([
    ['an answer to an item that is not put', fuse, `"no.item": "x", ${fuse}`, /no\.item/],
    ['a choice that is not offered', 'Limit in the controller, and stop tested', 'Hope', /runaway/],
    ['a reading that the card does not ask for', '"readings": {', '"readings": { "smell": "3 V",', /smell/],
    ['an item that is left out', `${fuse},`, '', /fuse/],
    [
      'a reading out of its limits, after which nothing may be cleared',
      fuse,
      '"pack-inspection.fuse": "40 A"',
      /fuse/,
    ],
    ['a unit of another kind', fuse, '"pack-inspection.fuse": "25 V"', /fuse/],
    ['a field that is none', '"parts/tray/x": [', '"parts/tray/colour": [', /colour/],
    ['a field of another kind', '"parts/tray/mass": ["640 g', '"parts/tray/mass": ["640 mm', /mass/],
    ['a template that is not there', '"captive-spin-up"', '"free-fall"', /free-fall/],
    ['a letter that the standard leaves out', '"letter": "A"', '"letter": "I"', /letter/],
  ])('%s', (_what, from, to, message) => {
    expect(telling(from, to)).toThrow(message);
  });

  it('and as it is, it is', () => {
    expect(telling(fuse, fuse)()).toHaveLength(entries.length);
  });
});
