import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { set } from '../notebook/index.ts';
import { followChain } from './chain.ts';
import { noHash, seal, sealGroup } from './journal-line.ts';
import { readJournal } from './journal-reading.ts';

const at = '2026-03-01T09:00:00.000+00:00';
const change = (name: string) => set('notebook', 'notebook', { name });
const heading = seal({ format: 'counterpoise journal', version: 1, notebook: 'n', createdAt: at }, noHash);
const one = sealGroup([{ seq: 1, at, by: 'B', change: change('a') }], heading.hash);
const three = sealGroup(
  [2, 3, 4].map((seq) => ({ seq, at, by: '{"more":9}', change: change(`Ω ${seq}`) })),
  one.hash,
);
const bytes = Buffer.concat([heading.bytes, one.bytes, three.bytes]);
const ends = [0, heading.bytes.length, heading.bytes.length + one.bytes.length, bytes.length];

describe('the chain followed without reading', () => {
  it('ends where the whole reading ends', async () => {
    const chain = await followChain(bytes);
    expect(chain).toMatchObject({ length: bytes.length, head: three.hash });
    const read = readJournal(bytes);
    expect(read.ok && read.value.head).toBe(chain.head);
    expect(chain.heads.length).toBe(5);
    expect(chain.heads.slice(0, 2)).toEqual([heading.hash, one.hash]);
  });

  it('cut anywhere holds whole groups only', async () => {
    for (let length = 0; length <= bytes.length; length++) {
      const chain = await followChain(bytes.subarray(0, length));
      expect(chain.length).toBe(ends.findLast((end) => end <= length));
      expect(chain.damagedLine).toBeUndefined();
    }
  });

  it('with any byte changed stops before it', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), async (place, by) => {
        const changed = Buffer.from(bytes);
        changed[place] = ((changed[place] ?? 0) + by) % 256;
        const chain = await followChain(changed);
        expect(chain.length).toBeLessThanOrEqual(place);
      }),
      { numRuns: 400 },
    );
  });
});
