/** Offers, inside a calculation, the figures of the revision and the names that the entry gives. */
import {
  autocompletion,
  type Completion,
  type CompletionContext,
  type CompletionResult,
} from '@codemirror/autocomplete';
import { type Extension, Facet } from '@codemirror/state';
import type { KnownName } from '../figures-in-scope.ts';
import { calcBlockAt } from './calc-at-cursor.ts';
import { resultsShown } from './results.ts';

/** Replaced by reconfiguration when the figures change. */
export const knownNames = Facet.define<readonly KnownName[], readonly KnownName[]>({
  combine: (values) => values[0] ?? [],
});

const WORD = /[\p{L}_][\p{L}\p{Nd}_₀-₉]*$/u;
const WHOLE_WORD = /^[\p{L}_][\p{L}\p{Nd}_₀-₉]*$/u;

function complete(context: CompletionContext): CompletionResult | null {
  const { state, pos, explicit } = context;
  if (!calcBlockAt(state, pos)) return null;
  const line = state.doc.lineAt(pos);
  const before = line.text.slice(0, pos - line.from);
  const word = WORD.exec(before)?.[0] ?? '';
  const ahead = before.slice(0, before.length - word.length);
  if (word === '' && !explicit) return null;
  // Directly behind a number the word is a unit, behind “in” too, and a comment is nobody's business.
  if (/(^|[^\p{L}\p{Nd}_])\d[\d.]*\s*$/u.test(ahead) || /\sin\s+$/.test(ahead) || ahead.includes('#'))
    return null;
  return {
    from: pos - word.length,
    options: [...givenHere(context), ...state.facet(knownNames).map(option)],
    validFor: WHOLE_WORD,
  };
}

function givenHere({ state }: CompletionContext): Completion[] {
  const given = new Map<string, string>();
  for (const lines of resultsShown(state)) {
    for (const line of lines) {
      if (line.kind === 'value' && WHOLE_WORD.test(line.name)) given.set(line.name, line.value);
    }
  }
  const figures = new Set(state.facet(knownNames).map(({ name }) => name));
  return [...given]
    .filter(([name]) => !figures.has(name))
    .map(([name, value]) => ({ label: name, detail: value, info: 'given in this entry', boost: 10 }));
}

function option({ name, title, value, lacking }: KnownName): Completion {
  return {
    label: name,
    detail: value ?? 'unknown',
    info: lacking === undefined ? title : `${title}: ${lacking}`,
    boost: value === undefined ? -10 : 0,
  };
}

export function nameCompletion(): Extension {
  return autocompletion({
    override: [complete],
    icons: false,
    maxRenderedOptions: 60,
    tooltipClass: () => 'name-completion',
  });
}
