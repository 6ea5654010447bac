/**
 * The pictures of a report: looked at before anything is drawn, so that a damaged file is named instead of ending the
 * report half way. Equal bytes are one picture.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { bad, good, type Result } from '../../quantity/index.ts';
import type { Block, Picture } from '../tree.ts';
import { pictureSize } from './picture-size.ts';
import type { ShelvedPicture } from './setting.ts';
import type { FilePicture } from './write.ts';

export interface Shelf {
  readonly shelf: ReadonlyMap<Uint8Array, ShelvedPicture>;
  readonly files: readonly FilePicture[];
}

export function shelve(blocks: readonly Block[]): Result<Shelf> {
  const shelf = new Map<Uint8Array, ShelvedPicture>();
  const known = new Map<string, ShelvedPicture>();
  const files: FilePicture[] = [];
  for (const block of blocks) {
    if (block.type !== 'picture' || shelf.has(block.bytes)) continue;
    const hash = bytesToHex(sha256(block.bytes));
    let picture = known.get(hash);
    if (!picture) {
      const size = pictureSize(block.bytes, block.mediaType);
      if (typeof size === 'string') {
        return bad('report.unreadable-picture', titleOf(block), {
          detail: size,
        });
      }
      picture = { name: `P${files.length + 1}`, ...size };
      known.set(hash, picture);
      files.push({
        name: picture.name,
        title: titleOf(block),
        bytes: block.bytes,
        mediaType: block.mediaType,
      });
    }
    shelf.set(block.bytes, picture);
  }
  return good({ shelf, files });
}

function titleOf({ caption }: Picture): string {
  return caption === '' ? 'picture without a caption' : caption;
}

/** What keeps a picture from being printed, in a few words; undefined where nothing does. */
export function pictureFault(bytes: Uint8Array, mediaType: Picture['mediaType']): string | undefined {
  const size = pictureSize(bytes, mediaType);
  return typeof size === 'string' ? size : undefined;
}
