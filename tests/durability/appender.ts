/** A process to be killed: writes into the notebook as fast as it can, and says on its output what was promised. */
import { writeSync } from 'node:fs';
import { openNotebook } from '../../src/desk/index.ts';
import { type Change, set } from '../../src/notebook/index.ts';
import { seededRandom } from './random.ts';

const [folder = '', seed = '0'] = process.argv.slice(2);
const random = seededRandom(Number(seed));

/** Synchronous, so that a promise is out before the next write begins. */
function say(line: string): void {
  writeSync(1, `${line}\n`);
}

const opened = await openNotebook(folder);
if (!opened.ok || opened.value.readOnly) {
  say(`cannot write ${JSON.stringify(opened.ok ? opened.value.problems : opened.problem)}`);
  process.exit(1);
}
const notebook = opened.value;
say('ready');
for (let round = 0; ; round++) {
  const count = 1 + Math.floor(random() * 4);
  const changes: Change[] = Array.from({ length: count }, (_, index) =>
    set('notebook', 'notebook', {
      name: `${seed} ${round} ${index} ${'µ'.repeat(Math.floor(random() * 60))}`,
    }),
  );
  const outcome = await notebook.append(notebook.entries.length, seed, changes);
  if (!outcome.ok) {
    say(`refused ${JSON.stringify(outcome.problem)}`);
    process.exit(1);
  }
  for (const { seq, change } of outcome.value) say(`promised ${seq} ${JSON.stringify(change)}`);
  if (random() < 0.1) {
    const added = await notebook.addAttachment(Buffer.from(`${seed} ${round}`));
    if (added.ok) say(`attached ${added.value.sha256}`);
  }
}
