/** The end of a write that was cut short is kept for the person to look at, and only then cut off. */
import { join } from 'node:path';
import type { Problem } from '../quantity/index.ts';
import { fileStamp } from './clock.ts';
import { errorCode, type Files, type OpenFile } from './files.ts';
import type { JournalReading } from './journal-reading.ts';
import { ensureFolder, writeNew } from './write-whole.ts';

/**
 * Copies the torn end to `set-aside/`, makes the copy durable, then shortens the journal. A crash in between
 * leaves a second copy, never a loss.
 * @throws the operating system's error; the journal is untouched unless the very last step failed
 */
export async function setAside(
  files: Files,
  folder: string,
  file: OpenFile,
  reading: JournalReading,
  torn: { readonly line: number; readonly bytes: Uint8Array },
  now: Date,
): Promise<Problem> {
  const asideFolder = join(folder, 'set-aside');
  await ensureFolder(files, asideFolder);
  const name = await writeUnderFreeName(files, asideFolder, `journal-tail-${fileStamp(now)}`, torn.bytes);
  await files.syncFolder(asideFolder);
  await file.truncate(reading.soundLength);
  await file.sync();
  return {
    code: 'journal.torn-tail',
    place: 'Journal',
    figures: { line: torn.line, bytes: torn.bytes.length, file: `set-aside/${name}` },
  };
}

async function writeUnderFreeName(
  files: Files,
  folder: string,
  stem: string,
  bytes: Uint8Array,
): Promise<string> {
  for (let number = 1; ; number++) {
    const name = number === 1 ? `${stem}.txt` : `${stem}-${number}.txt`;
    try {
      await writeNew(files, join(folder, name), bytes);
      return name;
    } catch (error) {
      if (errorCode(error) !== 'EEXIST') throw error;
    }
  }
}
