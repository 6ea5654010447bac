/** Which single input, changed to what value, would turn the verdict. Asked for, because it takes a moment. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type TurningPoint, turningPoints } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import { formatValue } from '../../quantity/index.ts';
import { problemText } from '../controls/problem-line.tsx';

export function TurningPoints({
  margin,
  prototype,
  revision,
}: {
  margin: string;
  prototype: Prototype;
  revision: Revision;
}) {
  const [working, setWorking] = useState(false);
  const [found, setFound] = useState<ReturnType<typeof turningPoints>>();

  function workOut() {
    setWorking(true);
    // After the next frame, so that the button has said what it is at before the window is busy.
    requestAnimationFrame(() =>
      window.setTimeout(() => {
        setFound(turningPoints(prototype, revision, margin));
        setWorking(false);
      }),
    );
  }

  return (
    <section>
      <h3>What would turn it</h3>
      {!found && (
        <Button className="button" onPress={workOut}>
          {working ? 'Working it out' : 'Work it out'}
        </Button>
      )}
      <div role="status">
        {found && !found.ok && <p>{problemText(found.problem)}</p>}
        {found?.ok && found.value.length === 0 && (
          <p>No single input turns it, even at ten times what it is now.</p>
        )}
        {found?.ok && found.value.length > 0 && <Table points={found.value} />}
      </div>
    </section>
  );
}

function Table({ points }: { points: readonly TurningPoint[] }) {
  return (
    <table className="data">
      <thead>
        <tr>
          <th>This input alone</th>
          <th className="number">Now</th>
          <th className="number">Turns at</th>
          <th>It then</th>
        </tr>
      </thead>
      <tbody>
        {points.map((point) => (
          <tr key={point.name}>
            <td className="capital">{point.label}</td>
            <td className="number">{formatValue(point.now, point.display)}</td>
            <td className="number">{formatValue(point.turnsAt, point.display)}</td>
            <td>{point.verdict}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
