/** `copies` and `restore`: what there is to go back to, one more of it, and going back. */
import { resolve } from 'node:path';
import {
  homeFolder,
  listCopies,
  makeCopy,
  nodeFiles,
  readSettings,
  restoreNotebook,
  verify,
} from '../desk/index.ts';
import { sentence } from '../quantity/index.ts';
import type { Command } from './run.ts';
import { DAMAGED, type ExitCode, GOOD, line, NO, Stop, stopAt, type Terminal, USAGE } from './terminal.ts';

export const copiesCommand: Command = {
  usage: ['NOTEBOOK [--to FOLDER]'],
  summary:
    'Lists the copies of a notebook in the folder chosen in the settings; with --to, makes one in FOLDER first.',
  options: { to: { type: 'string' } },
  async run([notebook, ...extra], { to }, terminal) {
    if (notebook === undefined || extra.length > 0) throw new Stop(USAGE, 'copies takes one NOTEBOOK.');
    const checked = await verify(notebook);
    if (!checked.ok) throw stopAt(codeOf(checked.problem.code), checked.problem);
    const copiesFolder = typeof to === 'string' ? resolve(to) : await chosenFolder();
    let code: ExitCode = GOOD;
    if (typeof to === 'string') code = await makeNow(notebook, copiesFolder, terminal);
    const listed = await listCopies(nodeFiles, copiesFolder, checked.value.id);
    if (!listed.ok) throw stopAt(DAMAGED, listed.problem);
    for (const { at, size, shelf, file } of listed.value) {
      terminal.out(line(at, `${size} bytes`, resolve(copiesFolder, shelf, file)));
    }
    if (listed.value.length === 0) terminal.err('There is no copy yet.\n');
    return code;
  },
};

export const restoreCommand: Command = {
  usage: ['COPY --into FOLDER'],
  summary: 'Makes a new notebook FOLDER from a COPY: a file that copies lists, or a copied notebook folder.',
  options: { into: { type: 'string' } },
  async run([copy, ...extra], { into }, terminal) {
    if (copy === undefined || extra.length > 0 || typeof into !== 'string') {
      throw new Stop(USAGE, 'restore takes one COPY, and --into a FOLDER, which must not exist yet.');
    }
    const restored = await restoreNotebook(resolve(copy), resolve(into));
    if (!restored.ok) throw stopAt(codeOf(restored.problem.code), restored.problem);
    const { entries, problems } = restored.value;
    terminal.out(line(`Restored ${entries} entries to ${into}`));
    for (const problem of problems) terminal.err(`${sentence(problem)}\n`);
    return problems.length > 0 ? NO : GOOD;
  },
};

async function makeNow(notebook: string, copiesFolder: string, terminal: Terminal): Promise<ExitCode> {
  const made = await makeCopy(nodeFiles, resolve(notebook), copiesFolder, new Date());
  if (!made.ok) throw stopAt(DAMAGED, made.problem);
  const { isNew, problems } = made.value;
  if (!isNew) terminal.err('Nothing has changed since the newest copy.\n');
  for (const problem of problems) terminal.err(`${sentence(problem)}\n`);
  return problems.length > 0 ? NO : GOOD;
}

async function chosenFolder(): Promise<string> {
  const settings = await readSettings(nodeFiles, homeFolder());
  if (!settings.ok) throw stopAt(DAMAGED, settings.problem);
  const { copiesFolder } = settings.value;
  if (copiesFolder === '') throw new Stop(USAGE, 'No folder for copies is chosen. Name one with --to.');
  return copiesFolder;
}

function codeOf(problem: string): ExitCode {
  const named = ['notebook.not-found', 'notebook.exists', 'copies.not-found'];
  return named.includes(problem) ? USAGE : DAMAGED;
}
