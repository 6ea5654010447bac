/** Pictures and files of an entry: which of them can be shown, in which order they stand, and how large they are. */
import type { Attachment } from '../../../../notebook/index.ts';

/** Pictures that every window can draw; anything else is a file with a name. */
const SHOWN: ReadonlySet<string> = new Set([
  'image/png',
  'image/jpeg',
  'image/gif',
  'image/webp',
  'image/avif',
  'image/bmp',
  'image/svg+xml',
]);

export function isPicture({ mediaType }: Pick<Attachment, 'mediaType'>): boolean {
  return SHOWN.has(mediaType);
}

/** The attachments by their order; those of two people who attached at the same time keep a fixed order too. */
export function inOrder(attachments: Readonly<Record<string, Attachment>>): [id: string, Attachment][] {
  return Object.entries(attachments).sort(
    ([idA, a], [idB, b]) => a.order - b.order || (idA < idB ? -1 : idA > idB ? 1 : 0),
  );
}

/** The record of a file that the desk has stored. */
export function attachmentOf(
  file: { readonly name: string; readonly type: string },
  stored: { readonly sha256: string; readonly size: number },
  others: Readonly<Record<string, Attachment>>,
): Attachment {
  const order = Math.max(0, ...Object.values(others).map((other) => other.order)) + 1;
  return {
    sha256: stored.sha256,
    size: stored.size,
    name: shortName(file.name.trim() || 'without name'),
    mediaType: file.type.length <= 100 ? file.type : '',
    caption: '',
    order,
  };
}

const LONGEST_NAME = 200;

/** A name that fits the record; what is cut is cut before the ending, which says what the file is. */
function shortName(name: string): string {
  if (name.length <= LONGEST_NAME) return name;
  const dot = name.lastIndexOf('.');
  const ending = dot > 0 && name.length - dot <= 12 ? name.slice(dot) : '';
  return `${name.slice(0, LONGEST_NAME - 1 - ending.length)}…${ending}`;
}

const STEP = 1000;

/** `412 B`, `3.4 kB`, `12 MB`; decimal prefixes, as the SI has them. */
export function sizeText(bytes: number): string {
  if (bytes < STEP) return `${bytes} B`;
  const prefixes = ['k', 'M', 'G'];
  let value = bytes / STEP;
  let step = 0;
  while (value >= STEP - 0.5 && step < prefixes.length - 1) {
    value /= STEP;
    step++;
  }
  return `${value < 9.95 ? value.toFixed(1) : Math.round(value)} ${prefixes[step]}B`;
}
