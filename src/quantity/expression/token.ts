/**
 * Cuts the text of a formula into numbers, quantities, names and signs, each with its place. Everything that a
 * formula may not hold (texts, lists, members, assignments) is refused here, before any parser sees it.
 */
import type { ProblemCode } from '../catalogue.ts';
import { type Cursor, passSpaces, take } from '../cursor.ts';
import { plainFigures } from '../dimension.ts';
import { oneSpelling, type Unit } from '../unit.ts';
import { fault } from './fault.ts';
import { readLiteral, readTarget } from './literal.ts';

/** Half-open range of characters of the text as typed. */
export type Span = readonly [from: number, to: number];

export type Token = { readonly span: Span } & (
  | { readonly kind: 'number'; readonly value: number }
  /** `joined` are the words of the unit after its first: a figure of the same name would make it unclear. */
  | {
      readonly kind: 'quantity';
      readonly si: number;
      readonly unit: Unit;
      readonly joined: readonly string[];
    }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'sign'; readonly sign: string }
);

export interface Tokens {
  readonly tokens: readonly Token[];
  /** The unit after a closing `in`. */
  readonly target?: Unit;
}

export const LONGEST_EXPRESSION = 500;
const DEEPEST_BRACKETS = 50;

const NAME = /[\p{L}_][\p{L}\p{Nd}_₀-₉]*/uy;
const SIGN = /<=|>=|==|!=|[-+*/^(),<>]/y;
const RAISED = /⁻?[⁰¹²³⁴-⁹]+/uy;

/** One sign for each, whichever key typed it. */
const ONE_SIGN: Readonly<Record<string, string>> = {
  '×': '*',
  '·': '*',
  '⋅': '*',
  '∙': '*',
  '÷': '/',
  '−': '-',
  '≤': '<=',
  '≥': '>=',
  '≠': '!=',
};

const REFUSED: Readonly<Record<string, ProblemCode>> = {
  '=': 'expression.no-assignment',
  '"': 'expression.no-text',
  "'": 'expression.no-text',
  '`': 'expression.no-text',
  '[': 'expression.no-lists',
  ']': 'expression.no-lists',
  '{': 'expression.no-lists',
  '}': 'expression.no-lists',
  ':': 'expression.no-lists',
  ';': 'expression.no-lists',
  '.': 'expression.no-members',
};

/** @throws ProblemError at the first thing that no formula may hold */
export function tokensOf(typed: string): Tokens {
  if (typed.length > LONGEST_EXPRESSION) {
    const figures = { length: typed.length, limit: LONGEST_EXPRESSION };
    throw fault('expression.too-long', figures, [LONGEST_EXPRESSION, typed.length]);
  }
  const cursor: Cursor = { text: oneSpelling(typed), at: 0 };
  const tokens: Token[] = [];
  const open: number[] = [];
  for (;;) {
    passSpaces(cursor);
    if (cursor.at >= typed.length) break;
    const token = readLiteral(cursor) ?? readName(cursor) ?? readSign(cursor);
    if (token.kind === 'name' && token.name === 'in') {
      if (open.length > 0) throw fault('expression.in-not-last', {}, token.span);
      if (tokens.length === 0) throw fault('expression.empty', {}, [0, typed.length]);
      return { tokens, target: readTarget(cursor, token.span[0]) };
    }
    checkBrackets(token, open);
    checkUnit(token, tokens);
    tokens.push(token);
    if (token.kind === 'sign' && token.sign === '^') tokens.push(...raisedNumber(cursor, token.span));
  }
  const unclosed = open.at(-1);
  if (unclosed !== undefined) throw fault('expression.bracket-open', {}, [unclosed, unclosed + 1]);
  if (tokens.length === 0) throw fault('expression.empty', {}, [0, typed.length]);
  return { tokens };
}

function readName(cursor: Cursor): Token | undefined {
  const from = cursor.at;
  const name = take(cursor, NAME);
  return name === undefined ? undefined : { kind: 'name', name, span: [from, cursor.at] };
}

function readSign(cursor: Cursor): Token {
  const from = cursor.at;
  const raised = take(cursor, RAISED);
  if (raised !== undefined) return { kind: 'sign', sign: '^', span: [from, cursor.at] };
  const sign = take(cursor, SIGN);
  if (sign !== undefined) return { kind: 'sign', sign, span: [from, cursor.at] };
  const character = String.fromCodePoint(cursor.text.codePointAt(from) ?? 0);
  const span: Span = [from, from + character.length];
  const same = ONE_SIGN[character];
  if (same === undefined) {
    throw fault(REFUSED[character] ?? 'expression.unexpected-character', { character }, span);
  }
  cursor.at = span[1];
  return { kind: 'sign', sign: same, span };
}

/** A raised figure is two things in one: the sign ^ and its number. */
function raisedNumber(cursor: Cursor, span: Span): readonly Token[] {
  const written = cursor.text.slice(...span);
  return written === '^' ? [] : [{ kind: 'number', value: Number(plainFigures(written)), span }];
}

function checkBrackets(token: Token, open: number[]): void {
  if (token.kind !== 'sign') return;
  if (token.sign === '(') open.push(token.span[0]);
  if (open.length > DEEPEST_BRACKETS) {
    throw fault('expression.too-deep', { limit: DEEPEST_BRACKETS }, token.span);
  }
  if (token.sign === ')' && open.pop() === undefined) throw fault('expression.bracket-close', {}, token.span);
  if (token.sign === ',' && open.length === 0) throw fault('expression.comma', {}, token.span);
}

/** Two places where a quantity could be read in two ways. */
function checkUnit(token: Token, before: readonly Token[]): void {
  const [above, line] = before.slice(-2);
  const isSolidus = line?.kind === 'sign' && line.sign === '/';
  if (token.kind === 'quantity' && isSolidus && above?.kind === 'number') {
    throw fault('expression.fraction-of-unit', {}, [above.span[0], token.span[1]]);
  }
  const last = before.at(-1);
  if (token.kind === 'sign' && token.sign === '^' && last?.kind === 'quantity') {
    throw fault('expression.power-of-unit', {}, [last.span[0], token.span[1]]);
  }
}
