/** One test card: a draft follows the revision, an issued card keeps what was predicted. */
import { readableCard } from '../../../checklist/index.ts';
import type { TestCard } from '../../../notebook/index.ts';
import { formatValue } from '../../../quantity/index.ts';
import { Cautions } from '../../controls/caution.tsx';
import { MissingFacts } from '../../controls/missing-facts.tsx';
import { dateAndTime } from '../../controls/moment.ts';
import { useBroughtIntoView } from '../../controls/record-toggle.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { assessmentOf } from '../../store/assessment.ts';
import { useNotebook, useRecord, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { CardActions } from './card-actions.tsx';
import { RunsOfCard } from './runs-of-card.tsx';

export function CardSheet({ id, card }: { id: string; card: TestCard }) {
  const revision = useRecord('revision', card.revision);
  const prototype = useRecord('prototype', card.prototype);
  const frame = useBroughtIntoView<HTMLElement>();
  if (!revision || !prototype) return null;
  const subject = { prototype, revision, assessment: assessmentOf(prototype, revision) };
  const shown = readableCard(card, subject);

  return (
    <section aria-label={`Test card ${card.number}`} className="card-sheet" ref={frame}>
      <h2>
        Card {card.number}: {card.title}
      </h2>
      <p className="quiet small">
        {card.status === 'draft'
          ? 'Draft. Its figures follow the revision until it is issued; then they are frozen.'
          : `Issued ${dateAndTime(card.issuedAt ?? '')} by ${card.issuedBy}. Its figures are frozen.`}
      </p>
      <Cautions place="test cards" />
      <CardText id={id} card={card} path="purpose" label="Purpose" />
      <CardText id={id} card={card} path="setUp" label="Set-up" />
      <CardText id={id} card={card} path="prerequisites" label="Prerequisites" />
      <h3>Steps</h3>
      <ol>
        {shown.card.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <AbortLimits card={shown.card} />
      <Predictions card={shown.card} />
      <Readings card={card} />
      {shown.missing.length > 0 && (
        <div className="notices">
          <p>Still to be entered before it can be issued:</p>
          <MissingFacts assessment={subject.assessment} missing={shown.missing} />
        </div>
      )}
      <CardActions id={id} card={card} subject={subject} />
      <RunsOfCard id={id} />
    </section>
  );
}

/** A text of the card, to be written while it is a draft. */
function CardText({
  id,
  card,
  path,
  label,
}: {
  id: string;
  card: TestCard;
  path: 'purpose' | 'setUp' | 'prerequisites';
  label: string;
}) {
  const store = useNotebook();
  const readOnly = useView((view) => view.readOnly);
  if (card.status === 'draft') {
    return (
      <TextArea
        label={label}
        value={card[path]}
        disabled={readOnly}
        onCommit={(value) => recordValue(store, 'card', id, path, value)}
      />
    );
  }
  return (
    <>
      <h3>{label}</h3>
      <p>{card[path]}</p>
    </>
  );
}

function AbortLimits({ card }: { card: TestCard }) {
  return (
    <>
      <h3>Abort at once when</h3>
      <dl className="limits">
        {inOrder(card.abortLimits).map(([limitId, limit]) => (
          <div key={limitId}>
            <dt>{limit.label}</dt>
            <dd>{limit.text}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

function Predictions({ card }: { card: TestCard }) {
  const predictions = Object.values(card.predictions);
  if (predictions.length === 0) return null;
  return (
    <>
      <h3>Predicted</h3>
      <table className="figures">
        <tbody>
          {predictions.map((figure) => (
            <tr key={figure.name}>
              <th scope="row">{figure.label}</th>
              <td className="number">{formatValue(figure.value, figure.unit, figure.u)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Readings({ card }: { card: TestCard }) {
  return (
    <>
      <h3>To be read</h3>
      <ul>
        {inOrder(card.readings).map(([readingId, reading]) => (
          <li key={readingId}>
            {reading.label}, in {reading.unit}
          </li>
        ))}
      </ul>
    </>
  );
}

function inOrder<T extends { readonly order: number }>(rows: Readonly<Record<string, T>>): [string, T][] {
  return Object.entries(rows).sort(([, a], [, b]) => a.order - b.order);
}
