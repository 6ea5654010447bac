/** What was found while opening, what was not taken, and what the desk could not write: told in full, until put right. */
import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import { type Problem, phrase } from '../quantity/index.ts';
import { problemText } from './controls/problem-line.tsx';
import { useNotebook, useView } from './store/context.ts';

export function ProblemBar() {
  const store = useNotebook();
  const problems = useView((view) => view.problems);
  const saving = useView((view) => view.saving);
  const refused = useView((view) => view.refused);
  const [read, setRead] = useState(false);

  return (
    <>
      {saving.status === 'not saved' && (
        <Bar button="Try again" onPress={() => store.retry()}>
          <p>
            <strong>Not saved.</strong> <InFull problem={saving.problem} /> What you typed is kept here until
            it is written.
          </p>
        </Bar>
      )}
      {refused && (
        <Bar button="I have read this" onPress={() => store.tell(undefined)}>
          <p>
            <strong>Not recorded.</strong> <InFull problem={refused} />
          </p>
        </Bar>
      )}
      {!read && problems.length > 0 && (
        <Bar button="I have read this" onPress={() => setRead(true)}>
          <ul className="plain">
            {problems.map((problem) => (
              <li key={`${problem.code} ${problem.place}`}>
                <InFull problem={problem} />
              </li>
            ))}
          </ul>
        </Bar>
      )}
    </>
  );
}

function Bar({ button, onPress, children }: { button: string; onPress: () => void; children: ReactNode }) {
  return (
    <div className="problem-bar" role="alert">
      <div>{children}</div>
      <Button className="button" onPress={onPress}>
        {button}
      </Button>
    </div>
  );
}

function InFull({ problem }: { problem: Problem }) {
  return (
    <>
      <strong>{phrase(problem).place}:</strong> {problemText(problem)}
    </>
  );
}
