/** One item, large: what is asked, the limits, and the ways to answer it. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { canClear, canFinish, type Given } from '../../../../checklist/index.ts';
import type { ChecklistAnswer, ChecklistItem, Revision, Run } from '../../../../notebook/index.ts';
import { titleOfFact } from '../../../controls/missing-facts.tsx';
import { timeOfDay } from '../../../controls/moment.ts';
import { problemText } from '../../../controls/problem-line.tsx';
import { assessmentOf } from '../../../store/assessment.ts';
import { useRecord } from '../../../store/context.ts';
import { ItemBody } from './item-body.tsx';
import { Photo } from './photo.tsx';
import { Reading } from './reading.tsx';
import { useSettled } from './settled.ts';
import { steadyClock, TimedWait, useSecondsLeft } from './timed-wait.tsx';

const LONG = 120; // characters; longer items are set a size smaller

type Answer = Omit<Given, 'initials' | 'second' | 'at'>;

export interface ItemCardProps {
  readonly item: ChecklistItem;
  readonly runId: string;
  readonly run: Run;
  readonly revision: Revision;
  readonly onAnswer: (given: Answer) => void;
  readonly onStartWait: () => void;
  /** Where the run can be ended early: on to the items of making safe. */
  readonly onMakeSafe: (() => void) | undefined;
}

export function ItemCard({ item, runId, run, revision, onAnswer, onStartWait, onMakeSafe }: ItemCardProps) {
  const [note, setNote] = useState('');
  const body = useRef<HTMLElement>(null);
  const answer = run.answers[item.id];
  const secondsLeft = useSecondsLeft(run, item);
  const still = useSettled(`${item.id} ${answer?.at}`);
  const settled = still && secondsLeft === 0;
  const waiting = secondsLeft !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: with the wait begun its button is gone, and the focus with it
  useEffect(() => {
    // The item is read out, and its keys are at hand; a reading has the focus in its field.
    if (!item.measured) body.current?.focus();
  }, [item, waiting]);

  const give = (given: Answer) =>
    onAnswer({
      ...given,
      ...(item.wait ? { clock: steadyClock() } : {}),
      ...(note.trim() === '' ? {} : { note }),
    });
  /** For what a single press does; a reading has to be typed first. */
  const press = (given: Answer) => {
    if (settled) give(given);
  };

  /** A held key answers once. Letters and figures that are typed into a field are the field's. */
  function pressKey(event: KeyboardEvent<HTMLElement>) {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.altKey || event.metaKey) return;
    const choice = /^[1-9]$/.test(event.key) ? item.choices?.[Number(event.key) - 1] : undefined;
    const plainMet = event.key === 'Enter' && isTicked(item) && !(event.target instanceof HTMLButtonElement);
    if (event.repeat && ['Enter', ' '].includes(event.key)) event.preventDefault();
    if (event.repeat || (!choice && !plainMet)) return;
    event.preventDefault();
    press(choice ? { choice: choice.text, met: !choice.stops } : { met: true });
  }

  return (
    <article tabIndex={-1} className="item-card" data-hold={item.hold || undefined} onKeyDown={pressKey}>
      {item.hold && <p className="hold-mark">Hold point: nothing goes on until it is met</p>}
      <ItemBody label={`${item.pause}: ${item.text}`} frame={body}>
        <p className="item-pause">
          <span>{item.pause}</span>
          {item.critical && <strong>Critical: passed over, this one has hurt people</strong>}
          {item.kind === 'two-person' && <span>One reads, the other answers with what they see.</span>}
        </p>
        <h2 className="item-text" data-long={item.text.length > LONG || undefined}>
          {item.text}
        </h2>
        {item.detail !== '' && <p className="item-detail">{item.detail}</p>}
        <Missing item={item} run={run} revision={revision} />
        {answer && <Answered item={item} answer={answer} run={run} revision={revision} />}
      </ItemBody>
      {item.wait && <TimedWait id={runId} run={run} item={item} left={secondsLeft} onStart={onStartWait} />}
      {item.kind === 'photo' ? (
        <Photo run={runId} onTaken={(photo) => give({ photo })} />
      ) : item.measured ? (
        <Reading item={item} measured={item.measured} onRead={(reading) => give({ reading })} />
      ) : (
        <div className="answers">
          {item.choices
            ? item.choices.map((choice, index) => (
                <AnswerButton
                  key={choice.text}
                  hint={String(index + 1)}
                  settled={settled}
                  onPress={() => press({ choice: choice.text, met: !choice.stops })}
                >
                  {choice.text}
                </AnswerButton>
              ))
            : [
                <AnswerButton
                  key="met"
                  primary
                  hint="Enter"
                  blocked={secondsLeft !== 0}
                  settled={settled}
                  onPress={() => press({ met: true })}
                >
                  {item.hold ? 'Met' : 'Done'}
                </AnswerButton>,
                <AnswerButton key="not met" settled={still} onPress={() => still && give({ met: false })}>
                  Not met
                </AnswerButton>,
              ]}
        </div>
      )}
      <div className="item-foot">
        <label className="item-note">
          Note{' '}
          <input
            type="text"
            value={note}
            maxLength={1000}
            autoComplete="off"
            onChange={(event) => setNote(event.target.value)}
          />
        </label>
        {onMakeSafe && (
          <button type="button" className="button" onClick={onMakeSafe}>
            Go no further, make safe
          </button>
        )}
      </div>
      <p className="item-source">Source: {item.source}</p>
    </article>
  );
}

function AnswerButton({
  primary = false,
  blocked = false,
  hint,
  settled,
  onPress,
  children,
}: {
  primary?: boolean;
  /** Not to be pressed yet, for a reason that the item gives. */
  blocked?: boolean;
  /** The key that does the same. */
  hint?: string;
  settled: boolean;
  onPress: () => void;
  children: string;
}) {
  return (
    <button
      type="button"
      className={primary ? 'button primary big' : 'button big'}
      disabled={blocked}
      aria-disabled={!settled}
      aria-keyshortcuts={hint}
      onClick={onPress}
    >
      {children}
      {hint && <kbd aria-hidden>{hint}</kbd>}
    </button>
  );
}

interface Standing {
  readonly item: ChecklistItem;
  readonly run: Run;
  readonly revision: Revision;
}

function Missing({ item, run, revision }: Standing) {
  const prototype = useRecord('prototype', run.prototype);
  if (item.missing.length === 0 || !prototype) return null;
  const assessment = assessmentOf(prototype, revision);
  const titles = item.missing.map((name) => titleOfFact(assessment, name));
  return (
    <p className="checklist-problem">
      Not known in the revision, so this cannot be put properly: {titles.join(', ')}. Enter it there; a new
      run then asks with the figure.
    </p>
  );
}

/** What was answered before, and what stands in the way where it does not meet the item. */
function Answered({ item, answer, run, revision }: Standing & { answer: ChecklistAnswer }) {
  const obstacles = run.status === 'checklist' ? canClear(run, revision) : canFinish(run, 'passed');
  const problem = answer.met ? undefined : obstacles.find((each) => each.item === item.id)?.problem;
  return (
    <p className="item-answered" data-met={answer.met || undefined}>
      Answered {timeOfDay(answer.at)} by {answer.initials}
      {answer.second ? ` and ${answer.second}` : ''}: <strong>{answer.met ? 'met' : 'not met'}</strong>
      {answer.reading ? `, ${answer.reading.typed}` : ''}
      {answer.choice ? `, “${answer.choice}”` : ''}. {problem && problemText(problem)}
      {!answer.met && item.hold && ' To answer it again, say in the note what was done.'}
    </p>
  );
}

function isTicked(item: ChecklistItem): boolean {
  return !item.measured && !item.choices && item.kind !== 'photo';
}
