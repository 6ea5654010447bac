/** Pictures in the page itself, as far as it stays a page that a browser opens at once. */
import { base64 } from './base64.ts';
import type { PictureContent } from './blocks.ts';

const LARGEST = 8 * 1024 * 1024;
const ALL_TOGETHER = 32 * 1024 * 1024;

/**
 * @param pathOf  path in the dossier by the picture’s content; the same object that a report holds
 * @returns       gives a picture while there is room for it, else says where in the dossier it is
 */
export function pictureRoom(pathOf: ReadonlyMap<Uint8Array, string>): PictureContent {
  let room = ALL_TOGETHER;
  const shown = new Map<Uint8Array, string>();
  return ({ bytes, mediaType }) => {
    const known = shown.get(bytes);
    if (known !== undefined) return { src: known };
    if (bytes.length > LARGEST || bytes.length > room) {
      return { words: `too large for this page; see ${pathOf.get(bytes) ?? 'the attached files'}` };
    }
    room -= bytes.length;
    const src = `data:${mediaType};base64,${base64(bytes)}`;
    shown.set(bytes, src);
    return { src };
  };
}
