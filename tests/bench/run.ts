/** `npm run bench`: every timing in this folder, one after the other. Prints percentiles; nothing passes or fails. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const notTimings = new Set(['run.ts', 'large-notebook.ts']);
const folder = fileURLToPath(new URL('.', import.meta.url));
for (const file of readdirSync(folder).sort()) {
  if (!file.endsWith('.ts') || notTimings.has(file)) continue;
  console.log(`\n== ${file.replace('.ts', '')}`);
  await import(`./${file}`);
}
