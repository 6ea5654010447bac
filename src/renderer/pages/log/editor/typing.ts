/** Keys of the editor: marks of lists go on with Enter, Ctrl-B and Ctrl-I mark bold and italic. Tab stays free. */
import { defaultKeymap, historyKeymap, insertNewlineAndIndent } from '@codemirror/commands';
import { EditorSelection, type EditorState, type Extension, type StateCommand } from '@codemirror/state';
import { keymap } from '@codemirror/view';
import { calcBlockAround, calcBlockAt } from './calc-at-cursor.ts';
import { continuation } from './list-continuation.ts';

export const continueList: StateCommand = ({ state, dispatch }) => {
  const { main } = state.selection;
  if (state.selection.ranges.length > 1 || !main.empty || calcBlockAt(state, main.head)) return false;
  const line = state.doc.lineAt(main.head);
  const before = line.text.slice(0, main.head - line.from);
  const next = continuation(before);
  if (!next) return false;
  if (next.kind === 'end') {
    if (main.head !== line.to) return false;
    dispatch(
      state.update({ changes: { from: line.from, to: line.to }, userEvent: 'delete', scrollIntoView: true }),
    );
    return true;
  }
  dispatch(
    state.update(state.replaceSelection(state.lineBreak + next.insert), {
      userEvent: 'input',
      scrollIntoView: true,
    }),
  );
  return true;
};

/** Puts the mark around each selection, or takes it away where it stands already. */
export function toggleMark(mark: string): StateCommand {
  return ({ state, dispatch }) => {
    const changes = state.changeByRange((range) => {
      const { from, to } = range;
      if (isMarked(state, from, to, mark)) {
        return {
          changes: [
            { from: from - mark.length, to: from },
            { from: to, to: to + mark.length },
          ],
          range: EditorSelection.range(from - mark.length, to - mark.length),
        };
      }
      return {
        changes: [
          { from, insert: mark },
          { from: to, insert: mark },
        ],
        range: EditorSelection.range(from + mark.length, to + mark.length),
      };
    });
    dispatch(state.update(changes, { userEvent: 'input', scrollIntoView: true }));
    return true;
  };
}

/** Exactly this mark: one asterisk of a bold word is not an italic mark. */
function isMarked(state: EditorState, from: number, to: number, mark: string): boolean {
  const width = mark.length;
  const before = state.sliceDoc(Math.max(0, from - width - 1), from);
  const after = state.sliceDoc(to, to + width + 1);
  const longer =
    before.length > width && before[0] === mark[0] && after.length > width && after[width] === mark[0];
  return before.endsWith(mark) && after.startsWith(mark) && (!longer || mark.length > 1);
}

const FENCE = '```';

/** Puts an empty calculation on lines of its own behind the cursor's line, and the cursor into it. */
export const insertCalculation: StateCommand = ({ state, dispatch }) => {
  const { head } = state.selection.main;
  const line = state.doc.lineAt(calcBlockAround(state, head)?.to ?? head);
  const gap = line.text.trim() === '' ? '' : '\n\n';
  const open = `${gap}${FENCE}calc\n`;
  const close = `\n${FENCE}${line.to === state.doc.length ? '\n' : ''}`;
  dispatch(
    state.update({
      changes: { from: line.to, insert: open + close },
      selection: { anchor: line.to + open.length },
      userEvent: 'input',
      scrollIntoView: true,
    }),
  );
  return true;
};

export function typing(): Extension {
  return keymap.of([
    { key: 'Enter', run: continueList },
    { key: 'Enter', run: insertNewlineAndIndent },
    { key: 'Mod-b', run: toggleMark('**'), preventDefault: true },
    { key: 'Mod-i', run: toggleMark('*'), preventDefault: true },
    ...historyKeymap,
    ...defaultKeymap.filter(({ key }) => key !== 'Enter' && key !== 'Mod-i'),
  ]);
}
