/**
 * Which names may stand in a package. A name that could lead outside of the chosen folder, that some computer takes
 * for a device, or that looks like another one, is refused; nothing is mended, because a mended name is a guess.
 */

/** Reserved by Windows in every folder, with or without an ending. */
const DEVICE = /^(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9¹²³])$/i;
/** Control and invisible characters, among them those that turn the direction of writing, and halves of characters. */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;
const LONGEST_PATH = 255;
const DEEPEST_PATH = 32;

/** What is wrong with a path, segments joined by `/`, as the end of a sentence; undefined where nothing is. */
export function pathFault(path: string): string | undefined {
  const length = path.length;
  if (length > LONGEST_PATH) return `the name has ${length} characters, and ${LONGEST_PATH} are the most`;
  if (INVISIBLE.test(path)) return 'the name holds an invisible character';
  const way = wayOut(path);
  if (way !== undefined) return way;
  const segments = path.split('/');
  if (segments.length > DEEPEST_PATH) return `the name has more than ${DEEPEST_PATH} parts`;
  for (const segment of segments) {
    const fault = segmentFault(segment);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/** How a path leads out of the folder that it is meant for, on whichever computer; undefined where it does not. */
export function wayOut(path: string): string | undefined {
  if (path === '') return 'the name is empty';
  if (path.includes('\\')) return 'the name holds a backslash';
  if (path.startsWith('/')) return 'the name is an absolute path';
  if (/^[A-Za-z]:/.test(path)) return 'the name begins with a drive';
  if (path.startsWith('~')) return 'the name points into somebody’s own folder';
  const segments = path.split('/');
  if (segments.includes('..')) return 'the name leads out of its folder';
  if (segments.includes('.')) return 'the name has a part that is only a dot';
  return segments.includes('') ? 'the name has an empty part' : undefined;
}

function segmentFault(segment: string): string | undefined {
  const sign = /[<>:"|?*]/.exec(segment)?.[0];
  if (sign !== undefined) return `the name holds “${sign}”`;
  if (/[. ]$/.test(segment)) return 'a part of the name ends with a dot or a space';
  if (DEVICE.test(segment.split('.')[0]?.trimEnd() ?? '')) return 'the name is that of a device';
  return undefined;
}

/** The same for two names that some computer cannot tell apart: by case, or by how an accent is written. */
export function sameOnSomeDisk(path: string): string {
  return path.normalize('NFC').toUpperCase().toLowerCase();
}

/** A name out of a package as it may be shown: what cannot be seen is made visible, and it has an end. */
export function shownName(name: string): string {
  const visible = name.slice(0, 1000).replace(new RegExp(INVISIBLE, 'gu'), '\ufffd');
  return visible.length > 80 ? `${visible.slice(0, 79)}…` : visible;
}
