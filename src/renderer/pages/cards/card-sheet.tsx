/** One test card: a draft follows the revision, an issued card keeps what was predicted. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import {
  beginRun,
  builtinCards,
  checklistsOf,
  generateChecklist,
  issueCard,
  readableCard,
} from '../../../checklist/index.ts';
import { create, type TestCard } from '../../../notebook/index.ts';
import { formatValue, type Problem, phrase } from '../../../quantity/index.ts';
import { TextArea } from '../../controls/text-area.tsx';
import { assessmentOf } from '../../store/assessment.ts';
import { useNotebook, usePlace, useRecord, useRecords, useSurface, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';
import { recordValue } from '../../store/record-value.ts';

export function CardSheet({ id, card }: { id: string; card: TestCard }) {
  const store = useNotebook();
  const { go } = usePlace();
  const { settings } = useSurface();
  const revision = useRecord('revision', card.revision);
  const prototype = useRecord('prototype', card.prototype);
  const runs = useRecords('run');
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();
  if (!revision || !prototype) return null;
  const subject = { prototype, revision, assessment: assessmentOf(prototype, revision) };
  const shown = readableCard(card, subject);
  const draft = card.status === 'draft';

  function issue() {
    const issued = issueCard(id, card, { ...subject, by: settings.author || 'unnamed', at: now() });
    const done = issued.ok ? store.change([issued.value]) : issued;
    setProblem(done.ok ? undefined : done.problem);
  }

  function start() {
    const template = builtinCards.find((each) => each.id === card.template);
    const begun = beginRun({
      cardId: id,
      card,
      revision: subject.revision,
      items: generateChecklist(
        template ? checklistsOf(template) : [],
        subject.prototype,
        subject.revision,
        subject.assessment,
      ),
      number: nextNumber(runs),
      by: settings.author || 'unnamed',
      at: now(),
    });
    if (!begun.ok) {
      setProblem(begun.problem);
      return;
    }
    const run = newId('run');
    const made = store.change([create('run', run, begun.value)]);
    if (made.ok) go({ page: 'runs', record: run });
    else setProblem(made.problem);
  }

  const text = (path: 'purpose' | 'setUp' | 'prerequisites', label: string) =>
    draft ? (
      <TextArea
        label={label}
        value={card[path]}
        disabled={readOnly}
        onCommit={(value) => recordValue(store, 'card', id, path, value)}
      />
    ) : (
      <>
        <h3>{label}</h3>
        <p>{card[path]}</p>
      </>
    );

  return (
    <section aria-label={`Test card ${card.number}`} className="card-sheet">
      <h2>
        Card {card.number}: {card.title}
      </h2>
      <p className="quiet small">
        {draft
          ? 'Draft. Its figures follow the revision until it is issued; then they are frozen.'
          : `Issued ${card.issuedAt?.slice(0, 16).replace('T', ' ')} by ${card.issuedBy}. Its figures are frozen.`}
      </p>
      {text('purpose', 'Purpose')}
      {text('setUp', 'Set-up')}
      {text('prerequisites', 'Prerequisites')}
      <h3>Steps</h3>
      <ol>
        {shown.card.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <h3>Abort at once when</h3>
      <dl className="limits">
        {Object.entries(shown.card.abortLimits)
          .sort(([, a], [, b]) => a.order - b.order)
          .map(([limitId, limit]) => (
            <div key={limitId}>
              <dt>{limit.label}</dt>
              <dd>{limit.text}</dd>
            </div>
          ))}
      </dl>
      <h3>Predicted</h3>
      <table className="figures">
        <tbody>
          {Object.values(shown.card.predictions).map((figure) => (
            <tr key={figure.name}>
              <th scope="row">{figure.label}</th>
              <td className="number">{formatValue(figure.value, figure.unit, figure.u)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3>To be read</h3>
      <ul>
        {Object.entries(card.readings)
          .sort(([, a], [, b]) => a.order - b.order)
          .map(([readingId, reading]) => (
            <li key={readingId}>
              {reading.label}, in {reading.unit}
            </li>
          ))}
      </ul>
      {shown.missing.length > 0 && (
        <p className="notices">Still to be entered before it can be issued: {shown.missing.join(', ')}.</p>
      )}
      {problem && (
        <p className="problem" role="alert">
          {phrase(problem).reason} {phrase(problem).remedy}
        </p>
      )}
      <p>
        {draft ? (
          <Button className="button primary" isDisabled={readOnly} onPress={issue}>
            Issue the card
          </Button>
        ) : (
          <Button className="button primary" isDisabled={readOnly} onPress={start}>
            Start a run
          </Button>
        )}
      </p>
    </section>
  );
}
