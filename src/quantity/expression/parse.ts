/** Formulas read once and kept: the same few texts are worked out again after every keystroke. */
import type { Result } from '../problem.ts';
import type { Unit } from '../unit.ts';
import { CONSTANTS, KEYWORDS } from './constants.ts';
import { caught } from './fault.ts';
import { LONGEST_EXPRESSION } from './token.ts';
import { type Term, treeOf } from './tree.ts';

export interface Expression {
  readonly text: string;
  /** Names of figures that it uses, in order, once each; without the constants and the functions. */
  readonly symbols: readonly string[];
  /** The unit after a closing `in`. */
  readonly target?: Unit;
  readonly root: Term;
}

const CACHE_SIZE = 1000;
const cache = new Map<string, Result<Expression>>();

/**
 * @param place  where the text stands, for the problem
 * @returns      the formula, or the first problem with its range in `text`
 */
export function parseExpression(text: string, place = 'expression'): Result<Expression> {
  const known = cache.get(text);
  const result = known ?? caught(place, () => read(text));
  if (!known && text.length <= LONGEST_EXPRESSION) {
    if (cache.size >= CACHE_SIZE) cache.clear();
    cache.set(text, result);
  }
  return result.ok ? result : { ok: false, problem: { ...result.problem, place } };
}

function read(text: string): Expression {
  const { root, target } = treeOf(text);
  const symbols = new Set<string>();
  collect(root, symbols);
  return { text, root, symbols: [...symbols], ...(target ? { target } : {}) };
}

function collect(term: Term, symbols: Set<string>): void {
  switch (term.kind) {
    case 'name':
      if (!CONSTANTS.has(term.name) && !KEYWORDS.has(term.name)) symbols.add(term.name);
      break;
    case 'minus':
    case 'not':
      collect(term.term, symbols);
      break;
    case 'arithmetic':
    case 'and':
    case 'or':
      collect(term.left, symbols);
      collect(term.right, symbols);
      break;
    case 'call':
    case 'comparison':
      for (const operand of term.terms) collect(operand, symbols);
      break;
  }
}
