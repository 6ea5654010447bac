/** What the prototype has to reach. Each line entered becomes a margin. */
import { FactForm } from '../../controls/fact-form.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { verdictTally } from '../../controls/verdict-tally.ts';
import { FirstSteps } from '../../first-steps/first-steps.tsx';
import { useAssessed } from '../../store/assessment.ts';
import { useChosenPiece, useNotebook, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

export function RequirementsPage() {
  return (
    <>
      <FirstSteps />
      <section>
        <h2>What follows</h2>
        <WhatFollows />
      </section>
      <section>
        <h2>What the prototype has to reach</h2>
        <p className="quiet small">
          Leave a line blank where nothing is asked. Any unit of the right kind is read: 3 mph, 0.5 g, 1/2 in.
        </p>
        <FactForm page="Requirements" />
      </section>
      <section>
        <h2>The prototype</h2>
        <Description />
      </section>
    </>
  );
}

function WhatFollows() {
  const letter = useChosenPiece(({ revision }) => revision.letter);
  const tally = useAssessed(({ margins }) => verdictTally(margins));
  if (tally === undefined) return null;
  return (
    <p>
      {tally === ''
        ? 'Nothing is asked yet. Each line below becomes a margin at the right as soon as it is entered.'
        : `Margins of revision ${letter} against these requirements: ${tally}.`}{' '}
      A margin holds when the lower 95 % bound of capability over demand, less one, is not below nought.
    </p>
  );
}

function Description() {
  const store = useNotebook();
  const prototype = useChosenPiece((chosen) => chosen.prototypeId);
  const description = useChosenPiece((chosen) => chosen.prototype.description);
  const readOnly = useView((view) => view.readOnly);
  if (prototype === undefined || description === undefined) return null;
  return (
    <TextArea
      label="What it is and what it is for"
      value={description}
      disabled={readOnly}
      onCommit={(text) => recordValue(store, 'prototype', prototype, 'description', text)}
    />
  );
}
