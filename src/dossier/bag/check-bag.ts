/**
 * Whether files are a valid bag: complete, and every checksum right (RFC 8493, 3). Bags of the drafts before it, from
 * 0.93 on, are judged by their own, milder rules. Nothing is fetched, and no path that leads out of the bag is followed.
 */
import { bad, good, type Result } from '../../quantity/index.ts';
import { sameOnSomeDisk, shownName, wayOut } from '../archive/safe-path.ts';
import { checksum, isKnownAlgorithm } from './checksum.ts';
import { type ManifestLine, readManifest } from './manifest.ts';
import {
  type BagDeclaration,
  type BagInfo,
  decoded,
  linesOf,
  readBagInfo,
  readDeclaration,
} from './tag-file.ts';

export interface CheckedBag {
  /** `1.0` as 100. */
  readonly version: number;
  /** Of the payload manifests. */
  readonly algorithms: readonly string[];
  readonly info: BagInfo;
  /** What is unusual and does no harm. */
  readonly warnings: readonly string[];
}

type Files = ReadonlyMap<string, Uint8Array>;

/** From this version on every manifest lists every file, once. */
const STRICT = 100;

class Fault extends Error {
  readonly place: string;

  constructor(place: string, detail: string) {
    super(detail);
    this.place = place;
  }
}

/**
 * @param files  every file by its path in the bag's folder
 * Fails with `bag.invalid`, the file concerned as its place.
 */
export function checkBag(files: Files): Result<CheckedBag> {
  try {
    return good(checked(files));
  } catch (error) {
    if (error instanceof Fault) return bad('bag.invalid', shownName(error.place), { detail: error.message });
    throw error;
  }
}

function checked(files: Files): CheckedBag {
  const declaration = readDeclaration(required(files, 'bagit.txt', 'every bag has this file'));
  if (typeof declaration === 'string') throw new Fault('bagit.txt', declaration);
  const payload = [...files.keys()].filter((path) => path.startsWith('data/'));
  if (payload.length === 0) throw new Fault('data', 'there is no payload');
  const warnings = [...declaration.warnings];

  checkFetch(files, declaration);
  const manifests = readAll(files, /^manifest-(\w+)\.txt$/, declaration, warnings);
  if (manifests.length === 0) throw new Fault('manifest-sha512.txt', 'there is no manifest of the payload');
  const listed = new Set<string>();
  for (const manifest of manifests) {
    const paths = checkManifest(files, manifest, declaration, warnings, (path) =>
      path.startsWith('data/') ? wayOut(path) : 'it is not in the payload',
    );
    for (const path of paths) listed.add(path);
    if (declaration.version >= STRICT) checkAllListed(payload, new Set(paths), manifest.name);
  }
  checkAllListed(payload, listed, manifests[0]?.name ?? '');
  for (const manifest of readAll(files, /^tagmanifest-(\w+)\.txt$/, declaration, warnings)) {
    const paths = checkManifest(files, manifest, declaration, warnings, (path) =>
      path.startsWith('data/') ? 'it is in the payload' : wayOut(path),
    );
    if (declaration.version >= STRICT) checkTagManifest(manifests, new Set(paths), manifest.name);
  }
  const info = infoOf(files, declaration);
  checkOxum(files, payload, info);
  return {
    version: declaration.version,
    algorithms: manifests.map(({ algorithm }) => algorithm),
    info,
    warnings: [...new Set(warnings)],
  };
}

function required(files: Files, path: string, why: string): Uint8Array {
  const bytes = files.get(path);
  if (bytes === undefined) throw new Fault(path, `it is missing, and ${why}`);
  return bytes;
}

interface Manifest {
  readonly name: string;
  readonly algorithm: string;
  readonly lines: readonly ManifestLine[];
}

function readAll(
  files: Files,
  form: RegExp,
  { encoding }: BagDeclaration,
  warnings: string[],
): readonly Manifest[] {
  return [...files].flatMap(([name, bytes]): Manifest[] => {
    const algorithm = form.exec(name)?.[1]?.toLowerCase();
    if (algorithm === undefined) return [];
    if (!isKnownAlgorithm(algorithm)) throw new Fault(name, `checksums by “${algorithm}” cannot be checked`);
    const text = decoded(bytes, encoding);
    const read = text === undefined ? `it is not ${encoding}` : readManifest(text);
    if (typeof read === 'string') throw new Fault(name, read);
    warnings.push(...read.warnings.map((warning) => `${name}: ${warning}`));
    return [{ name, algorithm, lines: read.lines }];
  });
}

/** Every line: inside its bounds, once, there, and right. The paths are given as the files have them. */
function checkManifest(
  files: Files,
  { name, algorithm, lines }: Manifest,
  { version }: BagDeclaration,
  warnings: string[],
  outOfBounds: (path: string) => string | undefined,
): readonly string[] {
  const seen = new Map<string, string>();
  const onDisk = new Map<string, string>();
  for (const path of files.keys()) onDisk.set(sameOnSomeDisk(path), path);
  for (const line of lines) {
    const fault = outOfBounds(line.path);
    if (fault !== undefined) throw new Fault(line.path, `${name} lists it, and ${fault}`);
    const path = existing(line.path);
    const before = seen.get(path);
    if (before !== undefined) {
      if (version >= STRICT || before !== line.checksum) throw new Fault(path, `${name} lists it twice`);
      warnings.push(`${name}: ${shownName(path)} is listed twice`);
    }
    seen.set(path, line.checksum);
    const bytes = files.get(path);
    if (bytes === undefined) throw new Fault(path, `${name} lists it, and it is missing`);
    if (before === undefined && checksum(algorithm, bytes) !== line.checksum) {
      throw new Fault(path, `its content does not match its checksum in ${name}`);
    }
  }
  return [...seen.keys()];

  /** Older bags may have been made on a disk that does not tell such names apart. */
  function existing(path: string): string {
    if (version >= STRICT || files.has(path)) return path;
    const other = onDisk.get(sameOnSomeDisk(path));
    if (other === undefined) return path;
    warnings.push(`${name}: ${shownName(path)} is written in another way than the file`);
    return other;
  }
}

function checkAllListed(payload: readonly string[], listed: ReadonlySet<string>, manifest: string): void {
  const missing = payload.find((path) => !listed.has(path));
  if (missing !== undefined) throw new Fault(missing, `${manifest} does not list it`);
}

function checkTagManifest(
  manifests: readonly Manifest[],
  listed: ReadonlySet<string>,
  tagManifest: string,
): void {
  const missing = manifests.find(({ name }) => !listed.has(name));
  if (missing) throw new Fault(missing.name, `${tagManifest} does not list it`);
  const itself = [...listed].find((path) => path.startsWith('tagmanifest-'));
  if (itself !== undefined) throw new Fault(itself, `${tagManifest} lists it, which only other files may be`);
}

/** Files that are to be fetched from elsewhere are not; their paths are looked at all the same. */
function checkFetch(files: Files, { encoding }: BagDeclaration): void {
  const bytes = files.get('fetch.txt');
  if (bytes === undefined) return;
  const text = decoded(bytes, encoding);
  if (text === undefined) throw new Fault('fetch.txt', `it is not ${encoding}`);
  for (const [index, line] of linesOf(text).entries()) {
    const [, path = ''] = /^\S+[ \t]+(?:\d+|-)[ \t]+(.+)$/.exec(line) ?? [];
    if (path === '') throw new Fault('fetch.txt', `line ${index + 1} is not an address, a length and a path`);
    const fault = path.startsWith('data/') ? wayOut(path) : 'it is not in the payload';
    if (fault !== undefined) throw new Fault(path, `fetch.txt lists it, and ${fault}`);
    if (!files.has(path)) throw new Fault(path, 'it would have to be fetched from elsewhere');
  }
}

function infoOf(files: Files, { encoding }: BagDeclaration): BagInfo {
  for (const name of ['bag-info.txt', 'package-info.txt']) {
    const bytes = files.get(name);
    if (bytes === undefined) continue;
    const text = decoded(bytes, encoding);
    const info = text === undefined ? `it is not ${encoding}` : readBagInfo(text);
    if (typeof info === 'string') throw new Fault(name, info);
    return info;
  }
  return [];
}

/** `octets.files`: a quick test that never stands in for the checksums. */
function checkOxum(files: Files, payload: readonly string[], info: BagInfo): void {
  const stated = info.filter(([label]) => label.toLowerCase() === 'payload-oxum').map(([, value]) => value);
  if (stated.length > 1) throw new Fault('bag-info.txt', 'it states Payload-Oxum more than once');
  const [oxum] = stated;
  if (oxum === undefined) return;
  const octets = payload.reduce((sum, path) => sum + (files.get(path)?.length ?? 0), 0);
  const found = `${octets}.${payload.length}`;
  if (oxum !== found) throw new Fault('bag-info.txt', `Payload-Oxum is ${oxum}, and the payload is ${found}`);
}
