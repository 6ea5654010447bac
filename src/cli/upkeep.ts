/** `verify` and `rebuild`: is the notebook whole, and putting right what can be put right without losing anything. */
import { rebuild, verify } from '../desk/index.ts';
import { sentence } from '../quantity/index.ts';
import type { Command } from './run.ts';
import { DAMAGED, GOOD, line, NO, Stop, stopAt, USAGE } from './terminal.ts';

/** What keeps a sound notebook from being rebuilt now. */
const HINDRANCES: ReadonlySet<string> = new Set(['notebook.locked', 'notebook.cannot-write']);

export const verifyCommand: Command = {
  usage: ['NOTEBOOK'],
  summary:
    'Reads every line of the journal and every attachment, checks the hash chain and the contents. Changes nothing.',
  options: {},
  async run([folder, ...extra], _options, terminal) {
    if (folder === undefined || extra.length > 0) throw new Stop(USAGE, 'verify takes one NOTEBOOK.');
    const found = await verify(folder);
    if (!found.ok) throw stopAt(found.problem.code === 'notebook.not-found' ? USAGE : DAMAGED, found.problem);
    const { name, lines, chain, head, attachments, records, problems } = found.value;
    terminal.out(line(`${name}: ${lines} lines, chain ${chain}, head ${head}`));
    terminal.out(line(`attachments: ${attachments.sound} of ${attachments.named} sound`));
    terminal.out(line(`records: ${counts(records)}`));
    for (const problem of problems) terminal.err(`${sentence(problem)}\n`);
    return problems.length > 0 ? DAMAGED : GOOD;
  },
};

export const rebuildCommand: Command = {
  usage: ['NOTEBOOK'],
  summary:
    'Replays the journal, sets a torn last line aside, and has every window make its working copy anew. Loses nothing.',
  options: {},
  async run([folder, ...extra], _options, terminal) {
    if (folder === undefined || extra.length > 0) throw new Stop(USAGE, 'rebuild takes one NOTEBOOK.');
    const rebuilt = await rebuild(folder);
    if (!rebuilt.ok) {
      const { code } = rebuilt.problem;
      throw stopAt(
        code === 'notebook.not-found' ? USAGE : HINDRANCES.has(code) ? NO : DAMAGED,
        rebuilt.problem,
      );
    }
    terminal.out(
      line(
        `records: ${counts(rebuilt.value.records)}; working copies of generation ${rebuilt.value.generation} from now on`,
      ),
    );
    for (const problem of rebuilt.value.problems) terminal.err(`${sentence(problem)}\n`);
    return GOOD;
  },
};

function counts(records: Readonly<Record<string, number>>): string {
  return Object.entries(records)
    .map(([kind, count]) => `${count} ${kind}`)
    .join(', ');
}
