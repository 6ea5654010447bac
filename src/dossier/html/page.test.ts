/** The page: shows the design, runs nothing, loads nothing, and takes no word of anybody for markup. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { entries, picture, attached as pictures } from '../../../tests/specimen/demo.ts';
import { journalOf, payloadOf, smallChanges, sourceOf, written } from '../../../tests/specimen/dossier.ts';
import { type Change, create, set } from '../../notebook/index.ts';
import { AT } from '../../notebook/sample.ts';
import { element, escaped, inside } from './markup.ts';
import { pictureRoom } from './pictures.ts';

const HOSTILE = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '"><svg onload=alert(1)>',
  "' onmouseover='alert(1)",
  '</title><script>alert(1)</script>',
  '</style><script>alert(1)</script>',
  '<!-- --><b>bold</b>',
  '&lt;script&gt;',
  '<a href="javascript:alert(1)">x</a>',
  '[x](javascript:alert(1)) ![x](http://example.org/x.png) <http://example.org>',
  '\u202e<script>',
  '\0<scr\0ipt>',
];

async function pageOf(changes: readonly Change[], prototypeId = 'p'): Promise<string> {
  const { bytes } = await written(sourceOf(changes, prototypeId));
  return new TextDecoder().decode(payloadOf(bytes).get('index.html'));
}

/** Every tag of the page with its attributes, as a browser would find them. */
function tagsOf(page: string): { readonly name: string; readonly attributes: readonly string[] }[] {
  return [...page.matchAll(/<([!/]?[A-Za-z][\w-]*)((?:\s+[\w:-]+(?:="[^"]*")?)*)\s*\/?>/g)].map(
    ([, name = '', attributes = '']) => ({
      name: name.toLowerCase(),
      attributes: [...attributes.matchAll(/([\w:-]+)(?:="([^"]*)")?/g)].map(
        ([, key, value]) => `${key}=${value}`,
      ),
    }),
  );
}

const TAGS = new Set(
  'a body caption code dd defs details div dl dt em figcaption figure footer g h1 h2 h3 h4 h5 head header hr html img li main meta nav ol p path section span strong style summary svg table tbody td text th thead title tr ul use'.split(
    ' ',
  ),
);

describe('a page of hostile words', () => {
  let page = '';
  beforeAll(async () => {
    const words = HOSTILE.join('\n\n');
    const name = HOSTILE.join(' ').slice(0, 120);
    page = await pageOf([
      ...smallChanges,
      set('prototype', 'p', { name, description: words }),
      set('revision', 'r', { reason: words, 'parts/frame/name': name, 'parts/frame/note': words }),
      set('entry', 'e', { title: HOSTILE.join(' ').slice(0, 200), text: words, author: name }),
      set('failure', 'f', {
        title: HOSTILE.join(' ').slice(0, 200),
        observed: words,
        causes: HOSTILE,
        correctiveAction: words,
      }),
      create('entry', 'e2', {
        prototype: 'p',
        revision: 'r',
        number: 2,
        title: 'code',
        at: AT,
        author: 'B',
        text: `\`\`\`html\n${words}\n\`\`\`\n\n\`\`\`calc\n${words}\n\`\`\`\n`,
      }),
    ]);
  }, 60_000);

  it('has no tag but those of the program', () => {
    const outside = page.replace(/<style>[^<]*<\/style>/, '');
    expect(outside.match(/</g)?.length).toBe(tagsOf(outside).length);
    const names = new Set(tagsOf(outside).map(({ name }) => name.replace(/^\//, '')));
    expect([...names].filter((name) => !TAGS.has(name))).toEqual(['!doctype']);
  });

  it('has no attribute that runs, and no address that leads out', () => {
    for (const { attributes } of tagsOf(page)) {
      for (const attribute of attributes) {
        expect(attribute).not.toMatch(/^on/i);
        expect(attribute).not.toMatch(/^(srcdoc|srcset|action|formaction|ping|background)=/i);
        if (/^href=/.test(attribute)) expect(attribute).toMatch(/^href=(#[\w-]+|reports\/[\w.-]+)$/);
        if (/^src=/.test(attribute)) expect(attribute).toMatch(/^src=data:image\/(png|jpeg);base64,/);
      }
    }
  });

  it('shows the words as they were typed', () => {
    expect(page).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(page).toContain('&amp;lt;script&amp;gt;');
    expect(page).not.toMatch(/[\u202a-\u202e\u2066-\u2069\0]/);
  });
});

describe('the page', () => {
  let page = '';
  beforeAll(async () => {
    const contents = new Map([...pictures].map(([, { sha256 }]) => [sha256, new Uint8Array(picture)]));
    const prototypeId = entries.find(({ change }) => change.kind === 'prototype')?.change.id ?? '';
    const { bytes } = await written({ ...sourceOf([], prototypeId, contents), journal: journalOf(entries) });
    page = new TextDecoder().decode(payloadOf(bytes).get('index.html'));
  }, 60_000);

  it('forbids everything that is not in it', () => {
    expect(page).toContain(
      `content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'"`,
    );
    expect(page).not.toMatch(/<script|<link|<iframe|<object|@import|url\((?!data:)/);
    expect(page.match(/https?:\/\//g) ?? []).toEqual(
      page.match(/http:\/\/www\.w3\.org\/2000\/svg/g)?.map(() => 'http://') ?? [],
    );
  });

  it('shows every margin, every part, every entry and every failure of the prototype', () => {
    for (const { change } of entries) {
      if (change.op !== 'create') continue;
      const { title, name } = change.value as { title?: string; name?: string };
      if (change.kind === 'entry' || change.kind === 'failure') expect(page).toContain(escaped(title ?? ''));
      if (change.kind === 'prototype') expect(page).toContain(`<title>${escaped(name ?? '')}</title>`);
    }
    for (const words of [
      'Lean to recover from',
      'Delay margin',
      'Tray with fence',
      'Side view and rear view',
    ]) {
      expect(page).toContain(words);
    }
  });

  it('has the picture in it, and headings that go down a step at a time', () => {
    expect(page).toContain('src="data:image/png;base64,iVBOR');
    const levels = [...page.matchAll(/<h([1-5])[ >]/g)].map(([, level]) => Number(level));
    expect(levels[0]).toBe(1);
    levels.reduce((before, level) => {
      expect(level).toBeLessThanOrEqual(before + 1);
      return level;
    });
  });

  it('says each equation and each drawing in words', () => {
    const pictures = [...page.matchAll(/<svg ([^>]*)>/g)].map(([, attributes = '']) => attributes);
    expect(pictures.length).toBeGreaterThan(100);
    for (const attributes of pictures) {
      expect(attributes === 'hidden' || /role="img" aria-label="[^"]+/.test(attributes), attributes).toBe(
        true,
      );
    }
  });
});

describe('markup', () => {
  it('is never made from text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        expect(inside([words, element('p', { 'aria-label': words }, words)])).not.toMatch(/<(?!\/?p[ >])/);
        expect(escaped(words)).not.toMatch(/[<>"']/);
      }),
    );
  });

  it.each(['javascript:alert(1)', 'http://example.org', '//example.org', '../x', 'data:text/html,x', 'x'])(
    'has no link to %s',
    (href) => {
      expect(() => element('a', { href }, 'x')).toThrow(RangeError);
      expect(() => element('img', { src: href })).toThrow(RangeError);
    },
  );

  it('has a picture while there is room for it, and says where it is otherwise', () => {
    const large = new Uint8Array(9 * 1024 * 1024);
    const room = pictureRoom(new Map([[large, 'files/large.png']]));
    const block = (bytes: Uint8Array) =>
      ({ type: 'picture', bytes, mediaType: 'image/png', caption: '' }) as const;
    expect(room(block(new Uint8Array([1, 2, 3, 4])))).toEqual({ src: 'data:image/png;base64,AQIDBA==' });
    expect(room(block(large))).toEqual({ words: 'too large for this page; see files/large.png' });
  });
});
