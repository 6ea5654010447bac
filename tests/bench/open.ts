/**
 * A notebook of years: opened, replayed, changed. Parsing and checking the whole journal, adding the changes up,
 * one change of each kind on top, and the memory that it takes.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createNotebook, openNotebook, readJournal } from '../../src/desk/index.ts';
import { apply, type Change, type NotebookState, replay, set } from '../../src/notebook/index.ts';
import { largeNotebook, type Size, years } from './large-notebook.ts';
import { report } from './timing/percentiles.ts';

const home = await mkdtemp(join(tmpdir(), 'counterpoise-bench-'));
const megabytes = (bytes: number): string => `${(bytes / 1024 / 1024).toFixed(0)} MB`;

async function measure(title: string, size: Size): Promise<NotebookState> {
  const folder = join(home, title);
  await createNotebook(folder, { author: 'Jo', entries: largeNotebook(size) });
  const bytes = await readFile(join(folder, 'journal.jsonl'));
  const parsing: number[] = [];
  const replaying: number[] = [];
  const opening: number[] = [];
  let state: NotebookState | undefined;
  let lines = 0;
  for (let round = 0; round < 3; round++) {
    const started = performance.now();
    const read = readJournal(bytes);
    if (!read.ok) throw new Error('the journal is not read');
    parsing.push(performance.now() - started);
    lines = read.value.soundLines;
    const parsed = performance.now();
    state = replay(read.value.entries).state;
    replaying.push(performance.now() - parsed);
    const closed = performance.now();
    const opened = await openNotebook(folder);
    if (!opened.ok) throw new Error('the notebook is not opened');
    opening.push(performance.now() - closed);
    await opened.value.close();
  }
  console.log(`${title}: ${lines} lines, ${megabytes(bytes.length)}`);
  report('  read, parse and verify the chain', parsing);
  report('  replay', replaying);
  report('  open at the desk', opening);
  return state as NotebookState;
}

const small = { ...years, runs: 0 };
await measure('without runs', small);
const state = await measure('whole', years);
console.log(`  memory in use: ${megabytes(process.memoryUsage().heapUsed)}`);

const kinds: readonly (readonly [string, (count: number) => Change])[] = [
  ['a log entry', (count) => set('entry', 'entry-000000000500', { text: `x${count}` })],
  ['a run', (count) => set('run', 'run-000000000500', { summary: `x${count}` })],
  ['a revision', (count) => set('revision', `revision-${years.revisions}`, { reason: `x${count}` })],
  ['a card', (count) => set('card', 'card-3', { purpose: `x${count}` })],
  ['a prototype', (count) => set('prototype', 'prototype-3', { description: `x${count}` })],
];
for (const [what, change] of kinds) {
  let current = state;
  const times: number[] = [];
  for (let count = 0; count < 300; count++) {
    const started = performance.now();
    const next = apply(current, change(count));
    times.push(performance.now() - started);
    if (!next.ok) throw new Error(next.problem.code);
    current = next.value;
  }
  report(`change ${what}, ${Object.keys(state.entry).length} log entries beside`, times.slice(20));
}
await rm(home, { recursive: true });
