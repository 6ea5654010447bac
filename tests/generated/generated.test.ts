import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { generatedFiles } from './files.ts';

describe('generated files', () => {
  it.each(generatedFiles())('$path is what its source says now', ({ path, text }) => {
    const stored = readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
    expect(stored === text, 'stale: run npx tsx tests/generated/write.ts').toBe(true);
  });
});
