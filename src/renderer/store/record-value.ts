/** Setting one value of a record, and only when it is another one. */
import { type Json, type RecordKind, type Setting, valueAt } from '../../notebook/index.ts';
import { good, type Result } from '../../quantity/index.ts';
import type { NotebookStore } from './notebook-store.ts';

/** An absent value removes the path. */
export function setting(path: string, value: Json | undefined): Setting {
  return value === undefined ? { path } : { path, value };
}

/** A value that cannot be recorded is told by the store, and given back for a page that has a better place for it. */
export function recordValue(
  store: NotebookStore,
  kind: RecordKind,
  id: string,
  path: string,
  value: Json | undefined,
): Result<null> {
  const before = valueAt(store.getState().recorded[kind][id] as Json | undefined, path);
  if (JSON.stringify(before) === JSON.stringify(value)) {
    store.dropPreview();
    return good(null);
  }
  const recorded = store.change([{ op: 'set', kind, id, set: [setting(path, value)] }]);
  if (!recorded.ok) store.tell(recorded.problem);
  return recorded;
}
