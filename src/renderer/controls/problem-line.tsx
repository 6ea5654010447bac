/** What went wrong, in a sentence, and what to do about it. */
import { type Problem, phrase } from '../../quantity/index.ts';

export function ProblemLine({ problem, id }: { problem: Problem; id?: string | undefined }) {
  return (
    <p className="problem" role="alert" id={id}>
      {problemText(problem)}
    </p>
  );
}

/** Reason and remedy, as one text that begins with a capital. */
export function problemText(problem: Problem): string {
  const { reason, remedy } = phrase(problem);
  return capitalised(`${reason} ${remedy}`);
}

/** A name or a quotation that a text begins with keeps its own first letter. */
export function capitalised(text: string): string {
  return /^\p{Ll}/u.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text;
}
