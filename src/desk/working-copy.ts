/**
 * A small number beside the journal. The window's working copy carries it in its name: another number means
 * that the old copy is to be thrown away and made anew.
 */
import { join } from 'node:path';
import { z } from 'zod';
import type { Files } from './files.ts';
import { writeWhole } from './write-whole.ts';

const form = z.object({ generation: z.number().int().positive() });

/** 1 where nothing, or nothing readable, is written. */
export async function readGeneration(files: Files, folder: string): Promise<number> {
  try {
    const text = Buffer.from(await files.read(join(folder, 'working-copy.json'))).toString('utf8');
    return form.parse(JSON.parse(text)).generation;
  } catch {
    return 1;
  }
}

/** @returns the new number. @throws the operating system's error */
export async function nextGeneration(files: Files, folder: string): Promise<number> {
  const generation = (await readGeneration(files, folder)) + 1;
  const text = `${JSON.stringify({ generation })}\n`;
  await writeWhole(files, join(folder, 'working-copy.json'), Buffer.from(text));
  return generation;
}
