/** What a run stands at, in a word or two. */
import { standing } from '../../checklist/index.ts';
import type { Revision, Run } from '../../notebook/index.ts';

const words: Readonly<Record<Run['status'], string>> = {
  checklist: 'at its checklist',
  cleared: 'under way',
  finished: 'finished',
  aborted: 'broken off',
  void: 'void',
};

/** A finished run reads as its outcome; one whose revision has changed under it is void. */
export function runStanding(run: Run, revision: Revision | undefined): string {
  const status = revision ? standing(run, revision) : run.status;
  return status === 'finished' ? (run.outcome ?? words.finished) : words[status];
}
