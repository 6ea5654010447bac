/** The planned tests of a revision, and the card that is open. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { builtinCards, generateCard } from '../../../checklist/index.ts';
import { create, type TestCard } from '../../../notebook/index.ts';
import { Cautions } from '../../controls/caution.tsx';
import { Choice } from '../../controls/choice.tsx';
import { RecordToggle } from '../../controls/record-toggle.tsx';
import { assessmentOf } from '../../store/assessment.ts';
import { type Chosen, useChosen, useNotebook, usePlace, useRecords, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';
import { CardSheet } from './card-sheet.tsx';

export function CardsPage() {
  const chosen = useChosen();
  const { place } = usePlace();
  const cards = useRecords('card');
  if (!chosen) return null;
  const rows = Object.entries(cards)
    .filter(([, card]) => card.revision === chosen.id)
    .sort(([, a], [, b]) => b.number - a.number);
  const open = place.record === undefined ? undefined : cards[place.record];

  return (
    <>
      <PlanTest chosen={chosen} />
      <section>
        <h2>Cards of revision {chosen.revision.letter}</h2>
        {rows.length === 0 ? (
          <p className="empty">
            No test is planned for this revision. A card says what is tested and how, what the figures predict
            and when to break off; a run is started from it once it is issued.
          </p>
        ) : (
          <CardTable rows={rows} />
        )}
      </section>
      {place.record && open ? (
        <CardSheet key={place.record} id={place.record} card={open} />
      ) : (
        <Cautions place="test cards" />
      )}
    </>
  );
}

function PlanTest({ chosen }: { chosen: Chosen }) {
  const store = useNotebook();
  const { go } = usePlace();
  const cards = useRecords('card');
  const readOnly = useView((view) => view.readOnly);
  const [templateId, setTemplateId] = useState(builtinCards[0]?.id ?? '');
  const template = builtinCards.find((each) => each.id === templateId);

  function plan() {
    if (!template) return;
    const { prototype, revision } = chosen;
    const { card } = generateCard(template, {
      prototype,
      revision,
      assessment: assessmentOf(prototype, revision),
      prototypeId: chosen.prototypeId,
      revisionId: chosen.id,
      number: nextNumber(cards),
      at: now(),
    });
    const id = newId('card');
    if (store.change([create('card', id, card)]).ok) go({ page: 'cards', record: id });
  }

  return (
    <section>
      <h2>Plan a test</h2>
      <Choice
        label="kind of test"
        value={templateId}
        choices={builtinCards.map((each) => each.id)}
        names={Object.fromEntries(builtinCards.map((each) => [each.id, each.title]))}
        disabled={readOnly}
        onChoose={setTemplateId}
      />
      {template && <p className="quiet small">{template.purpose}</p>}
      <p>
        <Button className="button" isDisabled={readOnly} onPress={plan}>
          Make a test card
        </Button>
      </p>
    </section>
  );
}

function CardTable({ rows }: { rows: readonly (readonly [string, TestCard])[] }) {
  const runs = useRecords('run');
  const { place } = usePlace();
  return (
    <table className="data">
      <thead>
        <tr>
          <th scope="col" className="number">
            No.
          </th>
          <th scope="col">Test</th>
          <th scope="col">Status</th>
          <th scope="col">Runs</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([id, card]) => (
          <tr key={id} data-open={place.record === id || undefined}>
            <td className="number">{card.number}</td>
            <td>
              <RecordToggle id={id} title={card.title} />
            </td>
            <td>{card.status}</td>
            <td>{Object.values(runs).filter((run) => run.card === id).length || 'none'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
