/**
 * The two directories of a ZIP file held against each other: the one at its end, and the headers before the files.
 * They are read by different programs, and a package in which they disagree shows different people different files.
 * Format: PKWARE APPNOTE 6.3; the parts that nobody needs here (several disks, encryption, Zip64) are refused.
 */
import { bad, good, type Result } from '../../quantity/index.ts';
import { type ArchiveLimits, megabytes } from './limits.ts';
import { pathFault, sameOnSomeDisk, shownName } from './safe-path.ts';

/** A file of the package; folders have been left out. */
export interface ZipEntry {
  readonly name: string;
  /** As stored in the package. */
  readonly packed: Uint8Array;
  readonly stored: boolean;
  /** Bytes that it states to have unpacked. */
  readonly size: number;
  readonly crc: number;
}

const END = 0x06054b50;
const END_LENGTH = 22;
const CENTRAL = 0x02014b50;
const CENTRAL_LENGTH = 46;
const LOCAL = 0x04034b50;
const LOCAL_LENGTH = 30;
const LONGEST_COMMENT = 0xffff;

const ENCRYPTED = 0x0001;
const SIZES_BEHIND = 0x0008;
const PATCH = 0x0020;
const UTF8 = 0x0800;
const HIDDEN = 0x2000;

const STORED = 0;
const DEFLATED = 8;

/** File types in the upper half of the external attributes, as Unix has them. */
const TYPE = 0o170000;
const REGULAR = 0o100000;
const FOLDER = 0o040000;

const WHOLE = 'the package';

/** Thrown and caught inside this file: the first thing that is wrong ends the reading. */
class Fault extends Error {
  readonly code: 'archive.damaged' | 'archive.unsafe' | 'archive.too-large' | 'archive.unsupported';
  readonly place: string;

  constructor(code: Fault['code'], place: string, detail: string) {
    super(detail);
    this.code = code;
    this.place = place;
  }
}

/** The files of the package, checked as far as that goes without unpacking. */
export function zipEntries(bytes: Uint8Array, limits: ArchiveLimits): Result<readonly ZipEntry[]> {
  if (bytes.length > limits.packed) {
    const detail = `it has ${megabytes(bytes.length)}, and ${megabytes(limits.packed)} are the most`;
    return bad('archive.too-large', WHOLE, { detail });
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 4 || (view.getUint32(0, true) !== LOCAL && view.getUint32(0, true) !== END)) {
    return bad('archive.not-a-zip', WHOLE);
  }
  try {
    const { start, end, count } = findDirectory(view);
    if (count > limits.files) {
      throw new Fault('archive.too-large', WHOLE, `it has ${count} files, and ${limits.files} are the most`);
    }
    const records = readDirectory(bytes, view, start, end, count);
    checkNames(records);
    checkSizes(records, limits);
    return good(locate(bytes, view, records, start));
  } catch (error) {
    if (error instanceof Fault) return bad(error.code, error.place, { detail: error.message });
    if (error instanceof RangeError) return bad('archive.damaged', WHOLE, { detail: 'it is cut short' });
    throw error;
  }
}

function findDirectory(view: DataView): { start: number; end: number; count: number } {
  const length = view.byteLength;
  for (let at = length - END_LENGTH; at >= Math.max(0, length - END_LENGTH - LONGEST_COMMENT); at--) {
    if (view.getUint32(at, true) !== END || at + END_LENGTH + view.getUint16(at + 20, true) !== length)
      continue;
    const [disk, first, here, count] = [4, 6, 8, 10].map((offset) => view.getUint16(at + offset, true));
    const size = view.getUint32(at + 12, true);
    const start = view.getUint32(at + 16, true);
    if (count === 0xffff || size === 0xffffffff || start === 0xffffffff) {
      throw new Fault('archive.unsupported', WHOLE, 'it is in the form for very large packages (Zip64)');
    }
    if (disk !== 0 || first !== 0 || here !== count) {
      throw new Fault('archive.unsupported', WHOLE, 'it is one piece of several');
    }
    if (start + size !== at) {
      throw new Fault('archive.damaged', WHOLE, 'its directory is not where its end says');
    }
    return { start, end: at, count: count ?? 0 };
  }
  throw new Fault('archive.damaged', WHOLE, 'it is cut short, or something follows its end');
}

interface DirectoryRecord extends Omit<ZipEntry, 'packed'> {
  readonly folder: boolean;
  readonly flags: number;
  readonly method: number;
  readonly packedSize: number;
  readonly offset: number;
  readonly rawName: Uint8Array;
}

function readDirectory(
  bytes: Uint8Array,
  view: DataView,
  start: number,
  end: number,
  count: number,
): readonly DirectoryRecord[] {
  const records: DirectoryRecord[] = [];
  let at = start;
  for (let index = 0; index < count; index++) {
    if (at + CENTRAL_LENGTH > end || view.getUint32(at, true) !== CENTRAL) {
      throw new Fault('archive.damaged', WHOLE, `its directory breaks off after ${index} of ${count} files`);
    }
    const [nameLength = 0, extraLength = 0, commentLength = 0] = [28, 30, 32].map((offset) =>
      view.getUint16(at + offset, true),
    );
    const next = at + CENTRAL_LENGTH + nameLength + extraLength + commentLength;
    if (next > end) throw new Fault('archive.damaged', WHOLE, 'its directory is longer than its end says');
    records.push(readRecord(bytes.subarray(at, next), nameLength));
    at = next;
  }
  if (at !== end) throw new Fault('archive.damaged', WHOLE, 'its directory holds more than its end says');
  return records;
}

function readRecord(bytes: Uint8Array, nameLength: number): DirectoryRecord {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const flags = view.getUint16(8, true);
  const method = view.getUint16(10, true);
  const rawName = bytes.subarray(CENTRAL_LENGTH, CENTRAL_LENGTH + nameLength);
  const name = decodedName(rawName, (flags & UTF8) !== 0);
  const packedSize = view.getUint32(20, true);
  const size = view.getUint32(24, true);
  const offset = view.getUint32(42, true);
  const folder = name.endsWith('/');
  const fault = (code: Fault['code'], detail: string): Fault => new Fault(code, shownName(name), detail);
  if (flags & (ENCRYPTED | HIDDEN)) throw fault('archive.unsupported', 'it is encrypted');
  if (flags & PATCH) throw fault('archive.unsupported', 'it is a patch of another file');
  if (method !== STORED && method !== DEFLATED) {
    throw fault(
      'archive.unsupported',
      `it is packed by method ${method}, which is not stored and not deflated`,
    );
  }
  if (packedSize === 0xffffffff || size === 0xffffffff || offset === 0xffffffff) {
    throw fault('archive.unsupported', 'it is in the form for very large files (Zip64)');
  }
  const type = (view.getUint32(38, true) >>> 16) & TYPE;
  if (type !== 0 && type !== (folder ? FOLDER : REGULAR)) {
    throw fault('archive.unsafe', 'it is a link, a device or another thing that is no plain file');
  }
  if (method === STORED && packedSize !== size) {
    throw fault('archive.damaged', 'it states two sizes although it is not packed');
  }
  if (folder && size !== 0) throw fault('archive.damaged', 'it is a folder with content of its own');
  return {
    name,
    stored: method === STORED,
    size,
    crc: view.getUint32(16, true),
    folder,
    flags,
    method,
    packedSize,
    offset,
    rawName,
  };
}

function decodedName(raw: Uint8Array, isUtf8: boolean): string {
  try {
    const name = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(raw);
    if (isUtf8 || /^[\0-\x7f]*$/.test(name)) return name;
  } catch {
    // said below
  }
  const shown = shownName(new TextDecoder('latin1').decode(raw));
  throw new Fault('archive.unsafe', shown, 'the name is in an unknown character set');
}

function checkNames(records: readonly DirectoryRecord[]): void {
  const taken = new Map<string, DirectoryRecord>();
  for (const record of records) {
    const path = record.folder ? record.name.slice(0, -1) : record.name;
    const fault = pathFault(path);
    if (fault !== undefined) throw new Fault('archive.unsafe', shownName(record.name), fault);
    const key = sameOnSomeDisk(path);
    if (taken.has(key)) {
      throw new Fault(
        'archive.unsafe',
        shownName(record.name),
        'the name is there twice, or differs by case only',
      );
    }
    taken.set(key, record);
  }
  for (const { name } of records) {
    const segments = name.split('/');
    for (let depth = 1; depth < segments.length; depth++) {
      const above = taken.get(sameOnSomeDisk(segments.slice(0, depth).join('/')));
      if (above !== undefined && !above.folder) {
        throw new Fault('archive.unsafe', shownName(name), 'a file stands where its folder should be');
      }
    }
  }
}

function checkSizes(records: readonly DirectoryRecord[], limits: ArchiveLimits): void {
  let total = 0;
  for (const { name, size, packedSize } of records) {
    total += size;
    if (size > limits.freeOfRatio && size > limits.ratio * packedSize) {
      const detail = `it would grow to ${Math.round(size / Math.max(1, packedSize))} times its size, and ${limits.ratio} times is the most`;
      throw new Fault('archive.too-large', shownName(name), detail);
    }
    if (total > limits.unpacked) {
      const detail = `its files have more than ${megabytes(limits.unpacked)} together`;
      throw new Fault('archive.too-large', WHOLE, detail);
    }
  }
}

/** Finds each file's bytes by its own header; headers and files have to fill the package without gap or overlap. */
function locate(
  bytes: Uint8Array,
  view: DataView,
  records: readonly DirectoryRecord[],
  directory: number,
): readonly ZipEntry[] {
  const entries: ZipEntry[] = [];
  let expected = 0;
  let slack = false; // sizes may stand behind a file whose size was not known when its header was written
  for (const record of [...records].sort((a, b) => a.offset - b.offset)) {
    const place = shownName(record.name);
    checkSeam(record.offset - expected, slack, place);
    const start = checkLocalHeader(bytes, view, record, place);
    const end = start + record.packedSize;
    if (end > directory) throw new Fault('archive.damaged', place, 'it runs into the directory');
    const { name, stored, size, crc, folder } = record;
    if (!folder) entries.push({ name, stored, size, crc, packed: bytes.subarray(start, end) });
    expected = end;
    slack = (record.flags & SIZES_BEHIND) !== 0;
  }
  checkSeam(directory - expected, slack, WHOLE);
  return entries;
}

/** Lengths of the record behind a file: CRC and two sizes, with or without a signature, with short or long sizes. */
const BEHIND = [12, 16, 20, 24];

function checkSeam(gap: number, slack: boolean, place: string): void {
  if (gap === 0 || (slack && BEHIND.includes(gap))) return;
  const detail =
    gap < 0 ? 'it shares bytes with another file' : 'bytes that belong to no file stand before it';
  throw new Fault('archive.damaged', place, detail);
}

function checkLocalHeader(bytes: Uint8Array, view: DataView, record: DirectoryRecord, place: string): number {
  const { offset: at, rawName } = record;
  if (view.getUint32(at, true) !== LOCAL) throw new Fault('archive.damaged', place, 'its header is missing');
  const nameLength = view.getUint16(at + 26, true);
  const start = at + LOCAL_LENGTH + nameLength + view.getUint16(at + 28, true);
  const name = bytes.subarray(at + LOCAL_LENGTH, at + LOCAL_LENGTH + nameLength);
  const sizesBehind = (record.flags & SIZES_BEHIND) !== 0;
  const [crc, packedSize, size] = [14, 18, 22].map((offset) => view.getUint32(at + offset, true));
  const figures = crc === record.crc && packedSize === record.packedSize && size === record.size;
  const same =
    view.getUint16(at + 6, true) === record.flags &&
    view.getUint16(at + 8, true) === record.method &&
    name.length === rawName.length &&
    name.every((byte, index) => byte === rawName[index]) &&
    (figures || (sizesBehind && packedSize === 0 && size === 0));
  if (!same) throw new Fault('archive.damaged', place, 'its header and the directory do not agree');
  return start;
}
