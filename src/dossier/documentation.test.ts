/** docs/dossier.md says what a dossier is made of, and what is asked before. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { payloadOf, smallChanges, sourceOf, written } from '../../tests/specimen/dossier.ts';
import { archiveLimits } from './archive/limits.ts';
import { mostPrinted } from './payload.ts';
import { questionKinds } from './questions.ts';

const page = readFileSync(new URL('../../docs/dossier.md', import.meta.url), 'utf8');
const flat = page.replace(/\s+/g, ' ');

describe('docs/dossier.md', () => {
  it('names every file and folder at the top of the payload, as does the README in it', async () => {
    const payload = payloadOf((await written(sourceOf(smallChanges, 'p'))).bytes);
    const readme = new TextDecoder().decode(payload.get('README.txt'));
    for (const path of payload.keys()) {
      const top = path.replace(/\/.*/, '/');
      expect(page).toContain(`\`${top}\``);
      if (top !== 'README.txt') expect(readme).toContain(top);
    }
  }, 60_000);

  it('names every kind of question', () => {
    for (const kind of questionKinds) expect(page).toContain(`\n| ${kind} |`);
  });

  it('says how much is printed', () => {
    expect(flat).toContain(
      `the ${mostPrinted.revisions} newest revisions and reports of the ${mostPrinted.runs} newest runs`,
    );
    expect(flat).toContain(`The ${mostPrinted.revisions} newest revisions in full`);
  });

  it('gives the limits of a package', () => {
    const { packed, unpacked, files, ratio, freeOfRatio } = archiveLimits;
    expect(packed).toBe(unpacked);
    expect(flat).toContain(`at most ${packed / 1024 / 1024} MB`);
    expect(flat).toContain(`${files.toLocaleString('en-GB')} files`);
    expect(flat).toContain(`more than ${ratio} times their size (above ${freeOfRatio / 1024 / 1024} MB)`);
  });
});
