/**
 * The lock file of a notebook: one process writes, any number read. It says who holds it, so that the message
 * can, and so that a lock left by a crash is told from a live one on the same computer.
 */
import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { z } from 'zod';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { timeStamp } from './clock.ts';
import { errorCode, type Files } from './files.ts';
import { writeNew } from './write-whole.ts';

const holder = z.object({
  token: z.string(),
  pid: z.number().int(),
  host: z.string(),
  since: z.string(),
  /** When the process began, in words of its system; a reused process number has another one. */
  began: z.string(),
});
type Holder = z.infer<typeof holder>;

/** What the lock has to know of running programs; a test puts its own in place. */
export interface Processes {
  readonly pid: number;
  readonly host: string;
  isAlive(pid: number): boolean;
  /** Empty where the system does not say. */
  began(pid: number): string;
  wait(milliseconds: number): Promise<unknown>;
}

export interface Lock {
  /** Whether the lock file is still this one. */
  isHeld(): Promise<boolean>;
  release(): Promise<void>;
}

/** Tokens that this very process holds: after a crash another process may have the same number. */
const ours = new Set<string>();

/** Takes the lock of the folder, or says who has it (`notebook.locked`). @throws when the folder cannot be written */
export async function takeLock(
  files: Files,
  folder: string,
  now: Date,
  processes: Processes = thisComputer,
): Promise<Result<Lock>> {
  const path = join(folder, 'lock');
  const self: Holder = {
    token: randomUUID(),
    pid: processes.pid,
    host: processes.host,
    since: timeStamp(now),
    began: processes.began(processes.pid),
  };
  let patience = 5;
  for (let attempt = 0; attempt < 20; attempt++) {
    try {
      await writeNew(files, path, Buffer.from(`${JSON.stringify(self)}\n`));
      ours.add(self.token);
      return good(lockOf(files, path, self.token));
    } catch (error) {
      if (errorCode(error) !== 'EEXIST') throw error;
    }
    const other = await readHolder(files, path);
    if (other === 'gone') continue;
    if (other === 'unreadable' && patience-- > 0) {
      await processes.wait(100); // perhaps it is just being written
    } else {
      if (!isStale(other, processes)) return held(other);
      await moveAway(files, path, other);
    }
  }
  return held(await readHolder(files, path));
}

function lockOf(files: Files, path: string, token: string): Lock {
  const isHeld = async (): Promise<boolean> => {
    const other = await readHolder(files, path);
    return typeof other === 'object' && other.token === token;
  };
  return {
    isHeld,
    async release() {
      if (!ours.delete(token)) return;
      if (await isHeld()) await files.remove(path).catch(() => undefined);
    },
  };
}

function isStale(other: Holder | 'unreadable', processes: Processes): boolean {
  // Written in one piece of some hundred bytes: what stays unreadable was cut short by a crash.
  if (other === 'unreadable') return true;
  if (other.host !== processes.host) return false; // nobody can tell from here
  if (other.pid === processes.pid) return !ours.has(other.token);
  if (!processes.isAlive(other.pid)) return true;
  const began = processes.began(other.pid);
  return began !== '' && other.began !== '' && began !== other.began;
}

/**
 * Removes a stale lock. Two processes may find the same one: the renaming lets one of them win, and what was
 * renamed is looked at again, so that a lock taken in between is put back.
 */
async function moveAway(files: Files, path: string, seen: Holder | 'unreadable'): Promise<void> {
  const aside = `${path}.stale-${randomUUID()}`;
  try {
    await files.rename(path, aside);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return;
    throw error;
  }
  const moved = await readHolder(files, aside);
  const same =
    seen === 'unreadable' ? moved === seen : typeof moved === 'object' && moved.token === seen.token;
  if (same) await files.remove(aside);
  else await files.rename(aside, path);
}

async function readHolder(files: Files, path: string): Promise<Holder | 'unreadable' | 'gone'> {
  try {
    const parsed = holder.safeParse(JSON.parse(Buffer.from(await files.read(path)).toString('utf8')));
    return parsed.success ? parsed.data : 'unreadable';
  } catch (error) {
    return errorCode(error) === 'ENOENT' ? 'gone' : 'unreadable';
  }
}

function held(other: Holder | 'unreadable' | 'gone'): { ok: false; problem: Problem } {
  const known = typeof other === 'object' ? other : { pid: '?', host: '?', since: '?' };
  const { pid, host, since } = known;
  const result = bad('notebook.locked', 'Notebook', { pid, host, since });
  return result as { ok: false; problem: Problem };
}

/** The computer that this runs on. */
export const thisComputer: Processes = {
  pid: process.pid,
  host: hostname(),
  isAlive(pid) {
    try {
      process.kill(pid, 0); // asks only whether it is there
      return true;
    } catch (error) {
      return errorCode(error) !== 'ESRCH';
    }
  },
  began(pid) {
    if (process.platform !== 'linux') return '';
    try {
      const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
      const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
      // Field 22, counted after the bracketed name of the program, which may itself hold spaces.
      return `${boot} ${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? ''}`;
    } catch {
      return '';
    }
  },
  wait: (milliseconds) => pause(milliseconds),
};
