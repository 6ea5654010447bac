/** Unpacks a ZIP file into memory, counting what comes out, and believes nothing that the package says about itself. */
import { Inflate } from 'fflate';
import { bad, good, type Result } from '../../quantity/index.ts';
import { crc32 } from './crc-32.ts';
import { type ArchiveLimits, archiveLimits } from './limits.ts';
import { shownName } from './safe-path.ts';
import { type ZipEntry, zipEntries } from './zip-directory.ts';

/** Packed bytes that are unpacked between two looks at what has come out: at most 16 MB come of them. */
const PIECE = 16 * 1024;

/**
 * The files by their names, none of which leads out of a folder or stands there twice.
 *
 * Fails with `archive.not-a-zip`, `archive.damaged`, `archive.unsafe`, `archive.too-large` or `archive.unsupported`,
 * each with the file concerned; nothing is unpacked before all names and stated sizes have been looked at.
 */
export function readZip(
  bytes: Uint8Array,
  limits: ArchiveLimits = archiveLimits,
): Result<ReadonlyMap<string, Uint8Array>> {
  const entries = zipEntries(bytes, limits);
  if (!entries.ok) return entries;
  const files = new Map<string, Uint8Array>();
  for (const entry of entries.value) {
    const content = unpacked(entry);
    if (typeof content === 'string') {
      return bad('archive.damaged', shownName(entry.name), { detail: content });
    }
    files.set(entry.name, content);
  }
  return good(files);
}

/** The content, or what is wrong with it. */
function unpacked(entry: ZipEntry): Uint8Array | string {
  const content = entry.stored ? entry.packed : inflated(entry);
  if (typeof content === 'string') return content;
  if (content.length !== entry.size) return `it has ${content.length} bytes instead of ${entry.size}`;
  return crc32(content) === entry.crc ? content : 'its content does not match its checksum (CRC-32)';
}

class TooLong extends Error {}

function inflated({ packed, size }: ZipEntry): Uint8Array | string {
  const content = new Uint8Array(size);
  let length = 0;
  const stream = new Inflate((piece) => {
    if (length + piece.length > size) throw new TooLong();
    content.set(piece, length);
    length += piece.length;
  });
  try {
    for (let at = 0; at === 0 || at < packed.length; at += PIECE) {
      stream.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
    }
  } catch (error) {
    if (error instanceof TooLong) return `it unpacks to more than the ${size} bytes that it states`;
    return 'its packed content cannot be read';
  }
  return content.subarray(0, length);
}
