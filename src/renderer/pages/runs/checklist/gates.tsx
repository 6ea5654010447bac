/** What is shown where no item is: before the first, at clearance, at the end, and when the list is void. */
import { type ReactNode, useEffect, useRef } from 'react';
import {
  canClear,
  canFinish,
  cautionsFor,
  clear,
  finish,
  type Obstacle,
} from '../../../../checklist/index.ts';
import type { Change, Revision, Run } from '../../../../notebook/index.ts';
import type { Result } from '../../../../quantity/index.ts';
import { phrase } from '../../../../quantity/index.ts';
import { CautionList } from '../../../controls/caution.tsx';
import { assessmentOf } from '../../../store/assessment.ts';
import { useRecord } from '../../../store/context.ts';
import { now } from '../../../store/record-id.ts';
import { ItemBody } from './item-body.tsx';
import { useSettled } from './settled.ts';

interface GateProps {
  readonly id: string;
  readonly run: Run;
  readonly onRecord: (change: Result<Change>) => void;
}

/** What can hurt, before anything is asked. */
export function StartGate({ run, revision, onBegin }: { run: Run; revision: Revision; onBegin: () => void }) {
  const prototype = useRecord('prototype', run.prototype);
  if (!prototype) return null;
  const assessment = assessmentOf(prototype, revision);
  return (
    <Gate
      title="Before you begin"
      answers={
        <button type="button" className="button primary big" onClick={onBegin}>
          Begin the checklist
        </button>
      }
    >
      <p className="item-detail">
        {run.items.length} items. Enter above, by their initials, who reads them out and who answers. A hold
        point lets nothing go on until it is met.
      </p>
      <CautionList messages={cautionsFor('checklist', { prototype, revision, assessment })} />
    </Gate>
  );
}

export function Clearance({
  id,
  run,
  revision,
  by,
  onRecord,
}: GateProps & { revision: Revision; by: string }) {
  const obstacles = canClear(run, revision);
  return (
    <Gate
      title={obstacles.length === 0 ? 'Every item before the run is met.' : 'The run cannot be cleared.'}
      answers={
        <GateButton
          primary
          isDisabled={obstacles.length > 0}
          onPress={() => onRecord(clear(id, run, revision, by, now()))}
        >
          Clear the run, by {by || '…'}
        </GateButton>
      }
    >
      <Obstacles obstacles={obstacles} />
    </Gate>
  );
}

export function EndOfRun({ id, run, onRecord }: GateProps) {
  const passing = canFinish(run, 'passed');
  const failing = canFinish(run, 'failed');
  return (
    <Gate
      title={passing.length === 0 ? 'Every item is met.' : 'The vehicle is made safe.'}
      answers={
        <>
          <GateButton
            isDisabled={passing.length > 0}
            onPress={() => onRecord(finish(id, run, 'passed', now()))}
          >
            End: passed
          </GateButton>
          <GateButton
            isDisabled={failing.length > 0}
            onPress={() => onRecord(finish(id, run, 'failed', now()))}
          >
            End: failed
          </GateButton>
        </>
      }
    >
      <Obstacles obstacles={passing} />
    </Gate>
  );
}

export function VoidNotice({ letter }: { letter: string }) {
  return (
    <Gate title="This checklist is void.">
      <p className="item-detail">
        The data of revision {letter} have changed since it was made. Leave the screen, look at what changed,
        and start a new run from a card that is issued on the revision as it is now.
      </p>
    </Gate>
  );
}

/** Takes the focus to its title, so that it is read out, and no key that is still held answers it. */
function Gate({ title, answers, children }: { title: string; answers?: ReactNode; children?: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
  }, []);
  return (
    <div className="item-card gate">
      <ItemBody label={title}>
        <h2 className="item-text" ref={heading} tabIndex={-1}>
          {title}
        </h2>
        {children}
      </ItemBody>
      {answers && <div className="answers">{answers}</div>}
    </div>
  );
}

function GateButton({
  primary = false,
  isDisabled,
  onPress,
  children,
}: {
  primary?: boolean;
  isDisabled: boolean;
  onPress: () => void;
  children: ReactNode;
}) {
  const settled = useSettled('gate');
  return (
    <button
      type="button"
      className={primary ? 'button primary big' : 'button big'}
      disabled={isDisabled}
      aria-disabled={!settled}
      onClick={() => settled && onPress()}
    >
      {children}
    </button>
  );
}

function Obstacles({ obstacles }: { obstacles: readonly Obstacle[] }) {
  if (obstacles.length === 0) return null;
  return (
    <ul className="obstacles">
      {obstacles.map(({ item, problem }) => (
        <li key={`${item} ${problem.code}`}>
          {phrase(problem).place}: {phrase(problem).reason}
        </li>
      ))}
    </ul>
  );
}
