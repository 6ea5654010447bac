/**
 * Every touch of the disk goes through this one small interface, so that a test can let any single call fail,
 * write too little or be the last one before the power goes.
 */
import type { BigIntStats } from 'node:fs';
import { type FileHandle, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';

export interface FileFacts {
  readonly kind: 'file' | 'folder' | 'other';
  /** Bytes. */
  readonly size: number;
  readonly changedAt: Date;
  /** The same for two paths or handles that lead to one file, another one after a file was replaced. */
  readonly identity: string;
}

/** An open file. Positions and lengths are bytes. */
export interface OpenFile {
  /** How many of the bytes were written; fewer than given when the disk had no more room. */
  write(bytes: Uint8Array, position: number): Promise<number>;
  /** Returns when content and length are on the medium. */
  sync(): Promise<void>;
  truncate(length: number): Promise<void>;
  facts(): Promise<FileFacts>;
  close(): Promise<void>;
}

/** The file calls that the desk uses. Each may throw an Error with the `code` of the operating system. */
export interface Files {
  read(path: string): Promise<Uint8Array>;
  /** Names in a folder, without their folder. */
  list(path: string): Promise<readonly string[]>;
  /** `undefined` when nothing is there. */
  facts(path: string): Promise<FileFacts | undefined>;
  /** One level. Throws EEXIST when something is there already. */
  makeFolder(path: string): Promise<void>;
  /** `new` throws EEXIST when something is there already; `existing` throws ENOENT when nothing is. */
  open(path: string, mode: 'new' | 'existing'): Promise<OpenFile>;
  /** Replaces what is at `to` in one step. */
  rename(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Makes names that were added to or removed from a folder durable. */
  syncFolder(path: string): Promise<void>;
}

/** The real disk. */
export const nodeFiles: Files = {
  read: (path) => readFile(path),
  list: (path) => readdir(path),
  async facts(path) {
    const found = await stat(path, { bigint: true }).catch((error: unknown) => {
      if (errorCode(error) === 'ENOENT' || errorCode(error) === 'ENOTDIR') return undefined;
      throw error;
    });
    return found && factsOf(found);
  },
  async makeFolder(path) {
    await mkdir(path);
  },
  open: async (path, mode) => openFile(await open(path, mode === 'new' ? 'wx' : 'r+')),
  rename,
  remove: (path) => rm(path),
  async syncFolder(path) {
    if (process.platform === 'win32') return; // a folder cannot be opened there; its journal keeps the names
    const folder = await open(path, 'r');
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  },
};

function openFile(handle: FileHandle): OpenFile {
  return {
    write: async (bytes, position) => (await handle.write(bytes, 0, bytes.length, position)).bytesWritten,
    sync: () => handle.datasync(), // the length is included; only the times of the file are not
    truncate: (length) => handle.truncate(length),
    facts: async () => factsOf(await handle.stat({ bigint: true })),
    close: () => handle.close(),
  };
}

/** Numbers of files need more than the 53 bits of a number on some disks. */
function factsOf(stats: BigIntStats): FileFacts {
  return {
    kind: stats.isFile() ? 'file' : stats.isDirectory() ? 'folder' : 'other',
    size: Number(stats.size),
    changedAt: stats.mtime,
    identity: `${stats.dev} ${stats.ino}`,
  };
}

/** The operating system's code of a failed file call, `ENOSPC` for one; empty when it is no such failure. */
export function errorCode(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return typeof code === 'string' ? code : '';
}

const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EIO: 'the disk reports a fault',
  EACCES: 'this account may not write or read there',
  EPERM: 'this account may not write or read there',
  EROFS: 'the disk can only be read',
  ENOENT: 'the file or folder is not there',
  ENOTDIR: 'a file stands where a folder is expected',
  EISDIR: 'a folder stands where a file is expected',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long for this disk',
  EBUSY: 'another program holds the file',
};

/** A failed file call in words, with the operating system's code for those who look it up. */
export function fileReason(error: unknown): string {
  const code = errorCode(error);
  const reason = reasons[code];
  if (reason !== undefined) return `${reason} (${code})`;
  return error instanceof Error ? error.message : String(error);
}
