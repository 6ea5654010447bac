/** Packages from strangers: what may come in, what may not, and that the reason is said with the name of the file. */
import { crc32 as crcOfNode, deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CraftedZip, craftedZip } from '../../../tests/specimen/crafted-zip.ts';
import { crc32 } from './crc-32.ts';
import { archiveLimits } from './limits.ts';
import { pathFault } from './safe-path.ts';
import { readZip } from './zip-read.ts';
import { writeZip } from './zip-write.ts';

const text = (content: string): Uint8Array => new TextEncoder().encode(content);
const LINK = 0o120777 << 16;
const PIPE = 0o010644 << 16;

/** A deflate stream of `megabytes` of noughts: 1 : 1000 and more. */
const noughts = (megabytes: number): Uint8Array => deflateRawSync(new Uint8Array(megabytes * 1024 * 1024));

/** id, what the package is, the code of the refusal, its place, and a word of its reason. */
const HOSTILE: readonly (readonly [string, CraftedZip, string, string, string])[] = [
  [
    'a path upwards',
    { files: [{ name: '../outside.txt' }] },
    'archive.unsafe',
    '../outside.txt',
    'leads out',
  ],
  [
    'a path upwards further in',
    { files: [{ name: 'a/../../b' }] },
    'archive.unsafe',
    'a/../../b',
    'leads out',
  ],
  ['an absolute path', { files: [{ name: '/etc/passwd' }] }, 'archive.unsafe', '/etc/passwd', 'absolute'],
  ['a drive', { files: [{ name: 'C:/x' }] }, 'archive.unsafe', 'C:/x', 'drive'],
  ['a network share', { files: [{ name: '\\\\host\\x' }] }, 'archive.unsafe', '\\\\host\\x', 'backslash'],
  ['a path upwards by backslashes', { files: [{ name: '..\\x' }] }, 'archive.unsafe', '..\\x', 'backslash'],
  ['somebody’s own folder', { files: [{ name: '~/x' }] }, 'archive.unsafe', '~/x', 'own folder'],
  ['a device', { files: [{ name: 'data/CON' }] }, 'archive.unsafe', 'data/CON', 'device'],
  [
    'a device with an ending',
    { files: [{ name: 'data/lpt1.txt' }] },
    'archive.unsafe',
    'data/lpt1.txt',
    'device',
  ],
  [
    'a stream of another file',
    { files: [{ name: 'a.txt:hidden' }] },
    'archive.unsafe',
    'a.txt:hidden',
    '“:”',
  ],
  ['a name that ends in a dot', { files: [{ name: 'a./b' }] }, 'archive.unsafe', 'a./b', 'dot or a space'],
  ['an empty name', { files: [{ name: '' }] }, 'archive.unsafe', '', 'empty'],
  ['an empty part of a name', { files: [{ name: 'a//b' }] }, 'archive.unsafe', 'a//b', 'empty part'],
  ['a name with a nought', { files: [{ name: 'a\0.txt' }] }, 'archive.unsafe', 'a\ufffd.txt', 'invisible'],
  [
    'a name that turns round',
    { files: [{ name: 'a\u202egnp.exe' }] },
    'archive.unsafe',
    'a\ufffdgnp.exe',
    'invisible',
  ],
  [
    'a name in unknown letters',
    { files: [{ name: new Uint8Array([0xe9]), flags: 0 }] },
    'archive.unsafe',
    'é',
    'character set',
  ],
  [
    'a name of broken letters',
    { files: [{ name: new Uint8Array([0xc3]) }] },
    'archive.unsafe',
    'Ã',
    'character set',
  ],
  [
    'a very long name',
    { files: [{ name: 'a'.repeat(300) }] },
    'archive.unsafe',
    `${'a'.repeat(79)}…`,
    '300 characters',
  ],
  [
    'a very deep name',
    { files: [{ name: `${'a/'.repeat(40)}b` }] },
    'archive.unsafe',
    `${'a/'.repeat(39)}a…`,
    '32 parts',
  ],
  ['the same name twice', { files: [{ name: 'a' }, { name: 'a' }] }, 'archive.unsafe', 'a', 'twice'],
  ['names that differ by case', { files: [{ name: 'ab' }, { name: 'aB' }] }, 'archive.unsafe', 'aB', 'case'],
  [
    'names that differ by accents',
    { files: [{ name: 'é' }, { name: 'e\u0301' }] },
    'archive.unsafe',
    'e\u0301',
    'twice',
  ],
  [
    'a file and a folder of one name',
    { files: [{ name: 'a' }, { name: 'a/b' }] },
    'archive.unsafe',
    'a/b',
    'folder',
  ],
  [
    'a symbolic link',
    { files: [{ name: 'l', content: '/etc', attributes: LINK }] },
    'archive.unsafe',
    'l',
    'link',
  ],
  ['a pipe', { files: [{ name: 'p', attributes: PIPE }] }, 'archive.unsafe', 'p', 'no plain file'],
  ['an encrypted file', { files: [{ name: 'a', flags: 0x0801 }] }, 'archive.unsupported', 'a', 'encrypted'],
  [
    'another way of packing',
    { files: [{ name: 'a', method: 12, packed: text('x') }] },
    'archive.unsupported',
    'a',
    'method 12',
  ],
  ['very large sizes', { files: [{ name: 'a', size: 0xffffffff }] }, 'archive.unsupported', 'a', 'Zip64'],
  [
    'a piece of several',
    { files: [{ name: 'a' }], disk: 1 },
    'archive.unsupported',
    'the package',
    'several',
  ],
  [
    'a bomb that states its size',
    { files: [{ name: 'b', packed: noughts(40), size: 40 * 1024 * 1024, crc: 0 }] },
    'archive.too-large',
    'b',
    'times',
  ],
  [
    'a bomb that lies about its size',
    { files: [{ name: 'b', packed: noughts(40), size: 100 }] },
    'archive.damaged',
    'b',
    'more than the 100 bytes',
  ],
  [
    'a bomb of many files',
    {
      files: Array.from({ length: 80 }, (_, index) => ({
        name: `b${index}`,
        packed: text('x'),
        size: 15 * 1024 * 1024,
      })),
    },
    'archive.too-large',
    'the package',
    'together',
  ],
  [
    'files that share their bytes',
    {
      files: [
        { name: 'a', content: 'x' },
        { name: 'b', content: 'x', offset: 0 },
      ],
    },
    'archive.damaged',
    'b',
    'shares bytes',
  ],
  [
    'more files in the directory than it says',
    { files: [{ name: 'a' }, { name: 'b' }], count: 1 },
    'archive.damaged',
    'the package',
    'more than its end says',
  ],
  [
    'fewer files in the directory than it says',
    { files: [{ name: 'a' }], count: 2 },
    'archive.damaged',
    'the package',
    'breaks off',
  ],
  ['a wrong checksum', { files: [{ name: 'a', content: 'x', crc: 1 }] }, 'archive.damaged', 'a', 'CRC-32'],
  [
    'a size too small',
    { files: [{ name: 'a', content: 'abc', size: 2 }] },
    'archive.damaged',
    'a',
    'more than the 2 bytes',
  ],
  [
    'a size too large',
    { files: [{ name: 'a', content: 'abc', size: 9 }] },
    'archive.damaged',
    'a',
    '3 bytes instead of 9',
  ],
  [
    'what is no packed content',
    { files: [{ name: 'a', packed: text('\x07nonsense'), size: 4 }] },
    'archive.damaged',
    'a',
    'cannot be read',
  ],
  [
    'packed content cut short',
    { files: [{ name: 'a', packed: noughts(1).subarray(0, 40), size: 1048576 }] },
    'archive.damaged',
    'a',
    'cannot be read',
  ],
  [
    'two names for one file',
    { files: [{ name: 'a', localName: 'b' }] },
    'archive.damaged',
    'a',
    'do not agree',
  ],
  [
    'two sizes for one file',
    { files: [{ name: 'a', content: 'xy', localSize: 1 }] },
    'archive.damaged',
    'a',
    'do not agree',
  ],
  [
    'bytes between files',
    { files: [{ name: 'a', behind: text('hidden') }, { name: 'b' }] },
    'archive.damaged',
    'b',
    'belong to no file',
  ],
  [
    'bytes before the first file',
    { files: [{ name: 'a' }], before: text('PK\x03\x04junk') },
    'archive.damaged',
    'a',
    'belong to no file',
  ],
  [
    'bytes behind its end',
    { files: [{ name: 'a' }], behind: text('tail') },
    'archive.damaged',
    'the package',
    'follows its end',
  ],
  [
    'a folder with content',
    { files: [{ name: 'a/', content: 'x', stored: true }] },
    'archive.damaged',
    'a/',
    'folder',
  ],
];

describe('a hostile package', () => {
  it.each(HOSTILE)('%s is refused', (_id, zip, code, place, reason) => {
    const read = readZip(craftedZip(zip));
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect([read.problem.code, read.problem.place]).toEqual([code, place]);
    expect(String(read.problem.figures.detail)).toContain(reason);
  });

  it.each([
    ['nothing at all', new Uint8Array()],
    ['text', text('Dear friend, here is the design.')],
    ['a PDF', text('%PDF-1.7\n')],
  ])('%s is not a ZIP file', (_id, bytes) => {
    expect(readZip(bytes)).toMatchObject({ ok: false, problem: { code: 'archive.not-a-zip' } });
  });

  it('is refused at every length that it is cut to', () => {
    const whole = writeZip(new Map([['a.txt', text('content '.repeat(20))]]), '2026-03-01');
    expect(readZip(whole).ok).toBe(true);
    for (let length = 0; length < whole.length; length++) {
      expect(readZip(whole.subarray(0, length)).ok, String(length)).toBe(false);
    }
  });

  it('is refused for its own size and for the number of its files', () => {
    const zip = writeZip(
      new Map([
        ['a', text('x')],
        ['b', text('y')],
      ]),
      '2026-03-01',
    );
    const refused = (limits: Partial<typeof archiveLimits>) => readZip(zip, { ...archiveLimits, ...limits });
    expect(refused({ packed: 100 })).toMatchObject({ ok: false, problem: { code: 'archive.too-large' } });
    expect(refused({ files: 1 })).toMatchObject({ ok: false, problem: { code: 'archive.too-large' } });
    expect(refused({ unpacked: 1 })).toMatchObject({ ok: false, problem: { code: 'archive.too-large' } });
  });
});

describe('an honest package', () => {
  it('may have folders of their own, a comment, and sizes behind its files', () => {
    const crc = crcOfNode(text('x'));
    const behind = Buffer.alloc(12);
    behind.writeUInt32LE(crc, 0);
    behind.writeUInt32LE(1, 4);
    behind.writeUInt32LE(1, 8);
    const zip = craftedZip({
      files: [
        { name: 'a/', stored: true },
        { name: 'a/x', content: 'x', stored: true, flags: 0x0808, behind },
      ],
      comment: 'packed by somebody',
    });
    const read = readZip(zip);
    expect(read.ok && [...read.value.keys()]).toEqual(['a/x']);
  });

  it('comes out as it went in, whatever is in it', () => {
    const name = fc
      .stringMatching(/^[a-z]{1,8}(\/[a-z]{1,8}){0,3}\.[a-z]{3}$/)
      .filter((path) => pathFault(path) === undefined); // a device by chance
    const files = fc.uniqueArray(fc.tuple(name, fc.uint8Array({ maxLength: 3000 })), {
      selector: ([path]) => path,
      maxLength: 8,
    });
    fc.assert(
      fc.property(files, (entries) => {
        const read = readZip(writeZip(new Map(entries), '2026-03-01'));
        expect(read.ok && [...read.value].sort()).toEqual([...entries].sort());
      }),
      { numRuns: 60 },
    );
  });

  it('has the same bytes each time, whatever the order of its files', () => {
    const files: [string, Uint8Array][] = [
      ['b', text('y')],
      ['a/c', text('x')],
    ];
    expect(writeZip(new Map(files), '2026-03-01')).toEqual(writeZip(new Map(files.reverse()), '2026-03-01'));
  });

  it('may hold a log of nothing but noughts, which is stored as it is', () => {
    const log = new Map([['log.bin', new Uint8Array(20 * 1024 * 1024)]]);
    const zip = writeZip(log, '2026-03-01');
    expect(zip.length).toBeGreaterThan(20 * 1024 * 1024);
    expect(readZip(zip).ok).toBe(true);
  });
});

describe('CRC-32', () => {
  it('of “123456789” is CBF43926, the check value of its catalogue', () => {
    expect(crc32(text('123456789')).toString(16)).toBe('cbf43926');
  });

  it('is what an independent program says', () => {
    fc.assert(fc.property(fc.uint8Array(), (bytes) => crc32(bytes) === crcOfNode(bytes)));
  });
});
