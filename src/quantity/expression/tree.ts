/**
 * From the text of a formula to a small tree of our own. The precedence of the signs is the parser library's
 * business; what may occur in a formula is ours, and is listed here node by node. The library never sees a name, a
 * number or a unit: each is replaced by a letter with a number, so that its own functions, its own units and its
 * readings of `in` or `min` cannot come into play, and so that every leaf knows its place in the text as typed.
 */
import { create, parseDependencies } from 'mathjs/number';
import type { Unit } from '../unit.ts';
import { fault } from './fault.ts';
import { type Span, type Token, tokensOf } from './token.ts';

export type Arithmetic = '+' | '-' | '*' | '/' | '^';
export type Comparison = '<' | '<=' | '>' | '>=' | '==' | '!=';

export type Term = { readonly span: Span } & (
  | Extract<Token, { kind: 'number' | 'quantity' | 'name' }>
  | { readonly kind: 'minus'; readonly term: Term }
  | { readonly kind: 'arithmetic'; readonly sign: Arithmetic; readonly left: Term; readonly right: Term }
  | { readonly kind: 'call'; readonly name: string; readonly nameSpan: Span; readonly terms: readonly Term[] }
  /** `a < b < c` holds where both comparisons do. */
  | {
      readonly kind: 'comparison';
      readonly signs: readonly Comparison[];
      readonly terms: readonly Term[];
    }
  | { readonly kind: 'not'; readonly term: Term }
  | { readonly kind: 'and' | 'or'; readonly left: Term; readonly right: Term }
);

const MOST_NODES = 200;
const DEEPEST_NODES = 50;

/** The library's nodes, as far as they are let through. */
interface LibraryNode {
  readonly type: string;
  readonly fn?: string | LibraryNode;
  readonly name?: string;
  readonly args?: readonly LibraryNode[];
  readonly params?: readonly LibraryNode[];
  readonly content?: LibraryNode;
  readonly conditionals?: readonly string[];
  readonly implicit?: boolean;
}

let library: ((text: string) => LibraryNode) | undefined;

/** Made at the first formula: no page that has none pays for it. */
function parseByLibrary(text: string): LibraryNode {
  library ??= create({ ...parseDependencies }).parse as unknown as (text: string) => LibraryNode;
  return library(text);
}

/** @throws ProblemError with the place of the first thing that is not allowed */
export function treeOf(text: string): { readonly root: Term; readonly target?: Unit } {
  const { tokens, target } = tokensOf(text);
  const root = convert(parseMasked(tokens, text), { tokens, whole: [0, text.length], nodes: 0 }, 0);
  return { root, ...(target ? { target } : {}) };
}

const MASK = 'x';
const WORDS = new Set(['and', 'or', 'not']);

function parseMasked(tokens: readonly Token[], text: string): LibraryNode {
  const starts: number[] = [];
  let masked = '';
  for (const [index, token] of tokens.entries()) {
    starts.push(masked.length);
    masked += `${plain(token) ?? `${MASK}${index}`} `;
  }
  try {
    return parseByLibrary(masked);
  } catch (error) {
    if (!(error instanceof SyntaxError && 'char' in error)) throw error;
    const at = Number(error.char) - 1; // the library counts from 1, in the masked text
    const token = tokens[starts.findLastIndex((start) => start <= at)];
    const isEnd = token === undefined || at >= masked.trimEnd().length;
    throw isEnd
      ? fault('expression.unfinished', {}, [text.trimEnd().length, text.length])
      : fault('expression.unexpected', { text: text.slice(...token.span) }, token.span);
  }
}

/** What the library may see as it stands. */
function plain(token: Token): string | undefined {
  if (token.kind === 'sign') return token.sign;
  return token.kind === 'name' && WORDS.has(token.name) ? token.name : undefined;
}

interface Context {
  readonly tokens: readonly Token[];
  readonly whole: Span;
  nodes: number;
}

const ARITHMETIC: Readonly<Record<string, Arithmetic>> = {
  add: '+',
  subtract: '-',
  multiply: '*',
  divide: '/',
  pow: '^',
};

const COMPARISONS: Readonly<Record<string, Comparison>> = {
  smaller: '<',
  smallerEq: '<=',
  larger: '>',
  largerEq: '>=',
  equal: '==',
  unequal: '!=',
};

/** The allow-list. A node that is not named here does not get in, whatever the library may learn to parse. */
function convert(node: LibraryNode, context: Context, depth: number): Term {
  context.nodes += 1;
  if (context.nodes > MOST_NODES) throw fault('expression.too-many', { limit: MOST_NODES }, context.whole);
  if (depth > DEEPEST_NODES) throw fault('expression.too-deep', { limit: DEEPEST_NODES }, context.whole);
  switch (node.type) {
    case 'ParenthesisNode':
      if (node.content) return convert(node.content, context, depth + 1);
      break;
    case 'SymbolNode':
      return leaf(node, context);
    case 'OperatorNode':
      return operation(node, context, depth);
    case 'RelationalNode':
      return chain(node, context, depth);
    case 'FunctionNode':
      return call(node, context, depth);
  }
  throw fault('expression.not-allowed', {}, context.whole);
}

function leaf(node: LibraryNode, context: Context): Term {
  const token = tokenOf(node, context);
  if (token.kind === 'sign') throw fault('expression.not-allowed', {}, token.span);
  return token;
}

function operation(node: LibraryNode, context: Context, depth: number): Term {
  const [first, second] = node.args ?? [];
  const fn = String(node.fn);
  if (!first) throw fault('expression.not-allowed', {}, context.whole);
  if (!second) {
    const term = convert(first, context, depth + 1);
    if (fn === 'unaryPlus') return term;
    if (fn === 'unaryMinus') return { kind: 'minus', term, span: term.span };
    if (fn === 'not') return { kind: 'not', term, span: term.span };
    throw fault('expression.not-allowed', {}, term.span);
  }
  const left = convert(first, context, depth); // a long sum leans to the left and is not deep for a reader
  const right = convert(second, context, depth + 1);
  const span = around([left, right]);
  if (node.implicit) throw fault('expression.missing-sign', {}, span);
  const sign = ARITHMETIC[fn];
  if (sign) return { kind: 'arithmetic', sign, left, right, span };
  const comparison = COMPARISONS[fn];
  if (comparison) return { kind: 'comparison', signs: [comparison], terms: [left, right], span };
  if (fn === 'and' || fn === 'or') return { kind: fn, left, right, span };
  throw fault('expression.not-allowed', {}, span);
}

function chain(node: LibraryNode, context: Context, depth: number): Term {
  const terms = (node.params ?? []).map((term) => convert(term, context, depth + 1));
  const signs = (node.conditionals ?? []).flatMap((name) => COMPARISONS[name] ?? []);
  const span = around(terms);
  if (signs.length !== terms.length - 1) throw fault('expression.not-allowed', {}, span);
  return { kind: 'comparison', signs, terms, span };
}

function call(node: LibraryNode, context: Context, depth: number): Term {
  const token = typeof node.fn === 'object' ? tokenOf(node.fn, context) : undefined;
  if (token?.kind !== 'name') throw fault('expression.missing-sign', {}, token?.span ?? context.whole);
  const terms = (node.args ?? []).map((term) => convert(term, context, depth + 1));
  const span = around([token, ...terms]);
  return { kind: 'call', name: token.name, nameSpan: token.span, terms, span };
}

function tokenOf(node: LibraryNode, { tokens, whole }: Context): Token {
  const token = tokens[Number(node.name?.slice(MASK.length))];
  if (!token) throw fault('expression.not-allowed', {}, whole);
  return token;
}

function around(parts: readonly { readonly span: Span }[]): Span {
  return [Math.min(...parts.map((part) => part.span[0])), Math.max(...parts.map((part) => part.span[1]))];
}
