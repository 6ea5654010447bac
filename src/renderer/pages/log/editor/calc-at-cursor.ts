/** Which calculation the cursor is in. */
import type { EditorState, Text } from '@codemirror/state';
import { type CalcBlock, findCalcBlocks } from '../calculation/calc-blocks.ts';

/** Remembered by identity: a document is immutable, and several commands ask about the same one. */
const known = new WeakMap<Text, readonly CalcBlock[]>();

export function calcBlocksOf(doc: Text): readonly CalcBlock[] {
  const before = known.get(doc);
  if (before) return before;
  const blocks = findCalcBlocks(doc.toString());
  known.set(doc, blocks);
  return blocks;
}

/** The block that the position is in, fences included. */
export function calcBlockAround(state: EditorState, position: number): CalcBlock | undefined {
  return calcBlocksOf(state.doc).find(({ from, to }) => from <= position && position <= to);
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
