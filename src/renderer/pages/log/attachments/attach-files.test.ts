import { describe, expect, it } from 'vitest';
import { create, type JournalEntry } from '../../../../notebook/index.ts';
import type { Desk } from '../../../../preload/index.ts';
import { bad, good } from '../../../../quantity/index.ts';
import { openStore } from '../../../store/notebook-store.ts';
import { attachFiles } from './attach-files.ts';
import { inOrder } from './attachments.ts';

const sha = (text: string): string => text.padStart(64, '0');

/** A desk that keeps what it is given in memory and refuses files of the text “too large”. */
function deskInMemory(): Desk {
  let seq = 1;
  const desk: Pick<Desk, 'notebook.append' | 'attachment.add'> = {
    'notebook.append': async ({ changes, by }) =>
      good(changes.map((change): JournalEntry => ({ seq: ++seq, at: '', by, change }))),
    'attachment.add': async ({ bytes }) => {
      const text = new TextDecoder().decode(bytes);
      return text === 'too large'
        ? bad('attachment.too-large', 'Attachment', { size: 101, limit: 100 })
        : good({ sha256: sha(`${bytes.length}`), size: bytes.length });
    },
  };
  return desk as Desk;
}

function opened() {
  const desk = deskInMemory();
  const entry = create('entry', 'e1', {
    prototype: 'p',
    revision: 'r',
    number: 1,
    title: '',
    at: '2026-11-25T08:00:00Z',
    author: '',
    text: '',
  });
  const store = openStore(
    desk,
    {
      session: 's',
      name: 'n',
      id: 'n',
      generation: 1,
      readOnly: false,
      problems: [],
      entries: [{ seq: 1, at: '', by: '', change: entry }],
    },
    () => 'Ada',
  );
  const attached = () =>
    inOrder(store.getState().recorded.entry.e1?.attachments ?? {}).map(([, each]) => each);
  return { desk, store, attached };
}

describe('attaching files to an entry', () => {
  it('names each stored file in the entry, in the order in which they were chosen', async () => {
    const { desk, store, attached } = opened();
    const problems = await attachFiles(desk, store, 'e1', [
      new File(['abc'], 'b.png', { type: 'image/png' }),
      new File(['abcde'], 'a.csv', { type: 'text/csv' }),
    ]);
    expect(problems).toEqual([]);
    expect(attached().map(({ name, sha256, size, order }) => ({ name, sha256, size, order }))).toEqual([
      { name: 'b.png', sha256: sha('3'), size: 3, order: 1 },
      { name: 'a.csv', sha256: sha('5'), size: 5, order: 2 },
    ]);
  });

  it('a second batch stands behind the first, even when both were under way at once', async () => {
    const { desk, store, attached } = opened();
    await Promise.all([
      attachFiles(desk, store, 'e1', [new File(['a'], 'one.txt')]),
      attachFiles(desk, store, 'e1', [new File(['b'], 'two.txt')]),
    ]);
    expect(attached().map(({ order }) => order)).toEqual([1, 2]);
  });

  it('a file that the desk refuses is named with the reason, and the others are attached', async () => {
    const { desk, store, attached } = opened();
    const problems = await attachFiles(desk, store, 'e1', [
      new File(['too large'], 'film.mp4'),
      new File(['fine'], 'note.txt'),
    ]);
    expect(problems).toMatchObject([{ code: 'attachment.too-large', place: 'Attachment “film.mp4”' }]);
    expect(attached().map(({ name }) => name)).toEqual(['note.txt']);
  });

  it('nothing is recorded when no file could be stored', async () => {
    const { desk, store, attached } = opened();
    const before = store.getState().recorded;
    await attachFiles(desk, store, 'e1', [new File(['too large'], 'film.mp4')]);
    expect(attached()).toEqual([]);
    expect(store.getState().recorded).toBe(before);
  });
});
