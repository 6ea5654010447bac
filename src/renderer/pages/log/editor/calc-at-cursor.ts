/** Which calculation the cursor is in. */
import { ensureSyntaxTree } from '@codemirror/language';
import type { EditorState, Text } from '@codemirror/state';
import { type CalcBlock, calcBlocksIn, findCalcBlocks } from '../calculation/calc-blocks.ts';

/** Remembered by identity: a document is immutable, and several commands ask about the same one. */
const known = new WeakMap<Text, readonly CalcBlock[]>();

const BUDGET = 100; // ms; a long entry is parsed once and then only where it changes

/** The calculations of the whole document, never of a part of it. */
export function calcBlocksOf(state: EditorState): readonly CalcBlock[] {
  const { doc } = state;
  const before = known.get(doc);
  if (before) return before;
  const text = doc.toString();
  // The editor's tree is kept up to date key by key; only a complete one will do.
  const tree = ensureSyntaxTree(state, doc.length, BUDGET);
  const blocks = tree && tree.length === doc.length ? calcBlocksIn(tree, text) : findCalcBlocks(text);
  known.set(doc, blocks);
  return blocks;
}

/** The block that the position is in, fences included. */
export function calcBlockAround(state: EditorState, position: number): CalcBlock | undefined {
  return calcBlocksOf(state).find(({ from, to }) => from <= position && position <= to);
}

/** The block whose code the position is in; not on the line of a fence. */
export function calcBlockAt(state: EditorState, position: number): CalcBlock | undefined {
  const block = calcBlockAround(state, position);
  if (!block) return undefined;
  const opening = state.doc.lineAt(block.from).to;
  const last = state.doc.lineAt(block.to);
  const isClosed = last.from > block.from && /^[\s>]*(`{3,}|~{3,})\s*$/.test(last.text);
  return position > opening && (!isClosed || position < last.from) ? block : undefined;
}
