/** The Markdown of a log entry as blocks of a report; fenced `calc` blocks with their results beside them. */
import type { Nodes, Parents, PhrasingContent, Root, RootContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';
import { evaluateCalcBlock, formatUncertain, phrase, type Scope } from '../../quantity/index.ts';
import type { Block, Inline } from '../tree.ts';

/** @param scope  the figures that the entry's calculations may use, those of its revision */
export function markdownBlocks(text: string, scope: Scope): Block[] {
  const tree: Root = fromMarkdown(text, {
    extensions: [gfm(), { disable: { null: ['htmlFlow', 'htmlText'] } }],
    mdastExtensions: [gfmFromMarkdown()],
  });
  return tree.children.flatMap((node) => blocksOf(node, scope));
}

function blocksOf(node: RootContent, scope: Scope): Block[] {
  switch (node.type) {
    case 'heading':
      // an entry is below its own heading in the report
      return [{ type: 'paragraph', content: [{ strong: plainText(node) }] }];
    case 'paragraph':
      return [{ type: 'paragraph', content: inlines(node.children) }];
    case 'list':
      return [
        { type: 'list', ordered: node.ordered === true, items: node.children.map((item) => itemOf(item)) },
      ];
    case 'blockquote':
      return node.children.flatMap((child) => blocksOf(child, scope));
    case 'code':
      return isCalculation(node) ? [calculationBlock(node.value, scope)] : codeLines(node.value);
    case 'table':
      return [tableOf(node)];
    case 'thematicBreak':
      return [{ type: 'rule' }];
    case 'footnoteDefinition':
      return [{ type: 'paragraph', content: [{ emphasis: `Note ${node.identifier}: ` }, plainText(node)] }];
    case 'html':
      return codeLines(node.value);
    default:
      return [];
  }
}

function isCalculation({
  lang,
  meta,
}: {
  lang?: string | null | undefined;
  meta?: string | null | undefined;
}): boolean {
  return /^calc(\s|$)/.test([lang, meta].filter(Boolean).join(' '));
}

function calculationBlock(code: string, scope: Scope): Block {
  const lines = new Map(evaluateCalcBlock(code, scope).map((line) => [line.line, line]));
  const rows = code.split('\n').flatMap((text, index): [Inline[], string][] => {
    if (text.trim() === '') return [];
    const line = lines.get(index + 1);
    if (!line) return [[[{ emphasis: text.replace(/^\s*#\s*/, '') }], '']];
    const { outcome } = line;
    const result = outcome.ok
      ? formatUncertain(outcome.value.value, outcome.value.unitText)
      : phrase(outcome.problem).reason;
    return [[[{ code: text.trim() }], result]];
  });
  return {
    type: 'table',
    caption: '',
    columns: [
      { title: 'Calculation', align: 'left', share: 3 },
      { title: 'Result', align: 'left', share: 1.4 },
    ],
    rows,
  };
}

function codeLines(text: string): Block[] {
  return text
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => ({ type: 'paragraph', content: [{ code: line }] }));
}

function itemOf(item: Parents & { checked?: boolean | null | undefined }): Inline[] {
  const box = item.checked === true ? 'done: ' : item.checked === false ? 'open: ' : '';
  const parts = item.children.flatMap((child, index): Inline[] => {
    const gap = index > 0 ? ['; '] : [];
    return child.type === 'paragraph' ? [...gap, ...inlines(child.children)] : [...gap, plainText(child)];
  });
  return box === '' ? parts : [{ emphasis: box }, ...parts];
}

function tableOf(node: Extract<RootContent, { type: 'table' }>): Block {
  const [head, ...body] = node.children;
  const titles = head?.children.map((cell) => plainText(cell)) ?? [];
  return {
    type: 'table',
    caption: '',
    columns: titles.map((title, index) => ({
      title,
      align: node.align?.[index] === 'right' ? 'right' : 'left',
      share: 1,
    })),
    rows: body.map((row) => titles.map((_, index) => inlines(row.children[index]?.children ?? []))),
  };
}

function inlines(nodes: readonly PhrasingContent[]): Inline[] {
  return nodes.flatMap((node): Inline[] => {
    switch (node.type) {
      case 'text':
        return [node.value];
      case 'strong':
        return [{ strong: plainText(node) }];
      case 'emphasis':
      case 'delete':
        return [{ emphasis: plainText(node) }];
      case 'inlineCode':
        return [{ code: node.value }];
      case 'break':
        return [' '];
      case 'link':
        return node.url === plainText(node) ? [node.url] : [`${plainText(node)} (${node.url})`];
      case 'footnoteReference':
        return [` (note ${node.identifier})`];
      default:
        return [plainText(node)];
    }
  });
}

/** The words of a node without their dress. */
function plainText(node: Nodes): string {
  if ('value' in node) return node.value;
  if ('alt' in node) return node.alt ?? '';
  if ('children' in node) return node.children.map((child) => plainText(child)).join('');
  return node.type === 'break' ? ' ' : '';
}
