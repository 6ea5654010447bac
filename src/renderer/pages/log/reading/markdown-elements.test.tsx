import type { Code, Nodes } from 'mdast';
import { createElement, Fragment } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { findCalcBlocks } from '../calculation/calc-blocks.ts';
import { markdownElements } from './markdown-elements.tsx';
import { definitionsOf, isCalculation, markdownTree } from './markdown-tree.ts';

function markup(text: string): string {
  const tree = markdownTree(text);
  const read = markdownElements(tree.children, {
    definitions: definitionsOf(tree),
    underCalculation: (offset) => `[results at ${offset}]`,
  });
  return renderToStaticMarkup(createElement(Fragment, {}, read));
}

describe('an entry that is read', () => {
  it('its headings stand below the window’s own', () => {
    expect(markup('# One\n\n###### Six')).toBe('<h3>One</h3><h6>Six</h6>');
  });

  it('HTML is text and never an element', () => {
    const read = markup('<img src=x onerror=alert(1)> and <b>bold</b>\n\n<script>alert(1)</script>');
    expect(read).not.toMatch(/<(img|b|script)/);
    expect(read).toContain('&lt;script&gt;');
  });

  it('a link shows its text and its address, and leads nowhere', () => {
    const read = markup(
      'See [the sheet](https://example.org/a) and [that one][x].\n\n[x]: javascript:alert(1)',
    );
    expect(read).not.toMatch(/href|<a/);
    expect(read).toContain('the sheet <span class="address">&lt;https://example.org/a&gt;</span>');
    expect(read).toContain('that one <span class="address">&lt;javascript:alert(1)&gt;</span>');
  });

  it('a picture by address is named, not fetched', () => {
    const read = markup('![broken bracket](https://example.org/b.png)');
    expect(read).not.toContain('<img');
    expect(read).toContain('[broken bracket, https://example.org/b.png]');
  });

  it('a table keeps its head, and right-aligned columns are numbers', () => {
    const read = markup('| part | mass |\n|---|--:|\n| arm | 73 |');
    expect(read).toContain('<th scope="col">part</th>');
    expect(read).toContain('<td class="number">73</td>');
  });

  it('tasks say in words whether they are done', () => {
    expect(markup('- [x] balance the rotor\n- [ ] weigh it')).toMatch(/done: .*balance.*to do: .*weigh/);
  });

  it('footnotes are numbered as the text uses them', () => {
    const read = markup('Later[^b] and[^a].\n\n[^a]: first written\n\n[^b]: second written');
    expect(read).toContain('Later<sup>[1]</sup> and<sup>[2]</sup>');
  });

  it('results stand under calculations and under nothing else', () => {
    expect(markup('```calc\na = 1\n```\n\n```\nb\n```')).toBe(
      '<pre class="calculation"><code>a = 1</code></pre>[results at 0]<pre><code>b</code></pre>',
    );
  });
});

/** Spaces around a line mean nothing in a calculation. */
const trimmed = (code: string): string =>
  code
    .trimEnd()
    .split('\n')
    .map((line) => line.trim())
    .join('\n');

describe('the two readings of the same Markdown', () => {
  it.each([
    'Text\n\n```calc\na = 1\n```\n',
    '- item\n\n  ```calc\n  a = 1\n  ```\n- next\n\n  ~~~ calc more words\n  b\n  ~~~',
    '> quoted\n> ```calc\n> a = 1\n> ```',
    '<div>\n\n```calc\na = 1\n```\n</div>',
    '   ```calc\n   indented = 1\n   ```',
    '````calc\n```\nstill inside\n```\n````',
    'no calc here, `calc` neither',
    '```calculus\na\n```',
    '```calc\nnot closed',
    '1. one\n   > ```calc\n   > a\n   > ```\n2. two',
  ])('find the same calculations at the same places: %j', (text) => {
    const inTree: [number | undefined, string][] = [];
    const visit = (node: Nodes): void => {
      if (isCalculation(node)) inTree.push([node.position?.start.offset, trimmed((node as Code).value)]);
      if ('children' in node) node.children.forEach(visit);
    };
    visit(markdownTree(text));
    expect(findCalcBlocks(text).map(({ from, code }) => [from, trimmed(code)])).toEqual(inTree);
  });
});
