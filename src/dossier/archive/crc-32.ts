/** The checksum of ZIP: CRC-32 with the reversed polynomial EDB88320 (PKWARE APPNOTE 4.4.7). */
const TABLE = new Uint32Array(256).map((_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** As a whole number from 0 to 2³² − 1. */
export function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = (value >>> 8) ^ (TABLE[(value ^ byte) & 0xff] ?? 0);
  return ~value >>> 0;
}
