/** Packs files into a ZIP file. The same files give the same bytes, on every computer and in every time zone. */
import { deflateSync, type Zippable, zipSync } from 'fflate';
import { archiveLimits } from './limits.ts';

/** Packed already by their own format: packing them again only takes time. */
const DENSE = /\.(png|jpe?g|gif|webp|avif|heic|pdf|zip|gz|xz|zst|7z|3mf|mp4|mov|webm|mp3|ogg)$/i;

/** As in a reader's limits, with room to spare: a file that packs better than this is stored as it is. */
const BEST_RATIO = archiveLimits.ratio / 2;

/**
 * @param files  content by path; segments joined by `/`, safe by `pathFault`
 * @param day    date that the files bear, `2026-03-05`, between 1980 and 2099
 */
export function writeZip(files: ReadonlyMap<string, Uint8Array>, day: string): Uint8Array {
  const [year = 1980, month = 1, date = 1] = day.split('-').map(Number);
  // The format keeps the time of the clock on the wall. No clock anywhere skips noon, so that this is one time for all.
  const mtime = new Date(Math.min(2099, Math.max(1980, year)), month - 1, date, 12);
  const packing: Zippable = {};
  for (const path of [...files.keys()].sort()) {
    const content = files.get(path) ?? new Uint8Array();
    packing[path] = [content, { level: isDense(path, content) ? 0 : 6, mtime, os: 3, attrs: 0o100644 << 16 }];
  }
  return zipSync(packing);
}

function isDense(path: string, content: Uint8Array): boolean {
  if (DENSE.test(path)) return true;
  return (
    content.length > archiveLimits.freeOfRatio && content.length > BEST_RATIO * deflateSync(content).length
  );
}
