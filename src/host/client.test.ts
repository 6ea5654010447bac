/** What the window does for itself in a browser, with the few things of a browser that it touches. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { hostDesk, takeKey } from './client.ts';

afterEach(() => vi.unstubAllGlobals());

/** A tab of a browser at the address. */
function tab(hash: string, stored = new Map<string, string>()) {
  const shown: string[] = [];
  vi.stubGlobal('location', { hash, pathname: '/', search: '' });
  vi.stubGlobal('history', { replaceState: (_state: unknown, _title: string, to: string) => shown.push(to) });
  vi.stubGlobal('sessionStorage', {
    getItem: (name: string) => stored.get(name) ?? null,
    setItem: (name: string, value: string) => stored.set(name, value),
  });
  return { shown, stored };
}

describe('the key', () => {
  it('is taken out of the address bar and kept for a reload of the tab', () => {
    const { shown, stored } = tab('#key=a-secret_1');
    expect(takeKey()).toBe('a-secret_1');
    expect(shown).toEqual(['/']);
    tab('', stored);
    expect(takeKey()).toBe('a-secret_1');
  });

  it('of a new start takes the place of the old one', () => {
    const { stored } = tab('#key=old');
    takeKey();
    tab('#key=new', stored);
    expect(takeKey()).toBe('new');
  });

  it('is absent where the address has none', () => {
    for (const hash of ['', '#', '#key=', '#/masses']) {
      tab(hash);
      expect(takeKey()).toBeUndefined();
    }
  });
});

describe('saving a file in a browser', () => {
  it('hands the bytes to the browser under the suggested name', async () => {
    const clicked: { href: string; download: string }[] = [];
    vi.stubGlobal('document', {
      createElement: () => {
        const link = { href: '', download: '', click: () => clicked.push(link), remove: () => undefined };
        return link;
      },
      body: { append: () => undefined },
    });
    vi.useFakeTimers();
    try {
      const desk = hostDesk('key', 'http://127.0.0.1:1');
      const outcome = await desk['file.save']({ suggestedName: 'Rig B.pdf', bytes: Uint8Array.of(1, 2, 3) });
      expect(outcome).toEqual({ ok: true, value: 'Rig B.pdf' });
      expect(clicked).toMatchObject([{ download: 'Rig B.pdf', href: expect.stringMatching(/^blob:/) }]);
      const content = await fetch(clicked[0]?.href ?? '').then((response) => response.arrayBuffer());
      expect(new Uint8Array(content)).toEqual(Uint8Array.of(1, 2, 3));
      vi.runAllTimers(); // the address is given back
      await expect(fetch(clicked[0]?.href ?? '')).rejects.toThrow();
    } finally {
      vi.useRealTimers();
    }
  });
});
