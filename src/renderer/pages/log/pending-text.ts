/**
 * Text on its way from a field to the notebook: recorded when the typing pauses, when the field is left and when
 * the page goes away, not at each key. Nothing that was typed is lost on the way.
 */

/** Quiet after which what was typed is recorded, in milliseconds. */
export const PAUSE = 800;

export interface PendingText {
  /** The text as it stands now; recorded after a pause. */
  type(text: string): void;
  /** Records at once what is waiting, if anything is. */
  commit(): void;
  /** Whether something typed is not recorded yet. */
  isPending(): boolean;
}

/** @param record  writes the text into the notebook; called once for each pause, with the newest text */
export function pendingText(record: (text: string) => void): PendingText {
  let waiting: string | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function commit(): void {
    clearTimeout(timer);
    if (waiting === undefined) return;
    const text = waiting;
    waiting = undefined;
    record(text);
  }

  return {
    type(text) {
      waiting = text;
      clearTimeout(timer);
      timer = setTimeout(commit, PAUSE);
    },
    commit,
    isPending: () => waiting !== undefined,
  };
}
