/** Writes the demo notebook from `templates/demo/`: the story told there, and the files beside it. */
import { readFile } from 'node:fs/promises';
import { bad, ProblemError, type Result } from '../quantity/index.ts';
import { addAttachment, hashOf } from './attachments.ts';
import { demoEntries } from './demo-notebook.ts';
import type { Story } from './demo-story.ts';
import { fileReason, nodeFiles } from './files.ts';
import { createNotebook, type Ground } from './notebook-folder.ts';

/** Two folders up from here both in the sources and in the built program. */
const TEMPLATES = new URL('../../templates/demo/', import.meta.url);

/** @param folder  to be made; its parent must exist */
export async function writeDemo(folder: string, ground: Ground = {}): Promise<Result<null>> {
  try {
    const story = JSON.parse(await readFile(new URL('story.json', TEMPLATES), 'utf8')) as Story;
    const pictures = await Promise.all(
      story.events.flatMap((event) =>
        event.do === 'entry' && event.picture ? [picture(event.picture.file)] : [],
      ),
    );
    const attached = new Map(
      pictures.map(({ name, bytes }) => [name, { sha256: hashOf(bytes), size: bytes.length }]),
    );
    const entries = demoEntries(story, attached);
    const made = await createNotebook(folder, { author: story.author, entries }, ground);
    if (!made.ok) return made;
    for (const { bytes } of pictures) {
      const added = await addAttachment(ground.files ?? nodeFiles, folder, bytes);
      if (!added.ok) return added;
    }
    return made;
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    return bad('file.failed', 'Demo notebook', { detail: fileReason(error) });
  }
}

async function picture(name: string): Promise<{ name: string; bytes: Uint8Array }> {
  return { name, bytes: await readFile(new URL(name, TEMPLATES)) };
}
