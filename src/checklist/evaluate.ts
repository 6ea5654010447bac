/**
 * Conditions, limits and texts of templates worked out for one revision. Each answer is known, or waits for figures
 * that it names, or is broken; a broken one also counts as missing something, so that it can never wave an item
 * through.
 */
import {
  evaluateCondition,
  evaluateExpression,
  formatValue,
  type Problem,
  parseExpression,
  type Result,
  sentence,
} from '../quantity/index.ts';
import { type TemplateScope, type WordName, wordNames } from './scope.ts';
import { piecesOf } from './wording.ts';

/** An expression worked out, or what keeps it from being so. */
export type Asked<T> = {
  /** Names of the figures that it uses. */
  readonly figures: readonly string[];
  /** Names of what has to be entered first; empty where it is known. */
  readonly missing: readonly string[];
} & (
  | { readonly state: 'known'; readonly value: T }
  | { readonly state: 'unknown' }
  | { readonly state: 'broken'; readonly problem: Problem }
);

export interface Printable {
  readonly si: number;
  /** In the unit asked for, else the one that people read the figure in. */
  readonly text: string;
}

/** A text with its figures put in; what is not known stands in it as `[title: not known]`. */
export interface Wording {
  readonly text: string;
  readonly figures: readonly string[];
  readonly missing: readonly string[];
  /** What is wrong with the text itself; it then shows the place as it stands. */
  readonly problems: readonly Problem[];
}

/** Whether a condition holds. Undecided only where an unknown figure decides it. */
export function conditionIn(text: string, scope: TemplateScope): Asked<boolean> {
  return asked(text, scope, () => evaluateCondition(text, scope.known, text));
}

/**
 * The result of an expression, SI and as printed.
 *
 * @param unit  to print it in; left out, a bare name prints in the figure's own display unit
 */
export function figureIn(text: string, scope: TemplateScope, unit?: string): Asked<Printable> {
  return asked(text, scope, () => {
    const parsed = parseExpression(text, text);
    if (!parsed.ok) return parsed;
    const result = evaluateExpression(parsed.value, scope.known, text);
    if (!result.ok) return result;
    const { value, unitText } = result.value;
    const display = unit ?? scope.figures.get(text.trim())?.display ?? unitText;
    return {
      ok: true,
      value: { si: value.value, text: formatValue(value.value, display) },
    };
  });
}

/** A text of a template or of a draft card, read for one revision. */
export function wordingIn(text: string, scope: TemplateScope): Wording {
  const pieces = piecesOf(text, text);
  if (!pieces.ok) {
    return { text, figures: [], missing: [sentence(pieces.problem)], problems: [pieces.problem] };
  }
  const figures: string[] = [];
  const missing: string[] = [];
  const problems: Problem[] = [];
  const words = pieces.value.map((piece) => {
    if (piece.kind === 'words') return piece.text;
    if (isWordName(piece.expression)) return scope.words[piece.expression];
    const figure = figureIn(piece.expression, scope, piece.unit);
    figures.push(...figure.figures);
    missing.push(...figure.missing);
    if (figure.state === 'known') return figure.value.text;
    if (figure.state === 'broken') problems.push({ ...figure.problem, range: piece.range });
    return `[${titleOf(piece.expression, scope)}: not known]`;
  });
  return { text: words.join(''), figures, missing, problems };
}

/** What has to be entered for a figure to be known; the figure itself where nothing can be named; empty if known. */
export function missingFor(name: string, scope: TemplateScope): readonly string[] {
  if (scope.known.has(name)) return [];
  const result = scope.figures.get(name)?.result;
  return result && !result.ok && result.missing.length > 0 ? result.missing : [name];
}

export function isWordName(text: string): text is WordName {
  return (wordNames as readonly string[]).includes(text);
}

function asked<T>(text: string, scope: TemplateScope, work: () => Result<T>): Asked<T> {
  const parsed = parseExpression(text, text);
  const figures = parsed.ok ? parsed.value.symbols.filter((name) => scope.figures.has(name)) : [];
  const result = work();
  if (result.ok) return { state: 'known', value: result.value, figures, missing: [] };

  const symbols = parsed.ok ? parsed.value.symbols : [];
  const missing = symbols.flatMap((name) => missingFor(name, scope));
  if (result.problem.code === 'expression.unknown-symbol') return { state: 'unknown', figures, missing };
  // a division by nought, units that do not go together: nothing to enter, but nothing to go by either
  const blocked = missing.length > 0 ? missing : symbols.length > 0 ? symbols : [text];
  return { state: 'broken', problem: result.problem, figures, missing: blocked };
}

function titleOf(expression: string, scope: TemplateScope): string {
  const title = scope.figures.get(expression)?.title ?? expression;
  return title.replaceAll('_', ' ');
}
