/**
 * Whether an answer meets its item. Decided here from the item, the answer and what the run has measured, each time it
 * is asked: the mark `met` that is stored with an answer is for the reader and is never trusted to clear a run.
 */
import type { ChecklistAnswer, ChecklistItem, Run } from '../notebook/index.ts';
import { formatValue, type Problem } from '../quantity/index.ts';
import { shortOf } from './wait.ts';

/** Limits are products of figures (3 × 1.1 V): a reading on the limit must not fail by a rounding of the last bit. */
const ROUNDING = 1e-9;

/** Everything about the answer that keeps its item from being met; empty where it is met. */
export function faultsOf(
  item: ChecklistItem,
  answer: ChecklistAnswer | undefined,
  run: Run,
): readonly Problem[] {
  const place = item.text;
  const faults: Problem[] = [];
  if (item.missing.length > 0) {
    faults.push({ code: 'checklist.missing-figure', place, figures: { names: item.missing.join(', ') } });
  }
  if (answer === undefined) {
    if (faults.length === 0) faults.push({ code: 'checklist.open', place, figures: {} });
    return faults;
  }
  faults.push(...faultsOfHands(item, answer));
  const answered = faultOfContent(item, answer, run);
  if (answered) faults.push(answered);
  return faults;
}

/** Whose answer it is: initials, and the second person's where two are asked for. */
function faultsOfHands(item: ChecklistItem, answer: ChecklistAnswer): readonly Problem[] {
  if (plainInitials(answer.initials) === '') {
    return [{ code: 'checklist.initials', place: item.text, figures: {} }];
  }
  if (item.kind !== 'two-person') return [];
  const second = plainInitials(answer.second ?? '');
  return second === '' || second === plainInitials(answer.initials)
    ? [{ code: 'checklist.second-person', place: item.text, figures: {} }]
    : [];
}

function faultOfContent(item: ChecklistItem, answer: ChecklistAnswer, run: Run): Problem | undefined {
  const place = item.text;
  if (item.kind === 'photo' && answer.met && !isPictureOf(run, answer.photo)) {
    return { code: 'checklist.missing-photo', place, figures: {} };
  }
  if (item.kind === 'wait' && answer.met) {
    if (answer.waited === undefined) return { code: 'checklist.wait-not-begun', place, figures: {} };
    const short = shortOf(item, run, answer.waited.seconds);
    if (short) return short;
  }
  if (item.measured) {
    const { unit, low, high, example } = item.measured;
    const reading = answer.reading;
    if (reading === undefined || !Number.isFinite(reading.si)) {
      return { code: 'checklist.missing-reading', place, figures: { example } };
    }
    if (!isWithin(reading.si, low, high)) {
      return {
        code: 'checklist.out-of-limits',
        place,
        figures: { reading: reading.typed, limits: limitsInWords(low, high, unit) },
      };
    }
  }
  if (item.choices) {
    const choice = item.choices.find((offered) => offered.text === answer.choice);
    if (choice === undefined) {
      return {
        code: 'checklist.unknown-choice',
        place,
        figures: {
          choice: answer.choice ?? '',
          choices: item.choices.map((offered) => `“${offered.text}”`).join(', '),
        },
      };
    }
    if (choice.stops) return { code: 'checklist.stopped', place, figures: { choice: choice.text } };
  }
  return answer.met ? undefined : { code: 'checklist.not-met', place, figures: {} };
}

/** The picture is one of the run's own attachments, by its content. */
function isPictureOf(run: Run, sha256: string | undefined): boolean {
  return Object.values(run.attachments).some(
    (attachment) => attachment.sha256 === sha256 && attachment.mediaType.startsWith('image/'),
  );
}

/**
 * Whether a reading lies on or between its limits (simple acceptance: the value decides, its uncertainty does not;
 * who wants a guard band writes a tighter limit into the template). SI throughout.
 */
export function isWithin(reading: number, low: number | undefined, high: number | undefined): boolean {
  const slack = ROUNDING * Math.max(Math.abs(low ?? 0), Math.abs(high ?? 0));
  return (
    Number.isFinite(reading) &&
    (low === undefined || reading >= low - slack) &&
    (high === undefined || reading <= high + slack)
  );
}

/** `3.00 V to 4.20 V`, `at most 30 A`, `exactly 4`; the limits in SI, shown in `unit`. */
export function limitsInWords(low: number | undefined, high: number | undefined, unit: string): string {
  if (low !== undefined && low === high) return `exactly ${formatValue(low, unit)}`;
  if (low !== undefined && high !== undefined) {
    return `${formatValue(low, unit)} to ${formatValue(high, unit)}`;
  }
  if (low !== undefined) return `at least ${formatValue(low, unit)}`;
  if (high !== undefined) return `at most ${formatValue(high, unit)}`;
  return 'no limit';
}

/** Initials as they are compared: `a. b.` and `AB` are one person. */
export function plainInitials(initials: string): string {
  return initials.replace(/[^\p{L}\p{N}]/gu, '').toUpperCase();
}
