/** Manifests: a line for each file, its checksum and its path (RFC 8493, 2.1.3). */
import { checksum } from './checksum.ts';
import { linesOf } from './tag-file.ts';

export interface ManifestLine {
  readonly checksum: string;
  /** As it stands, decoded. */
  readonly path: string;
}

export interface ManifestReading {
  readonly lines: readonly ManifestLine[];
  readonly warnings: readonly string[];
}

/** Reads a manifest; a string says what is wrong with it. */
export function readManifest(text: string): ManifestReading | string {
  const lines: ManifestLine[] = [];
  const warnings: string[] = [];
  for (const [index, line] of linesOf(text).entries()) {
    if (line.trim() === '') continue;
    const [, sum = '', mark = '', path = ''] = /^([0-9A-Fa-f]+)[ \t]+(\*?)(.+)$/.exec(line) ?? [];
    if (sum === '') return `line ${index + 1} is not a checksum and a path`;
    if (mark !== '') warnings.push('a path is marked with an asterisk, as by other tools');
    if (path.startsWith('./')) warnings.push('a path begins with “./”');
    lines.push({ checksum: sum.toLowerCase(), path: decodedPath(path.replace(/^(\.\/)+/, '')) });
  }
  return { lines, warnings: [...new Set(warnings)] };
}

/** Only these three are ever written in another way; all else stands as it is, `%7E` too. */
function decodedPath(path: string): string {
  return path.replace(/%0D/gi, '\r').replace(/%0A/gi, '\n').replace(/%25/g, '%');
}

function encodedPath(path: string): string {
  return path.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

/** Lines in the order of their paths, so that the same files give the same text. */
export function writeManifest(algorithm: string, files: ReadonlyMap<string, Uint8Array>): string {
  return [...files]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([path, bytes]) => `${checksum(algorithm, bytes)}  ${encodedPath(path)}\n`)
    .join('');
}
