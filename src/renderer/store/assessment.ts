/** The figures and margins of a revision, remembered for as long as the records are the same objects. */
import { type Assessment, assess } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import { useChosen } from './context.ts';

const remembered = new WeakMap<Revision, { prototype: Prototype; assessment: Assessment }>();

export function assessmentOf(prototype: Prototype, revision: Revision): Assessment {
  const known = remembered.get(revision);
  if (known?.prototype === prototype) return known.assessment;
  const assessment = assess(prototype, revision);
  remembered.set(revision, { prototype, assessment });
  return assessment;
}

export function useAssessment(): Assessment | undefined {
  const chosen = useChosen();
  return chosen && assessmentOf(chosen.prototype, chosen.revision);
}
