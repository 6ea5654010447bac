/**
 * Timed waits: how long, since when, and whether the time has passed. The time is counted by a clock that only counts
 * up, which the caller reads; the clock on the wall can be set while somebody waits, and is only compared with it.
 * Such a clock means nothing in another session of the program, so that a wait in which the window was closed begins
 * again.
 */
import {
  type Change,
  type ChecklistAnswer,
  type ChecklistItem,
  type Json,
  type NotebookState,
  type Run,
  set,
  type TestCard,
} from '../notebook/index.ts';
import {
  bad,
  dimension,
  evaluateExpression,
  exact,
  formatValue,
  good,
  type Problem,
  parseExpression,
  type Result,
  type ScopeValue,
} from '../quantity/index.ts';
import { figureIn, missingFor } from './evaluate.ts';
import {
  type MeasuredName,
  measuredBefore,
  measuredIn,
  measuredNames,
  measuredUnits,
  readingsOf,
} from './measured.ts';
import type { TemplateScope } from './scope.ts';
import type { TemplateItem } from './template.ts';

/** A clock that only counts up, as a window's `performance.now()` does. */
export interface Clock {
  /** Another one each time that the program starts: the counts of two sessions have nothing to do with each other. */
  readonly session: string;
  /** Seconds. */
  readonly reading: number;
}

/** What a wait comes to. */
export interface WaitTime {
  /** s */
  readonly seconds: number;
  /** What it rests on, for the reader. */
  readonly because: string;
}

type Wait = NonNullable<ChecklistItem['wait']>;

/** The wait as it goes on the list: its formula, and the figures of the revision that it uses. */
export function waitFor(
  { time, otherwise }: NonNullable<TemplateItem['wait']>,
  scope: TemplateScope,
): { readonly wait: Wait; readonly figures: readonly string[]; readonly missing: readonly string[] } {
  const parsed = parseExpression(time, time);
  const names = parsed.ok ? parsed.value.symbols.filter((name) => !isMeasured(name)) : [];
  const given: Wait['given'] = {};
  for (const name of names) {
    const known = scope.known.get(name);
    if (known === undefined) continue;
    const unit = scope.figures.get(name)?.unit ?? '1';
    given[name] = { si: known.value.value, unit, from: 'the revision' };
  }
  const longest = otherwise === undefined ? undefined : figureIn(otherwise, scope);
  return {
    wait: {
      expression: time,
      given,
      readings: {},
      ...(longest?.state === 'known' && longest.value.si > 0 ? { otherwise: longest.value.si } : {}),
    },
    figures: names.filter((name) => scope.figures.has(name)),
    missing: names.flatMap((name) => missingFor(name, scope)),
  };
}

/** The items of a new run, their waits told which readings of the card measure, and what earlier runs have measured. */
export function withMeasurements(
  items: readonly ChecklistItem[],
  card: TestCard,
  state: Pick<NotebookState, 'run' | 'card'> | undefined,
): ChecklistItem[] {
  return items.map((item) => {
    if (item.wait === undefined) return item;
    const given = { ...item.wait.given };
    const readings: Record<string, string[]> = {};
    for (const name of measuredNames) {
      readings[name] = [...readingsOf(card, name)];
      const before = state && measuredBefore(state, card.revision, name);
      if (before) given[name] = { ...before, unit: measuredUnits[name] };
    }
    return { ...item, wait: { ...item.wait, given, readings } };
  });
}

/** How long an item of the run asks to wait, by what the run has measured, else by what was known when it began. */
export function waitTime(run: Run, itemId: string): Result<WaitTime> {
  const item = run.items.find(({ id }) => id === itemId);
  return item === undefined ? bad('checklist.unknown-item', 'checklist', { id: itemId }) : timeOf(item, run);
}

function timeOf(item: ChecklistItem, run: Run): Result<WaitTime> {
  const place = item.text;
  if (item.wait === undefined) return bad('checklist.no-wait', place);
  const { expression, otherwise, given, readings } = item.wait;
  const parsed = parseExpression(expression, place);
  if (!parsed.ok) return parsed;
  const scope = new Map<string, ScopeValue>();
  const because: string[] = [];
  for (const name of parsed.value.symbols) {
    const own = isMeasured(name) ? measuredIn(run, name, readings[name] ?? []) : undefined;
    const known =
      own === undefined || !isMeasured(name)
        ? given[name]
        : { si: own, unit: measuredUnits[name], from: 'this run' };
    if (known === undefined) continue;
    scope.set(name, { value: exact(known.si), dimension: dimension(known.unit) });
    because.push(`${name.replaceAll('_', ' ')} ${formatValue(known.si, known.unit)}, from ${known.from}`);
  }
  const result = evaluateExpression(parsed.value, scope, place);
  const seconds = result.ok ? result.value.value.value : Number.NaN;
  if (Number.isFinite(seconds) && seconds >= 0) {
    return good({ seconds, because: because.join('; ') || expression });
  }
  const missing = parsed.value.symbols
    .filter((name) => !scope.has(name))
    .map((name) => name.replaceAll('_', ' '));
  if (otherwise !== undefined) {
    return good({
      seconds: otherwise,
      because: `not known: ${missing.join(', ') || expression}; the longest wait is taken`,
    });
  }
  return bad('checklist.wait-unknown', place, { names: missing.join(', ') || expression });
}

/** Seconds since the wait was started in this session; undefined where it was not, or the clock went backwards. */
export function passedSince(start: NonNullable<Run['waits']>[string] | undefined, clock: Clock | undefined) {
  if (start === undefined || clock === undefined || start.session !== clock.session) return undefined;
  const passed = clock.reading - start.reading;
  return passed >= 0 ? passed : undefined;
}

/** What goes with the answer of a wait that is over; else why it is not. */
export function waitedSince(
  item: ChecklistItem,
  run: Run,
  at: string,
  clock: Clock | undefined,
): Result<NonNullable<ChecklistAnswer['waited']>> {
  const start = run.waits?.[item.id];
  const passed = passedSince(start, clock);
  const onTheWall = start === undefined ? Number.NaN : (Date.parse(at) - Date.parse(start.at)) / 1000;
  if (passed === undefined || !Number.isFinite(onTheWall)) return bad('checklist.wait-not-begun', item.text);
  const short = shortOf(item, run, passed);
  return short ? { ok: false, problem: short } : good({ seconds: passed, clockShift: onTheWall - passed });
}

/** What a wait lacks after so many seconds; undefined where it is over. */
export function shortOf(item: ChecklistItem, run: Run, seconds: number): Problem | undefined {
  const needed = timeOf(item, run);
  if (!needed.ok) return needed.problem;
  if (seconds >= needed.value.seconds) return undefined;
  const figures = {
    passed: formatValue(Math.floor(seconds), 's'),
    needed: formatValue(Math.ceil(needed.value.seconds), 's'),
  };
  return { code: 'checklist.waiting', place: item.text, figures };
}

/** The clock on the wall may tick this much differently from the one that counts, beside a thousandth of the time. */
const TICKS = 2;

/** Waits in which the clock on the wall was set, or the computer slept: told, and counted by the time that passed. */
export function clockNotices(run: Run): readonly Problem[] {
  return run.items.flatMap((item) => {
    const waited = run.answers[item.id]?.waited;
    if (waited === undefined) return [];
    const { seconds, clockShift } = waited;
    if (Math.abs(clockShift) <= TICKS + seconds / 1000) return [];
    const shift = `${formatValue(Math.round(Math.abs(clockShift)), 's')} ${clockShift > 0 ? 'forwards' : 'backwards'}`;
    return [{ code: 'checklist.clock-shifted', place: item.text, figures: { shift } }];
  });
}

/** The change that starts the wait of an item, or starts it again. */
export function startOfWait(id: string, item: ChecklistItem, by: string, at: string, clock: Clock): Change {
  const start = { at, by: by.trim(), session: clock.session, reading: clock.reading };
  return set('run', id, { [`waits/${item.id}`]: start as Json });
}

function isMeasured(name: string): name is MeasuredName {
  return (measuredNames as readonly string[]).includes(name);
}
