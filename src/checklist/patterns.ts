/**
 * What the failure reports of a prototype have in common: the part that fails again, the cause that comes back, and
 * what is still open, worst first. Causes are written by people in their own words; two count as alike when enough of
 * their words are the same, and the words are shown, so that nobody has to believe it.
 */
import type { FailureReport, NotebookState } from '../notebook/index.ts';
import { type Risk, riskOf } from './risk.ts';

export interface FailureGroup {
  /** The part's name, or the cause in the words of the latest report. */
  readonly label: string;
  /** Ids of the reports, by number. */
  readonly failures: readonly string[];
  /** Words that every cause of the group has; empty for a part. */
  readonly words: readonly string[];
  /** An earlier report of it is closed, and a later one came: the corrective action may not have held. */
  readonly returned: boolean;
}

export interface ParetoBar {
  readonly label: string;
  readonly count: number;
  /** Share of all reports of this bar and those before it, 0 to 1. */
  readonly cumulative: number;
  readonly failures: readonly string[];
}

export interface OpenFailure {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly status: FailureReport['status'];
  readonly severity: FailureReport['severity'];
  readonly risk: Risk;
}

type Reports = readonly (readonly [string, FailureReport])[];

/** Reports that name the same part, in whatever revision: by its id, or by its name where the parts were made anew. */
export function failuresByPart(state: NotebookState, prototypeId: string): readonly FailureGroup[] {
  const groups = new Map<string, [string, FailureReport][]>();
  for (const [id, report] of reportsOf(state, prototypeId)) {
    if (report.part === undefined) continue;
    const key = wordsOf(partName(state, report)).join(' ');
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push([id, report]);
  }
  return byCount(
    [...groups.values()].map((group) =>
      groupOf(
        group,
        labelOf(group, (report) => partName(state, report)),
        [],
      ),
    ),
  );
}

/**
 * Reports whose root causes are alike. A report joins a group when its cause shares at least half of its words with that
 * of one report in it (Dice: twice the shared words over the words of both).
 */
export function failuresByCause(state: NotebookState, prototypeId: string): readonly FailureGroup[] {
  const groups: [string, FailureReport][][] = [];
  for (const [id, report] of reportsOf(state, prototypeId)) {
    const cause = rootCause(report);
    if (cause === undefined) continue;
    const alike = groups.filter((group) =>
      group.some(([, other]) => similarity(cause, rootCause(other) ?? '') >= ALIKE),
    );
    // a cause between two groups joins them
    const joined = alike.flat();
    for (const group of alike) groups.splice(groups.indexOf(group), 1);
    groups.push([...joined, [id, report]]);
  }
  return byCount(
    groups.map((group) => {
      const sorted = group.toSorted(([, a], [, b]) => a.number - b.number);
      const label = labelOf(sorted, (report) => rootCause(report) ?? '');
      return groupOf(sorted, label, sharedWords(sorted.map(([, report]) => rootCause(report) ?? '')));
    }),
  );
}

/** Those groups, by part and by cause, that have come more than once. */
export function repeatedFailures(
  state: NotebookState,
  prototypeId: string,
): { readonly byPart: readonly FailureGroup[]; readonly byCause: readonly FailureGroup[] } {
  const repeated = ({ failures }: FailureGroup): boolean => failures.length > 1;
  return {
    byPart: failuresByPart(state, prototypeId).filter(repeated),
    byCause: failuresByCause(state, prototypeId).filter(repeated),
  };
}

/** Causes by how often they came, with the running share; reports without a cause stand together at the end. */
export function paretoOfCauses(state: NotebookState, prototypeId: string): readonly ParetoBar[] {
  const reports = reportsOf(state, prototypeId);
  const groups = failuresByCause(state, prototypeId);
  const without = reports.filter(([, report]) => rootCause(report) === undefined).map(([id]) => id);
  const bars = [
    ...groups.map(({ label, failures }) => ({ label, failures })),
    ...(without.length > 0 ? [{ label: NO_CAUSE, failures: without }] : []),
  ];
  let sum = 0;
  return bars.map(({ label, failures }) => {
    sum += failures.length;
    return { label, failures, count: failures.length, cumulative: sum / reports.length };
  });
}

/** Reports that are not closed, by risk, then severity, then number: what the front page lists. */
export function openFailures(state: NotebookState, prototypeId: string): readonly OpenFailure[] {
  return reportsOf(state, prototypeId)
    .filter(([, { status }]) => status !== 'closed')
    .map(([id, { number, title, status, severity, probability }]) => ({
      id,
      number,
      title,
      status,
      severity,
      risk: riskOf(severity, probability),
    }))
    .toSorted(
      (a, b) =>
        RISKS.indexOf(a.risk) - RISKS.indexOf(b.risk) ||
        SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
        a.number - b.number,
    );
}

/** The last answer to “why?”: a cause that can be acted on. */
export function rootCause({ causes }: Pick<FailureReport, 'causes'>): string | undefined {
  const last = causes.findLast((cause) => wordsOf(cause).length > 0);
  return last?.trim();
}

/** Twice the shared words over the words of both, 0 to 1 (Dice, 1945). */
export function similarity(one: string, other: string): number {
  const [a, b] = [new Set(wordsOf(one)), new Set(wordsOf(other))];
  if (a.size === 0 || b.size === 0) return 0;
  return (2 * [...a].filter((word) => b.has(word)).length) / (a.size + b.size);
}

/** Half of the words: a project choice, on the side of showing too much. */
const ALIKE = 0.5;
const NO_CAUSE = 'no cause found yet';
const RISKS: readonly Risk[] = ['High', 'Serious', 'Medium', 'Low'];
const SEVERITIES: readonly FailureReport['severity'][] = ['I', 'II', 'III', 'IV'];

/** Words that say nothing about a cause. */
const FILLERS: ReadonlySet<string> = new Set(
  'a an the of in on at to by for from with and or but not no is are was were be been it its this that there had has have too so as than then when which who did do does again because after before'.split(
    ' ',
  ),
);

/** Words in small letters without accents, plural ends and fillers: `The set screws were loose` → set, screw, loose. */
function wordsOf(text: string): readonly string[] {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '' && !FILLERS.has(word))
    .map((word) =>
      word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word,
    );
}

function sharedWords(causes: readonly string[]): readonly string[] {
  const [first = '', ...others] = causes;
  const sets = others.map((cause) => new Set(wordsOf(cause)));
  return [...new Set(wordsOf(first))].filter((word) => sets.every((set) => set.has(word)));
}

function reportsOf(state: NotebookState, prototypeId: string): Reports {
  return Object.entries(state.failure)
    .filter(([, { prototype }]) => prototype === prototypeId)
    .toSorted(([, a], [, b]) => a.number - b.number);
}

function partName(state: NotebookState, { revision, part }: FailureReport): string {
  return (part && state.revision[revision]?.parts[part]?.name) || (part ?? '');
}

function labelOf(group: Reports, label: (report: FailureReport) => string): string {
  const latest = group.at(-1)?.[1];
  return latest ? label(latest) : '';
}

function groupOf(group: Reports, label: string, words: readonly string[]): FailureGroup {
  const firstClosed = group.findIndex(([, { status }]) => status === 'closed');
  return {
    label,
    failures: group.map(([id]) => id),
    words,
    returned: firstClosed >= 0 && firstClosed < group.length - 1,
  };
}

function byCount(groups: readonly FailureGroup[]): readonly FailureGroup[] {
  return groups.toSorted((a, b) => b.failures.length - a.failures.length);
}
