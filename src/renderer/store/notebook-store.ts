/**
 * The open notebook in the window: the state that the journal adds up to, the changes on their way to the desk,
 * and what is being typed at this moment. Data flow one way: a change is applied here at once, queued, written
 * by the desk, and acknowledged; nothing else alters the state.
 */
import { createStore } from 'zustand/vanilla';
import {
  apply,
  type Change,
  invert,
  type JournalEntry,
  type NotebookState,
  type RecordKind,
  replay,
  type Setting,
} from '../../notebook/index.ts';
import type { Desk, OpenNotebook, Outcome } from '../../preload/index.ts';
import { bad, good, type Problem, phrase, type Result } from '../../quantity/index.ts';

export type Saving =
  | { readonly status: 'saved' }
  | { readonly status: 'saving' }
  /** The desk refused; the changes are kept in the queue and offered again. */
  | { readonly status: 'not saved'; readonly problem: Problem };

export interface NotebookView {
  /** Names the open notebook to the desk. */
  readonly session: string;
  readonly name: string;
  readonly id: string;
  readonly generation: number;
  readonly readOnly: boolean;
  readonly problems: readonly Problem[];
  /** Acknowledged and queued changes, and what is being typed. The pages draw from this. */
  readonly state: NotebookState;
  /** The same without what is being typed. */
  readonly recorded: NotebookState;
  /** Journal entries that the desk has acknowledged. */
  readonly entries: readonly JournalEntry[];
  readonly saving: Saving;
  /** Why the last value that a page set was not taken; gone with the next one that is. */
  readonly refused: Problem | undefined;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

export interface NotebookStore {
  getState(): NotebookView;
  subscribe(listener: (view: NotebookView) => void): () => void;
  /** Applies the changes together or not at all, and sends them to the journal. */
  change(changes: readonly Change[]): Result<null>;
  /** Shows, or with nothing no longer shows, why a value was not taken, where the page has no place for it. */
  tell(refused: Problem | undefined): void;
  /**
   * Shows what is being typed without recording it; replaced by the next preview, dropped by the next change. What
   * could not be recorded is not shown either.
   */
  preview(kind: RecordKind, id: string, set: readonly Setting[]): void;
  dropPreview(): void;
  /**
   * Takes back the last change that can be: a record once made stays, and what was changed before a revision was
   * issued is not reached any more. What is undone is recorded like any other change.
   */
  undo(): void;
  redo(): void;
  /** Tries again to write what the desk refused. */
  retry(): void;
  /** Resolves when everything queued is acknowledged or refused. Never rejects. */
  settled(): Promise<void>;
  /** Lets go of the notebook once what is under way is written. */
  dispose(): Promise<void>;
}

const UNDO_DEPTH = 200;
/** What the desk takes at once. */
const LARGEST_APPEND = 1000;

export function openStore(desk: Desk, opened: OpenNotebook, author: () => string): NotebookStore {
  let committed = replay(opened.entries).state;
  const view = createStore<NotebookView>(() => ({
    session: opened.session,
    name: opened.name,
    id: opened.id,
    generation: opened.generation,
    readOnly: opened.readOnly,
    problems: opened.problems,
    state: committed,
    recorded: committed,
    entries: opened.entries,
    saving: { status: 'saved' },
    refused: undefined,
    canUndo: false,
    canRedo: false,
  }));
  /** Changes that were made together stay together, so that a crash between two writes never parts them. */
  let queue: (readonly Change[])[] = [];
  let writing: Promise<void> | undefined;
  let undoing: (readonly Change[])[] = [];
  let redoing: (readonly Change[])[] = [];

  /** Applies and queues the changes; gives what takes them back, nothing where that is not possible. */
  function record(changes: readonly Change[]): Result<readonly Change[]> {
    if (opened.readOnly) return readOnly(opened);
    const made = applyAll(committed, changes);
    if (!made.ok) return made;
    const { state, inverse } = made.value;
    committed = state;
    queue.push(changes);
    return good(applyAll(state, inverse).ok ? inverse : []);
  }

  function show(): void {
    view.setState({
      state: committed,
      recorded: committed,
      refused: undefined,
      canUndo: undoing.length > 0,
      canRedo: redoing.length > 0,
    });
  }

  function write(): void {
    if (writing === undefined && queue.length > 0) writing = flush();
  }

  async function flush(): Promise<void> {
    for (;;) {
      view.setState({ saving: { status: 'saving' } });
      const { entries } = view.getState();
      const outcome = await append(entries.at(-1)?.seq ?? 0, firstOf(queue));
      if (outcome.ok) {
        queue = without(queue, outcome.value.length);
        view.setState({ entries: [...entries, ...outcome.value] });
        if (queue.length > 0) continue;
      }
      // Before anybody is told: who is told may make the next change, which then has to be written.
      writing = undefined;
      view.setState({
        saving: outcome.ok ? { status: 'saved' } : { status: 'not saved', problem: outcome.problem },
      });
      return;
    }
  }

  async function append(
    after: number,
    changes: readonly Change[],
  ): Promise<Outcome<readonly JournalEntry[]>> {
    try {
      const { session } = opened;
      const outcome = await desk['notebook.append']({ session, after, by: author(), changes: [...changes] });
      if (!outcome.ok) return outcome;
      const acknowledged = outcome.value.length;
      const possible = acknowledged > 0 && acknowledged <= changes.length;
      return possible ? outcome : defect(`it acknowledged ${acknowledged} of ${changes.length} changes`);
    } catch (error) {
      return defect(error instanceof Error ? error.message : String(error));
    }
  }

  /** The last change on one pile is taken back and lands on the other. */
  function takeBack(from: (readonly Change[])[], onto: (readonly Change[])[]): void {
    const last = from.pop();
    if (last === undefined) return;
    const recorded = record(last);
    if (recorded.ok && recorded.value.length > 0) onto.push(recorded.value);
    show();
    if (!recorded.ok) view.setState({ refused: recorded.problem });
    write();
  }

  return {
    getState: view.getState,
    subscribe: view.subscribe,
    change(changes) {
      const recorded = record(changes);
      if (!recorded.ok) {
        view.setState({ state: committed });
        return recorded;
      }
      redoing = [];
      // Nothing before a change that stays is reached by undoing, but making a record is passed over.
      if (recorded.value.length > 0) undoing = [...undoing.slice(1 - UNDO_DEPTH), recorded.value];
      else if (changes.some(({ op }) => op === 'set')) undoing = [];
      show();
      write();
      return good(null);
    },
    tell(refused) {
      view.setState({ refused });
    },
    preview(kind, id, set) {
      const shown = apply(committed, { op: 'set', kind, id, set: [...set] });
      view.setState({ state: shown.ok ? shown.value : committed });
    },
    dropPreview() {
      if (view.getState().state !== committed) view.setState({ state: committed });
    },
    undo() {
      takeBack(undoing, redoing);
    },
    redo() {
      takeBack(redoing, undoing);
    },
    retry: write,
    async settled() {
      while (writing !== undefined) await writing;
    },
    async dispose() {
      while (writing !== undefined) await writing;
      await desk['notebook.close']({ session: opened.session }).catch(() => undefined);
    },
  };
}

function applyAll(
  from: NotebookState,
  changes: readonly Change[],
): Result<{ readonly state: NotebookState; readonly inverse: readonly Change[] }> {
  let state = from;
  const inverse: Change[] = [];
  for (const change of changes) {
    const applied = apply(state, change);
    if (!applied.ok) return applied;
    const back = invert(state, change);
    if (back) inverse.unshift(back);
    state = applied.value;
  }
  return good({ state, inverse });
}

/** As many whole groups as the desk takes at once; one that is too large by itself is cut. */
function firstOf(queue: readonly (readonly Change[])[]): readonly Change[] {
  const changes: Change[] = [];
  for (const group of queue) {
    if (changes.length > 0 && changes.length + group.length > LARGEST_APPEND) break;
    changes.push(...group);
  }
  return changes.slice(0, LARGEST_APPEND);
}

function without(queue: readonly (readonly Change[])[], count: number): (readonly Change[])[] {
  let written = count;
  return queue.flatMap((group) => {
    const rest = group.slice(Math.min(written, group.length));
    written -= group.length - rest.length;
    return rest.length > 0 ? [rest] : [];
  });
}

function readOnly({ name, problems }: OpenNotebook): Result<never> {
  const [first] = problems;
  return bad('notebook.read-only', name, {
    detail: first ? phrase(first).reason.replace(/\.$/, '') : 'it is damaged',
  });
}

/** What a desk that keeps to its word never does. */
function defect(detail: string): Outcome<never> {
  return bad('desk.defect', 'notebook.append', { detail });
}
