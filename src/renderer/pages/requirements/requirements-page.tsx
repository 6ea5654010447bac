/** What the prototype has to reach. Each line entered becomes a margin. */
import { FactForm } from '../../controls/fact-form.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { useAssessment } from '../../store/assessment.ts';
import { useChosen, useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

export function RequirementsPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const assessment = useAssessment();
  if (!chosen || !assessment) return null;
  const count = (verdict: string) => assessment.margins.filter((margin) => margin.verdict === verdict).length;
  return (
    <>
      <section>
        <h2>What follows</h2>
        <p>
          Revision {chosen.revision.letter} against these requirements: {count('holds')} margins hold,{' '}
          {count('in doubt')} in doubt, {count('fails')} fail, {count('unknown')} unknown. A margin holds when
          the lower 95 % bound of capability over demand, less one, is not below nought.
        </p>
      </section>
      <section>
        <h2>What the prototype has to reach</h2>
        <FactForm page="Requirements" />
      </section>
      <section>
        <h2>The prototype</h2>
        <TextArea
          label="What it is and what it is for"
          value={chosen.prototype.description}
          disabled={false}
          onCommit={(text) => recordValue(store, 'prototype', chosen.prototypeId, 'description', text)}
        />
      </section>
    </>
  );
}
