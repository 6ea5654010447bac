/**
 * Evaluates the calculations of an entry in their order: a block knows the figures of the entry's revision and the
 * names that the blocks above it give. Each block is evaluated once for the same text over the same figures.
 */
import { formatUncertain, type Problem, phrase, type Result } from '../../../../quantity/index.ts';
import type { CalcLine, Scope } from './scope.ts';
import type { ShownLine } from './shown-result.ts';

export interface EvaluatedBlock {
  readonly lines: readonly ShownLine[];
  /** The figures and the names that a block below this one knows. */
  readonly after: Scope;
}

/** What evaluates one block: the worker, or `quantity/` at once where there is none. */
export type EvaluateBlock = (code: string, scope: Scope) => Promise<Result<readonly CalcLine[]>>;

/** The figures that an entry may use: those of its revision, and why another one is not there. */
export interface Figures {
  readonly scope: Scope;
  /** `undefined` for a name that no figure has. */
  whyUnknown(name: string): Problem | undefined;
}

/** The results of all blocks of an entry, in order. Remembered by the identity of the scope. */
export type Calculate = (codes: readonly string[], figures: Figures) => Promise<readonly EvaluatedBlock[]>;

const MOST_REMEMBERED = 200; // blocks over one set of figures; typing makes a new one at each key
const TRIED_AGAIN = 20_000; // ms; a machine that was busy with something else may have stopped an innocent one

interface Remembered {
  readonly block: Promise<EvaluatedBlock>;
  /** Set when nothing came of it: the moment from which it is worth another try. */
  triedAgain?: number;
}

export function entryCalculation(evaluate: EvaluateBlock, clock: () => number = Date.now): Calculate {
  const known = new WeakMap<Scope, Map<string, Remembered>>();

  function once(code: string, scope: Scope, figures: Figures): Promise<EvaluatedBlock> {
    const blocks = known.get(scope) ?? new Map<string, Remembered>();
    known.set(scope, blocks);
    const before = blocks.get(code);
    if (before && (before.triedAgain === undefined || clock() < before.triedAgain)) return before.block;
    const remembered: Remembered = {
      block: evaluate(code, scope).then((result) => {
        if (!result.ok) remembered.triedAgain = clock() + TRIED_AGAIN;
        return evaluatedBlock(code, result, scope, figures);
      }),
    };
    blocks.delete(code);
    if (blocks.size >= MOST_REMEMBERED) blocks.delete([...blocks.keys()][0] ?? '');
    blocks.set(code, remembered);
    return remembered.block;
  }

  return async (codes, figures) => {
    const evaluated: EvaluatedBlock[] = [];
    let { scope } = figures;
    for (const code of codes) {
      const block = await once(code, scope, figures);
      evaluated.push(block);
      scope = block.after;
    }
    return evaluated;
  };
}

function evaluatedBlock(
  code: string,
  result: Result<readonly CalcLine[]>,
  scope: Scope,
  figures: Figures,
): EvaluatedBlock {
  if (!result.ok) {
    const { reason, remedy } = phrase(result.problem);
    return { lines: [{ kind: 'problem', reason, remedy, range: [0, code.length] }], after: scope };
  }
  const given = result.value.flatMap(({ name, outcome }) =>
    name !== undefined && outcome.ok ? [[name, outcome.value] as const] : [],
  );
  return {
    lines: result.value.map((line) => shownLine(line, scope, figures)),
    after: given.length === 0 ? scope : new Map([...scope, ...given]),
  };
}

function shownLine(
  { line, offset, text, name, outcome }: CalcLine,
  scope: Scope,
  figures: Figures,
): ShownLine {
  if (outcome.ok) {
    const { value, unitText } = outcome.value;
    return { kind: 'value', name: name ?? formulaOf(text), value: formatUncertain(value, unitText) };
  }
  const { reason, remedy } = phrase(inThisEntry(outcome.problem, scope, figures));
  const [from, to] = outcome.problem.range ?? [0, text.length];
  return { kind: 'problem', line, reason, remedy, range: [offset + from, offset + to] };
}

/** A line without a name is called by its formula. */
function formulaOf(text: string): string {
  return text.replace(/#.*$/, '').trim();
}

/** What a formula alone cannot know: where a name was given before, and what a missing figure waits for. */
function inThisEntry(problem: Problem, scope: Scope, figures: Figures): Problem {
  const { code, place } = problem;
  const name = String(problem.figures.name);
  if (code === 'calc.name-of-figure' && scope.has(name) && !figures.scope.has(name)) {
    return { code: 'calc.given-above', place, figures: { name } };
  }
  return (code === 'expression.unknown-symbol' && figures.whyUnknown(name)) || problem;
}
