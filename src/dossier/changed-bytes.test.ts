/** A good dossier in which any byte is another: never taken for what it was not, never a crash. */
import fc from 'fast-check';
import { beforeAll, describe, it } from 'vitest';
import { payloadOf, smallChanges, sourceOf, written } from '../../tests/specimen/dossier.ts';
import { readDossier } from './read.ts';
import type { WrittenDossier } from './write.ts';

let made: WrittenDossier;
let payload: ReadonlyMap<string, Uint8Array>;
beforeAll(async () => {
  made = await written(sourceOf(smallChanges, 'p'));
  payload = payloadOf(made.bytes);
}, 60_000);

describe('a good dossier with bytes changed', () => {
  /** Changes of single bytes, half of them in the headers and the directory, where they are most dangerous. */
  function spoilt(at: number, change: number): Uint8Array {
    const bytes = made.bytes.slice();
    bytes[at] = (bytes[at] ?? 0) ^ change;
    return bytes;
  }

  /** Refused with a place and a reason; or nothing in it has changed, as when only the date of a file has. */
  function isHarmless(bytes: Uint8Array): boolean {
    const read = readDossier(bytes);
    if (!read.ok) return read.problem.place !== '';
    return [...read.value.files].every(
      ([path, content]) => Buffer.compare(content, payload.get(path) ?? Buffer.of()) === 0,
    );
  }

  it('is refused, or is the same dossier', () => {
    const anywhere = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
    const atTheEnd = anywhere.map((share) => 1 - 0.01 * share - Number.EPSILON);
    fc.assert(
      fc.property(fc.oneof(anywhere, atTheEnd), fc.integer({ min: 1, max: 255 }), (share, change) =>
        isHarmless(spoilt(Math.floor(share * made.bytes.length), change)),
      ),
      { numRuns: 600 },
    );
  }, 120_000);

  it('is refused wherever it is cut', () => {
    fc.assert(
      fc.property(fc.nat(made.bytes.length - 1), (length) => !readDossier(made.bytes.subarray(0, length)).ok),
      { numRuns: 60 },
    );
  }, 60_000);

  it('is refused whatever random bytes it is made of', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => !readDossier(bytes).ok));
    const head = new Uint8Array([0x50, 0x4b, 3, 4]);
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 400 }),
        (bytes) => !readDossier(Buffer.concat([head, bytes])).ok,
      ),
    );
  });
});
