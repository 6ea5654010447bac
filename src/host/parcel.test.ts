import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pack, unpack } from './parcel.ts';

describe('a parcel', () => {
  it('gives back what was put in, with bytes or without', () => {
    const cases: object[] = [
      {},
      { ok: true, value: null },
      { session: 's', bytes: Uint8Array.of(0, 255, 10) },
      { ok: true, value: new Uint8Array() },
      { text: 'Ω\u2028\u0000', nested: { bytes: 'text', list: [1, { value: 2 }] } },
    ];
    for (const each of cases) expect(unpack(pack(each))).toEqual(each);
  });

  it('carries bytes as they are: their length and a few dozen more', () => {
    expect(pack({ session: 's', bytes: new Uint8Array(1_000_000) }).length).toBeLessThan(1_000_100);
  });

  it('gives a copy of its own, not a window on the whole', () => {
    const value = unpack(pack({ bytes: Uint8Array.of(1, 2, 3) })) as { bytes: Uint8Array };
    expect(value.bytes.buffer.byteLength).toBe(3);
  });

  it('holds any JSON and any bytes', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), fc.uint8Array(), (members, bytes) => {
        const plain = JSON.parse(JSON.stringify(members)) as Record<string, unknown>;
        expect(unpack(pack({ ...plain, attached: bytes }))).toEqual({ ...plain, attached: bytes });
      }),
    );
  });

  it.each([
    ['nothing', []],
    ['less than a length', [0, 0, 1]],
    ['a length beyond its end', [0, 0, 0, 9, 123]],
    ['an enormous length', [255, 255, 255, 255, 123, 125]],
    ['no JSON', [0, 0, 0, 1, 123]],
    ['bytes that are not UTF-8', [0, 0, 0, 3, 34, 255, 34]],
    ['JSON without a value', [0, 0, 0, 2, 123, 125]],
    ['JSON that is null', [0, 0, 0, 4, 110, 117, 108, 108]],
  ])('of %s is refused', (_what, bytes) => {
    expect(() => unpack(Uint8Array.from(bytes))).toThrow(SyntaxError);
  });

  it('of random bytes is refused or read, and nothing else happens', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        try {
          unpack(bytes);
        } catch (error) {
          expect(error).toBeInstanceOf(SyntaxError);
        }
      }),
    );
  });

  it('cannot reach the prototype by the name of its member', () => {
    const head = Buffer.from('{"value":{},"bytes":"__proto__"}');
    const length = Buffer.alloc(4);
    length.writeUInt32BE(head.length);
    const value = unpack(Buffer.concat([length, head, Buffer.from('x')])) as object;
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
  });
});
