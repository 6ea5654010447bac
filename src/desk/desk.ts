/** The desk that the window works at: one function a channel, over notebooks that windows share. */
import { randomUUID } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Desk, NotebookListing, OpenNotebook, Outcome } from '../preload/index.ts';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { timeStamp } from './clock.ts';
import { listCopies } from './copies.ts';
import { copyKeeper } from './copy-keeper.ts';
import { fileReason, nodeFiles } from './files.ts';
import { notebookName } from './names.ts';
import { createNotebook, type Ground, type NotebookFolder, openNotebook } from './notebook-folder.ts';
import { restoreNotebook } from './restore.ts';
import { readSettings, writeSettings } from './settings.ts';
import { verify } from './verify.ts';

export interface DeskSpec extends Ground {
  /** Folder of the notebooks and the settings; made when it is not there. */
  readonly home: string;
  /** Writes the demo notebook as a new folder. */
  readonly demo?: (folder: string) => Promise<Result<unknown>>;
  /** Asks the person where to save, and saves; absent where the window does that by itself. */
  readonly saveFile?: (suggestedName: string, bytes: Uint8Array) => Promise<Outcome<string | null>>;
}

export interface OpenDesk {
  readonly handlers: Desk;
  /** Closes every notebook and gives the locks back. */
  closeAll(): Promise<void>;
}

/** `COUNTERPOISE_HOME`, or the folder Counterpoise in the person's own folder. */
export function homeFolder(environment: Readonly<Record<string, string | undefined>> = process.env): string {
  const chosen = environment.COUNTERPOISE_HOME;
  return chosen === undefined || chosen === '' ? join(homedir(), 'Counterpoise') : resolve(chosen);
}

export function deskHandlers(spec: DeskSpec): OpenDesk {
  const { files = nodeFiles, home } = spec;
  /** Windows of one process share a notebook: the lock is the process's, the sequence numbers keep them apart. */
  const shared = new Map<string, NotebookFolder>();
  const sessions = new Map<string, string>(); // session -> name
  let queue: Promise<unknown> = Promise.resolve();
  const keeper = copyKeeper(files, spec.now ?? (() => new Date()), async () => {
    const read = await readSettings(files, home);
    return read.ok ? read.value.copiesFolder : '';
  });

  /** Opening and closing happen one after the other, so that two windows never open one notebook twice. */
  function inTurn<T>(task: () => Promise<T>): Promise<T> {
    const result = queue.then(task);
    queue = result.catch(() => undefined);
    return result;
  }

  async function open(name: string): Promise<Result<OpenNotebook>> {
    let notebook = shared.get(name);
    if (notebook?.readOnly) {
      await drop(name); // whatever stood in the way may be gone by now
      notebook = undefined;
    }
    if (notebook === undefined) {
      const opened = await openNotebook(join(home, name), spec);
      if (!opened.ok) return opened;
      notebook = opened.value;
      shared.set(name, notebook);
      if (!notebook.readOnly) keeper.consider(notebook.folder);
    }
    const session = randomUUID();
    sessions.set(session, name);
    const { id, entries, readOnly, problems, generation } = notebook;
    return good({ session, name, id, entries: [...entries], readOnly, problems, generation });
  }

  async function drop(name: string): Promise<void> {
    const notebook = shared.get(name);
    shared.delete(name);
    for (const [session, other] of sessions) if (other === name) sessions.delete(session);
    await notebook?.close();
  }

  async function close(session: string): Promise<void> {
    const name = sessions.get(session);
    sessions.delete(session);
    if (name !== undefined && ![...sessions.values()].includes(name)) await drop(name);
  }

  function at<T>(session: string, use: (notebook: NotebookFolder) => Promise<Result<T>>): Promise<Result<T>> {
    const notebook = shared.get(sessions.get(session) ?? '');
    return notebook === undefined ? Promise.resolve({ ok: false, problem: notOpen }) : use(notebook);
  }

  async function fresh(
    typed: string,
    write: (folder: string, name: string) => Promise<Result<unknown>>,
  ): Promise<Result<OpenNotebook>> {
    const named = notebookName(typed);
    if (!named.ok) return named;
    const written = await write(join(home, named.value), named.value);
    return written.ok ? open(named.value) : written;
  }

  const handlers: Desk = {
    'settings.read': () => readSettings(files, home),
    'settings.write': (chosen) => withHome(() => writeSettings(files, home, chosen)),
    'notebooks.list': () => withHome(listNotebooks),
    'notebook.create': ({ name, author }) =>
      inTurn(() =>
        withHome(() => fresh(name, (folder, shown) => createNotebook(folder, { name: shown, author }, spec))),
      ),
    'notebook.demo': () =>
      inTurn(() =>
        withHome(async () => {
          const { demo } = spec;
          if (demo === undefined) return bad('desk.no-demo', 'Demo notebook');
          return fresh(await freeName('Demo'), demo);
        }),
      ),
    'notebook.open': ({ name }) =>
      inTurn(async () => {
        const named = notebookName(name);
        return named.ok ? open(named.value) : named;
      }),
    'notebook.append': ({ session, after, by, changes }) =>
      at(session, async (notebook) => {
        const added = await notebook.append(after, by, changes);
        if (added.ok) keeper.consider(notebook.folder);
        return added;
      }),
    'notebook.close': ({ session }) =>
      inTurn(async () => {
        await close(session);
        return good(null);
      }),
    'notebook.verify': ({ session }) => at(session, ({ folder }) => verify(folder, spec)),
    'copies.list': async () => {
      const chosen = await readSettings(files, home);
      if (!chosen.ok) return chosen;
      const { copiesFolder: folder } = chosen.value;
      const copies = folder === '' ? good([]) : await listCopies(files, folder);
      if (!copies.ok) return copies;
      const { failure } = keeper;
      return good({ folder, copies: copies.value, ...(failure ? { failure } : {}) });
    },
    'copies.make': ({ session }) =>
      at(session, (notebook) =>
        withCopiesFolder((copiesFolder) => keeper.make(notebook.folder, copiesFolder)),
      ),
    'copies.restore': ({ shelf, file, name }) =>
      inTurn(() =>
        withHome(() =>
          withCopiesFolder(async (copiesFolder) => {
            const listed = await listCopies(files, copiesFolder);
            if (!listed.ok) return listed;
            // Only what was found in the folder is a copy, whatever else the names could lead to.
            const copy = listed.value.find((each) => each.shelf === shelf && each.file === file);
            if (copy === undefined) return bad('copies.not-found', 'Copy', { name: file });
            return fresh(name, (folder) => restoreNotebook(join(copiesFolder, shelf, file), folder, spec));
          }),
        ),
      ),
    'attachment.add': ({ session, bytes }) => at(session, (notebook) => notebook.addAttachment(bytes)),
    'attachment.read': ({ session, sha256 }) => at(session, (notebook) => notebook.readAttachment(sha256)),
    'file.save': async ({ suggestedName, bytes }) =>
      spec.saveFile === undefined
        ? bad('desk.bad-request', 'Saving a file', { detail: 'the window saves files by itself here' })
        : spec.saveFile(suggestedName, bytes),
  };

  async function withHome<T>(task: () => Promise<Result<T>>): Promise<Result<T>> {
    try {
      if ((await files.facts(home)) === undefined) await mkdir(home, { recursive: true });
    } catch (error) {
      return bad('file.failed', home, { detail: fileReason(error) });
    }
    return task();
  }

  async function withCopiesFolder<T>(task: (folder: string) => Promise<Result<T>>): Promise<Result<T>> {
    const chosen = await readSettings(files, home);
    if (!chosen.ok) return chosen;
    const { copiesFolder } = chosen.value;
    return copiesFolder === '' ? bad('copies.no-folder', 'Copies') : task(copiesFolder);
  }

  async function listNotebooks(): Promise<Result<readonly NotebookListing[]>> {
    const found: NotebookListing[] = [];
    try {
      for (const name of await files.list(home)) {
        if (!notebookName(name).ok) continue;
        const facts = await files.facts(join(home, name, 'journal.jsonl')).catch(() => undefined);
        if (facts?.kind === 'file') found.push({ name, changedAt: timeStamp(facts.changedAt) });
      }
    } catch (error) {
      return bad('file.failed', home, { detail: fileReason(error) });
    }
    return good(found.sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true })));
  }

  async function freeName(stem: string): Promise<string> {
    for (let number = 1; ; number++) {
      const name = number === 1 ? stem : `${stem} ${number}`;
      if ((await files.facts(join(home, name))) === undefined) return name;
    }
  }

  return {
    handlers,
    closeAll: () =>
      inTurn(async () => {
        for (const name of [...shared.keys()]) await drop(name);
        await keeper.settled();
      }),
  };
}

const notOpen: Problem = { code: 'notebook.not-open', place: 'Notebook', figures: {} };
