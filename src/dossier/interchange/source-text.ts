/**
 * Words that people have typed, inside of source text: as a comment, or as a text constant, and never as anything
 * that a compiler or an interpreter would take for code.
 */

/** One line of a comment, in C and in Python: nothing in it ends the line or the comment, or turns the reading. */
export function commentText(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\p{Cf}\p{Cs}]/gu, '')
    .replaceAll('\\', '/') // first: it may make an end of a comment
    .replaceAll('*/', '* /')
    .replaceAll('/*', '/ *')
    .replace(/\?(?=\?)/g, '? ')
    .trim();
}

/** A constant of C: bytes beyond the plain characters as octal codes, which end after three figures. */
export function cText(text: string): string {
  const bytes = new TextEncoder().encode(text);
  const written = [...bytes].map((byte) => (isPlain(byte) ? String.fromCharCode(byte) : octal(byte)));
  return `"${written.join('')}"`;
}

/** Letters, figures and signs but for `"`, `\` and `?`, which begins a trigraph. */
function isPlain(byte: number): boolean {
  return byte >= 0x20 && byte < 0x7f && byte !== 0x22 && byte !== 0x5c && byte !== 0x3f;
}

function octal(byte: number): string {
  return `\\${byte.toString(8).padStart(3, '0')}`;
}

/** A constant of Python in plain ASCII. */
export function pythonText(text: string): string {
  const written = [...text].map((character) => {
    const code = character.codePointAt(0) ?? 0;
    if (code >= 0x20 && code < 0x7f && character !== '"' && character !== '\\') return character;
    if (code >= 0xd800 && code <= 0xdfff) return '\\ufffd'; // half a character
    return code > 0xffff ? `\\U${hexadecimal(code, 8)}` : `\\u${hexadecimal(code, 4)}`;
  });
  return `"${written.join('')}"`;
}

function hexadecimal(code: number, digits: number): string {
  return code.toString(16).padStart(digits, '0');
}

/**
 * A number that reads as a floating one in C and in Python, with every digit that it has.
 * @throws RangeError  for what is no finite number
 */
export function floatText(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} has no plain notation`);
  const text = Object.is(value, -0) ? '-0' : String(value);
  return /[.e]/.test(text) ? text : `${text}.0`;
}

/** A standard uncertainty in a remark: two digits are enough. */
export function uncertaintyRemark(uncertainty: number): string {
  return uncertainty > 0 ? `u = ${Number(uncertainty.toPrecision(2))}, ` : '';
}

/** The lines that say at the head of a file where it comes from. */
export function origin(design: {
  readonly prototype: string;
  readonly letter: string;
  readonly status: string;
  readonly issuedAt: string | undefined;
  readonly fingerprint: string;
}): readonly string[] {
  const issued = design.issuedAt === undefined ? design.status : `${design.status} ${design.issuedAt}`;
  return [
    'Figures of the design. Made from the notebook: do not change them here, make the file again.',
    '',
    `prototype    ${commentText(design.prototype)}`,
    `revision     ${commentText(design.letter)} (${commentText(issued)})`,
    `fingerprint  ${commentText(design.fingerprint)}`,
    '',
    'SI units; the unit ends each name. u is the standard uncertainty.',
  ];
}
