/** `merge`: adds to a notebook what another copy of it holds besides, and says what only a person can decide. */
import { homeFolder, mergeNotebooks, nodeFiles, readSettings } from '../desk/index.ts';
import type { Conflict, Json } from '../notebook/index.ts';
import { sentence } from '../quantity/index.ts';
import type { Command } from './run.ts';
import { DAMAGED, GOOD, line, NO, Stop, stopAt, type Terminal, USAGE } from './terminal.ts';

export const mergeCommand: Command = {
  usage: ['NOTEBOOK OTHER [--ours|--theirs]'],
  summary:
    'Adds to NOTEBOOK what OTHER, another copy of it, holds besides. Places that both changed are listed, and nothing is written, until --ours or --theirs decides them; the other value stays in the history.',
  options: { ours: { type: 'boolean' }, theirs: { type: 'boolean' } },
  async run([notebook, other, ...extra], { ours, theirs }, terminal) {
    if (notebook === undefined || other === undefined || extra.length > 0 || (ours && theirs)) {
      throw new Stop(
        USAGE,
        'merge takes two copies, NOTEBOOK and OTHER, and at most one of --ours and --theirs.',
      );
    }
    const settings = await readSettings(nodeFiles, homeFolder());
    const by = settings.ok ? settings.value.author : '';
    const choice = ours ? 'ours' : theirs ? 'theirs' : undefined;
    const merged = await mergeNotebooks(notebook, other, { by, choose: () => choice });
    if (!merged.ok) {
      const { code } = merged.problem;
      const named = code === 'notebook.not-found' || code === 'merge.other-notebook';
      throw stopAt(named ? USAGE : DAMAGED, merged.problem);
    }
    const { merge, added, problems } = merged.value;
    if (merge.kind === 'combined') {
      for (const conflict of merge.conflicts) tell(conflict, terminal);
      for (const note of merge.notes) terminal.err(`${sentence(note)}\n`);
      const open = merge.conflicts.filter((conflict) => conflict.choice === undefined).length;
      if (open > 0) {
        terminal.err(`${open} to decide. Nothing was written. Decide with --ours or --theirs.\n`);
        return NO;
      }
    }
    for (const problem of problems) terminal.err(`${sentence(problem)}\n`);
    terminal.out(line(`${merge.kind}: ${merge.common} entries in common, ${added} added`));
    return problems.length > 0 ? NO : GOOD;
  },
};

function tell({ kind, id, path, ours, theirs, choice }: Conflict, terminal: Terminal): void {
  const shown = (value: Json | undefined): string =>
    value === undefined ? 'nothing' : JSON.stringify(value);
  terminal.out(
    line(`${kind} ${id}`, path, `ours ${shown(ours)}`, `theirs ${shown(theirs)}`, choice ?? 'open'),
  );
}
