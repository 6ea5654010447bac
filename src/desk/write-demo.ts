/**
 * The demo's writer is loaded when it is asked for: it brings checklists and margins with it, which the start of
 * the program has no use for.
 */
import type { Result } from '../quantity/index.ts';
import type { Ground } from './notebook-folder.ts';

/** @param folder  to be made; its parent must exist */
export async function writeDemo(folder: string, ground: Ground = {}): Promise<Result<null>> {
  const { writeDemo: write } = await import('./demo.ts');
  return write(folder, ground);
}
