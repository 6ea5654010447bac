/**
 * The checklist of a run, full screen: one item at a time, read from two metres, worked by keyboard or a gloved
 * finger. The clock, the abort limits and the stop procedure are always in view. Escape does nothing here.
 */
import { useEffect, useState } from 'react';
import { Button, Dialog, Modal, ModalOverlay } from 'react-aria-components';
import { abort, answerItem, beginWait, type Given, nextItem, standing } from '../../../../checklist/index.ts';
import type { Change, Revision, Run, TestCard } from '../../../../notebook/index.ts';
import type { Problem, Result } from '../../../../quantity/index.ts';
import { problemText } from '../../../controls/problem-line.tsx';
import { useNotebook, useRecord } from '../../../store/context.ts';
import { now } from '../../../store/record-id.ts';
import { AbortPanel } from './abort-panel.tsx';
import { AllItems } from './all-items.tsx';
import { Clock } from './clock.tsx';
import { Clearance, EndOfRun, StartGate, VoidNotice } from './gates.tsx';
import { ItemCard } from './item-card.tsx';
import { type People, PeopleStrip } from './people-strip.tsx';
import { Progress } from './progress.tsx';
import { steadyClock } from './timed-wait.tsx';
import { useWakeLock } from './wake-lock.ts';

export function ChecklistScreen({ id, onLeave }: { id: string; onLeave: () => void }) {
  const run = useRecord('run', id);
  const card = useRecord('card', run?.card);
  const revision = useRecord('revision', run?.revision);
  useWakeLock();
  useFocusOnThePageAfterwards();
  if (!run || !card || !revision) return null;
  return (
    <ModalOverlay className="checklist-overlay" isOpen isKeyboardDismissDisabled>
      <Modal className="checklist-modal">
        <Dialog className="checklist-screen" aria-label={`Checklist of run ${run.number}`}>
          <Contents id={id} run={run} card={card} revision={revision} onLeave={onLeave} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Looking at an item other than the next one, at all of them, or going straight to making safe. */
type Looking =
  | { readonly at: 'next' | 'list' | 'making safe' }
  | { readonly at: 'item'; readonly id: string };

function Contents({
  id,
  run,
  card,
  revision,
  onLeave,
}: {
  id: string;
  run: Run;
  card: TestCard;
  revision: Revision;
  onLeave: () => void;
}) {
  const store = useNotebook();
  const [people, setPeople] = useState<People>({ initials: '', second: '' });
  const [begun, setBegun] = useState(run.status !== 'checklist' || Object.keys(run.answers).length > 0);
  const [looking, setLooking] = useState<Looking>({ at: 'next' });
  const [problem, setProblem] = useState<Problem>();
  const status = standing(run, revision);
  const next = nextItem(looking.at === 'making safe' ? { ...run, status: 'aborted' } : run);
  const item = looking.at === 'item' ? run.items.find((each) => each.id === looking.id) : next;

  function record(change: Result<Change>) {
    const done = change.ok ? store.change([change.value]) : change;
    setProblem(done.ok ? undefined : done.problem);
    if (done.ok && looking.at === 'item') setLooking({ at: 'next' });
  }

  function answer(given: Omit<Given, 'initials' | 'second' | 'at'>) {
    if (!item) return;
    const { initials, second } = people;
    const who = item.kind === 'two-person' ? { initials, second } : { initials };
    record(answerItem(id, run, revision, item.id, { ...given, ...who, at: now() }));
  }

  function startWait() {
    if (!item) return;
    const { initials } = people;
    record(beginWait(id, run, revision, item.id, { initials, at: now(), clock: steadyClock() }));
  }

  function look(next: Looking) {
    setProblem(undefined);
    setLooking(next);
  }

  function shown() {
    if (status === 'void') return <VoidNotice letter={revision.letter} />;
    if (!begun) return <StartGate run={run} revision={revision} onBegin={() => setBegun(true)} />;
    if (looking.at === 'list') {
      return <AllItems run={run} onChoose={(chosen) => look({ at: 'item', id: chosen })} />;
    }
    if (item) {
      return (
        <ItemCard
          key={item.id}
          item={item}
          runId={id}
          run={run}
          revision={revision}
          onAnswer={answer}
          onStartWait={startWait}
          onMakeSafe={item.phase === 'during' ? () => look({ at: 'making safe' }) : undefined}
        />
      );
    }
    return status === 'checklist' ? (
      <Clearance id={id} run={run} revision={revision} by={people.initials} onRecord={record} />
    ) : (
      <EndOfRun id={id} run={run} onRecord={record} />
    );
  }

  return (
    <>
      <header className="checklist-head">
        <p>
          <strong>{card.title}</strong>, revision {revision.letter}, run {run.number}
        </p>
        <Clock since={run.startedAt} />
        <Button className="button" onPress={onLeave}>
          Leave the screen
        </Button>
      </header>
      <PeopleStrip people={people} onChange={setPeople}>
        <Progress
          run={run}
          current={begun ? item : undefined}
          listing={looking.at === 'list'}
          away={looking.at === 'item' && item !== next}
          onList={() => look({ at: looking.at === 'list' ? 'next' : 'list' })}
          onNext={() => look({ at: 'next' })}
        />
      </PeopleStrip>
      <div className="checklist-item">
        {shown()}
        {problem && (
          <p className="checklist-problem" role="alert">
            {problemText(problem)}
          </p>
        )}
      </div>
      <AbortPanel
        card={card}
        run={run}
        revision={revision}
        onAbort={(reason) => record(abort(id, run, reason, people.initials || 'unnamed', now()))}
      />
    </>
  );
}

/** The button that the run was started with is gone by the time that the screen is left. */
function useFocusOnThePageAfterwards(): void {
  useEffect(
    () => () => {
      requestAnimationFrame(() => {
        if (document.activeElement === document.body) document.getElementById('page')?.focus();
      });
    },
    [],
  );
}
