/** Bags as they are written: valid by our own check, by RFC 8493’s rules, and by the tools that every computer has. */

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requireTools } from '../../../tests/tools.ts';
import { checkBag } from './check-bag.ts';
import { readBagInfo, readDeclaration } from './tag-file.ts';
import { writeBag } from './write-bag.ts';

const text = (content: string): Uint8Array => new TextEncoder().encode(content);
const words = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

describe('a bag that is written', () => {
  const bag = writeBag(
    new Map([
      ['hello.txt', text('hello\n')],
      ['a/b.txt', text('x')],
    ]),
    [['Contact-Name', 'Ines']],
  );

  it('has declaration, manifest, tag manifest and payload', () => {
    expect([...bag.keys()].sort()).toEqual([
      'bag-info.txt',
      'bagit.txt',
      'data/a/b.txt',
      'data/hello.txt',
      'manifest-sha512.txt',
      'tagmanifest-sha512.txt',
    ]);
    expect(words(bag.get('bagit.txt'))).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n');
    expect(words(bag.get('bag-info.txt'))).toBe('Contact-Name: Ines\nPayload-Oxum: 7.2\n');
    expect(checkBag(bag)).toMatchObject({
      ok: true,
      value: { version: 100, algorithms: ['sha512'], warnings: [] },
    });
  });

  it('has the published checksum of the published file (BAG-1)', () => {
    const sum =
      'e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629';
    expect(words(bag.get('manifest-sha512.txt'))).toContain(`${sum}  data/hello.txt\n`);
  });

  it('is found right by sha512sum', () => {
    requireTools('sha512sum');
    const folder = mkdtempSync(join(tmpdir(), 'bag-'));
    try {
      for (const [path, content] of bag) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), content);
      }
      const { status, stdout } = spawnSync(
        'sha512sum',
        ['-c', 'tagmanifest-sha512.txt', 'manifest-sha512.txt'],
        {
          cwd: folder,
          encoding: 'utf8',
        },
      );
      expect(stdout.match(/: OK$/gm)).toHaveLength(5);
      expect(status).toBe(0);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('writes line ends and percent signs of names as codes, and nothing else', () => {
    const strange = writeBag(new Map([['a\nb\r%7E ü.txt', text('x')]]), []);
    expect(words(strange.get('manifest-sha512.txt'))).toContain('  data/a%0Ab%0D%257E ü.txt\n');
    expect(checkBag(strange)).toMatchObject({ ok: true });
  });

  it.each([
    ['a payload file is changed', 'data/hello.txt', text('hallo\n'), 'data/hello.txt'],
    ['a payload file is taken away', 'data/hello.txt', undefined, 'data/hello.txt'],
    ['a payload file is added', 'data/new.txt', text(''), 'data/new.txt'],
    ['the manifest is changed', 'manifest-sha512.txt', text(''), 'data/hello.txt'],
    [
      'what is said about it is changed',
      'bag-info.txt',
      text('Contact-Name: Eve\nPayload-Oxum: 7.2\n'),
      'bag-info.txt',
    ],
    [
      'its declaration is changed',
      'bagit.txt',
      text('BagIt-Version: 2.0\nTag-File-Character-Encoding: UTF-8\n'),
      'bagit.txt',
    ],
  ])('is no longer valid when %s', (_id, path, content, place) => {
    const spoilt = new Map(bag);
    if (content) spoilt.set(path, content);
    else spoilt.delete(path);
    expect(checkBag(spoilt)).toMatchObject({ ok: false, problem: { code: 'bag.invalid', place } });
  });

  it('is not taken by its size alone: Payload-Oxum is held against the payload too', () => {
    const { 'tagmanifest-sha512.txt': _, ...rest } = Object.fromEntries(bag);
    const untagged = new Map(Object.entries(rest)).set('bag-info.txt', text('Payload-Oxum: 8.2\n'));
    expect(checkBag(untagged)).toMatchObject({ ok: false, problem: { place: 'bag-info.txt' } });
  });
});

describe('bag-info.txt', () => {
  it('reads back what was written, on one line each, whatever people have typed', () => {
    const label = fc.stringMatching(/^[A-Z][a-z]{0,10}(-[A-Z][a-z]{0,10}){0,2}$/);
    fc.assert(
      fc.property(fc.array(fc.tuple(label, fc.string({ maxLength: 300 }))), (info) => {
        const written = words(writeBag(new Map([['x', text('')]]), info).get('bag-info.txt'));
        for (const line of written.split('\n')) {
          expect(line.length <= 79 || !line.trim().includes(' '), line).toBe(true);
        }
        const read = readBagInfo(written);
        const plain = (value: string): string => value.replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ').trim();
        expect(read).toEqual([...info.map(([name, value]) => [name, plain(value)]), ['Payload-Oxum', '0.1']]);
      }),
    );
  });

  it('takes colons and spaces as older bags have them, and continuation lines', () => {
    expect(readBagInfo('Test-Tag : 3\r\nTest-Tag    :   5: x\r\nLong: one\r\n  two\r\n')).toEqual([
      ['Test-Tag', '3'],
      ['Test-Tag', '5: x'],
      ['Long', 'one two'],
    ]);
    expect(readBagInfo('no colon here')).toContain('line 1');
  });
});

describe('bagit.txt', () => {
  it.each([
    ['BagIt-version: 1.0\nTag-File-Character-Encoding: UTF-8\n', 1],
    ['BagIt-Version: 1.0\rTag-File-Character-Encoding: UTF-8', 0],
  ])('%j is read with %d remarks', (content, remarks) => {
    const read = readDeclaration(text(content));
    expect(typeof read === 'string' ? read : read.warnings.length).toBe(remarks);
  });

  it.each([
    '\ufeffBagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n',
    'BagIt-Version: 1.0\n',
    'BagIt-Version: 1.1\nTag-File-Character-Encoding: UTF-8\n',
    'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\nmore\n',
    'Tag-File-Character-Encoding: UTF-8\nBagIt-Version: 1.0\n',
  ])('%j is refused', (content) => {
    expect(typeof readDeclaration(text(content))).toBe('string');
  });
});
