/** Which records of a notebook belong to a prototype. */
import type { Attachment, NotebookState, Revision } from '../notebook/index.ts';

/** Records by id that belong to the prototype, in the order in which they were made. */
export function ofPrototype<T extends { readonly prototype: string }>(
  records: Readonly<Record<string, T>>,
  prototypeId: string,
): readonly (readonly [id: string, record: T])[] {
  return Object.entries(records).filter(([, { prototype }]) => prototype === prototypeId);
}

export function newestRevision(
  state: NotebookState,
  prototypeId: string,
): { readonly id: string; readonly revision: Revision } | undefined {
  const [id, revision] = ofPrototype(state.revision, prototypeId).at(-1) ?? [];
  return id !== undefined && revision ? { id, revision } : undefined;
}

/** The records of one prototype as a state of their own, with the notebook’s own record. */
export function stateOfPrototype(state: NotebookState, prototypeId: string): NotebookState {
  const own = <T extends { readonly prototype: string }>(records: Readonly<Record<string, T>>) =>
    Object.fromEntries(ofPrototype(records, prototypeId));
  const prototype = state.prototype[prototypeId];
  return {
    notebook: state.notebook,
    prototype: prototype ? { [prototypeId]: prototype } : {},
    revision: own(state.revision),
    entry: own(state.entry),
    card: own(state.card),
    run: own(state.run),
    failure: own(state.failure),
  };
}

/** Attachments of log entries, runs and failures, each content once, in the order of their records. */
export function attachmentsOf(state: NotebookState, prototypeId: string): readonly Attachment[] {
  const holders = [state.entry, state.run, state.failure].flatMap((records) =>
    ofPrototype<{ readonly prototype: string; readonly attachments: Readonly<Record<string, Attachment>> }>(
      records,
      prototypeId,
    ),
  );
  const found = new Map<string, Attachment>();
  for (const [, { attachments }] of holders) {
    for (const attachment of Object.values(attachments).sort((a, b) => a.order - b.order)) {
      if (!found.has(attachment.sha256)) found.set(attachment.sha256, attachment);
    }
  }
  return [...found.values()];
}
