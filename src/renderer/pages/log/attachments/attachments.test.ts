import { describe, expect, it } from 'vitest';
import type { Attachment } from '../../../../notebook/index.ts';
import { schemas } from '../../../../notebook/index.ts';
import { attachmentOf, inOrder, isPicture, sizeText } from './attachments.ts';

const stored = { sha256: 'a'.repeat(64), size: 12 };
const attached = (order: number): Attachment =>
  attachmentOf({ name: `${order}`, type: '' }, stored, {
    before: { ...stored, name: 'before', mediaType: '', caption: '', order: order - 1 },
  });

describe('attachments of an entry', () => {
  it('the first one is number 1 and the next one stands behind the last', () => {
    const first = attachmentOf({ name: 'a.png', type: 'image/png' }, stored, {});
    expect(first.order).toBe(1);
    expect(
      attachmentOf({ name: 'b.png', type: 'image/png' }, stored, { x: { ...first, order: 7 } }).order,
    ).toBe(8);
  });

  it('they are listed by order, and equal orders always in the same way', () => {
    const listed = inOrder({ c: attached(2), b: attached(1), a: attached(2) }).map(([id]) => id);
    expect(listed).toEqual(['b', 'a', 'c']);
  });

  it('a name longer than the record allows keeps its ending and fits the schema', () => {
    const made = attachmentOf({ name: `${'x'.repeat(400)}.csv`, type: 'text/csv' }, stored, {});
    expect(made.name).toMatch(/…\.csv$/);
    const entry = {
      prototype: 'p',
      revision: 'r',
      number: 1,
      title: '',
      at: '2026-11-25T08:00:00Z',
      author: '',
      text: '',
      attachments: { made },
    };
    expect(schemas.entry.safeParse(entry).success).toBe(true);
  });

  it('a nameless or typeless file is taken as well', () => {
    expect(attachmentOf({ name: ' ', type: 'x'.repeat(101) }, stored, {})).toMatchObject({
      name: 'without name',
      mediaType: '',
    });
  });

  it('pictures that no window can draw are files', () => {
    expect(isPicture({ mediaType: 'image/jpeg' })).toBe(true);
    expect(isPicture({ mediaType: 'image/heic' })).toBe(false);
    expect(isPicture({ mediaType: 'text/html' })).toBe(false);
  });

  it.each([
    [0, '0 B'],
    [999, '999 B'],
    [1000, '1.0 kB'],
    [3449, '3.4 kB'],
    [12_300_000, '12 MB'],
    [999_700, '1.0 MB'],
  ])('%d bytes read %s', (bytes, text) => {
    expect(sizeText(bytes)).toBe(text);
  });
});
