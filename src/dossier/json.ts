/** JSON out of a package: looked at for its depth before it is parsed, since what comes after may walk it level by level. */

/** A journal line has six levels of its own and records of up to 32. */
const DEEPEST = 48;

const OPEN = new Set([0x5b, 0x7b]); // [ {
const CLOSE = new Set([0x5d, 0x7d]); // ] }
const QUOTE = 0x22;
const BACKSLASH = 0x5c;

export type JsonReading =
  | { readonly ok: true; readonly value: unknown }
  /** Why it cannot be read, as the end of a sentence. */
  | { readonly ok: false; readonly reason: string };

export function readJson(bytes: Uint8Array): JsonReading {
  if (depthOf(bytes) > DEEPEST) return { ok: false, reason: `it is nested more than ${DEEPEST} levels deep` };
  try {
    return {
      ok: true,
      value: JSON.parse(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)),
    };
  } catch {
    return { ok: false, reason: 'it is not JSON' };
  }
}

/** How deep brackets are nested outside of texts; counting ends where it is too deep. */
function depthOf(bytes: Uint8Array): number {
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let at = 0; at < bytes.length && deepest <= DEEPEST; at++) {
    const byte = bytes[at] ?? 0;
    if (inText) {
      if (byte === BACKSLASH) at++;
      else if (byte === QUOTE) inText = false;
    } else if (byte === QUOTE) inText = true;
    else if (OPEN.has(byte)) deepest = Math.max(deepest, ++depth);
    else if (CLOSE.has(byte)) depth--;
  }
  return deepest;
}

/** Indented, with a line end, as files for people and programs are written. */
export function jsonBytes(value: unknown): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(value, undefined, 2)}\n`);
}
