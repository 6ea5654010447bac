/** What can be done with a revision as a whole: issue it, make the next one from it, hand it over as a report. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { create, revisionLetter, revisionNumber, set } from '../../notebook/index.ts';
import { type Problem, phrase } from '../../quantity/index.ts';
import { ReportButton } from '../report-button.tsx';
import { useChosen, useNotebook, usePlace, useRecords, useSurface, useView } from '../store/context.ts';
import { newId, now } from '../store/record-id.ts';

export function RevisionActions() {
  const chosen = useChosen();
  const store = useNotebook();
  const { go } = usePlace();
  const { settings } = useSurface();
  const revisions = useRecords('revision');
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();
  if (!chosen) return null;
  const { id, revision } = chosen;

  function issue() {
    const done = store.change([
      set('revision', id, { status: 'issued', issuedAt: now(), issuedBy: settings.author || 'unnamed' }),
    ]);
    setProblem(done.ok ? undefined : done.problem);
  }

  function makeNext() {
    const letters = Object.values(revisions)
      .filter((each) => each.prototype === revision.prototype)
      .map((each) => revisionNumber(each.letter) ?? 0);
    const next = newId('revision');
    const { issuedAt: _at, issuedBy: _by, ...carried } = revision;
    const done = store.change([
      create('revision', next, {
        ...carried,
        letter: revisionLetter(Math.max(...letters) + 1),
        status: 'draft',
        from: id,
        reason: '',
        createdAt: now(),
      }),
    ]);
    setProblem(done.ok ? undefined : done.problem);
    if (done.ok) go({ revision: next, page: 'compare' });
  }

  return (
    <div className="revision-actions">
      {problem && <p className="problem">{phrase(problem).reason}</p>}
      {revision.status === 'draft' ? (
        <Button className="plain-button" isDisabled={readOnly} onPress={issue}>
          Issue revision {revision.letter}
        </Button>
      ) : (
        <span className="quiet small">
          issued {revision.issuedAt?.slice(0, 10)} by {revision.issuedBy}
        </span>
      )}
      <Button className="plain-button" isDisabled={readOnly} onPress={makeNext}>
        New revision from this one
      </Button>
      <ReportButton subject={{ kind: 'revision', id }} />
    </div>
  );
}
