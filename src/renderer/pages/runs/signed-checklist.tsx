/** The checklist as it was answered. */
import type { ChecklistAnswer, Run } from '../../../notebook/index.ts';
import { timeOfDay } from '../../controls/moment.ts';

export function SignedChecklist({ run }: { run: Run }) {
  return (
    <details>
      <summary>
        Checklist: {Object.values(run.answers).filter((answer) => answer.met).length} of {run.items.length}{' '}
        items met
      </summary>
      <table className="data">
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">Answer</th>
            <th scope="col">By</th>
            <th scope="col">At</th>
          </tr>
        </thead>
        <tbody>
          {run.items.map((item) => {
            const answer = run.answers[item.id];
            return (
              <tr key={item.id}>
                <td>
                  {item.hold && <strong>Hold point. </strong>}
                  {item.text}
                </td>
                <td>{answerInWords(answer)}</td>
                <td>
                  {answer?.initials}
                  {answer?.second ? `, ${answer.second}` : ''}
                </td>
                <td className="number">{answer && timeOfDay(answer.at)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}

function answerInWords(answer: ChecklistAnswer | undefined): string {
  if (!answer) return 'open';
  const { reading, choice, met, note } = answer;
  const given = reading?.typed ?? choice;
  const mark = met ? 'met' : 'not met';
  const said = given === undefined ? mark : met ? given : `${given}, ${mark}`;
  return note ? `${said}; ${note}` : said;
}
