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
import type { Desk, OpenNotebook } from '../../preload/index.ts';
import type { Problem, Result } from '../../quantity/index.ts';

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
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

export interface NotebookStore {
  getState(): NotebookView;
  subscribe(listener: (view: NotebookView) => void): () => void;
  /** Applies the changes together or not at all, and sends them to the journal. */
  change(changes: readonly Change[]): Result<null>;
  /** Shows what is being typed without recording it; replaced by the next preview, dropped by the next change. */
  preview(kind: RecordKind, id: string, set: readonly Setting[]): void;
  dropPreview(): void;
  undo(): void;
  redo(): void;
  /** Tries again to write what the desk refused. */
  retry(): void;
  /** Resolves when everything queued is acknowledged or refused. */
  settled(): Promise<void>;
  dispose(): void;
}

const UNDO_DEPTH = 200;

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
    canUndo: false,
    canRedo: false,
  }));
  let queue: Change[] = [];
  let writing: Promise<void> | undefined;
  let undoing: Change[][] = [];
  let redoing: Change[][] = [];

  function record(changes: readonly Change[], keepRedo: boolean): Result<Change[]> {
    let next = committed;
    const inverse: Change[] = [];
    for (const change of changes) {
      const applied = apply(next, change);
      if (!applied.ok) return applied;
      const back = invert(next, change);
      if (back) inverse.unshift(back);
      next = applied.value;
    }
    committed = next;
    queue.push(...changes);
    if (!keepRedo) redoing = [];
    view.setState({
      state: committed,
      recorded: committed,
      canUndo: undoing.length > 0 || inverse.length > 0,
      canRedo: redoing.length > 0,
    });
    write();
    return { ok: true, value: inverse };
  }

  function write(): void {
    writing ??= flush().finally(() => {
      writing = undefined;
    });
  }

  async function flush(): Promise<void> {
    while (queue.length > 0) {
      const sending = queue;
      view.setState({ saving: { status: 'saving' } });
      const { entries } = view.getState();
      const outcome = await desk['notebook.append']({
        session: opened.session,
        after: entries.at(-1)?.seq ?? 0,
        by: author(),
        changes: sending.slice(0, 1000),
      });
      if (!outcome.ok) {
        view.setState({ saving: { status: 'not saved', problem: outcome.problem } });
        return;
      }
      queue = queue.slice(outcome.value.length);
      view.setState({ entries: [...entries, ...outcome.value] });
    }
    view.setState({ saving: { status: 'saved' } });
  }

  return {
    getState: view.getState,
    subscribe: view.subscribe,
    change(changes) {
      const recorded = record(changes, false);
      if (!recorded.ok) {
        view.setState({ state: committed });
        return recorded;
      }
      if (recorded.value.length > 0) undoing = [...undoing.slice(-UNDO_DEPTH), recorded.value];
      return { ok: true, value: null };
    },
    preview(kind, id, set) {
      const shown = apply(committed, { op: 'set', kind, id, set: [...set] });
      if (shown.ok) view.setState({ state: shown.value });
    },
    dropPreview() {
      if (view.getState().state !== committed) view.setState({ state: committed });
    },
    undo() {
      const last = undoing.pop();
      if (!last) return;
      const recorded = record(last, true);
      if (recorded.ok) redoing.push(recorded.value);
      view.setState({ canUndo: undoing.length > 0, canRedo: redoing.length > 0 });
    },
    redo() {
      const last = redoing.pop();
      if (!last) return;
      const recorded = record(last, true);
      if (recorded.ok) undoing.push(recorded.value);
      view.setState({ canUndo: undoing.length > 0, canRedo: redoing.length > 0 });
    },
    retry: write,
    async settled() {
      await writing;
    },
    dispose() {
      void desk['notebook.close']({ session: opened.session });
    },
  };
}
