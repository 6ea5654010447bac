/** The description of the journal's form is checked against the program, so that others can rely on it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { replay } from '../notebook/index.ts';
import { readJournal } from './journal-reading.ts';

const page = await readFile(fileURLToPath(new URL('../../docs/journal.md', import.meta.url)), 'utf8');
const block = (language: string): string =>
  new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(page)?.[1] ?? '';

describe('docs/journal.md', () => {
  it('shows a journal that this program reads, whole and without complaint', () => {
    const read = readJournal(Buffer.from(block('jsonl')));
    if (!read.ok) throw new Error(JSON.stringify(read.problem));
    const { entries, torn, damage, soundLines } = read.value;
    expect({ torn, damage, soundLines }).toEqual({ torn: undefined, damage: undefined, soundLines: 4 });
    const { state, refused } = replay(entries);
    expect(refused).toEqual([]);
    expect(state.prototype.p1?.description).toBe('on one wheel');
  });

  it('shows a check that stands alone, which accepts it and finds a changed letter', () => {
    const folder = mkdtempSync(join(tmpdir(), 'counterpoise-doc-'));
    try {
      writeFileSync(join(folder, 'check.mjs'), block('js'));
      const check = (journal: string) => {
        writeFileSync(join(folder, 'journal.jsonl'), journal);
        const { stdout, stderr } = spawnSync(process.execPath, ['check.mjs', 'journal.jsonl'], {
          cwd: folder,
          encoding: 'utf8',
        });
        return stdout + stderr;
      };
      const read = readJournal(Buffer.from(block('jsonl')));
      expect(check(block('jsonl'))).toBe(`sound up to ${read.ok && read.value.head}\n`);
      expect(check(block('jsonl').replace('one wheel', 'two wheel'))).toBe('line 4 is damaged\n');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
