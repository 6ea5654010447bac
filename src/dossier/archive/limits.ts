/**
 * How large a package may be. Sizes that a package states are looked at first, and what comes out is counted while
 * it is unpacked, because a stated size may be a lie.
 */
export interface ArchiveLimits {
  /** Bytes of the package itself. */
  readonly packed: number;
  /** Bytes of all files together, unpacked. */
  readonly unpacked: number;
  readonly files: number;
  /** A file larger than `freeOfRatio` bytes may be at most so many times as large as it is packed. */
  readonly ratio: number;
  readonly freeOfRatio: number;
}

const MEGABYTE = 1024 * 1024;

/** Ordinary data pass 200 : 1 at times (SEI CERT IDS04-J), which is why small files are free of it. */
export const archiveLimits: ArchiveLimits = {
  packed: 1024 * MEGABYTE,
  unpacked: 1024 * MEGABYTE,
  files: 20_000,
  ratio: 200,
  freeOfRatio: 16 * MEGABYTE,
};

/** `16 MB`, for a sentence. */
export function megabytes(bytes: number): string {
  return `${Math.max(1, Math.round(bytes / MEGABYTE))}\u202fMB`;
}
