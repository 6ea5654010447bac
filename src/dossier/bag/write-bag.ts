/** A bag around a payload: declaration, manifests of SHA-512, and what is said about it (RFC 8493). */

import { writeManifest } from './manifest.ts';
import { type BagInfo, writeBagInfo } from './tag-file.ts';

/** What RFC 8493, 5.1 wants as the checksum of new bags. */
const ALGORITHM = 'sha512';

/**
 * @param payload  content by path inside the payload, without `data/`
 * @param info     labels of `bag-info.txt`; Payload-Oxum is added
 * @returns        every file of the bag by its path in the bag's folder
 */
export function writeBag(payload: ReadonlyMap<string, Uint8Array>, info: BagInfo): Map<string, Uint8Array> {
  const text = new TextEncoder();
  const inside = new Map([...payload].map(([path, bytes]) => [`data/${path}`, bytes] as const));
  const octets = [...payload.values()].reduce((sum, bytes) => sum + bytes.length, 0);
  const oxum = ['Payload-Oxum', `${octets}.${payload.size}`] as const;
  const tags = new Map([
    ['bagit.txt', text.encode('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n')],
    ['bag-info.txt', text.encode(writeBagInfo([...info, oxum]))],
    [`manifest-${ALGORITHM}.txt`, text.encode(writeManifest(ALGORITHM, inside))],
  ]);
  const tagManifest = text.encode(writeManifest(ALGORITHM, tags));
  return new Map([...tags, [`tagmanifest-${ALGORITHM}.txt`, tagManifest], ...inside]);
}
