/** The entries of a prototype, newest first, and those of them that hold every word of a filter. */
import type { LogEntry } from '../../../notebook/index.ts';

export type ListedEntry = readonly [id: string, entry: LogEntry];

/** Newest first; entries of the same moment by number. */
export function entriesOf(entries: Readonly<Record<string, LogEntry>>, prototype: string): ListedEntry[] {
  return Object.entries(entries)
    .filter(([, entry]) => entry.prototype === prototype)
    .map(([id, entry]) => ({ id, entry, time: Date.parse(entry.at) || 0 }))
    .sort((a, b) => b.time - a.time || b.entry.number - a.entry.number)
    .map(({ id, entry }) => [id, entry] as const);
}

/** The number that the next entry of the notebook takes; numbers are never used again. */
export function nextNumber(entries: Readonly<Record<string, LogEntry>>): number {
  return Object.values(entries).reduce((largest, { number }) => Math.max(largest, number), 0) + 1;
}

/**
 * Entries that hold every word of the filter, in upper or lower case, anywhere in their number, date, title,
 * author, text and names of attachments.
 * @param filter  as typed; empty lets everything through
 */
export function filterEntries(entries: readonly ListedEntry[], filter: string): readonly ListedEntry[] {
  const words = filter.toLocaleLowerCase('en').split(/\s+/).filter(Boolean);
  if (words.length === 0) return entries;
  return entries.filter(([, entry]) => {
    const text = searched(entry);
    return words.every((word) => text.includes(word));
  });
}

/** Remembered by identity: records are immutable, and a filter is typed key by key over thousands of them. */
const known = new WeakMap<LogEntry, string>();

function searched(entry: LogEntry): string {
  const before = known.get(entry);
  if (before !== undefined) return before;
  const files = Object.values(entry.attachments).map(({ name, caption }) => `${name}\n${caption}`);
  const text = [`#${entry.number}`, entry.at.slice(0, 10), entry.title, entry.author, ...files, entry.text]
    .join('\n')
    .toLocaleLowerCase('en');
  known.set(entry, text);
  return text;
}
