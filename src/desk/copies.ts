/**
 * Copies of a notebook in a folder that the person chose, best on another disk: for each notebook a shelf with whole
 * journals, each under its time and head, and one set of attachments beside them. A copy is read back before it counts.
 */
import { basename, dirname, join } from 'node:path';
import type { CopyListing, CopyMade } from '../preload/index.ts';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { attachmentPath, hashOf } from './attachments.ts';
import { type Chain, followChain } from './chain.ts';
import { fileStamp } from './clock.ts';
import { type Files, fileReason } from './files.ts';
import { readHeading } from './journal-line.ts';
import { journalName } from './notebook-folder.ts';
import { timesKept } from './ring.ts';
import { ensureFolder, writeWhole } from './write-whole.ts';

const shelfForm = /^(.+) ([0-9a-f]{8})$/;
const fileForm = /^journal-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z-([0-9a-f]{12})\.jsonl$/;
const hashForm = /^[0-9a-f]{64}$/;

/** All copies in the folder, of every notebook or of the one with this identity, the newest first. */
export async function listCopies(
  files: Files,
  copiesFolder: string,
  id?: string,
): Promise<Result<readonly CopyListing[]>> {
  try {
    const wanted = id === undefined ? undefined : shelfMark(id);
    const shelves = (await files.list(copiesFolder)).filter((name) => {
      const mark = shelfForm.exec(name)?.[2];
      return mark !== undefined && (wanted ?? mark) === mark;
    });
    const found = await Promise.all(shelves.map((shelf) => onShelf(files, copiesFolder, shelf)));
    return good(found.flat().sort(newestFirst));
  } catch (error) {
    return failed(copiesFolder, fileReason(error));
  }
}

/**
 * Copies the notebook as it is on the disk, its journal up to the last whole group, unless nothing has changed since
 * the newest copy. Reads only; may run while the notebook is written.
 * @param copiesFolder  has to be there: a disk that is not plugged in must not get a folder in its place
 */
export async function makeCopy(
  files: Files,
  folder: string,
  copiesFolder: string,
  now: Date,
): Promise<Result<CopyMade>> {
  try {
    const bytes = await files.read(join(folder, journalName));
    const heading = readHeading(bytes.subarray(0, Math.max(0, bytes.indexOf(10))));
    if (!heading.ok) return heading;
    const chain = await followChain(bytes);
    if (chain.damagedLine !== undefined) {
      return failed(copiesFolder, `line ${chain.damagedLine} of the journal is damaged; earlier copies stay`);
    }
    if ((await files.facts(copiesFolder))?.kind !== 'folder')
      return failed(copiesFolder, 'the folder is not there');
    const shelf = await shelfOf(files, copiesFolder, heading.value.heading.notebook, basename(folder));
    const before = (await onShelf(files, copiesFolder, shelf).catch(() => [])).sort(newestFirst);
    await ensureFolder(files, join(copiesFolder, shelf));
    const problems = await copyAttachments(files, folder, join(copiesFolder, shelf));
    const [newest] = before;
    if (newest !== undefined && headOf(newest.file) === chain.head.slice(0, 12)) {
      return good({ copy: newest, isNew: false, problems });
    }
    const file = `journal-${fileStamp(now)}-${chain.head.slice(0, 12)}.jsonl`;
    await writeAndReadBack(files, join(copiesFolder, shelf, file), bytes.subarray(0, chain.length));
    const copy = listing(shelf, file, chain.length);
    if (newest === undefined || continues(chain, newest)) {
      await thinOut(files, copiesFolder, [copy, ...before], now);
    } else {
      const figures = { folder: join(copiesFolder, shelf), at: newest.at };
      problems.push({ code: 'copies.not-continued', place: 'Copies', figures });
    }
    return good({ copy, isNew: true, problems });
  } catch (error) {
    return failed(copiesFolder, fileReason(error));
  }
}

/** Whether everything in the copy is still in the journal. */
function continues(chain: Chain, { file }: CopyListing): boolean {
  return chain.heads.some((head) => head.startsWith(headOf(file)));
}

/** The shelf that the notebook has already, under whatever name it had then, or a new one. */
async function shelfOf(files: Files, copiesFolder: string, id: string, name: string): Promise<string> {
  const mark = shelfMark(id);
  const there = (await files.list(copiesFolder)).find((each) => shelfForm.exec(each)?.[2] === mark);
  return there ?? `${name} ${mark}`;
}

/** Short, and safe as part of a name, whatever the identity is made of. */
function shelfMark(id: string): string {
  return hashOf(Buffer.from(id)).slice(0, 8);
}

async function onShelf(files: Files, copiesFolder: string, shelf: string): Promise<CopyListing[]> {
  const names = (await files.list(join(copiesFolder, shelf))).filter((name) => fileForm.test(name));
  return Promise.all(
    names.map(async (file) => {
      const facts = await files.facts(join(copiesFolder, shelf, file));
      return listing(shelf, file, facts?.size ?? 0);
    }),
  );
}

function listing(shelf: string, file: string, size: number): CopyListing {
  const [, year, month, day, hour, minute, second] = fileForm.exec(file) ?? [];
  const at = `${year}-${month}-${day}T${hour}:${minute}:${second}Z`;
  return { shelf, file, name: shelfForm.exec(shelf)?.[1] ?? shelf, at, size };
}

function headOf(file: string): string {
  return fileForm.exec(file)?.[7] ?? '';
}

function newestFirst(a: CopyListing, b: CopyListing): number {
  return b.at.localeCompare(a.at) || b.size - a.size;
}

/** Each file once, under its hash; what the shelf has stays, because a journal forgets no attachment. */
async function copyAttachments(files: Files, folder: string, shelfFolder: string): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const sha256 of await attachmentsIn(files, folder)) {
    const from = attachmentPath(folder, sha256);
    const to = attachmentPath(shelfFolder, sha256);
    const [source, target] = await Promise.all([files.facts(from), files.facts(to)]);
    if (source?.kind !== 'file' || target?.size === source.size) continue;
    const content = await files.read(from);
    if (hashOf(content) !== sha256) {
      const figures = {
        name: sha256.slice(0, 12),
        sha256: sha256.slice(0, 12),
        detail: 'its content differs',
      };
      problems.push({ code: 'attachment.altered', place: 'Attachment', figures });
      continue;
    }
    await ensureFolder(files, dirname(dirname(to)));
    await ensureFolder(files, dirname(to));
    await writeAndReadBack(files, to, content);
  }
  return problems;
}

async function attachmentsIn(files: Files, folder: string): Promise<readonly string[]> {
  const place = join(folder, 'attachments');
  if ((await files.facts(place))?.kind !== 'folder') return [];
  const found: string[] = [];
  for (const drawer of await files.list(place)) {
    if (!/^[0-9a-f]{2}$/.test(drawer)) continue;
    const names = await files.list(join(place, drawer));
    found.push(...names.filter((name) => hashForm.test(name) && name.startsWith(drawer)));
  }
  return found;
}

/** @throws when the disk gives back anything else than what was written; the file is removed then */
async function writeAndReadBack(files: Files, path: string, bytes: Uint8Array): Promise<void> {
  await writeWhole(files, path, bytes);
  const back = await files.read(path);
  if (Buffer.compare(back, bytes) === 0) return;
  await files.remove(path).catch(() => undefined);
  throw new Error(`${basename(path)} read back is not what was written`);
}

async function thinOut(
  files: Files,
  copiesFolder: string,
  copies: readonly CopyListing[],
  now: Date,
): Promise<void> {
  const kept = new Set(
    timesKept(
      copies.map(({ at }) => Date.parse(at)),
      now.getTime(),
    ),
  );
  for (const { shelf, file, at } of copies) {
    if (!kept.has(Date.parse(at))) await files.remove(join(copiesFolder, shelf, file));
  }
}

function failed<T = never>(folder: string, detail: string): Result<T> {
  return bad('copies.failed', 'Copies', { folder, detail });
}
