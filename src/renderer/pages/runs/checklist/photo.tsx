/** An item that asks for a picture: chosen or taken, kept with the run, and named by the answer. */
import { type ChangeEvent, useState } from 'react';
import { set } from '../../../../notebook/index.ts';
import type { Problem } from '../../../../quantity/index.ts';
import { ProblemLine } from '../../../controls/problem-line.tsx';
import { useNotebook, useSurface } from '../../../store/context.ts';
import { newId } from '../../../store/record-id.ts';

export function Photo({ run, onTaken }: { run: string; onTaken: (sha256: string) => void }) {
  const store = useNotebook();
  const { desk } = useSurface();
  const [problem, setProblem] = useState<Problem>();

  async function keep(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    if (!file) return;
    const { session, recorded } = store.getState();
    const bytes = new Uint8Array(await file.arrayBuffer());
    const added = await desk['attachment.add']({ session, bytes });
    if (!added.ok) {
      setProblem(added.problem);
      return;
    }
    const { sha256, size } = added.value;
    const order = Object.keys(recorded.run[run]?.attachments ?? {}).length + 1;
    const kept = store.change([
      set('run', run, {
        [`attachments/${newId('item')}`]: {
          sha256,
          size,
          name: file.name.slice(0, 200),
          mediaType: file.type.slice(0, 100),
          order,
        },
      }),
    ]);
    setProblem(kept.ok ? undefined : kept.problem);
    if (kept.ok) onTaken(sha256);
  }

  return (
    <div className="answers">
      <label className="button primary big photo">
        Take or choose a picture
        <input
          className="visually-hidden"
          type="file"
          accept="image/*"
          capture="environment"
          onChange={(event) => void keep(event)}
        />
      </label>
      {problem && <ProblemLine problem={problem} />}
    </div>
  );
}
