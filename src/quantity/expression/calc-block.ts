/**
 * A block of calculations in a log entry, one a line:
 *
 *     # comments run to the end of the line
 *     arm = 120 mm
 *     reach = arm * sin(ballast_travel) in mm
 *     reach / arm
 *
 * A line may use the figures of the revision and the names of the lines above it. A name is given once, and never
 * that of a figure: what stands in a notebook means one thing from top to bottom.
 */
import { bad, type Problem, type Result } from '../problem.ts';
import { KEYWORDS } from './constants.ts';
import { type Evaluated, evaluateExpression } from './evaluate.ts';
import { isFunction } from './functions.ts';
import { parseExpression } from './parse.ts';
import type { Scope, ScopeValue } from './value.ts';

export interface CalcLine {
  /** Counted from 1, blank lines and comments included. */
  readonly line: number;
  /** Where the line begins in the block. The range of its problem counts from the beginning of the line. */
  readonly offset: number;
  /** The line as typed. */
  readonly text: string;
  /** The name that it gives to its result. */
  readonly name?: string;
  readonly outcome: Result<Evaluated>;
}

const MOST_LINES = 200;
const GIVES_NAME = /^(\s*)([\p{L}_][\p{L}\p{Nd}_₀-₉]*)\s*=(?!=)/u;

/** Names that would mislead every reader. `e` is free: it often is an offset. */
const RESERVED: ReadonlySet<string> = new Set([...KEYWORDS, 'pi', 'π', 'g_n']);

/** One entry for each line that says something, in order. */
export function evaluateCalcBlock(text: string, scope: Scope): readonly CalcLine[] {
  const statements = statementsOf(text);
  const known: Known = { figures: scope, values: new Map(scope), given: new Map(), anywhere: new Map() };
  for (const { name, line } of statements) {
    if (name !== undefined && !known.anywhere.has(name)) known.anywhere.set(name, line);
  }
  return statements.map((statement) => {
    const { line, offset, text, name } = statement;
    return {
      line,
      offset,
      text,
      ...(name === undefined ? {} : { name }),
      outcome: outcomeOf(statement, known),
    };
  });
}

interface Statement {
  readonly line: number;
  readonly offset: number;
  readonly text: string;
  readonly name: string | undefined;
  readonly formula: string;
  readonly formulaAt: number;
}

/** The lines that are not blank, as far as they are read, and the first one beyond. */
function statementsOf(text: string): readonly Statement[] {
  const statements: Statement[] = [];
  let offset = 0;
  for (const [index, whole] of text.split('\n').entries()) {
    const line = whole.replace(/\r$/, '');
    const [said = ''] = line.split('#', 1);
    const [before = '', , name] = GIVES_NAME.exec(said) ?? [];
    if (said.trim() !== '') {
      const formulaAt = before.length;
      statements.push({
        line: index + 1,
        offset,
        text: line,
        name,
        formula: said.slice(formulaAt),
        formulaAt,
      });
    }
    if (index >= MOST_LINES) break;
    offset += whole.length + 1;
  }
  return statements;
}

interface Known {
  readonly figures: Scope;
  /** The figures and the results of the lines above. */
  readonly values: Map<string, ScopeValue>;
  /** Names of the lines above, faulty ones too, with their line. */
  readonly given: Map<string, number>;
  /** Names of all lines, with the first line that gives them. */
  readonly anywhere: Map<string, number>;
}

function outcomeOf(statement: Statement, known: Known): Result<Evaluated> {
  const { line, name, text } = statement;
  if (line > MOST_LINES) {
    return bad('calc.too-many-lines', placeOf(line), { limit: MOST_LINES }, [0, text.length]);
  }
  if (name === undefined) return resultOf(statement, known);
  const range = [text.indexOf(name), text.indexOf(name) + name.length] as const;
  const earlier = known.given.get(name);
  if (earlier !== undefined) return bad('calc.given-twice', placeOf(line), { name, line: earlier }, range);
  if (known.figures.has(name)) return bad('calc.name-of-figure', placeOf(line), { name }, range);
  if (RESERVED.has(name) || isFunction(name))
    return bad('calc.reserved-name', placeOf(line), { name }, range);
  const result = resultOf(statement, known);
  known.given.set(name, line);
  if (result.ok) known.values.set(name, result.value);
  return result;
}

function resultOf({ line, formula, formulaAt }: Statement, known: Known): Result<Evaluated> {
  const expression = parseExpression(formula, placeOf(line));
  const result = expression.ok
    ? evaluateExpression(expression.value, known.values, placeOf(line))
    : expression;
  if (result.ok) return result;
  const [from, to] = result.problem.range ?? [0, formula.length];
  const problem: Problem = { ...result.problem, range: [from + formulaAt, to + formulaAt] };
  return { ok: false, problem: explained(problem, known) };
}

/** An unknown name that another line gives has a better explanation than a misspelling. */
function explained(problem: Problem, { given, anywhere }: Known): Problem {
  if (problem.code !== 'expression.unknown-symbol') return problem;
  const name = String(problem.figures.name);
  const above = given.get(name);
  if (above !== undefined)
    return { ...problem, code: 'calc.hangs-on-problem', figures: { name, line: above } };
  const below = anywhere.get(name);
  if (below !== undefined) return { ...problem, code: 'calc.given-later', figures: { name, line: below } };
  return problem;
}

function placeOf(line: number): string {
  return `line ${line}`;
}
