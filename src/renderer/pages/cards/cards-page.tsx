/** The planned tests of a revision, and the card that is open. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { builtinCards, generateCard } from '../../../checklist/index.ts';
import { create } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { useAssessment } from '../../store/assessment.ts';
import { useChosen, useNotebook, usePlace, useRecords, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';
import { CardSheet } from './card-sheet.tsx';

export function CardsPage() {
  const chosen = useChosen();
  const assessment = useAssessment();
  const store = useNotebook();
  const { place, go } = usePlace();
  const cards = useRecords('card');
  const readOnly = useView((view) => view.readOnly);
  const [templateId, setTemplateId] = useState(builtinCards[0]?.id ?? '');
  if (!chosen || !assessment) return null;
  const { prototype, revision } = chosen;
  const rows = Object.entries(cards)
    .filter(([, card]) => card.revision === chosen.id)
    .sort(([, a], [, b]) => b.number - a.number);
  const open = place.record === undefined ? undefined : cards[place.record];

  function plan() {
    const template = builtinCards.find((each) => each.id === templateId);
    if (!chosen || !assessment || !template) return;
    const { card } = generateCard(template, {
      prototype,
      revision,
      assessment,
      prototypeId: chosen.prototypeId,
      revisionId: chosen.id,
      number: nextNumber(cards),
      at: now(),
    });
    const id = newId('card');
    if (store.change([create('card', id, card)]).ok) go({ page: 'cards', record: id });
  }

  return (
    <>
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
        <Button className="button" isDisabled={readOnly} onPress={plan}>
          Make a test card
        </Button>
      </section>
      {rows.length > 0 && (
        <section>
          <h2>Cards of revision {revision.letter}</h2>
          <table className="data">
            <thead>
              <tr>
                <th>No.</th>
                <th>Test</th>
                <th>Status</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(([id, card]) => (
                <tr key={id}>
                  <td className="number">{card.number}</td>
                  <td>
                    <button
                      type="button"
                      className="plain-button"
                      aria-expanded={place.record === id}
                      onClick={() => go({ record: place.record === id ? undefined : id })}
                    >
                      {card.title}
                    </button>
                  </td>
                  <td>{card.status}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {place.record && open && <CardSheet key={place.record} id={place.record} card={open} />}
    </>
  );
}
