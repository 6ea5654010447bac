/** Which single input, changed to what value, would turn the verdict. Asked for, because it takes a moment. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { turningPoints } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import { formatValue, phrase } from '../../quantity/index.ts';

export function TurningPoints({
  margin,
  prototype,
  revision,
}: {
  margin: string;
  prototype: Prototype;
  revision: Revision;
}) {
  const [found, setFound] = useState<ReturnType<typeof turningPoints>>();
  return (
    <section>
      <h2>What would turn it</h2>
      {!found && (
        <Button className="button" onPress={() => setFound(turningPoints(prototype, revision, margin))}>
          Work it out
        </Button>
      )}
      {found && !found.ok && <p className="problem">{phrase(found.problem).reason}</p>}
      {found?.ok && found.value.length === 0 && (
        <p>No single input turns it, even at ten times what it is now.</p>
      )}
      {found?.ok && found.value.length > 0 && (
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
            {found.value.map((point) => (
              <tr key={point.name}>
                <td>{point.label}</td>
                <td className="number">{formatValue(point.now, point.display)}</td>
                <td className="number">{formatValue(point.turnsAt, point.display)}</td>
                <td>{point.verdict}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
