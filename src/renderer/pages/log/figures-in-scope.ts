/** The figures that an entry may use: those of the revision that it was written about, whichever is chosen now. */
import { type Assessment, figureNames, scopeOf, whyUnknown } from '../../../margins/index.ts';
import type { LogEntry } from '../../../notebook/index.ts';
import { formatUncertain, phrase } from '../../../quantity/index.ts';
import { assessmentOf } from '../../store/assessment.ts';
import { useRecord } from '../../store/context.ts';
import type { Figures } from './calculation/evaluate-entry.ts';

const remembered = new WeakMap<Assessment, Figures>();

/** The same object for the same assessment. */
export function figuresOf(assessment: Assessment): Figures {
  const before = remembered.get(assessment);
  if (before) return before;
  const figures: Figures = {
    scope: scopeOf(assessment),
    whyUnknown(name) {
      const problem = whyUnknown(assessment, name);
      return problem?.code === 'figure.unknown' ? undefined : problem;
    },
  };
  remembered.set(assessment, figures);
  return figures;
}

/** The assessment of the entry's own revision; undefined when the notebook has no such revision. */
export function useEntryAssessment(entry: LogEntry): Assessment | undefined {
  const revision = useRecord('revision', entry.revision);
  const prototype = useRecord('prototype', revision?.prototype);
  return revision && prototype && assessmentOf(prototype, revision);
}

/** A name that a calculation may use, as the list and the completion show it. */
export interface KnownName {
  readonly name: string;
  readonly title: string;
  /** Present value with uncertainty and unit, or `undefined` where the revision does not give it. */
  readonly value: string | undefined;
  /** Why there is no value. */
  readonly lacking: string | undefined;
}

const namesRemembered = new WeakMap<Assessment, readonly KnownName[]>();

/** Names of the figures that apply to the revision, in the order of the handbook. */
export function namesOf(assessment: Assessment): readonly KnownName[] {
  const before = namesRemembered.get(assessment);
  if (before) return before;
  const names = figureNames.flatMap(({ name }): KnownName[] => {
    const figure = assessment.figures.get(name);
    if (!figure) return [];
    const { result, title, display } = figure;
    return [
      result.ok
        ? { name, title, value: formatUncertain(result.value, display), lacking: undefined }
        : { name, title, value: undefined, lacking: phrase(result.problem).reason },
    ];
  });
  namesRemembered.set(assessment, names);
  return names;
}
