/** `margins --monte-carlo`, on a notebook that is a pack and two requirements: drawn in a moment. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createNotebook } from '../desk/index.ts';
import { create } from '../notebook/index.ts';
import { captured } from './captured.ts';
import { GOOD, USAGE } from './terminal.ts';

const AT = '2026-03-01T09:00:00+00:00';
const quantity = (typed: string, si: number, u = 0) => ({ typed, si, u, basis: 'measured' as const });

let home: string;
let notebook: string;
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-'));
  notebook = join(home, 'Rig');
  const made = await createNotebook(notebook, {
    name: 'Rig',
    author: 'B',
    entries: [
      create('prototype', 'rig', {
        name: 'Rig',
        kind: 'pendulum rig',
        createdAt: AT,
        requirements: { runTime: quantity('14 min', 840), leanToRecover: quantity('5°', Math.PI / 36) },
      }),
      create('revision', 'a', {
        prototype: 'rig',
        letter: 'A',
        createdAt: AT,
        pack: {
          chemistry: 'lithium-ion',
          cellsInSeries: 3,
          capacity: quantity('2000 mA·h', 7200),
          usableShare: quantity('80 %', 0.8),
          // the divisor is even within a bound of an eighth
          meanCurrent: quantity('6.4 A ± 0.8 A', 6.4, 0.8 / Math.sqrt(3)),
          largestCurrent: quantity('40 A', 40),
          peakCurrent: quantity('20 A', 20),
        },
      }),
    ].map((change) => ({ at: AT, by: 'B', change })),
  });
  if (!made.ok) throw new Error(made.problem.code);
});
afterAll(() => rm(home, { recursive: true, force: true }));

const plain = (text: string): string => text.replaceAll('\u202F', ' ');

describe('margins by random draws', () => {
  it('follow each margin on its line', async () => {
    const { code, out, err } = await captured(['margins', notebook, '--monte-carlo']);
    expect([code, err]).toEqual([GOOD, '']);
    const line =
      plain(out)
        .split('\n')
        .find((each) => each.startsWith('Run time'))
        ?.split('\t') ?? [];
    expect(line[4]).toMatch(/^holds in 7[89]\.\d % of \d+ 000 draws$/);
    expect(line[5]).toMatch(/^MS 0\.07\d?\(\d+\), 95 % from −0\.0\d+ to 0\.\d+$/);
    expect(line[6]).toMatch(/^first order is/);
  });

  it('say where there is nothing to draw, and where a margin is not known', async () => {
    const { out } = await captured(['margins', notebook, '--monte-carlo']);
    expect(out).toMatch(/^Current of the pack\t.*\tnot drawn: .*no input of it carries an uncertainty/m);
    expect(out).toMatch(/^Lean to recover from\t.*\tunknown: .*\tnot drawn: /m);
  });

  it('as JSON are what a run time with an even divisor comes to', async () => {
    const { out } = await captured(['margins', notebook, '--monte-carlo', '--json']);
    const printed = JSON.parse(out);
    expect(printed.monteCarlo).toEqual({ seed: 1, significantDigits: 1 });
    const { monteCarlo } = printed.margins.find(({ id }: { id: string }) => id === 'run-time');
    // MS = t/840 − 1 with t = 5760/I, I even in [5.6, 7.2]: every figure follows from 1/I
    const margin = (current: number): number => 5760 / current / 840 - 1;
    const mean = (5760 / 840) * (Math.log(7.2 / 5.6) / 1.6) - 1;
    expect(Math.abs(monteCarlo.mean - mean)).toBeLessThan(monteCarlo.tolerance);
    expect(Math.abs(monteCarlo.interval[0] - margin(7.16))).toBeLessThan(monteCarlo.tolerance);
    expect(Math.abs(monteCarlo.interval[1] - margin(5.64))).toBeLessThan(monteCarlo.tolerance);
    // it holds while I is at most 5760/840 A
    expect(monteCarlo.probability).toBeCloseTo((5760 / 840 - 5.6) / 1.6, 2);
    expect(monteCarlo.settled).toBe(true);
    expect(printed.margins.find(({ id }: { id: string }) => id === 'pack-current').monteCarlo).toEqual({
      reason: expect.stringMatching(/no input of it carries an uncertainty/),
    });
  });

  it('are the same for the same seed and others for another', async () => {
    const drawn = async (...options: string[]): Promise<string> =>
      (await captured(['margins', notebook, '--monte-carlo', '--json', ...options])).out;
    expect(await drawn('--seed', '1')).toBe(await drawn());
    expect(await drawn('--seed', '2')).not.toBe(await drawn());
  });

  it.each([
    ['a seed that is no whole number', ['--monte-carlo', '--seed', '1.5'], /--seed takes a whole number/],
    ['a seed below nought', ['--monte-carlo', '--seed=-1'], /--seed takes a whole number/],
    ['a word for a seed', ['--monte-carlo', '--seed', 'luck'], /--seed takes a whole number/],
    ['a seed without draws', ['--seed', '1'], /--seed belongs to --monte-carlo/],
  ])('refuse %s', async (_, options, sentence) => {
    const { code, out, err } = await captured(['margins', notebook, ...options]);
    expect([code, out]).toEqual([USAGE, '']);
    expect(err).toMatch(sentence);
  });
});
