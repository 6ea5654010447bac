/** What an item of a run stands at, in a word. */
import type { ChecklistItem, Run } from '../../../../notebook/index.ts';

export type ItemState = 'open' | 'met' | 'not met';

export function stateOf(run: Run, item: ChecklistItem): ItemState {
  const answer = run.answers[item.id];
  if (!answer) return 'open';
  return answer.met ? 'met' : 'not met';
}
