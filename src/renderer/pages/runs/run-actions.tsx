/** What can be done with a run: a failure reported on it, the run signed, its report printed. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { create, type Run, set, type TestCard } from '../../../notebook/index.ts';
import type { Problem } from '../../../quantity/index.ts';
import { ProblemLine } from '../../controls/problem-line.tsx';
import { ReportButton } from '../../report-button.tsx';
import { useNotebook, usePlace, useSurface, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';

export function RunActions({ id, run, card }: { id: string; run: Run; card: TestCard }) {
  const store = useNotebook();
  const { go } = usePlace();
  const { settings } = useSurface();
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();
  const ended = run.status === 'finished' || run.status === 'aborted';
  const author = settings.author.trim();

  function reportFailure() {
    const failure = newId('failure');
    const made = store.change([
      create('failure', failure, {
        prototype: run.prototype,
        revision: run.revision,
        run: id,
        number: nextNumber(store.getState().recorded.failure),
        at: now(),
        author: settings.author,
        title: `${card.title}: what broke`,
        severity: 'III',
        probability: 'C',
      }),
    ]);
    if (made.ok) go({ page: 'failures', record: failure });
    else setProblem(made.problem);
  }

  function sign() {
    const done = store.change([set('run', id, { signedBy: author, signedAt: now() })]);
    setProblem(done.ok ? undefined : done.problem);
  }

  return (
    <>
      {problem && <ProblemLine problem={problem} />}
      <div className="run-actions">
        <Button className="button" isDisabled={readOnly} onPress={reportFailure}>
          Report a failure
        </Button>
        {ended && run.signedAt === undefined && (
          <>
            <Button className="button" isDisabled={readOnly || author === ''} onPress={sign}>
              Sign the run{author === '' ? '' : ` as ${author}`}
            </Button>
            {author === '' && (
              <span className="quiet small">Enter your name in the title block to sign.</span>
            )}
          </>
        )}
        <ReportButton subject={{ kind: 'run', id }} />
      </div>
    </>
  );
}
