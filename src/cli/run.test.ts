import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { registry } from '../margins/index.ts';
import { captured } from './captured.ts';
import { commands } from './run.ts';
import { DAMAGED, GOOD, NO, USAGE } from './terminal.ts';

const names = Object.keys(commands);

describe('help', () => {
  it.each([['--help'], ['-h'], ['help']])(
    '%s lists every command, its options and the exit codes',
    async (word) => {
      const { code, out, err } = await captured([word]);
      expect([code, err]).toEqual([GOOD, '']);
      for (const name of names) {
        expect(out).toContain(`counterpoise ${name} `);
        for (const option of Object.keys(commands[name]?.options ?? {})) expect(out).toContain(`--${option}`);
      }
      for (const meaning of [
        `${GOOD} good`,
        `${NO} the data say no`,
        `${USAGE} usage`,
        `${DAMAGED} damaged input`,
      ]) {
        expect(out).toContain(meaning);
      }
    },
  );

  it('is given without being asked for when nothing is asked, which is not good', async () => {
    const { code, out } = await captured([]);
    expect(code).toBe(USAGE);
    expect(out).toContain('counterpoise margins');
  });

  it.each(names)('of %s is of that one alone', async (name) => {
    const { code, out, err } = await captured([name, '--help']);
    expect([code, err]).toEqual([GOOD, '']);
    expect(out).toContain(`counterpoise ${name} `);
    for (const other of names) if (other !== name) expect(out).not.toContain(`counterpoise ${other} `);
  });
});

describe('a command line that is off', () => {
  it.each([
    [['frobnicate'], /“frobnicate”.*calc, demo, margins/s],
    [['constructor'], /“constructor”/],
    [['__proto__'], /“__proto__”/],
    [['calc'], /calc takes/],
    [['calc', 'list', 'more'], /calc takes/],
    [['calc', 'run', 'rotor.energy'], /--input/],
    [['calc', 'run', '--input', 'x'], /ID/],
    [['calc', 'run', 'rotor.energy', 'more', '--input', '-'], /calc takes/],
    [['calc', 'list', '--colour'], /--colour/],
    [['calc', 'run', 'rotor.energy', '--input'], /--input/],
    [['demo'], /FOLDER/],
    [['demo', 'a', 'b'], /FOLDER/],
    [['margins'], /NOTEBOOK/],
    [['margins', 'a', 'b'], /NOTEBOOK/],
    [['margins', 'a', '--json=yes'], /--json/],
    [['verify'], /NOTEBOOK/],
    [['rebuild', 'a', 'b'], /NOTEBOOK/],
  ])('%j is answered with what it should be, and where to read more', async (args, message) => {
    const { code, out, err } = await captured(args);
    expect(code).toBe(USAGE);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err).toMatch(/See: counterpoise --help\n$/);
  });
});

describe('as a program', () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const npm = (args: readonly string[], input = '') =>
    spawnSync('npm', ['run', '-s', 'counterpoise', '--', ...args], { cwd: root, encoding: 'utf8', input });

  it('lists the calculations as JSON', () => {
    const { status, stdout, stderr } = npm(['calc', 'list', '--json']);
    expect([status, stderr]).toEqual([GOOD, '']);
    const ids = (JSON.parse(stdout) as { id: string }[]).map(({ id }) => id);
    expect(ids.sort()).toEqual([...registry.keys()].sort());
  }, 60_000);

  it('reads the standard input, and ends with the code of the command', () => {
    const { status, stdout, stderr } = npm(
      ['calc', 'run', 'rotor.energy', '--input', '-'],
      '{"inertia": -1, "speed": 1}',
    );
    expect(status).toBe(NO);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/inertia/);
  }, 60_000);

  it('does not complain when its reader has read enough', () => {
    const { status, stdout, stderr } = spawnSync(
      'sh',
      [
        '-c',
        'npx tsx src/cli/main.ts calc list --json | head -c 1; npx tsx src/cli/main.ts --help | head -n 1',
      ],
      { cwd: root, encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^\[Counterpoise/);
  }, 60_000);
});
