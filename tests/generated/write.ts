/** Writes the generated files anew: `npx tsx tests/generated/write.ts`. A test fails when one of them is stale. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { generatedFiles } from './files.ts';

for (const { path, text } of generatedFiles()) {
  writeFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), text);
  process.stdout.write(`${path}: ${text.length} characters\n`);
}
