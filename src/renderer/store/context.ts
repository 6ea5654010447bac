/** How components reach the open notebook, the desk and the page that is shown. */
import { createContext, useContext, useSyncExternalStore } from 'react';
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

/** A piece of the view; the component draws again only when that piece is another one. */
export function useView<T>(select: (view: NotebookView) => T): T {
  const store = useNotebook();
  return useSyncExternalStore(store.subscribe, () => select(store.getState()));
}

export function useRecords<K extends RecordKind>(kind: K): NotebookState[K] {
  return useView((view) => view.state[kind]);
}

export function useRecord<K extends RecordKind>(kind: K, id: string | undefined): RecordOf<K> | undefined {
  return useView((view) => (id === undefined ? undefined : view.state[kind][id])) as RecordOf<K> | undefined;
}

/** The revision that is chosen, with its prototype. */
export function useChosen():
  | { id: string; revision: Revision; prototype: Prototype; prototypeId: string }
  | undefined {
  const { place } = usePlace();
  const revision = useRecord('revision', place.revision);
  const prototype = useRecord('prototype', revision?.prototype);
  if (!revision || !prototype || place.revision === undefined) return undefined;
  return { id: place.revision, revision, prototype, prototypeId: revision.prototype };
}

function present<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`no ${what} above this component`);
  return value;
}
