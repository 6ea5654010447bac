/**
 * What your collaborator will ask: everything that a person who has only the dossier would have to come back for.
 * Listed before it is handed over, while the answer still costs a look at the vehicle and not a letter.
 */
import {
  type Assessment,
  assess,
  explainMargin,
  type FactPage,
  factsBehind,
  locateFact,
  type Margin,
} from '../margins/index.ts';
import {
  type Attachment,
  type FailureReport,
  fingerprint,
  isKnown,
  type NotebookState,
  type Prototype,
  type RecordKind,
  type Revision,
} from '../notebook/index.ts';
import { formatUncertain, phrase } from '../quantity/index.ts';
import { undocumentedGains } from './gains.ts';
import { attachmentsOf, newestRevision, ofPrototype } from './selection.ts';

/** Gravest first, apart from what only the files or the data tell. */
export const questionKinds = [
  'requirement',
  'failing margin',
  'missing measurement',
  'margin in doubt',
  'open failure',
  'undocumented gain',
  'missing file',
  'firmware',
  'drawing',
  'draft',
  'run of other figures',
  'unstated uncertainty',
  'data',
] as const;
export type QuestionKind = (typeof questionKinds)[number];

export interface Question {
  readonly kind: QuestionKind;
  /** As your collaborator would ask it. */
  readonly text: string;
  /** Where the answer belongs: the record, and the page and path in it where there is one. */
  readonly place: {
    readonly kind: RecordKind;
    readonly id: string;
    readonly page?: FactPage;
    readonly path?: string;
  };
}

/**
 * @param missing  attachments whose content is not to be found; whoever looks at the files knows
 * @returns        gravest first; empty where there is nothing to ask, or no such prototype
 */
export function dossierQuestions(
  state: NotebookState,
  prototypeId: string,
  missing: readonly Pick<Attachment, 'name' | 'sha256'>[] = [],
): readonly Question[] {
  const prototype = state.prototype[prototypeId];
  if (!prototype) return [];
  const place = { kind: 'prototype', id: prototypeId } as const;
  const failures = Object.entries(state.failure).filter(([, failure]) => failure.prototype === prototypeId);
  const newest = newestRevision(state, prototypeId);
  const lost = missing.map(({ name, sha256 }): Question => {
    const text = `Where is the file “${name}” (${sha256.slice(0, 12)})? The notebook names it, and it is not there.`;
    return { kind: 'missing file', text, place };
  });
  if (!newest) {
    return [
      { kind: 'missing measurement', text: 'What was built? There is no revision yet.', place },
      ...lost,
    ];
  }
  const { id, revision } = newest;
  const assessment = assess(prototype, revision);
  return [
    ...requirementQuestion(prototype, prototypeId, assessment),
    ...marginQuestions(assessment, id, 'fails'),
    ...missingQuestions(assessment, { revision: id, prototype: prototypeId }),
    ...marginQuestions(assessment, id, 'in doubt'),
    ...failures.flatMap(([failureId, failure]) => failureQuestion(failureId, failure)),
    ...gainQuestions(state, id, assessment),
    ...lost,
    ...fileQuestions(state, prototypeId, revision),
    ...standingQuestions(state, prototypeId, id, revision),
    ...exactnessQuestion(assessment, id),
    ...assessment.notices.map(
      ({ text }): Question => ({ kind: 'data', text, place: { kind: 'revision', id } }),
    ),
  ];
}

function requirementQuestion(prototype: Prototype, id: string, { margins }: Assessment): Question[] {
  if (margins.length > 0 && Object.values(prototype.requirements).some((field) => field !== undefined))
    return [];
  const text = 'What does it have to reach? No requirement is entered.';
  return [{ kind: 'requirement', text, place: { kind: 'prototype', id, page: 'Requirements' } }];
}

function marginQuestions(assessment: Assessment, id: string, verdict: 'fails' | 'in doubt'): Question[] {
  return assessment.margins
    .filter((margin) => margin.verdict === verdict)
    .map((margin): Question => {
      const place = { kind: 'revision', id } as const;
      const sides = sidesInWords(assessment, margin);
      if (verdict === 'fails') {
        const text = `“${margin.title}” fails: ${sides}. What is going to change?`;
        return { kind: 'failing margin', text, place };
      }
      const explained = explainMargin(assessment, margin.id);
      const advice = explained.ok && explained.value.advice ? ` ${explained.value.advice}` : '';
      const text = `“${margin.title}” is in doubt: ${sides}. Which measurement decides it?${advice}`;
      return { kind: 'margin in doubt', text, place };
    });
}

function sidesInWords(assessment: Assessment, { capability, demand, display }: Margin): string {
  const words = (name: string): string => {
    const result = assessment.figures.get(name)?.result;
    if (!result) return 'unknown';
    return result.ok
      ? formatUncertain(result.value, display)
      : phrase(result.problem).reason.replace(/[.\s]+$/, '');
  };
  return `${words(capability)} against ${words(demand)}`;
}

/** Facts that a margin waits for, then whatever a part of the mass table lacks or somebody has marked as not measured. */
function missingQuestions(
  assessment: Assessment,
  ids: { readonly revision: string; readonly prototype: string },
): Question[] {
  const waiting = new Map<string, Set<string>>();
  for (const margin of assessment.margins) {
    for (const name of margin.verdict === 'unknown' ? margin.missing : []) {
      waiting.set(name, (waiting.get(name) ?? new Set()).add(margin.title));
    }
  }
  for (const { name, trace, result } of assessment.figures.values()) {
    if (trace.kind !== 'fact' || waiting.has(name)) continue;
    const ofPart = /^parts\/[^/]+\/(mass|x|z)$/.test(trace.path) && !result.ok;
    const owned = trace.field !== undefined && !isKnown(trace.field);
    if (ofPart || owned) waiting.set(name, new Set());
  }
  const asked = new Set<string>();
  return [...waiting].flatMap(([name, margins]): Question[] => {
    const location = locateFact(assessment, name);
    if (!location || asked.has(`${location.record}/${location.path}`)) return [];
    asked.add(`${location.record}/${location.path}`);
    const { title, page, path, record } = location;
    const what = /^(the|a) /.test(title)
      ? `What about ${title}? Nothing is entered.`
      : `What is the ${title}?`;
    const text = `${what}${remarkOf(assessment, name)}${waitingInWords([...margins])}`;
    return [{ kind: 'missing measurement', text, place: { kind: record, id: ids[record], page, path } }];
  });
}

function remarkOf(assessment: Assessment, name: string): string {
  const trace = assessment.figures.get(name)?.trace;
  if (trace?.kind !== 'fact' || trace.field === undefined || isKnown(trace.field)) return '';
  return trace.field.note
    ? ` It is marked as not measured: ${trace.field.note}.`
    : ' It is marked as not measured.';
}

function waitingInWords(margins: readonly string[]): string {
  if (margins.length === 0) return '';
  return margins.length === 1
    ? ` The margin “${margins[0]}” waits for it.`
    : ` These margins wait for it: ${margins.join(', ')}.`;
}

function failureQuestion(id: string, { number, title, status }: FailureReport): Question[] {
  if (status === 'closed') return [];
  const what = `failure ${number}, “${title}”`;
  const text =
    status === 'open'
      ? `What was done about ${what}? It is open.`
      : `Did the correction of ${what} hold? No run has verified it yet.`;
  return [{ kind: 'open failure', text, place: { kind: 'failure', id } }];
}

function gainQuestions(state: NotebookState, id: string, assessment: Assessment): Question[] {
  return undocumentedGains(state, id).map(({ name, path }): Question => {
    const figure = assessment.figures.get(name);
    const value = figure?.result.ok ? ` of ${formatUncertain(figure.result.value, figure.display)}` : '';
    const text = `How was the ${figure?.title ?? name}${value} found? Neither the log nor the reason of a revision says.`;
    return { kind: 'undocumented gain', text, place: { kind: 'revision', id, page: 'Loop', path } };
  });
}

const FIRMWARE = /\.(ino|c|cc|cpp|h|hpp|rs|py|zig|s|hex|bin|elf|uf2|dfu)$/i;
const DRAWING = /\.(pdf|dxf|dwg|svg|step|stp|iges|igs|stl|3mf|f3d|fcstd|scad|kicad_pcb|kicad_sch|gbr)$/i;

function fileQuestions(state: NotebookState, prototypeId: string, { loop, parts }: Revision): Question[] {
  const names = attachmentsOf(state, prototypeId).map(({ name }) => name);
  const archive = names.some((name) => /\.(zip|gz|7z|xz)$/i.test(name));
  const place = { kind: 'prototype', id: prototypeId } as const;
  const questions: Question[] = [];
  if (loop && !archive && !names.some((name) => FIRMWARE.test(name))) {
    const text = 'Where is the firmware? There is a control loop, and no source or image is attached.';
    questions.push({ kind: 'firmware', text, place });
  }
  if (Object.keys(parts).length > 0 && !archive && !names.some((name) => DRAWING.test(name))) {
    const text = 'Is there a drawing? No drawing or model of a part is attached.';
    questions.push({ kind: 'drawing', text, place });
  }
  return questions;
}

function standingQuestions(
  state: NotebookState,
  prototypeId: string,
  id: string,
  { status, letter }: Revision,
): Question[] {
  const draft: Question = {
    kind: 'draft',
    text: `Is revision ${letter} built as it is recorded? It is a draft and can still change.`,
    place: { kind: 'revision', id },
  };
  const stale = ofPrototype(state.run, prototypeId).filter(([, run]) => {
    const revision = state.revision[run.revision];
    return revision && run.status !== 'void' && run.fingerprint !== fingerprint(revision);
  });
  const [first] = stale;
  const others: Question[] = [];
  if (first) {
    const numbers = listed(
      stale.map(([, { number }]) => String(number)),
      ', ',
    );
    const text = `With which figures was it run (run ${numbers})? The revision was changed after the checklist was made.`;
    others.push({ kind: 'run of other figures', text, place: { kind: 'run', id: first[0] } });
  }
  return [...(status === 'draft' ? [draft] : []), ...others];
}

/** Most that are named; what is behind a margin may be fifty positions of parts. */
const MOST_NAMED = 8;

function listed(names: readonly string[], between: string): string {
  const rest = names.length > MOST_NAMED ? ` and ${names.length - MOST_NAMED} more` : '';
  return `${names.slice(0, MOST_NAMED).join(between)}${rest}`;
}

function exactnessQuestion(assessment: Assessment, id: string): Question[] {
  const facts = assessment.margins.flatMap(({ capability, demand }) =>
    [capability, demand].flatMap((name) => factsBehind(assessment, name)),
  );
  const unstated = [...new Set(facts)].filter(
    ({ trace: { record, field } }) =>
      record === 'revision' && isKnown(field) && field.u === 0 && field.basis !== 'calculated',
  );
  const names = [...new Set(unstated.map(({ title }) => title))];
  if (names.length === 0) return [];
  const text = `How well are these known? They enter the margins without an uncertainty: ${listed(names, '; ')}.`;
  return [{ kind: 'unstated uncertainty', text, place: { kind: 'revision', id } }];
}
