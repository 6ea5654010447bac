/** How components reach the open notebook, the desk and the page that is shown. */
import { createContext, useContext, useRef, useSyncExternalStore } from 'react';
import type { NotebookState, Prototype, RecordKind, RecordOf, Revision } from '../../notebook/index.ts';
import type { Desk, Settings, Surroundings } from '../../preload/index.ts';
import type { Place } from '../place.ts';
import type { NotebookStore, NotebookView } from './notebook-store.ts';

export interface Surface {
  readonly desk: Desk;
  readonly surroundings: Surroundings;
  readonly settings: Settings;
  changeSettings(settings: Settings): void;
}

export const SurfaceContext = createContext<Surface | undefined>(undefined);
export const StoreContext = createContext<NotebookStore | undefined>(undefined);
export const PlaceContext = createContext<{ place: Place; go: (to: Partial<Place>) => void } | undefined>(
  undefined,
);

export function useSurface(): Surface {
  return present(useContext(SurfaceContext), 'surface');
}

export function useNotebook(): NotebookStore {
  return present(useContext(StoreContext), 'notebook');
}

export function usePlace(): { place: Place; go: (to: Partial<Place>) => void } {
  return present(useContext(PlaceContext), 'place');
}

/**
 * A piece of the view; the component draws again only when that piece is another one. Every key that is typed
 * changes the view, so take the smallest piece that will do.
 *
 * @param same  whether two pieces show the same, where a new object may be equal to the old one
 */
export function useView<T>(select: (view: NotebookView) => T, same: (a: T, b: T) => boolean = Object.is): T {
  const store = useNotebook();
  const last = useRef<{ readonly piece: T }>(undefined);
  return useSyncExternalStore(store.subscribe, () => {
    const piece = select(store.getState());
    if (last.current && same(last.current.piece, piece)) return last.current.piece;
    last.current = { piece };
    return piece;
  });
}

export function useRecords<K extends RecordKind>(kind: K): NotebookState[K] {
  return useView((view) => view.state[kind]);
}

export function useRecord<K extends RecordKind>(kind: K, id: string | undefined): RecordOf<K> | undefined {
  return useView((view) => (id === undefined ? undefined : view.state[kind][id])) as RecordOf<K> | undefined;
}

export interface Chosen {
  readonly id: string;
  readonly revision: Revision;
  readonly prototype: Prototype;
  readonly prototypeId: string;
}

export function chosenIn({ state }: Pick<NotebookView, 'state'>, place: Place): Chosen | undefined {
  const revision = place.revision === undefined ? undefined : state.revision[place.revision];
  const prototype = revision && state.prototype[revision.prototype];
  if (!revision || !prototype || place.revision === undefined) return undefined;
  return { id: place.revision, revision, prototype, prototypeId: revision.prototype };
}

/** The revision that is chosen, with its prototype, whole: the component draws again at every key typed into either. */
export function useChosen(): Chosen | undefined {
  return useChosenPiece((chosen) => chosen, sameChosen);
}

/** A piece of what is chosen; undefined while nothing is. */
export function useChosenPiece<T>(
  select: (chosen: Chosen) => T,
  same: (a: T, b: T) => boolean = Object.is,
): T | undefined {
  const { place } = usePlace();
  return useView(
    (view) => {
      const chosen = chosenIn(view, place);
      return chosen && select(chosen);
    },
    (a, b) => a === b || (a !== undefined && b !== undefined && same(a, b)),
  );
}

/** Whether the chosen revision takes no changes: it is issued, or the notebook is open for reading only. */
export function useLocked(): boolean {
  const readOnly = useView((view) => view.readOnly);
  const issued = useChosenPiece(({ revision }) => revision.status === 'issued');
  return readOnly || issued !== false;
}

function sameChosen(a: Chosen, b: Chosen): boolean {
  return a.revision === b.revision && a.prototype === b.prototype && a.id === b.id;
}

function present<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`no ${what} above this component`);
  return value;
}
