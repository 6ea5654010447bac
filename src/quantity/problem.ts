/**
 * What can go wrong, as data. Detection happens deep in the core and makes a `Problem`; the sentence for
 * people is made at the edge by `phrase`, from the one catalogue in `catalogue.ts`.
 */
import { catalogue, type ProblemCode } from './catalogue.ts';

export interface Problem {
  readonly code: ProblemCode;
  /** Where: a field, a line of a file, a position in an expression. In the words that the reader sees. */
  readonly place: string;
  /** The offending figures and names, for the sentence. */
  readonly figures: Readonly<Record<string, string | number>>;
  /** Half-open range of characters in the text concerned, where there is one. */
  readonly range?: readonly [from: number, to: number];
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem };

export function good<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function bad<T = never>(
  code: ProblemCode,
  place: string,
  figures: Problem['figures'] = {},
  range?: Problem['range'],
): Result<T> {
  return { ok: false, problem: { code, place, figures, ...(range ? { range } : {}) } };
}

/** A problem thrown where a return value has no room for it (inside a calculation, across a promise). */
export class ProblemError extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(sentence(problem));
    this.name = 'ProblemError';
    this.problem = problem;
  }
}

export interface Phrased {
  readonly place: string;
  readonly reason: string;
  readonly remedy: string;
}

/** The problem in words: where, why, and what to do about it. */
export function phrase(problem: Problem): Phrased {
  const entry = catalogue[problem.code];
  return {
    place: problem.place,
    reason: fill(entry.reason, problem.figures),
    remedy: fill(entry.remedy, problem.figures),
  };
}

/** The same as one line of text, for a terminal or a log. */
export function sentence(problem: Problem): string {
  const { place, reason, remedy } = phrase(problem);
  return `${place}: ${reason} ${remedy}`;
}

function fill(template: string, figures: Problem['figures']): string {
  return template.replace(/\{(\w+)\}/g, (whole, name: string) => inWords(figures[name] ?? whole));
}

/** Figures that came out of a sum have sixteen digits, of which a sentence wants six. */
function inWords(figure: string | number): string {
  if (typeof figure === 'string') return figure;
  const short = Number.isInteger(figure) ? figure : Number(figure.toPrecision(6));
  return String(short).replace('-', '\u2212');
}
