/** ZIP files of any kind of wrongness, byte by byte as PKWARE APPNOTE 6.3 lays them out. */
import { crc32, deflateRawSync } from 'node:zlib';

/** A file as it should be; every member besides name and content makes one header say something else. */
export interface CraftedFile {
  readonly name: string | Uint8Array;
  readonly content?: string | Uint8Array;
  readonly stored?: boolean;
  /** Packed content, whatever it unpacks to. */
  readonly packed?: Uint8Array;
  readonly method?: number;
  readonly flags?: number;
  /** External attributes; the file type of Unix is in the upper half. */
  readonly attributes?: number;
  readonly size?: number;
  readonly packedSize?: number;
  readonly crc?: number;
  /** In the header before the file, where it differs from the directory. */
  readonly localName?: string;
  readonly localSize?: number;
  /** Where the directory says that it is. */
  readonly offset?: number;
  /** Bytes between this file and what follows it. */
  readonly behind?: Uint8Array;
}

export interface CraftedZip {
  readonly files: readonly CraftedFile[];
  readonly before?: Uint8Array;
  readonly comment?: string;
  readonly count?: number;
  readonly disk?: number;
  readonly behind?: Uint8Array;
}

const bytesOf = (text: string | Uint8Array): Uint8Array =>
  typeof text === 'string' ? new TextEncoder().encode(text) : text;

export function craftedZip({ files, before, comment = '', count, disk = 0, behind }: CraftedZip): Uint8Array {
  const pieces: Uint8Array[] = before ? [before] : [];
  const directory: Uint8Array[] = [];
  const length = (): number => pieces.reduce((sum, piece) => sum + piece.length, 0);
  for (const file of files) {
    const name = bytesOf(file.name);
    const content = bytesOf(file.content ?? '');
    const method = file.method ?? (file.stored ? 0 : 8);
    const packed = file.packed ?? (method === 8 ? deflateRawSync(content) : content);
    const flags = file.flags ?? 0x0800;
    const crc = file.crc ?? crc32(content);
    const size = file.size ?? content.length;
    const packedSize = file.packedSize ?? packed.length;
    const localName = bytesOf(file.localName ?? file.name);
    const offset = file.offset ?? length();
    const local = fields([4, 0x04034b50], [2, 20], [2, flags], [2, method], [4, 0x00210000], [4, crc]);
    const sizes = fields([4, packedSize], [4, file.localSize ?? size], [2, localName.length], [2, 0]);
    pieces.push(local, sizes, localName, packed, ...(file.behind ? [file.behind] : []));
    const central = fields([4, 0x02014b50], [2, 0x0314], [2, 20], [2, flags], [2, method], [4, 0x00210000]);
    const more = fields(
      [4, crc],
      [4, packedSize],
      [4, size],
      [2, name.length],
      [2, 0],
      [2, 0],
      [2, 0],
      [2, 0],
    );
    directory.push(central, more, fields([4, file.attributes ?? 0], [4, offset]), name);
  }
  const start = length();
  const listing = Buffer.concat(directory);
  const said = bytesOf(comment);
  const end = fields(
    [4, 0x06054b50],
    [2, disk],
    [2, disk],
    [2, count ?? files.length],
    [2, count ?? files.length],
    [4, listing.length],
    [4, start],
    [2, said.length],
  );
  return new Uint8Array(Buffer.concat([...pieces, listing, end, said, ...(behind ? [behind] : [])]));
}

/** Whole numbers, least byte first. */
function fields(...parts: readonly (readonly [bytes: 2 | 4, value: number])[]): Uint8Array {
  const bytes = Buffer.alloc(parts.reduce((sum, [width]) => sum + width, 0));
  let at = 0;
  for (const [width, value] of parts) {
    bytes.writeUIntLE(value >>> 0, at, width);
    at += width;
  }
  return bytes;
}
