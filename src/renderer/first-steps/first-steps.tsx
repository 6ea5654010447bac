/** What to enter first, for somebody who has made a prototype and sees empty pages. Goes as it is done. */
import { shallow } from 'zustand/shallow';
import { PageLink } from '../controls/page-link.tsx';
import { assessmentOf } from '../store/assessment.ts';
import { type Chosen, chosenIn, usePlace, useView } from '../store/context.ts';
import type { NotebookView } from '../store/notebook-store.ts';
import { steps } from './steps.ts';

export function FirstSteps() {
  const { place } = usePlace();
  const done = useView((view) => {
    const chosen = chosenIn(view, place);
    return chosen && isFirst(chosen) ? doneIn(view, chosen) : undefined;
  }, sameSteps);
  if (!done || done.every((each, index) => each || steps[index]?.optional)) return null;
  const next = done.indexOf(false);
  return (
    <section className="first-steps" aria-label="First steps">
      <h2>
        First steps{' '}
        <span className="quiet small">
          {done.filter((each) => each).length} of {steps.length} done
        </span>
      </h2>
      <ol>
        {steps.map(({ title, page, text, optional }, index) =>
          done[index] ? null : (
            <li key={title} value={index + 1} aria-current={index === next ? 'step' : undefined}>
              {page === place.page ? <strong>{title}</strong> : <PageLink to={{ page }}>{title}</PageLink>}
              {optional && <span className="quiet"> if it has one</span>}
              {index === next && <p className="small">{text}</p>}
            </li>
          ),
        )}
      </ol>
    </section>
  );
}

/** A revision that was made from another begins with that one's figures. */
function isFirst({ revision }: Chosen): boolean {
  return revision.status === 'draft' && revision.from === undefined;
}

function doneIn({ state }: NotebookView, { id, prototype, revision }: Chosen): readonly boolean[] {
  const of = (records: Readonly<Record<string, { readonly revision: string }>>): number =>
    Object.values(records).filter((record) => record.revision === id).length;
  const standing = {
    prototype,
    revision,
    assessment: assessmentOf(prototype, revision),
    cards: of(state.card),
    runs: of(state.run),
  };
  return steps.map((step) => step.done(standing));
}

function sameSteps(a: readonly boolean[] | undefined, b: readonly boolean[] | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && shallow(a, b));
}
