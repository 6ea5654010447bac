/**
 * Safety messages as signal-word panels: the word on its colour, with the alert triangle where people can be hurt,
 * and beside it what can happen and what to do.
 */
import { memo } from 'react';
import { shallow } from 'zustand/shallow';
import { type CautionPlace, cautionsFor, type SafetyMessage } from '../../checklist/index.ts';
import { assessmentOf } from '../store/assessment.ts';
import { useChosenPiece } from '../store/context.ts';

/** Those that belong to a place and to the equipment of the chosen revision. */
export function Cautions({ place }: { place: CautionPlace }) {
  const messages = useChosenPiece(
    ({ prototype, revision }) =>
      cautionsFor(place, { prototype, revision, assessment: assessmentOf(prototype, revision) }),
    shallow,
  );
  return messages ? <CautionList messages={messages} /> : null;
}

/** One panel for each signal word, gravest first: many hazards on one sign go under the word for the greatest. */
export const CautionList = memo(function CautionList({ messages }: { messages: readonly SafetyMessage[] }) {
  const signals = [...new Set(messages.map(({ signal }) => signal))];
  if (signals.length === 0) return null;
  return (
    <div className="cautions">
      {signals.map((signal) => (
        <Caution
          key={signal}
          signal={signal}
          messages={messages.filter((message) => message.signal === signal)}
        />
      ))}
    </div>
  );
});

function Caution({
  signal,
  messages,
}: {
  signal: SafetyMessage['signal'];
  messages: readonly SafetyMessage[];
}) {
  return (
    <div className="caution" role="note" aria-label={signal.toLowerCase()} data-signal={signal}>
      <p className="caution-word">
        {signal !== 'NOTICE' && <AlertTriangle />}
        {signal}
      </p>
      <div className="caution-text">
        {messages.map(({ id, hazard, action }) => (
          <p key={id}>
            <strong>{hazard}</strong> {action}
          </p>
        ))}
      </div>
    </div>
  );
}

/** The safety alert symbol: it stands beside a word that warns of injury, and beside no other. */
function AlertTriangle() {
  return (
    <svg className="alert-triangle" viewBox="0 0 24 22" aria-hidden>
      <path d="M12 1.2 23.2 20.6H.8Z" fill="currentColor" strokeLinejoin="round" />
      <path className="alert-mark" d="M10.7 7.2h2.6l-.5 7.3h-1.6zM10.7 16h2.6v2.5h-2.6z" />
    </svg>
  );
}
