/**
 * The safety messages of a report: those of the one table that window and checklist show too, and at its head what
 * only the record can say, a rotor without the strength for its speed, a revision that is still a draft.
 */
import { cautionsFor } from '../../checklist/index.ts';
import type { Assessment } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import type { Block } from '../tree.ts';
import { heading } from './wording.ts';

export function headCautions({ status, letter }: Revision, { margins }: Assessment): Block[] {
  const strength = margins.find(({ id }) => id === 'rotor-strength');
  const weak =
    'The rotor lacks the strength for the speed that it is judged at and can burst. Do not spin it.';
  const draft = `Revision ${letter} is a draft: what is reported here can still change.`;
  return [
    ...(strength?.verdict === 'fails'
      ? ([{ type: 'caution', signal: 'DANGER', texts: [weak] }] satisfies Block[])
      : []),
    ...(status === 'draft'
      ? ([{ type: 'caution', signal: 'NOTICE', texts: [draft] }] satisfies Block[])
      : []),
  ];
}

const SIGNALS = ['WARNING', 'CAUTION', 'NOTICE'] as const;

/** One panel a signal word, gravest first. */
export function safetySection(prototype: Prototype, revision: Revision, assessment: Assessment): Block[] {
  const messages = cautionsFor('report', { prototype, revision, assessment });
  const panels = SIGNALS.flatMap((signal): Block[] => {
    const texts = messages
      .filter((message) => message.signal === signal)
      .map(({ hazard, action }) => `${hazard} ${action}`);
    return texts.length > 0 ? [{ type: 'caution', signal, texts }] : [];
  });
  return panels.length > 0 ? [heading(1, 'Safety'), ...panels] : [];
}
