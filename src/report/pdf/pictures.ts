/**
 * The pictures of a report: looked at before anything is drawn, so that a damaged file is named instead of ending the
 * report half way. Equal bytes are one picture.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { bad, good, type Result } from '../../quantity/index.ts';
import type { Block, Picture } from '../tree.ts';
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

type Size = { readonly width: number; readonly height: number };

/** Width and height in pixels, or what is wrong with the file. */
function pictureSize(bytes: Uint8Array, mediaType: Picture['mediaType']): Size | string {
  return mediaType === 'image/png' ? pngSize(bytes) : jpegSize(bytes);
}

const PNG_SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];
/** More than any camera gives; a larger figure is a damaged or hostile file. */
const LARGEST_SIDE = 30_000;
const LARGEST_AREA = 120_000_000;

function pngSize(bytes: Uint8Array): Size | string {
  if (bytes.length < 45 || PNG_SIGNATURE.some((value, index) => bytes[index] !== value))
    return 'it is no PNG file';
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 8;
  let ended = false;
  let data = 0;
  while (at + 12 <= bytes.length && !ended) {
    const length = view.getUint32(at);
    const kind = view.getUint32(at + 4);
    if (at + 12 + length > bytes.length) return 'the file ends too early';
    if (kind === 0x49444154) data += length; // IDAT
    ended = kind === 0x49454e44; // IEND
    at += 12 + length;
  }
  if (!ended || data === 0) return 'the file ends too early';
  return checked(view.getUint32(16), view.getUint32(20));
}

function jpegSize(bytes: Uint8Array): Size | string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 4 || view.getUint16(0) !== 0xffd8) return 'it is no JPEG file';
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return 'its segments are damaged';
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    const frame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (frame) {
      if (at + 10 > bytes.length) return 'the file ends too early';
      if (bytes[at + 9] === 4) return 'it is in printing colours (CMYK); save it in RGB';
      return checked(view.getUint16(at + 7), view.getUint16(at + 5));
    }
    at += 2 + length;
  }
  return 'the file ends too early';
}

function checked(width: number, height: number): Size | string {
  if (width === 0 || height === 0) return 'it has no width or no height';
  if (width > LARGEST_SIDE || height > LARGEST_SIDE || width * height > LARGEST_AREA) {
    return `it is ${width} × ${height} pixels, too large to print`;
  }
  return { width, height };
}
