/** Real processes, a real disk: a writer is killed at any moment, and every change that it promised is there. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createNotebook, openNotebook, verify } from '../../src/desk/index.ts';
import { seededRandom } from './random.ts';

const rounds = 20;
const appender = fileURLToPath(new URL('./appender.ts', import.meta.url));
let home: string;
beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), 'counterpoise-kill-'));
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Lines that the writer got out before it was killed, `delay` milliseconds after it was ready. */
async function killed(folder: string, seed: number, delay: number): Promise<readonly string[]> {
  const child = spawn(process.execPath, ['--import', 'tsx', appender, folder, String(seed)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise((resolve) => child.on('close', resolve));
  let output = '';
  await new Promise<void>((resolve) => {
    child.stdout.on('data', (piece: Buffer) => {
      output += piece.toString('latin1');
      resolve();
    });
    child.on('close', () => resolve());
  });
  await pause(delay);
  child.kill('SIGKILL');
  await ended;
  return Buffer.from(output, 'latin1').toString('utf8').split('\n');
}

describe('a writer killed at any moment', () => {
  it(`keeps every promise, ${rounds} times on one notebook`, { timeout: 300_000 }, async () => {
    const folder = join(home, 'Killed');
    expect((await createNotebook(folder, { author: 'B' })).ok).toBe(true);
    const random = seededRandom(20_260_301);
    let known = 1;
    for (let round = 1; round <= rounds; round++) {
      const lines = await killed(folder, round, random() * 250);
      expect(lines[0], `round ${round}: the lock left by the killed one is recognised`).toBe('ready');

      const opened = await openNotebook(folder);
      if (!opened.ok) throw new Error(JSON.stringify(opened.problem));
      const { value: notebook } = opened;
      expect(notebook.readOnly, `round ${round}`).toBe(false);
      expect(notebook.entries.length).toBeGreaterThanOrEqual(known);
      for (const line of lines) {
        const [, seq, change] = /^promised (\d+) (.*)$/.exec(line) ?? [];
        if (seq === undefined || change === undefined) continue;
        expect(JSON.stringify(notebook.entries[Number(seq) - 1]?.change), `round ${round}`).toBe(change);
        known = Math.max(known, Number(seq));
      }
      for (const line of lines) {
        const [, sha256] = /^attached (\S+)$/.exec(line) ?? [];
        if (sha256 !== undefined) expect((await notebook.readAttachment(sha256)).ok).toBe(true);
      }
      known = notebook.entries.length;
      await notebook.close();
      const checked = await verify(folder);
      expect(checked, `round ${round}`).toMatchObject({ ok: true, value: { chain: 'whole', problems: [] } });
    }
    expect(known, 'the writers had time to write').toBeGreaterThan(rounds);
  });
});
