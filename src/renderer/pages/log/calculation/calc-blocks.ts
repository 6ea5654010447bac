/**
 * Finds the calculations of an entry in its text. A pure function over the whole text, because a tree that ends
 * before the text does would leave calculations out, and what is not found is not evaluated.
 */
import { CALC, entryParser, isCalcInfo } from './markdown-grammar.ts';

export type SyntaxTree = ReturnType<typeof entryParser.parse>;
type SyntaxNode = SyntaxTree['topNode'];

export interface CalcBlock {
  /** Range of the whole block in the text, fences included. */
  readonly from: number;
  readonly to: number;
  /** What stands between the fences, without the indentation or the quote marks of a list or quotation around it. */
  readonly code: string;
  /** Where the pieces of `code` stand in the text, in order. */
  readonly pieces: readonly Piece[];
}

interface Piece {
  readonly inCode: number;
  readonly inText: number;
  readonly length: number;
}

/** Every fenced block whose info string begins with `calc`, in the order of the text. */
export function findCalcBlocks(text: string): CalcBlock[] {
  return text.includes(CALC) ? calcBlocksIn(entryParser.parse(text), text) : [];
}

/** Blocks that can hold a fenced block; nothing else is looked into. */
const CONTAINERS: ReadonlySet<string> = new Set([
  'Document',
  'Blockquote',
  'BulletList',
  'OrderedList',
  'ListItem',
]);

/** @param tree  of the whole text, parsed to its end */
export function calcBlocksIn(tree: SyntaxTree, text: string): CalcBlock[] {
  const blocks: CalcBlock[] = [];
  tree.iterate({
    enter({ name, node }) {
      if (name !== 'FencedCode') return CONTAINERS.has(name);
      const info = node.getChild('CodeInfo');
      if (info && isCalcInfo(text.slice(info.from, info.to))) blocks.push(blockAt(node, text));
      return false;
    },
  });
  return blocks;
}

function blockAt(node: SyntaxNode, text: string): CalcBlock {
  const pieces: Piece[] = [];
  let code = '';
  for (const { from, to } of node.getChildren('CodeText')) {
    pieces.push({ inCode: code.length, inText: from, length: to - from });
    code += text.slice(from, to);
  }
  return { from: node.from, to: node.to, code, pieces };
}

/** Where a range of the block's code stands in the text; an empty block gives its own range. */
export function rangeInText(block: CalcBlock, from: number, to: number): readonly [from: number, to: number] {
  const start = positionInText(block, from);
  return [start, Math.max(start, positionInText(block, to))];
}

function positionInText(block: CalcBlock, offset: number): number {
  const piece = block.pieces.findLast(({ inCode }) => inCode <= offset);
  if (!piece) return block.from;
  return piece.inText + Math.min(offset - piece.inCode, piece.length);
}
