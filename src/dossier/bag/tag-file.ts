/** The small text files at the top of a bag: its declaration, and what is said about it (RFC 8493, 2.1.1 and 2.2.2). */

/** A label with its value, in the order of the file; a label may come more than once. */
export type BagInfo = readonly (readonly [label: string, value: string])[];

export interface BagDeclaration {
  /** `1.0` as the number 100, `0.97` as 97. */
  readonly version: number;
  readonly encoding: string;
  readonly warnings: readonly string[];
}

const NEWEST = 100;
const OLDEST = 93;

/** Reads `bagit.txt`; a string says what is wrong with it. */
export function readDeclaration(bytes: Uint8Array): BagDeclaration | string {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'it begins with a byte order mark';
  const text = decoded(bytes, 'utf-8');
  if (text === undefined) return 'it is not UTF-8';
  const [first = '', second = '', ...more] = linesOf(text);
  if (more.length > 0) return 'it has more than two lines';
  const [, label = '', major = '', minor = ''] = /^(BagIt-Version): (\d+)\.(\d+)[ \t]*$/i.exec(first) ?? [];
  if (label === '') return 'its first line is not “BagIt-Version: 1.0”';
  const [, encoding = ''] = /^Tag-File-Character-Encoding: (\S+)[ \t]*$/i.exec(second) ?? [];
  if (encoding === '') return 'its second line does not name a character encoding';
  const version = Number(major) * 100 + Number(minor);
  if (version < OLDEST || version > NEWEST) return `version ${major}.${minor} of BagIt is not known`;
  const warnings = [
    ...(label === 'BagIt-Version' ? [] : [`bagit.txt: “${label}” is written BagIt-Version`]),
    ...(/\s$/.test(first + second) ? ['bagit.txt: spaces stand at the end of a line'] : []),
  ];
  return { version, encoding, warnings };
}

/** A text file of the bag in the encoding that its declaration names; undefined where the bytes are no such text. */
export function decoded(bytes: Uint8Array, encoding: string): string | undefined {
  const bigEndian = /^utf-?16$/i.test(encoding) && bytes[0] === 0xfe && bytes[1] === 0xff;
  try {
    return new TextDecoder(bigEndian ? 'utf-16be' : encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Lines that end in CR, LF or both; the end of the last one may be missing. */
export function linesOf(text: string): string[] {
  const lines = text.split(/\r\n|\r|\n/);
  if (lines.at(-1) === '') lines.pop();
  return lines;
}

/** Reads `bag-info.txt`; a string says what is wrong with it. */
export function readBagInfo(text: string): BagInfo | string {
  const info: [string, string][] = [];
  for (const [index, line] of linesOf(text).entries()) {
    const last = info.at(-1);
    if (/^[ \t]/.test(line) && last) {
      last[1] = `${last[1]} ${line.trim()}`;
      continue;
    }
    if (line.trim() === '') continue;
    const colon = line.indexOf(':');
    if (colon < 1) return `line ${index + 1} is not “Label: value”`;
    info.push([line.slice(0, colon).trim(), line.slice(colon + 1).trim()]);
  }
  return info;
}

const LINE = 79;

/** Writes `bag-info.txt`: no value begins a line of its own, long ones are folded (RFC 8493, 2.2.2). */
export function writeBagInfo(info: BagInfo): string {
  return info.map(([label, value]) => folded(`${label}: ${oneLine(value)}`)).join('');
}

function folded(text: string): string {
  const lines = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1) ?? '';
    if (line.trim() !== '' && line.length + 1 + word.length > LINE) lines.push(`  ${word}`);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return `${lines.join('\n')}\n`;
}

function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ').trim();
}
