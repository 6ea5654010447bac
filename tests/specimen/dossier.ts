/** Notebooks as journals in memory, their dossiers, and ways to spoil them. */
import { seal, sealGroup } from '../../src/desk/journal-line.ts';
import { writeBag } from '../../src/dossier/bag/write-bag.ts';
import { checksum, readZip, writeZip } from '../../src/dossier/index.ts';
import { type DossierSource, type WrittenDossier, writeDossier } from '../../src/dossier/write.ts';
import { type Change, create, type JournalEntry } from '../../src/notebook/index.ts';
import { creations, entriesOf } from '../../src/notebook/sample.ts';
import { readFonts } from '../fonts.ts';

export const NOTEBOOK = '0b6f3c52-6f0e-4f0a-9a53-1d9f4c0f7a11';

/** The bytes of a journal, each entry a group of its own. */
export function journalOf(entries: readonly JournalEntry[], notebook = NOTEBOOK): Uint8Array {
  const heading = seal(
    { format: 'counterpoise journal', version: 1, notebook, createdAt: '2026-03-01T09:00:00.000+01:00' },
    '0'.repeat(64),
  );
  let head = heading.hash;
  const lines = entries.map((entry) => {
    const line = sealGroup([entry], head);
    head = line.hash;
    return line.bytes;
  });
  return new Uint8Array(Buffer.concat([heading.bytes, ...lines]));
}

/** SHA-256 and content of a file that the small notebook has attached. */
export const attachedBytes = new TextEncoder().encode('t_s,lean_deg\n0,1.5\n');
export const attachedSum = checksum('sha256', attachedBytes);

const fonts = readFonts();

export function sourceOf(
  changes: readonly Change[],
  prototypeId: string,
  attachments: ReadonlyMap<string, Uint8Array> = new Map(),
): DossierSource {
  return {
    journal: journalOf(entriesOf(changes)),
    prototypeId,
    attachment: async (sha256) => attachments.get(sha256),
    fonts,
  };
}

/** One record of each kind, apart from the test card and the run, whose reports take their time. */
export const smallChanges: readonly Change[] = [
  creations.notebook,
  creations.prototype,
  creations.revision,
  creations.entry,
  creations.failure,
];

/** @throws Error with the problem where it cannot be written */
export async function written(source: DossierSource): Promise<WrittenDossier> {
  const result = await writeDossier(source);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

/** Files of the payload, by their path in it. */
export function payloadOf(dossier: Uint8Array): Map<string, Uint8Array> {
  const files = readZip(dossier);
  if (!files.ok) throw new Error(JSON.stringify(files.problem));
  const inside = [...files.value].flatMap(([path, content]): [string, Uint8Array][] => {
    const [, name] = /^[^/]+\/data\/(.+)$/.exec(path) ?? [];
    return name === undefined ? [] : [[name, content]];
  });
  return new Map(inside);
}

/** A sound bag of another payload: whoever spoils a dossier can remake its checksums. */
export function bagged(payload: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const bag = writeBag(payload, [['External-Description', 'a specimen']]);
  return writeZip(new Map([...bag].map(([path, content]) => [`specimen/${path}`, content])), '2026-03-01');
}

export function withFile(
  payload: ReadonlyMap<string, Uint8Array>,
  path: string,
  content: string | Uint8Array | undefined,
): Map<string, Uint8Array> {
  const changed = new Map(payload);
  if (content === undefined) changed.delete(path);
  else changed.set(path, typeof content === 'string' ? new TextEncoder().encode(content) : content);
  return changed;
}

/** An entry of the log with one attached file. */
export function attaching(name: string, sha256: string, size: number): Change {
  return create('entry', 'with-file', {
    prototype: 'p',
    revision: 'r',
    number: 2,
    title: 'With a file',
    at: '2026-03-01T09:00:00+01:00',
    author: 'B',
    text: 'See the file.',
    attachments: { a: { name, sha256, mediaType: 'text/csv', size, caption: 'Lean in time', order: 1 } },
  });
}
