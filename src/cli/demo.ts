/** `demo`: writes the demo notebook. */
import { writeDemo } from '../desk/index.ts';
import type { Command } from './run.ts';
import { DAMAGED, GOOD, line, Stop, stopAt, USAGE } from './terminal.ts';

export const demoCommand: Command = {
  usage: ['FOLDER'],
  summary: 'Writes the demo notebook into a new FOLDER.',
  options: {},
  async run([folder, ...extra], _options, terminal) {
    if (folder === undefined || extra.length > 0)
      throw new Stop(USAGE, 'demo takes one FOLDER, which must not exist yet.');
    const written = await writeDemo(folder);
    if (!written.ok)
      throw stopAt(written.problem.code === 'notebook.exists' ? USAGE : DAMAGED, written.problem);
    terminal.out(line(`Wrote the demo notebook to ${folder}`));
    return GOOD;
  },
};
