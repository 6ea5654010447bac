/** What the browser or the system shows as the title of the window: prototype, revision, page. */
import { useEffect } from 'react';
import { pages } from './place.ts';
import { useChosenPiece, usePlace } from './store/context.ts';

const PROGRAM = 'Counterpoise';

export function WindowTitle() {
  const { place } = usePlace();
  const prototype = useChosenPiece((chosen) => chosen.prototype.name);
  const letter = useChosenPiece(({ revision }) => revision.letter);
  const page = pages.find((each) => each.id === place.page)?.title ?? '';

  useEffect(() => {
    document.title = prototype === undefined ? PROGRAM : `${prototype} ${letter}: ${page} – ${PROGRAM}`;
    return () => {
      document.title = PROGRAM;
    };
  }, [prototype, letter, page]);
  return null;
}
