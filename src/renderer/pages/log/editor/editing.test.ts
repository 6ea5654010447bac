import { EditorSelection, EditorState, type StateCommand } from '@codemirror/state';
import { describe, expect, it } from 'vitest';
import { findCalcBlocks } from '../calculation/calc-blocks.ts';
import { calcBlockAt, calcBlocksOf } from './calc-at-cursor.ts';
import { entryLanguage } from './entry-language.ts';
import { results, resultsShown, showResults } from './results.ts';
import { continueList, insertCalculation, toggleMark } from './typing.ts';

/** A document with its cursor at `|`, or a selection between two of them. */
function stateOf(marked: string): EditorState {
  const [anchor, head] = [marked.indexOf('|'), marked.lastIndexOf('|') - 1];
  return EditorState.create({
    doc: marked.replaceAll('|', ''),
    selection: EditorSelection.single(anchor, Math.max(head, anchor)),
    extensions: [entryLanguage(), results()],
  });
}

function shown(state: EditorState): string {
  const { anchor, head } = state.selection.main;
  const text = state.doc.toString();
  if (anchor === head) return `${text.slice(0, head)}|${text.slice(head)}`;
  return `${text.slice(0, anchor)}|${text.slice(anchor, head)}|${text.slice(head)}`;
}

/** The document after the command, or `undefined` when it leaves the key to others. */
function pressed(marked: string, command: StateCommand): string | undefined {
  let next = stateOf(marked);
  const done = command({ state: next, dispatch: (transaction) => (next = transaction.state) });
  return done ? shown(next) : undefined;
}

describe('keys of the editor', () => {
  it.each([
    ['- one|', '- one\n- |'],
    ['1. one|\n2. two', '1. one\n2. |\n2. two'],
    ['- one\n- |', '- one\n|'],
    ['- split| here', '- split\n- | here'],
  ])('Enter makes %j into %j', (before, expected) => {
    expect(pressed(before, continueList)).toBe(expected);
  });

  it('Enter in a calculation is a plain line break, even behind a minus sign', () => {
    expect(pressed('```calc\n- 2|\n```', continueList)).toBeUndefined();
  });

  it.each([
    ['a |word| b', 'a **|word|** b'],
    ['a **|word|** b', 'a |word| b'],
    ['a *|word|* b', 'a ***|word|*** b'],
    ['|', '**|**'],
  ])('bold makes %j into %j', (before, expected) => {
    expect(pressed(before, toggleMark('**'))).toBe(expected);
  });

  it('italic around a bold word adds to it instead of spoiling it', () => {
    expect(pressed('a **|word|** b', toggleMark('*'))).toBe('a ***|word|*** b');
  });

  it.each([
    ['Text|', 'Text\n\n```calc\n|\n```\n'],
    ['|', '```calc\n|\n```\n'],
    ['```calc\na = 1|\n```', '```calc\na = 1\n```\n\n```calc\n|\n```\n'],
    ['```ca|lc\na = 1\n```\nmore', '```calc\na = 1\n```\n\n```calc\n|\n```\nmore'],
  ])('a new calculation makes %j into %j', (before, expected) => {
    expect(pressed(before, insertCalculation)).toBe(expected);
  });
});

describe('calculations of a document', () => {
  const text = '# Day\n\n```calc\na = 1\n```\n\n> ```calc\n> b = a\n> ```\n\n```\nno\n```\n';

  it('the editor finds the same ones as the model, in a new text and after changes', () => {
    let state = EditorState.create({ doc: text, extensions: [entryLanguage()] });
    expect(calcBlocksOf(state)).toEqual(findCalcBlocks(text));
    state = state.update({ changes: { from: 0, insert: '```calc\nfirst = 1\n```\n\n' } }).state;
    state = state.update({ changes: { from: state.doc.length, insert: '\n~~~calc\nlast' } }).state;
    expect(calcBlocksOf(state)).toEqual(findCalcBlocks(state.doc.toString()));
    expect(calcBlocksOf(state)).toHaveLength(4);
  });

  it('the end of a long document is looked at too', () => {
    const doc = `${'A line of prose.\n\n'.repeat(9_000)}\`\`\`calc\nlast = 1\n\`\`\``;
    const state = EditorState.create({ doc, extensions: [entryLanguage()] });
    expect(calcBlocksOf(state).map(({ code }) => code)).toEqual(['last = 1']);
  });

  it.each([
    ['```calc\na|\n```', true],
    ['```calc\n|\n```', true],
    ['```ca|lc\na\n```', false],
    ['```calc\na\n``|`', false],
    ['```calc\na\n```\n|', false],
    ['```calc\nnot closed|', true],
    ['te|xt', false],
  ])('the cursor in %j is in a calculation: %s', (marked, inside) => {
    const state = stateOf(marked);
    expect(calcBlockAt(state, state.selection.main.head) !== undefined).toBe(inside);
  });
});

describe('results between two evaluations', () => {
  const value = { kind: 'value', name: 'a', value: '1' } as const;
  const start = stateOf('|```calc\na = 1\n```\nmore').update({
    effects: showResults.of([{ from: 0, to: 17, lines: [value], faults: [] }]),
  }).state;

  it('stay while the text around them changes', () => {
    const state = start.update({ changes: { from: 0, insert: 'before\n\n' } }).state;
    expect(resultsShown(state)).toEqual([[value]]);
  });

  it('go with the block that is deleted', () => {
    const state = start.update({ changes: { from: 0, to: 18 } }).state;
    expect(resultsShown(state)).toEqual([]);
  });
});
