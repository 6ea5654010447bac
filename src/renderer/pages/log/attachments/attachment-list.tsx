/** Pictures and files of an entry, each with its caption; what a picture shows is said by its caption. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type Attachment, set } from '../../../../notebook/index.ts';
import { type Problem, phrase } from '../../../../quantity/index.ts';
import { useNotebook, useSurface } from '../../../store/context.ts';
import { recordValue } from '../../../store/record-value.ts';
import { RecordedInput } from '../recorded-input.tsx';
import { usePicture } from './attachment-content.ts';
import { inOrder, isPicture, sizeText } from './attachments.ts';

const LONGEST_CAPTION = 500;

export function AttachmentList({
  entry,
  attachments,
  disabled,
}: {
  entry: string;
  attachments: Readonly<Record<string, Attachment>>;
  disabled: boolean;
}) {
  const store = useNotebook();
  const listed = inOrder(attachments);
  if (listed.length === 0) return null;
  return (
    <ul className="plain attachments" aria-label="Pictures and files">
      {listed.map(([id, attachment]) => (
        <li key={id} className="attachment">
          {isPicture(attachment) ? (
            <Picture attachment={attachment} />
          ) : (
            <p className="file-name">{attachment.name}</p>
          )}
          <div className="attachment-about">
            {disabled ? (
              attachment.caption && <p>{attachment.caption}</p>
            ) : (
              <RecordedInput
                label={`Caption of ${attachment.name}`}
                value={attachment.caption}
                longest={LONGEST_CAPTION}
                placeholder="caption: what it shows"
                onRecord={(caption) =>
                  recordValue(store, 'entry', entry, `attachments/${id}/caption`, caption)
                }
              />
            )}
            <p className="quiet small">
              {isPicture(attachment) && `${attachment.name}, `}
              {sizeText(attachment.size)}
            </p>
            <SaveCopy attachment={attachment} />
            {!disabled && (
              <Button
                className="plain-button"
                aria-label={`Remove ${attachment.name}`}
                onPress={() => store.change([set('entry', entry, { [`attachments/${id}`]: undefined })])}
              >
                Remove
              </Button>
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}

function Picture({ attachment }: { attachment: Attachment }) {
  const { address, problem } = usePicture(attachment);
  const [large, setLarge] = useState(false);
  const [broken, setBroken] = useState(false);
  if (problem) return <ProblemText problem={problem} />;
  if (broken) return <p className="quiet small">This picture cannot be drawn here; save a copy to see it.</p>;
  if (address === undefined) return <div className="picture waiting" />;
  const name = attachment.caption || attachment.name;
  return (
    <button
      type="button"
      className={large ? 'picture large' : 'picture'}
      aria-expanded={large}
      aria-label={large ? `${name}, show small` : `${name}, show large`}
      onClick={() => setLarge(!large)}
    >
      <img src={address} alt={name} onError={() => setBroken(true)} />
    </button>
  );
}

function SaveCopy({ attachment }: { attachment: Attachment }) {
  const store = useNotebook();
  const { desk } = useSurface();
  const [problem, setProblem] = useState<Problem>();

  async function save() {
    const { sha256, name } = attachment;
    const read = await desk['attachment.read']({ session: store.getState().session, sha256 });
    const saved = read.ok
      ? await desk['file.save']({ suggestedName: name, bytes: new Uint8Array(read.value) })
      : read;
    setProblem(saved.ok ? undefined : saved.problem);
  }

  return (
    <>
      <Button
        className="plain-button"
        aria-label={`Save a copy of ${attachment.name}`}
        onPress={() => void save()}
      >
        Save a copy
      </Button>
      {problem && <ProblemText problem={problem} />}
    </>
  );
}

function ProblemText({ problem }: { problem: Problem }) {
  const { reason, remedy } = phrase(problem);
  return (
    <p className="problem" role="alert">
      {reason} {remedy}
    </p>
  );
}
