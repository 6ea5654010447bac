/**
 * A notebook as it is after years, the same each time: the demo's records over and over under names of their own.
 * Each log entry is made empty and then written, each run is made and then answered item by item, so that the journal
 * has as many lines, and lines as long, as people's work would give it.
 *
 *     npx tsx tests/bench/large-notebook.ts FOLDER     writes it as a new notebook
 */
import { pathToFileURL } from 'node:url';
import { createNotebook } from '../../src/desk/index.ts';
import {
  type Change,
  create,
  type JournalEntry,
  type Json,
  revisionLetter,
  set,
} from '../../src/notebook/index.ts';
import { sentence } from '../../src/quantity/index.ts';
import { entries as demo, state as demoState } from '../specimen/demo.ts';

export interface Size {
  /** Log entries. */
  readonly entries: number;
  readonly revisions: number;
  readonly runs: number;
}

export const years: Size = { entries: 10_000, revisions: 200, runs: 2_000 };
const PROTOTYPES = 5;
const BEGIN = Date.UTC(2026, 0, 5, 8);
const WRITING =
  'Turned the rim down by 0.1 mm and weighed it again; it drifts to the left on the cold bench. ';

/** In the order of the journal; sequence numbers follow from it. */
export function largeNotebook({ entries, revisions, runs }: Size = years): Omit<JournalEntry, 'seq'>[] {
  const journal: Omit<JournalEntry, 'seq'>[] = [];
  const record = (change: Change): void => {
    const at = new Date(BEGIN + journal.length * 60_000).toISOString().replace('Z', '+00:00');
    journal.push({ at, by: journal.length % 3 === 0 ? 'Jo' : 'Ines Okafor', change });
  };
  const at = (): string => new Date(BEGIN + journal.length * 60_000).toISOString();
  const [prototype] = Object.values(demoState.prototype);
  const revision = Object.values(demoState.revision).at(-1);
  const [card] = Object.values(demoState.card);
  const runIds = Object.keys(demoState.run);
  if (!prototype || !revision || !card || runIds.length === 0)
    throw new Error('the demo has too little in it');

  record(create('notebook', 'notebook', { name: 'Years', createdAt: at() }));
  for (let number = 1; number <= PROTOTYPES; number++) {
    record(create('prototype', `prototype-${number}`, { ...prototype, name: `${prototype.name} ${number}` }));
  }
  let entry = 0;
  let run = 0;
  for (let number = 1; number <= revisions; number++) {
    const place = {
      prototype: `prototype-${((number - 1) % PROTOTYPES) + 1}`,
      revision: `revision-${number}`,
    };
    const { issuedAt: _at, issuedBy: _by, from: _from, ...body } = revision;
    const letter = revisionLetter(Math.ceil(number / PROTOTYPES));
    record(
      create('revision', place.revision, {
        ...body,
        prototype: place.prototype,
        letter,
        status: 'draft',
        reason: `Change ${number}.`,
        createdAt: at(),
      }),
    );
    record(create('card', `card-${number}`, { ...card, ...place, number }));
    for (; entry < Math.round((entries * number) / revisions); entry++) {
      const id = `entry-${String(entry + 1).padStart(12, '0')}`;
      record(
        create('entry', id, { ...place, number: entry + 1, title: '', at: at(), author: 'Jo', text: '' }),
      );
      record(set('entry', id, { title: `Day ${entry + 1}`, text: WRITING.repeat(1 + (entry % 8)) }));
    }
    for (; run < Math.round((runs * number) / revisions); run++) {
      const id = `run-${String(run + 1).padStart(12, '0')}`;
      for (const change of story(runIds[run % runIds.length] ?? '')) {
        record(
          change.op === 'create'
            ? {
                ...change,
                id,
                value: {
                  ...(change.value as object),
                  ...place,
                  card: `card-${number}`,
                  number: run + 1,
                } as Json,
              }
            : { ...change, id },
        );
      }
    }
    if (number > revisions - PROTOTYPES) continue; // the newest of each prototype is still being worked on
    record(set('revision', place.revision, { status: 'issued', issuedAt: at(), issuedBy: 'Jo' }));
  }
  return journal;
}

/** What the demo's journal says of one run, from its making to its signature. */
function story(id: string): readonly Change[] {
  return demo.flatMap(({ change }) => (change.kind === 'run' && change.id === id ? [change] : []));
}

const [, script, folder] = process.argv;
if (script !== undefined && import.meta.url === pathToFileURL(script).href) {
  if (folder === undefined) throw new Error('name a FOLDER, which must not exist yet');
  const made = await createNotebook(folder, { author: 'Jo', entries: largeNotebook() });
  if (!made.ok) throw new Error(sentence(made.problem));
  console.log(`wrote ${folder}`);
}
