/** A desk for this folder's tests: a journal in memory, answered when the test says so. */
import type { Change, JournalEntry } from '../../notebook/index.ts';
import type { Arguments, Desk, OpenNotebook, Outcome } from '../../preload/index.ts';
import { bad, good } from '../../quantity/index.ts';

type Append = Arguments<'notebook.append'>;
type Appended = Outcome<readonly JournalEntry[]>;

export interface FakeDesk {
  readonly desk: Desk;
  /** What was asked, in order. */
  readonly asked: Append[];
  readonly closed: string[];
  readonly journal: JournalEntry[];
  /** Writes what is asked next, refuses it, loses the answer, or goes away. */
  next: 'write' | 'refuse' | 'write and lose the answer' | 'throw';
  /** Set, appends wait for `answer`. */
  slow: boolean;
  answer(): void;
  /** Another window writes. */
  elsewhere(change: Change): void;
  opened(over?: Partial<OpenNotebook>): OpenNotebook;
}

export function fakeDesk(begin: readonly Change[] = []): FakeDesk {
  const journal: JournalEntry[] = [];
  const waiting: (() => void)[] = [];
  const add = (by: string, changes: readonly Change[]): JournalEntry[] => {
    const added = changes.map((change, index) => ({
      seq: journal.length + index + 1,
      at: `2026-03-01T09:00:${String((journal.length + index) % 60).padStart(2, '0')}Z`,
      by,
      change,
    }));
    journal.push(...added);
    return added;
  };
  add('B', begin);

  function append({ after, by, changes }: Append): Appended {
    if (fake.next === 'throw') throw new Error('the line is dead');
    if (fake.next === 'refuse') return bad('journal.write-failed', 'Journal', { detail: 'disk full' });
    if (changes.length > 1000) return bad('desk.bad-request', 'Desk', { detail: 'too many' });
    if (after !== journal.length)
      return bad('journal.changed-elsewhere', 'Journal', { last: journal.length, known: after });
    const added = add(by, changes);
    if (fake.next === 'write and lose the answer') return bad('desk.unreachable', 'Desk', { detail: 'gone' });
    return good(added);
  }

  const fake: FakeDesk = {
    desk: {
      'notebook.append': async (args: Append) => {
        fake.asked.push(args);
        if (fake.slow) await new Promise<void>((resolve) => waiting.push(resolve));
        return append(args);
      },
      'notebook.close': async ({ session }: Arguments<'notebook.close'>) => {
        fake.closed.push(session);
        return good(null);
      },
    } as unknown as Desk,
    asked: [],
    closed: [],
    journal,
    next: 'write',
    slow: false,
    answer: () => waiting.shift()?.(),
    elsewhere: (change) => void add('C', [change]),
    opened: (over = {}) => ({
      session: 's',
      name: 'Rig',
      id: 'notebook-id',
      entries: [...journal],
      readOnly: false,
      problems: [],
      generation: 1,
      ...over,
    }),
  };
  return fake;
}
