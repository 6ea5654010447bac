/** What a person chose for all notebooks on this computer: one small file in the home folder. */
import { join } from 'node:path';
import { type Settings, settings } from '../preload/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';
import { errorCode, type Files, fileReason } from './files.ts';
import { writeWhole } from './write-whole.ts';

/**
 * The usual settings where no file is there. One that cannot be understood is moved aside and reported, so that
 * the next reading finds the usual ones.
 */
export async function readSettings(files: Files, home: string): Promise<Result<Settings>> {
  const path = join(home, 'settings.json');
  const place = 'settings.json';
  try {
    const text = Buffer.from(await files.read(path)).toString('utf8');
    const parsed = settings.safeParse(jsonOf(text));
    if (parsed.success) return good(parsed.data);
    const file = 'settings.damaged.json';
    await files.rename(path, join(home, file));
    return bad('settings.damaged', place, { file });
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return good(settings.parse({}));
    return bad('file.failed', place, { detail: fileReason(error) });
  }
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Old settings or new ones, never a mixture. */
export async function writeSettings(files: Files, home: string, chosen: Settings): Promise<Result<Settings>> {
  try {
    const text = `${JSON.stringify(chosen, null, 2)}\n`;
    await writeWhole(files, join(home, 'settings.json'), Buffer.from(text));
    return good(chosen);
  } catch (error) {
    return bad('file.failed', 'settings.json', { detail: fileReason(error) });
  }
}
