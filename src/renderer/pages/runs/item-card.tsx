/** One item, large: what is asked, the limits, and the ways to answer it. */
import { type FormEvent, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Given } from '../../../checklist/index.ts';
import type { ChecklistAnswer, ChecklistItem } from '../../../notebook/index.ts';
import { formatValue, type Problem, parseQuantity, phrase } from '../../../quantity/index.ts';

export interface ItemCardProps {
  readonly item: ChecklistItem;
  readonly answer: ChecklistAnswer | undefined;
  readonly onAnswer: (given: Omit<Given, 'initials' | 'second' | 'at'>) => void;
}

export function ItemCard({ item, answer, onAnswer }: ItemCardProps) {
  const [note, setNote] = useState('');
  const withNote = note.trim() === '' ? {} : { note };
  return (
    <article className="item-card" data-hold={item.hold || undefined}>
      <p className="item-pause">
        {item.pause}
        {item.hold && <strong className="hold-mark">Hold point: nothing goes on until it is met</strong>}
        {item.kind === 'two-person' && <span>One reads, the other answers with what they see.</span>}
      </p>
      <h2 className="item-text">{item.text}</h2>
      {item.detail !== '' && <p className="item-detail">{item.detail}</p>}
      {item.missing.length > 0 && (
        <p className="checklist-problem">
          Not known in the revision, so this cannot be put properly: {item.missing.join(', ')}. Enter it
          there; a new run then asks with the figure.
        </p>
      )}
      {answer && (
        <p className="item-detail">
          Answered {answer.at.slice(11, 16)} by {answer.initials}
          {answer.second ? ` and ${answer.second}` : ''}: {answer.met ? 'met' : 'not met'}
          {answer.reading ? `, ${answer.reading.typed}` : ''}
          {answer.choice ? `, “${answer.choice}”` : ''}
        </p>
      )}
      {item.measured ? (
        <Reading
          item={item}
          measured={item.measured}
          onRead={(reading) => onAnswer({ reading, ...withNote })}
        />
      ) : item.choices ? (
        <div className="answers">
          {item.choices.map((choice) => (
            <Button
              key={choice.text}
              className="button big"
              onPress={() => onAnswer({ choice: choice.text, met: !choice.stops, ...withNote })}
            >
              {choice.text}
            </Button>
          ))}
        </div>
      ) : (
        <div className="answers">
          <Button
            className="button primary big"
            autoFocus
            onPress={() => onAnswer({ met: true, ...withNote })}
          >
            {item.hold ? 'Met' : 'Done'}
          </Button>
          <Button className="button big" onPress={() => onAnswer({ met: false, ...withNote })}>
            Not met
          </Button>
        </div>
      )}
      <label className="item-note">
        Note
        <input value={note} maxLength={1000} onChange={(event) => setNote(event.target.value)} />
      </label>
      <p className="item-source">Source: {item.source}</p>
    </article>
  );
}

function Reading({
  item,
  measured,
  onRead,
}: {
  item: ChecklistItem;
  measured: NonNullable<ChecklistItem['measured']>;
  onRead: (reading: NonNullable<Given['reading']>) => void;
}) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<Problem>();

  function read(event: FormEvent) {
    event.preventDefault();
    const parsed = parseQuantity(text, measured.unit, item.text);
    if (!parsed.ok) {
      setProblem(parsed.problem);
      return;
    }
    setProblem(undefined);
    onRead({ typed: text.trim(), si: parsed.value.si, u: parsed.value.u ?? 0, basis: 'measured' });
  }

  return (
    <form className="answers" onSubmit={read}>
      <label className="reading">
        <span>{limits(measured)}</span>
        <input
          value={text}
          // biome-ignore lint/a11y/noAutofocus: the screen puts one question at a time, and this is its answer
          autoFocus
          placeholder={measured.example}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <Button className="button primary big" type="submit">
        Read
      </Button>
      {problem && (
        <p className="checklist-problem" role="alert">
          {phrase(problem).reason} {phrase(problem).remedy}
        </p>
      )}
    </form>
  );
}

function limits({ unit, low, high }: NonNullable<ChecklistItem['measured']>): string {
  const at = (si: number): string => formatValue(si, unit);
  if (low !== undefined && high !== undefined) return `from ${at(low)} to ${at(high)}`;
  if (low !== undefined) return `at least ${at(low)}`;
  if (high !== undefined) return `at most ${at(high)}`;
  return `in ${unit}`;
}
