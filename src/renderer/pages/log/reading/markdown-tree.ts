/** The Markdown of an entry as a tree for reading: the language of `markdown-grammar.ts`, HTML being plain text. */
import type { Nodes, Root } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import { isCalcInfo } from '../calculation/markdown-grammar.ts';

export function markdownTree(text: string): Root {
  return fromMarkdown(text, {
    extensions: [gfm(), { disable: { null: ['htmlFlow', 'htmlText'] } }],
    mdastExtensions: [gfmFromMarkdown()],
  });
}

/** Whether the node is a calculation, with what stands in it. */
export function isCalculation(node: Nodes): boolean {
  return node.type === 'code' && isCalcInfo([node.lang, node.meta].filter(Boolean).join(' '));
}

/** Where links and notes that are used by name are explained. */
export interface Definitions {
  readonly addresses: ReadonlyMap<string, string>;
  /** Footnotes by name, in the order in which the text first uses them. */
  readonly notes: readonly string[];
}

export function definitionsOf(tree: Root): Definitions {
  const addresses = new Map<string, string>();
  const notes: string[] = [];
  const visit = (node: Nodes): void => {
    if (node.type === 'definition' && !addresses.has(node.identifier))
      addresses.set(node.identifier, node.url);
    if (node.type === 'footnoteReference' && !notes.includes(node.identifier)) notes.push(node.identifier);
    if ('children' in node) node.children.forEach(visit);
  };
  visit(tree);
  return { addresses, notes };
}
