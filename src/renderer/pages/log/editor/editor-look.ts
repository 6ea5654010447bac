/** How the editor sits on the sheet: the window's own ink, paper and lines in every theme, no second palette. */
import { EditorView } from '@codemirror/view';

export const editorLook = EditorView.theme({
  '&': {
    color: 'var(--ink)',
    backgroundColor: 'var(--sheet)',
    border: '1px solid var(--line)',
    borderRadius: 'var(--radius)',
    maxHeight: '80rem', // a very long sheet is slow to paint; past this the text scrolls by itself
  },
  '&.cm-focused': { outline: '2px solid var(--focus)', outlineOffset: '-1px' },
  '.cm-scroller': { fontFamily: 'var(--face)', lineHeight: '1.5', overflow: 'auto' },
  '.cm-content': { padding: 'var(--space-3) 0', caretColor: 'var(--ink)', minHeight: '12rem' },
  '.cm-line': { padding: '0 var(--space-4)' },
  '.cm-cursor': { borderLeft: '2px solid var(--ink)', marginLeft: '-1px' },
  '.cm-selectionBackground': { backgroundColor: 'var(--log-selection)' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground': {
    backgroundColor: 'var(--log-selection)',
  },
  '.cm-placeholder': { color: 'var(--quiet)' },
  '.cm-tooltip': {
    color: 'var(--ink)',
    backgroundColor: 'var(--sheet)',
    border: '1px solid var(--line)',
    borderRadius: 'var(--radius)',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': {
    fontFamily: 'var(--face)',
    fontSize: 'var(--size-small)',
    maxHeight: '14rem',
    minWidth: '18rem',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': {
    display: 'flex',
    justifyContent: 'space-between',
    gap: 'var(--space-4)',
    padding: '0.15rem var(--space-2)',
    lineHeight: '1.5',
  },
  '.cm-tooltip-autocomplete ul li[aria-selected]': {
    color: 'var(--accent-ink)',
    backgroundColor: 'var(--accent)',
  },
  '.cm-completionMatchedText': { textDecoration: 'none', fontWeight: '600' },
  '.cm-completionDetail': { fontStyle: 'normal', marginLeft: '0', fontVariantNumeric: 'tabular-nums' },
  '.cm-tooltip.cm-completionInfo': {
    padding: 'var(--space-2)',
    maxWidth: '18rem',
    fontSize: 'var(--size-small)',
  },
});
