/** Whole files, replaced in one step: after a crash the old content or the new one is there, never a mixture. */
import { randomBytes } from 'node:crypto';
import { dirname } from 'node:path';
import { errorCode, type Files } from './files.ts';

/** Ending of files that a crash may leave behind; they are never read. */
export const unfinished = '.unfinished';

/**
 * Writes beside the target, syncs, renames over it, syncs the folder.
 * @throws the operating system's error; the target is untouched then, and the new file is removed again
 */
export async function writeWhole(files: Files, path: string, bytes: Uint8Array): Promise<void> {
  const beside = `${path}.${randomBytes(6).toString('hex')}${unfinished}`;
  await writeNew(files, beside, bytes);
  try {
    await files.rename(beside, path);
  } catch (error) {
    await files.remove(beside).catch(() => undefined); // left over, harmless: nothing reads it
    throw error;
  }
  await files.syncFolder(dirname(path));
}

/**
 * Writes a file that must not exist yet, content on the medium before it returns; its name is durable only
 * after the folder has been synced.
 * @throws the operating system's error, and nothing is left behind as far as the disk allows; EEXIST when
 * something is there already
 */
export async function writeNew(files: Files, path: string, bytes: Uint8Array): Promise<void> {
  const file = await files.open(path, 'new');
  try {
    const written = await file.write(bytes, 0);
    if (written !== bytes.length) {
      throw Object.assign(new Error(`${written} of ${bytes.length} bytes written`), { code: 'ENOSPC' });
    }
    await file.sync();
  } catch (error) {
    await file.close().catch(() => undefined);
    await files.remove(path).catch(() => undefined);
    throw error;
  }
  await file.close();
}

/** Makes one folder and its name durable; content when it is there already. */
export async function ensureFolder(files: Files, path: string): Promise<void> {
  try {
    await files.makeFolder(path);
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return;
    throw error;
  }
  await files.syncFolder(dirname(path));
}
