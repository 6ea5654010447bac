/**
 * The bags of the open conformance suite (Library of Congress, CC0), read where the packed suite lies beside the
 * checkout, and the figures of RFC 8493 and of independent programs for them.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { checkBag, checksum } from '../../../src/dossier/index.ts';

const packed = fileURLToPath(
  new URL('../../../../shared/data/bagit-conformance-suite.tar.gz', import.meta.url),
);
const present = existsSync(packed);
const cases = present ? unpack() : {};

/** Bag, as `version/class/name` → its files by their paths. */
function unpack(): Record<string, Map<string, Uint8Array>> {
  const folder = mkdtempSync(join(tmpdir(), 'bags-'));
  try {
    execFileSync('tar', ['xzf', packed, '-C', folder]);
    const bags: Record<string, Map<string, Uint8Array>> = {};
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile()) continue;
      const path = join(entry.parentPath, entry.name);
      const [version, kind, name, ...rest] = relative(folder, path).split(sep);
      if (rest.length === 0) continue;
      const bag = `${version}/${kind}/${name}`;
      bags[bag] ??= new Map();
      bags[bag].set(rest.join('/'), new Uint8Array(readFileSync(path)));
    }
    return bags;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function filesOf(name: string): Map<string, Uint8Array> {
  return new Map(cases[name]);
}

const SPECIAL = 'v0.97/warning/special-system-files';
const ofClass = (...classes: string[]): string[] =>
  Object.keys(cases).filter((name) => name !== SPECIAL && classes.includes(name.split('/')[1] ?? ''));

it.runIf(!present)('not run: the conformance suite is not beside the checkout', () => {
  expect(cases).toEqual({});
});

describe.runIf(present)('the conformance suite', () => {
  it('is there as a whole: 60 bags', () => {
    expect(Object.keys(cases)).toHaveLength(60);
    expect(ofClass('valid')).toHaveLength(27);
    expect(ofClass('invalid')).toHaveLength(15);
    expect(ofClass('warning')).toHaveLength(5);
    expect(ofClass('linux-only', 'windows-only')).toHaveLength(12);
  });

  it.each(ofClass('valid'))('%s is valid', (name) => {
    expect(checkBag(filesOf(name))).toMatchObject({ ok: true });
  });

  it.each(ofClass('warning'))('%s is valid, and something is remarked', (name) => {
    const checked = checkBag(filesOf(name));
    expect(checked).toMatchObject({ ok: true });
    expect(checked.ok && checked.value.warnings).not.toEqual([]);
  });

  it.each(ofClass('invalid', 'linux-only', 'windows-only'))('%s is not valid', (name) => {
    expect(checkBag(filesOf(name))).toMatchObject({ ok: false, problem: { code: 'bag.invalid' } });
  });

  it.each([
    ['v0.97/invalid/bom-in-bagit.txt', 'bagit.txt', 'byte order mark'],
    ['v0.97/invalid/corrupt-data-file', 'data/bare-filename', 'checksum'],
    ['v0.97/invalid/corrupt-tag-file', 'bag-info.txt', 'checksum'],
    ['v0.97/invalid/extra-file-in-bag', 'data/bar', 'does not list it'],
    ['v0.97/invalid/missing-baginfo', 'bag-info.txt', 'missing'],
    ['v0.97/invalid/missing-bagit.txt', 'bagit.txt', 'missing'],
    ['v1.0/invalid/bagit-with-invalid-whitespace', 'bagit.txt', 'first line'],
    ['v1.0/invalid/notAllManifestsListAllFiles', 'data/missingFromManifest.txt', 'does not list it'],
    ['v1.0/invalid/same-filename-listed-twice-with-the-same-hash', 'data/README', 'twice'],
    ['v0.97/linux-only/out-of-scope-file-paths-using-absolute-path', '/tmp/foo', 'not in the payload'],
    [
      'v0.97/windows-only/out-of-scope-file-paths-using-absolute-path-for-fetch',
      'C:\\Windows\\System32\\setx.exe',
      'fetch.txt',
    ],
  ])('%s: names %s and the reason', (name, place, reason) => {
    const checked = checkBag(filesOf(name));
    expect(checked.ok || checked.problem.place).toBe(place);
    expect(checked.ok || String(checked.problem.figures.detail)).toContain(reason);
  });

  it('special-system-files lacks a file as published, and is valid with it', () => {
    const files = filesOf(SPECIAL);
    const place = 'data/.DS_Store';
    expect(checkBag(files)).toMatchObject({ ok: false, problem: { place } });
    expect(checkBag(files.set(place, new Uint8Array()))).toMatchObject({ ok: true });
  });

  it('percent signs are part of a name, apart from the three codes for line ends and for themselves', () => {
    expect(checkBag(filesOf('v0.97/valid/bag-with-encoded-names'))).toMatchObject({ ok: true });
  });
});

/** id, algorithm, text, digits; RFC 8493’s algorithms on FIPS 180-4 and RFC 1321 examples, recomputed with coreutils. */
const SUMS: readonly (readonly [string, string, string, string])[] = [
  [
    'BAG-1',
    'sha512',
    'hello\n',
    'e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629',
  ],
  [
    'SH-1',
    'sha512',
    '',
    'cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e',
  ],
  ['SH-1', 'sha256', '', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['SH-2', 'sha256', 'abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['RFC 1321', 'md5', 'abc', '900150983cd24fb0d6963f7d28e17f72'],
  ['FIPS 180-4', 'sha1', 'abc', 'a9993e364706816aba3e25717850c26c9cd0d89d'],
];

describe('checksums', () => {
  it.each(SUMS)('%s: %s of %j', (_id, algorithm, text, digits) => {
    expect(checksum(algorithm, new TextEncoder().encode(text))).toBe(digits);
  });
});
