/** “Why?” asked of each answer in turn, until the answer is something that can be acted on. */
import { Button } from 'react-aria-components';
import { TextArea } from '../../controls/text-area.tsx';
import { useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

export function CauseChain({
  id,
  causes,
  disabled,
}: {
  id: string;
  causes: readonly string[];
  disabled: boolean;
}) {
  const store = useNotebook();
  const put = (next: readonly string[]) => recordValue(store, 'failure', id, 'causes', next);
  return (
    <fieldset className="form-group causes">
      <legend>Why it broke</legend>
      {causes.map((cause, index) => (
        <TextArea
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the chain is what identifies an answer
          key={index}
          single
          label={index === 0 ? 'Why did it break?' : 'And why was that?'}
          value={cause}
          disabled={disabled}
          onCommit={(text) => put(text === '' ? causes.toSpliced(index, 1) : causes.with(index, text))}
        />
      ))}
      <Button
        className="plain-button"
        isDisabled={disabled || causes.at(-1) === ''}
        onPress={() => put([...causes, ''])}
      >
        {causes.length === 0 ? 'Ask why' : 'Ask why again'}
      </Button>
    </fieldset>
  );
}
