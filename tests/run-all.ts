/**
 * `npm test`: everything, in the order in which it is cheapest to be wrong. Programs that the tests look at results
 * with (Chromium, poppler, qpdf) are installed with apt where that is possible, else named.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

interface Step {
  readonly name: string;
  readonly command: readonly string[];
}

const steps: readonly Step[] = [
  { name: 'lint and format', command: ['npx', 'biome', 'check', '.'] },
  { name: 'types', command: ['npx', 'tsc'] },
  { name: 'unit, layers, published checks, durability, command line', command: ['npx', 'vitest', 'run'] },
  { name: 'build', command: ['npx', 'electron-vite', 'build'] },
  {
    name: 'end to end in Chromium',
    command: ['npx', 'playwright', 'test', '-c', 'tests/e2e/playwright.config.ts'],
  },
  {
    name: 'in Electron itself',
    command: ['npx', 'playwright', 'test', '-c', 'tests/electron/playwright.config.ts'],
  },
];

/** Debian package → a program of it. */
const wanted: Readonly<Record<string, string>> = {
  chromium: '/usr/bin/chromium',
  'poppler-utils': '/usr/bin/pdftotext',
  qpdf: '/usr/bin/qpdf',
};

function provide(): void {
  const missing = Object.entries(wanted)
    .filter(([, program]) => !existsSync(program))
    .map(([name]) => name);
  if (missing.length === 0) return;
  console.log(`Installing what the tests need: ${missing.join(', ')}`);
  const done =
    run(['apt-get', 'update', '-qq']) === 0 &&
    run(['apt-get', 'install', '-y', '-qq', '--no-install-recommends', ...missing]) === 0;
  if (done) return;
  console.error(
    `The tests need ${missing.join(', ')}. Install with: sudo apt-get install ${missing.join(' ')}`,
  );
  process.exit(1);
}

function run([program = '', ...args]: readonly string[]): number {
  const { status, error } = spawnSync(program, args, { stdio: 'inherit' });
  if (error) console.error(`${program}: ${error.message}`);
  return status ?? 1;
}

provide();
let passed = 0;
for (const step of steps) {
  const started = performance.now();
  console.log(`\n== ${step.name}`);
  if (run(step.command) !== 0) {
    console.error(`\nFailed: ${step.name}`);
    console.log(`${passed} passed, 1 failed`);
    process.exit(1);
  }
  passed += 1;
  console.log(`== ${step.name}: ${((performance.now() - started) / 1000).toFixed(0)} s`);
}
console.log(`${passed} passed, 0 failed`);
