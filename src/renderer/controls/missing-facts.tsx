/** What still has to be entered, each with the page where it is. */
import { type Assessment, locateFact } from '../../margins/index.ts';
import { pages } from '../place.ts';
import { usePlace } from '../store/context.ts';

export interface MissingFactsProps {
  readonly assessment: Assessment;
  /** Names out of a figure's or a card's `missing`. */
  readonly missing: readonly string[];
  /** Called before the page is turned. */
  readonly onLeave?: (() => void) | undefined;
}

export function MissingFacts({ assessment, missing, onLeave }: MissingFactsProps) {
  if (missing.length === 0) return null;
  return (
    <ul className="plain missing-facts">
      {missing.map((name) => {
        const place = locateFact(assessment, name);
        return (
          <li key={name}>
            {titleOfFact(assessment, name)}
            {place && (
              <>
                , on the page <ToPage title={place.page} onLeave={onLeave} />
              </>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** The title of a figure or a choice by its name; the name itself where it has none. */
export function titleOfFact(assessment: Assessment, name: string): string {
  return locateFact(assessment, name)?.title ?? assessment.figures.get(name)?.title ?? name;
}

/** @param title  of the page, as the facts name it */
export function ToPage({ title, onLeave }: { title: string; onLeave?: (() => void) | undefined }) {
  const { go } = usePlace();
  const page = pages.find((each) => each.title === title)?.id;
  if (!page) return title;
  return (
    <button
      type="button"
      className="plain-button"
      onClick={() => {
        onLeave?.();
        go({ page });
      }}
    >
      {title}
    </button>
  );
}
