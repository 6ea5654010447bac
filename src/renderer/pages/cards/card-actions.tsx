/** What comes next for a card: it is issued, then runs are started from it. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import {
  beginRun,
  builtinCards,
  checklistsOf,
  generateChecklist,
  issueCard,
  type Subject,
} from '../../../checklist/index.ts';
import { create, type TestCard } from '../../../notebook/index.ts';
import type { Problem } from '../../../quantity/index.ts';
import { ProblemLine } from '../../controls/problem-line.tsx';
import { useNotebook, usePlace, useSurface, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';

export function CardActions({ id, card, subject }: { id: string; card: TestCard; subject: Subject }) {
  const store = useNotebook();
  const { go } = usePlace();
  const { settings } = useSurface();
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();
  const by = settings.author || 'unnamed';

  function issue() {
    const issued = issueCard(id, card, { ...subject, by, at: now() });
    const done = issued.ok ? store.change([issued.value]) : issued;
    setProblem(done.ok ? undefined : done.problem);
  }

  function start() {
    const { prototype, revision, assessment } = subject;
    const template = builtinCards.find((each) => each.id === card.template);
    const begun = beginRun({
      cardId: id,
      card,
      revision,
      items: generateChecklist(template ? checklistsOf(template) : [], prototype, revision, assessment),
      number: nextNumber(store.getState().recorded.run),
      by,
      at: now(),
    });
    const run = newId('run');
    const made = begun.ok ? store.change([create('run', run, begun.value)]) : begun;
    if (made.ok) go({ page: 'runs', record: run });
    else setProblem(made.problem);
  }

  return (
    <>
      {problem && <ProblemLine problem={problem} />}
      <div className="run-actions">
        {card.status === 'draft' ? (
          <Button className="button primary" isDisabled={readOnly} onPress={issue}>
            Issue the card
          </Button>
        ) : (
          <Button className="button primary" isDisabled={readOnly} onPress={start}>
            Start a run
          </Button>
        )}
      </div>
    </>
  );
}
