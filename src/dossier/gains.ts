/** Whether somebody has written down how a gain was found. */
import { isKnown, type NotebookState, type QuantityField, type Revision } from '../notebook/index.ts';

export interface Gain {
  /** Name of the figure. */
  readonly name: string;
  /** In the revision. */
  readonly path: string;
}

const GAINS = [
  { name: 'lean_gain', key: 'leanGain' },
  { name: 'rate_gain', key: 'rateGain' },
  { name: 'gimbal_gain', key: 'gimbalGain' },
] as const;

/**
 * Gains of a revision of which nothing says where they come from. A gain that is nought does nothing. One is
 * documented where its reading names an instrument or a method, or where a log entry, the reason of a revision or the
 * summary of a run speaks of gains, on this revision or on an earlier one that had the same value already.
 */
export function undocumentedGains(state: NotebookState, revisionId: string): readonly Gain[] {
  const revision = state.revision[revisionId];
  return GAINS.flatMap(({ name, key }): Gain[] => {
    const field = revision?.loop?.[key];
    if (!isKnown(field) || field.si === 0 || (field.instrument ?? '').trim() !== '') return [];
    const same = withSameGain(state, revisionId, (each) => each.loop?.[key], field.si);
    const texts = same.flatMap((id) => textsOn(state, id));
    return texts.some((text) => speaksOf(text, name)) ? [] : [{ name, path: `loop/${key}` }];
  });
}

/** The revision and those that it was made from, as far back as they have the value. */
function withSameGain(
  state: NotebookState,
  from: string,
  fieldOf: (revision: Revision) => QuantityField | undefined,
  value: number,
): readonly string[] {
  const ids: string[] = [];
  for (let id: string | undefined = from; id !== undefined && !ids.includes(id); ) {
    const revision: Revision | undefined = state.revision[id];
    const field = revision && fieldOf(revision);
    if (!isKnown(field) || field.si !== value) break;
    ids.push(id);
    id = revision?.from;
  }
  return ids;
}

function textsOn(state: NotebookState, revisionId: string): readonly string[] {
  const entries = Object.values(state.entry).filter((entry) => entry.revision === revisionId);
  const runs = Object.values(state.run).filter((run) => run.revision === revisionId);
  return [
    state.revision[revisionId]?.reason ?? '',
    ...entries.flatMap(({ title, text }) => [title, text]),
    ...runs.flatMap(({ summary, notes }) => [summary, ...Object.values(notes).map(({ text }) => text)]),
  ];
}

/** The name of the figure stands inside a longer name at times, “gain” as a word of its own. */
function speaksOf(text: string, name: string): boolean {
  return text.includes(name) || /\bgains?\b/i.test(text);
}
