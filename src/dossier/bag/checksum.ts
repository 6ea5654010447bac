/** The checksums that a bag may come with. SHA-512 is written; the others are read, because older bags have them. */
import { md5, sha1 } from '@noble/hashes/legacy.js';
import { sha224, sha256, sha384, sha512 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

const ALGORITHMS: Readonly<Record<string, (bytes: Uint8Array) => Uint8Array>> = {
  md5,
  sha1,
  sha224,
  sha256,
  sha384,
  sha512,
};

/** Lower case, without punctuation, as in the name of a manifest. */
export function isKnownAlgorithm(algorithm: string): boolean {
  return Object.hasOwn(ALGORITHMS, algorithm);
}

/** Lower-case hexadecimal digits. @throws RangeError for an algorithm that is not known */
export function checksum(algorithm: string, bytes: Uint8Array): string {
  const digest = isKnownAlgorithm(algorithm) ? ALGORITHMS[algorithm] : undefined;
  if (!digest) throw new RangeError(`there is no checksum “${algorithm}”`);
  return bytesToHex(digest(bytes));
}
