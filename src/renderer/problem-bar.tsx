/** What was found while opening, and what the desk could not write: told once, in full, until it is put right. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { phrase } from '../quantity/index.ts';
import { useNotebook, useView } from './store/context.ts';

export function ProblemBar() {
  const store = useNotebook();
  const problems = useView((view) => view.problems);
  const saving = useView((view) => view.saving);
  const [read, setRead] = useState(false);
  const unsaved = saving.status === 'not saved' ? phrase(saving.problem) : undefined;

  return (
    <div aria-live="assertive">
      {unsaved && (
        <div className="problem-bar" role="alert">
          <p>
            <strong>Not saved.</strong> {unsaved.place}: {unsaved.reason} {unsaved.remedy} What you typed is
            kept here until it is written.
          </p>
          <Button className="button" onPress={() => store.retry()}>
            Try again
          </Button>
        </div>
      )}
      {!read && problems.length > 0 && (
        <div className="problem-bar">
          <ul className="plain">
            {problems.map((problem) => {
              const { place, reason, remedy } = phrase(problem);
              return (
                <li key={`${problem.code} ${place}`}>
                  <strong>{place}:</strong> {reason} {remedy}
                </li>
              );
            })}
          </ul>
          <Button className="button" onPress={() => setRead(true)}>
            I have read this
          </Button>
        </div>
      )}
    </div>
  );
}
