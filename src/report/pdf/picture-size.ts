/** Size of a picture and which way up it is, read from its file without decoding it, or what is wrong with the file. */

export interface PictureSize {
  /** Pixels, the right way up. */
  readonly width: number;
  readonly height: number;
  /** Quarter turns to the right that bring it the right way up. */
  readonly turns: 0 | 1 | 2 | 3;
}

/** @returns  in a few words, what keeps the picture from being printed, where something does */
export function pictureSize(bytes: Uint8Array, mediaType: 'image/png' | 'image/jpeg'): PictureSize | string {
  return mediaType === 'image/png' ? pngSize(bytes) : jpegSize(bytes);
}

const PNG_SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];
/** More than any camera gives; a larger figure is a damaged or hostile file. */
const LARGEST_SIDE = 30_000;
const LARGEST_AREA = 120_000_000;

function pngSize(bytes: Uint8Array): PictureSize | string {
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

function jpegSize(bytes: Uint8Array): PictureSize | string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 4 || view.getUint16(0) !== 0xffd8) return 'it is no JPEG file';
  let at = 2;
  let turns: PictureSize['turns'] = 0;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return 'its segments are damaged';
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = view.getUint16(at + 2);
    if (marker === 0xe1) turns = turnsOf(bytes.subarray(at + 4, at + 2 + length)) ?? turns;
    const frame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (frame) {
      if (at + 10 > bytes.length) return 'the file ends too early';
      if (bytes[at + 9] === 4) return 'it is in printing colours (CMYK); save it in RGB';
      return checked(view.getUint16(at + 7), view.getUint16(at + 5), turns);
    }
    at += 2 + length;
  }
  return 'the file ends too early';
}

function checked(width: number, height: number, turns: PictureSize['turns'] = 0): PictureSize | string {
  if (width === 0 || height === 0) return 'it has no width or no height';
  if (width > LARGEST_SIDE || height > LARGEST_SIDE || width * height > LARGEST_AREA) {
    return `it is ${width} × ${height} pixels, too large to print`;
  }
  const onSide = turns % 2 === 1;
  return { width: onSide ? height : width, height: onSide ? width : height, turns };
}

/** Orientation of the Exif standard → quarter turns; mirrored pictures are only turned. */
const TURNS: Readonly<Record<number, PictureSize['turns']>> = {
  1: 0,
  2: 0,
  3: 2,
  4: 2,
  5: 1,
  6: 1,
  7: 3,
  8: 3,
};
const ORIENTATION = 0x0112;

/** How a camera says that it was held on its side: tag 0x0112 in the first directory of the Exif segment. */
function turnsOf(segment: Uint8Array): PictureSize['turns'] | undefined {
  const view = new DataView(segment.buffer, segment.byteOffset, segment.byteLength);
  if (segment.length < 14 || view.getUint32(0) !== 0x45786966 || view.getUint16(4) !== 0) return undefined;
  const little = view.getUint16(6) === 0x4949;
  const start = 6 + view.getUint32(10, little);
  if (start + 2 > segment.length) return undefined;
  const entries = view.getUint16(start, little);
  for (let i = 0; i < entries; i += 1) {
    const at = start + 2 + 12 * i;
    if (at + 12 > segment.length) return undefined;
    if (view.getUint16(at, little) === ORIENTATION) return TURNS[view.getUint16(at + 8, little)];
  }
  return undefined;
}
