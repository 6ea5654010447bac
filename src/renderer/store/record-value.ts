/** Setting one value of a record, and only when it is another one. */
import { type Json, type RecordKind, type Setting, valueAt } from '../../notebook/index.ts';
import type { NotebookStore } from './notebook-store.ts';

/** An absent value removes the path. */
export function setting(path: string, value: Json | undefined): Setting {
  return value === undefined ? { path } : { path, value };
}

export function recordValue(
  store: NotebookStore,
  kind: RecordKind,
  id: string,
  path: string,
  value: Json | undefined,
): void {
  const before = valueAt(store.getState().recorded[kind][id] as Json, path);
  if (JSON.stringify(before) === JSON.stringify(value)) {
    store.dropPreview();
    return;
  }
  store.change([{ op: 'set', kind, id, set: [setting(path, value)] }]);
}
