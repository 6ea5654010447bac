/**
 * What the window may ask of the desk: one record of channels with the schema of what goes in. The Electron
 * preload and the loopback host both carry exactly this; the renderer imports its types and nothing else.
 */
import { z } from 'zod';
import { change, type JournalEntry, type RecordKind } from '../notebook/index.ts';
import type { Problem } from '../quantity/index.ts';

const session = z.string().min(1).max(64);
const notebookName = z.string().min(1).max(120);
const bytes = z.instanceof(Uint8Array);

export const settings = z.strictObject({
  author: z.string().max(120).default(''),
  theme: z.enum(['system', 'light', 'dark', 'high contrast']).default('system'),
  paper: z.enum(['A4', 'Letter']).default('A4'),
  /** Whole path of the folder for automatic copies; empty for none. */
  copiesFolder: z.string().max(1000).default(''),
});
export type Settings = z.infer<typeof settings>;

export const channels = {
  'settings.read': z.strictObject({}),
  'settings.write': settings,
  'notebooks.list': z.strictObject({}),
  'notebook.create': z.strictObject({ name: notebookName, author: z.string().max(120) }),
  /** Writes the demo notebook beside the others, under a name not yet taken, and opens it. */
  'notebook.demo': z.strictObject({}),
  'notebook.open': z.strictObject({ name: notebookName }),
  'notebook.append': z.strictObject({
    session,
    /** Sequence number of the last entry that the window knows; another one is refused, not overwritten. */
    after: z.number().int().nonnegative(),
    by: z.string().max(120),
    changes: z.array(change).min(1).max(1000),
  }),
  'notebook.close': z.strictObject({ session }),
  /** Reads every line of the journal and every attachment; changes nothing. */
  'notebook.verify': z.strictObject({ session }),
  'copies.list': z.strictObject({}),
  /** Now, and not only when the next one is due. */
  'copies.make': z.strictObject({ session }),
  /** Makes a new notebook from a copy that `copies.list` named, and opens it. */
  'copies.restore': z.strictObject({
    shelf: z.string().min(1).max(300),
    file: z.string().min(1).max(100),
    name: notebookName,
  }),
  'attachment.add': z.strictObject({ session, bytes }),
  'attachment.read': z.strictObject({ session, sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
  /** Asks the person where; null when they decide against it. */
  'file.save': z.strictObject({ suggestedName: z.string().min(1).max(200), bytes }),
} as const;

export type Channel = keyof typeof channels;
export type Arguments<C extends Channel> = z.infer<(typeof channels)[C]>;

export interface NotebookListing {
  readonly name: string;
  /** RFC 3339. */
  readonly changedAt: string;
}

export interface OpenNotebook {
  readonly session: string;
  readonly name: string;
  /** Identity of the notebook, kept in the first line of its journal. */
  readonly id: string;
  readonly entries: readonly JournalEntry[];
  /** Set when the journal is damaged or the folder cannot be written; the notebook can be read, not changed. */
  readonly readOnly: boolean;
  /** What was found and done while opening: a torn last line set aside, a damaged line, a missing attachment. */
  readonly problems: readonly Problem[];
  /** Name part of the working copy; another one means that the old copy is to be thrown away. */
  readonly generation: number;
}

/** What was found by reading a notebook from end to end. */
export interface Verification {
  readonly name: string;
  /** Identity of the notebook, from the first line of its journal. */
  readonly id: string;
  /** Sound lines of the journal, the heading included. */
  readonly lines: number;
  readonly entries: number;
  /** SHA-256 of the last sound line: two copies with the same one are the same up to there. */
  readonly head: string;
  readonly chain: 'whole' | 'torn at the end' | 'damaged';
  /** Attachments that records name, and those of them that are there with the right content. */
  readonly attachments: { readonly named: number; readonly sound: number };
  readonly records: RecordCounts;
  /** Everything that is wrong, in the order in which it was found; empty in a sound notebook. */
  readonly problems: readonly Problem[];
}

export type RecordCounts = Readonly<Record<RecordKind, number>>;

/** One copy in the folder for copies: a whole journal on the shelf of its notebook. */
export interface CopyListing {
  readonly shelf: string;
  readonly file: string;
  /** Of the notebook, when it was first copied. */
  readonly name: string;
  /** RFC 3339, UTC. */
  readonly at: string;
  /** Bytes of the journal. */
  readonly size: number;
}

export interface CopyMade {
  readonly copy: CopyListing;
  /** False where nothing had changed since the newest copy, which is given then. */
  readonly isNew: boolean;
  readonly problems: readonly Problem[];
}

export interface Copies {
  /** As chosen in the settings; empty for none. */
  readonly folder: string;
  /** The newest first. */
  readonly copies: readonly CopyListing[];
  /** Why the last automatic copy failed, until one succeeds. */
  readonly failure?: Problem;
}

export interface Results {
  'settings.read': Settings;
  'settings.write': Settings;
  'notebooks.list': readonly NotebookListing[];
  'notebook.create': OpenNotebook;
  'notebook.demo': OpenNotebook;
  'notebook.open': OpenNotebook;
  /** The new entries, on the medium before this is answered. */
  'notebook.append': readonly JournalEntry[];
  'notebook.close': null;
  'notebook.verify': Verification;
  'copies.list': Copies;
  'copies.make': CopyMade;
  'copies.restore': OpenNotebook;
  'attachment.add': { readonly sha256: string; readonly size: number };
  'attachment.read': Uint8Array;
  'file.save': string | null;
}

/** Outcomes cross the bridge as values; a problem never becomes a bare exception. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem };

export type Desk = {
  readonly [C in Channel]: (args: Arguments<C>) => Promise<Outcome<Results[C]>>;
};

/** What the place that shows the window can do besides. */
export interface Surroundings {
  readonly kind: 'electron' | 'browser';
  readonly version: string;
}

declare global {
  interface Window {
    readonly counterpoise?: { readonly desk: Desk; readonly surroundings: Surroundings };
  }
}
