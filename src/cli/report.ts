/** `report`: the PDF of a run or a revision, the same as from the window. */
import { readFile, writeFile } from 'node:fs/promises';
import { attachmentPath } from '../desk/index.ts';
import type { NotebookState } from '../notebook/index.ts';
import { type ReportSource, revisionReport, runReport } from '../report/index.ts';
import { renderPdf } from '../report/pdf/index.ts';
import { readFonts } from './fonts.ts';
import { findRevision, readNotebook } from './notebook.ts';
import type { Command } from './run.ts';
import { DAMAGED, GOOD, line, NO, Stop, stopAt, USAGE } from './terminal.ts';

export const reportCommand: Command = {
  usage: ['NOTEBOOK --run ID --out FILE.pdf', 'NOTEBOOK --revision R [--prototype P] --out FILE.pdf'],
  summary:
    'The report of a run (by its number or id) or of a revision (by its letter or id), on A4, or on Letter with --letter.',
  options: {
    run: { type: 'string' },
    revision: { type: 'string' },
    prototype: { type: 'string' },
    out: { type: 'string' },
    letter: { type: 'boolean' },
  },
  async run([folder, ...extra], options, terminal) {
    const { run, revision, prototype, out } = options as Readonly<Record<string, string | undefined>>;
    if (folder === undefined || extra.length > 0) throw new Stop(USAGE, 'report takes one NOTEBOOK.');
    if (out === undefined) throw new Stop(USAGE, 'report needs --out FILE.pdf.');
    if ((run === undefined) === (revision === undefined)) {
      throw new Stop(USAGE, 'report takes either --run or --revision.');
    }
    const { state, newest } = await readNotebook(folder, terminal);
    const source: ReportSource = {
      state,
      author: newest?.by ?? '',
      now: newest?.at ?? '',
      paper: options.letter === true ? 'Letter' : 'A4',
      attachment: (sha256) => readFile(attachmentPath(folder, sha256)).catch(() => undefined),
    };
    const built =
      run === undefined
        ? await revisionReport(source, findRevision(state, prototype, revision).revisionId)
        : await runReport(source, findRun(state, run));
    if (!built.ok) throw stopAt(NO, built.problem);
    const drawn = await renderPdf(built.value, await readFonts());
    if (!drawn.ok) throw stopAt(NO, drawn.problem);
    try {
      await writeFile(out, drawn.value);
    } catch (error) {
      throw new Stop(
        DAMAGED,
        `${out}: cannot be written (${error instanceof Error ? error.message : error}).`,
      );
    }
    terminal.out(line(`Wrote ${out}: ${built.value.title}`));
    return GOOD;
  },
};

function findRun(state: NotebookState, name: string): string {
  const found = Object.entries(state.run).find(([id, { number }]) => id === name || String(number) === name);
  if (found) return found[0];
  const runs = Object.values(state.run).map(({ number }) => number);
  throw new Stop(USAGE, `there is no run “${name}”. There are: ${runs.join(', ') || 'none'}.`);
}
