/** `dossier`: a design handed over as one file, a received one verified, and taken in as a notebook of its own. */
import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  attachmentPath,
  errorCode,
  fileReason,
  nodeFiles,
  receiveNotebook,
  writeWhole,
} from '../desk/index.ts';
import {
  archiveLimits,
  type Differences,
  type Dossier,
  differencesOf,
  readDossier,
  shownName,
} from '../dossier/index.ts';
import { writeDossier } from '../dossier/write.ts';
import { readFonts } from './fonts.ts';
import { findPrototype, readNotebook } from './notebook.ts';
import type { Command } from './run.ts';
import { DAMAGED, type ExitCode, GOOD, line, NO, Stop, stopAt, type Terminal, USAGE } from './terminal.ts';

type Options = Readonly<Record<string, string | undefined>>;

export const dossierCommand: Command = {
  usage: [
    'NOTEBOOK --out FILE.zip [--prototype P] [--letter]',
    '--verify FILE.zip [--against NOTEBOOK]',
    '--receive FILE.zip --into FOLDER',
  ],
  summary:
    'Says what your collaborator will ask, then writes the dossier of a prototype: one ZIP file, a BagIt bag, with ' +
    'reports, tables, records, files and the journal. --verify checks a received one from end to end and says what ' +
    'it holds and, with --against, what differs from your own notebook. --receive does the same and makes a new ' +
    'notebook FOLDER of it, whole or not at all.',
  options: {
    out: { type: 'string' },
    prototype: { type: 'string' },
    letter: { type: 'boolean' },
    verify: { type: 'string' },
    against: { type: 'string' },
    receive: { type: 'string' },
    into: { type: 'string' },
  },
  async run(words, options, terminal) {
    const { out, prototype, verify, against, receive, into } = options as Options;
    const [notebook, ...extra] = words;
    const asked = [out, verify, receive].filter((option) => option !== undefined).length;
    const misplaced =
      (against !== undefined && verify === undefined) ||
      (into === undefined) !== (receive === undefined) ||
      ((prototype !== undefined || options.letter === true) && out === undefined) ||
      (notebook === undefined) !== (out === undefined);
    if (asked !== 1 || extra.length > 0 || misplaced) {
      throw new Stop(
        USAGE,
        'dossier takes: NOTEBOOK --out FILE.zip, or: --verify FILE.zip, or: --receive FILE.zip --into FOLDER.',
      );
    }
    if (verify !== undefined) return verifyDossier(verify, against, terminal);
    if (receive !== undefined) return receiveDossier(receive, into ?? '', terminal);
    return write(notebook ?? '', out ?? '', prototype, options.letter === true, terminal);
  },
};

async function write(
  folder: string,
  out: string,
  prototypeName: string | undefined,
  onLetter: boolean,
  terminal: Terminal,
): Promise<ExitCode> {
  const { journal, state } = await readNotebook(folder, terminal);
  const { prototypeId } = findPrototype(state, prototypeName);
  const written = await writeDossier({
    journal,
    prototypeId,
    attachment: (sha256) => readFile(attachmentPath(folder, sha256)).catch(() => undefined),
    fonts: await readFonts(),
    paper: onLetter ? 'Letter' : 'A4',
  });
  if (!written.ok) throw stopAt(NO, written.problem);
  const { questions, bytes, description } = written.value;
  if (questions.length > 0) terminal.out(line('Your collaborator will ask:'));
  for (const { kind, text } of questions) terminal.out(line(`- ${kind}: ${shownText(text)}`));
  try {
    await writeWhole(nodeFiles, resolve(out), bytes);
  } catch (error) {
    throw new Stop(DAMAGED, `${out}: cannot be written (${fileReason(error)}). Name another place.`);
  }
  terminal.out(line(`Wrote ${out}: ${bytes.length} bytes, head of the journal ${description.head}`));
  return GOOD;
}

async function readVerified(file: string): Promise<Dossier> {
  let bytes: Uint8Array;
  try {
    const { size } = await stat(file);
    if (size > archiveLimits.packed) {
      throw new Stop(DAMAGED, `${file}: ${size} bytes are more than a dossier has. Nothing was taken in.`);
    }
    bytes = await readFile(file);
  } catch (error) {
    if (error instanceof Stop) throw error;
    const isMissing = errorCode(error) === 'ENOENT';
    throw new Stop(
      isMissing ? USAGE : DAMAGED,
      `${file}: cannot be read (${fileReason(error)}). Name the file of a dossier.`,
    );
  }
  const read = readDossier(bytes);
  if (!read.ok) throw stopAt(DAMAGED, read.problem);
  return read.value;
}

async function verifyDossier(
  file: string,
  against: string | undefined,
  terminal: Terminal,
): Promise<ExitCode> {
  const dossier = await readVerified(file);
  tellHoldings(dossier, terminal);
  if (against !== undefined) {
    const { id, entries, state } = await readNotebook(against, terminal);
    const theirs = { notebook: dossier.description.notebook, entries: dossier.entries, state: dossier.state };
    tellDifferences(differencesOf(theirs, { notebook: id, entries, state }), terminal);
  }
  terminal.out(line(`${file}: sound`));
  return GOOD;
}

async function receiveDossier(file: string, into: string, terminal: Terminal): Promise<ExitCode> {
  const dossier = await readVerified(file);
  tellHoldings(dossier, terminal);
  const received = await receiveNotebook(resolve(into), dossier);
  if (!received.ok) {
    const named = ['dossier.into-existing', 'notebook.bad-name'].includes(received.problem.code);
    throw stopAt(named ? USAGE : DAMAGED, received.problem);
  }
  terminal.out(line(`Received ${dossier.entries.length} entries into ${into}`));
  return dossier.missing.length > 0 ? NO : GOOD;
}

function tellHoldings(dossier: Dossier, terminal: Terminal): void {
  const { description, head, entries, state, attachments, missing, warnings } = dossier;
  const { prototype, notebook, at, by } = description;
  terminal.out(line(`dossier of “${shownName(prototype.name)}”, made from notebook ${shownName(notebook)}`));
  terminal.out(line(`journal: ${entries.length} entries, the newest ${shownName(at)} by ${shownName(by)}`));
  terminal.out(line(`head: ${head}`));
  const counts = Object.entries(state).map(([kind, records]) => `${Object.keys(records).length} ${kind}`);
  terminal.out(line(`records: ${counts.join(', ')}`));
  terminal.out(line(`attached files: ${attachments.size}`));
  for (const { name, sha256 } of missing) {
    terminal.err(`the sender did not have the file “${shownName(name)}” (${sha256.slice(0, 12)})\n`);
  }
  for (const warning of warnings) terminal.err(`note: ${shownText(warning)}\n`);
}

function tellDifferences(differences: Differences, terminal: Terminal): void {
  const { relation, common, onlyTheirs, onlyYours, records } = differences;
  terminal.out(
    line(
      `against yours: ${relation}; ${common} entries in common, ${onlyTheirs} only theirs, ${onlyYours} only yours`,
    ),
  );
  for (const { kind, id, how } of records) terminal.out(line(`${how}: ${kind} ${shownName(id)}`));
}

/** Words out of somebody’s records, on one line and without characters that a terminal obeys. */
function shownText(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, ' ');
}
