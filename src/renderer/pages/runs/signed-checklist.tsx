/** The checklist as it was answered. */
import type { Run } from '../../../notebook/index.ts';

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
            <th>Item</th>
            <th>Answer</th>
            <th>By</th>
            <th>At</th>
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
                <td>
                  {answer
                    ? (answer.reading?.typed ?? answer.choice ?? (answer.met ? 'met' : 'not met'))
                    : 'open'}
                  {answer && !answer.met && (answer.reading || answer.choice) ? ', not met' : ''}
                  {answer?.note ? `; ${answer.note}` : ''}
                </td>
                <td>
                  {answer?.initials}
                  {answer?.second ? `, ${answer.second}` : ''}
                </td>
                <td className="number">{answer?.at.slice(11, 16)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
