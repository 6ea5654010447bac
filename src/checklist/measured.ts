/**
 * What runs measure for the runs and the waits after them. Readings of a card and measured items of a checklist carry
 * such a name; the figures of a revision do not, because nothing there can be typed in without a run.
 */
import type { ChecklistItem, NotebookState, Run, TestCard } from '../notebook/index.ts';

/** `coast_down_time`: from full speed to standstill, drive cut. */
export const measuredNames = ['coast_down_time'] as const;
export type MeasuredName = (typeof measuredNames)[number];

export const measuredUnits: Readonly<Record<MeasuredName, string>> = { coast_down_time: 's' };

export interface Measurement {
  /** SI. */
  readonly si: number;
  /** `this run`, `run 3`. */
  readonly from: string;
}

/** Readings of the card that measure the name. */
export function readingsOf(card: TestCard, name: MeasuredName): readonly string[] {
  return Object.entries(card.readings)
    .filter(([, { measures }]) => measures === name)
    .map(([id]) => id);
}

/**
 * The largest that the run has measured of it so far, SI; undefined where it has not.
 *
 * @param readings  ids of the card's readings that measure the name
 */
export function measuredIn(
  run: Pick<Run, 'items' | 'answers' | 'readings'>,
  name: MeasuredName,
  readings: readonly string[],
): number | undefined {
  const answered = run.items.filter(({ measures }) => measures === name);
  const values = [
    ...answered.flatMap((item: ChecklistItem) => run.answers[item.id]?.reading?.si ?? []),
    ...readings.flatMap((id) => run.readings[id]?.si ?? []),
  ].filter((value) => Number.isFinite(value) && value >= 0);
  return values.length === 0 ? undefined : Math.max(...values);
}

/** What the latest run of this revision that measured it found. */
export function measuredBefore(
  state: Pick<NotebookState, 'run' | 'card'>,
  revisionId: string,
  name: MeasuredName,
): Measurement | undefined {
  const latestFirst = Object.values(state.run)
    .filter((run) => run.revision === revisionId)
    .toSorted((a, b) => b.number - a.number);
  for (const run of latestFirst) {
    const card = state.card[run.card];
    const si = measuredIn(run, name, card ? readingsOf(card, name) : []);
    if (si !== undefined) return { si, from: `run ${run.number}` };
  }
  return undefined;
}
