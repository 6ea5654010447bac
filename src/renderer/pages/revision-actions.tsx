/** What can be done with a revision as a whole: issue it, make the next one from it, hand it over as a report. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { shallow } from 'zustand/shallow';
import { create, revisionLetter, revisionNumber } from '../../notebook/index.ts';
import type { Problem } from '../../quantity/index.ts';
import { ProblemLine } from '../controls/problem-line.tsx';
import { ReportButton } from '../report-button.tsx';
import { useChosenPiece, useNotebook, usePlace, useView } from '../store/context.ts';
import { newId, now } from '../store/record-id.ts';
import { IssueRevision } from './issue-revision.tsx';

export function RevisionActions() {
  const about = useChosenPiece(
    ({ id, revision: { letter, status, issuedAt, issuedBy } }) => ({
      id,
      letter,
      status,
      issuedAt,
      issuedBy,
    }),
    shallow,
  );
  const store = useNotebook();
  const { go } = usePlace();
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();
  if (!about) return null;
  const { id, letter, status, issuedAt, issuedBy } = about;

  function makeNext() {
    const { revision: revisions } = store.getState().recorded;
    const from = revisions[id];
    if (!from) return;
    const letters = Object.values(revisions)
      .filter((each) => each.prototype === from.prototype)
      .map((each) => revisionNumber(each.letter) ?? 0);
    const next = newId('revision');
    const { issuedAt: _at, issuedBy: _by, ...carried } = from;
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
    <>
      <div className="revision-actions">
        {status === 'draft' && <IssueRevision id={id} letter={letter} onProblem={setProblem} />}
        <Button className="plain-button" isDisabled={readOnly} onPress={makeNext}>
          New revision from this one
        </Button>
        <ReportButton subject={{ kind: 'revision', id }} />
      </div>
      {status === 'issued' && (
        <p className="issued-note quiet small">
          Issued {issuedAt?.slice(0, 10)} by {issuedBy}: revision {letter} does not change any more. To go on,
          make a new revision from it.
        </p>
      )}
      {problem && <ProblemLine problem={problem} />}
    </>
  );
}
