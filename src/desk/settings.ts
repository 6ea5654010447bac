/** What a person chose for all notebooks on this computer: one small file in the home folder. */
import { join } from 'node:path';
import { type Settings, settings } from '../preload/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';
import { errorCode, type Files, fileReason } from './files.ts';
import { writeWhole } from './write-whole.ts';

/** The usual settings where no file is there. */
export async function readSettings(files: Files, home: string): Promise<Result<Settings>> {
  try {
    const text = Buffer.from(await files.read(join(home, 'settings.json'))).toString('utf8');
    return good(settings.parse(JSON.parse(text)));
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return good(settings.parse({}));
    const detail = errorCode(error) === '' ? 'the file is not in the expected form' : fileReason(error);
    return bad('settings.damaged', 'settings.json', { detail });
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
