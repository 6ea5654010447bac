/** `margins`: the margins of a revision, for people or as JSON. */
import { type Assessment, assess, type Figure, type Margin } from '../margins/index.ts';
import { formatUncertain, sentence, standardUncertainty } from '../quantity/index.ts';
import { drawCells, drawJson, marginDraws } from './margin-draws.ts';
import { findRevision, readNotebook } from './notebook.ts';
import type { Command } from './run.ts';
import { GOOD, json, line, NO, Stop, USAGE } from './terminal.ts';

export const marginsCommand: Command = {
  usage: ['NOTEBOOK [--prototype P] [--revision R] [--json] [--monte-carlo [--seed N]]'],
  summary:
    'Every margin with capability, demand, margin of safety, its lower 95 % bound and verdict. The newest revision ' +
    'where none is named. Exit code 1 when a margin fails. With --monte-carlo also by random draws of every input (JCGM ' +
    '101:2008): how often the margin holds, mean, uncertainty and 95 % interval of the margin of safety, and whether the ' +
    'first-order figures are confirmed; takes seconds, the loop with 1000 draws most of them. The same seed draws the ' +
    'same, 1 where none is named.',
  options: {
    prototype: { type: 'string' },
    revision: { type: 'string' },
    json: { type: 'boolean' },
    'monte-carlo': { type: 'boolean' },
    seed: { type: 'string' },
  },
  async run([folder, ...extra], options, terminal) {
    if (folder === undefined || extra.length > 0) throw new Stop(USAGE, 'margins takes one NOTEBOOK.');
    const { state } = await readNotebook(folder, terminal);
    const { prototype, revision } = findRevision(
      state,
      options.prototype as string | undefined,
      options.revision as string | undefined,
    );
    const assessment = assess(prototype, revision);
    const draws = marginDraws(prototype, revision, options);
    if (options.json) {
      terminal.out(
        json({
          prototype: prototype.name,
          revision: revision.letter,
          ...(draws ? { monteCarlo: { seed: draws.seed, significantDigits: draws.digits } } : {}),
          margins: assessment.margins.map((margin) => ({
            ...marginJson(margin, assessment),
            ...drawJson(draws, margin.id),
          })),
          figures: Object.fromEntries(
            [...assessment.figures.values()].map((figure) => [figure.name, figureJson(figure)]),
          ),
          notices: assessment.notices.map(({ text }) => text),
        }),
      );
    } else {
      terminal.out(line(`${prototype.name}, revision ${revision.letter}`));
      for (const margin of assessment.margins) {
        terminal.out(line(...marginCells(margin, assessment), ...drawCells(draws, margin)));
      }
      for (const { text } of assessment.notices) terminal.out(line(`note: ${text}`));
    }
    return assessment.margins.some(({ verdict }) => verdict === 'fails') ? NO : GOOD;
  },
};

function marginCells(margin: Margin, assessment: Assessment): readonly string[] {
  const reading = (name: string): string => {
    const result = assessment.figures.get(name)?.result;
    return result?.ok ? formatUncertain(result.value, margin.display) : 'unknown';
  };
  const figures = `${reading(margin.capability)} against ${reading(margin.demand)}`;
  if (margin.verdict === 'unknown') return [margin.title, figures, `unknown: ${sentence(margin.problem)}`];
  const lowerBound = margin.lowerBound.toFixed(3).replace('-', '−');
  const safety = `MS ${formatUncertain(margin.marginOfSafety, '1')}, at least ${lowerBound}`;
  return [margin.title, figures, margin.verdict, safety];
}

function marginJson(margin: Margin, assessment: Assessment) {
  const { id, title, unit, verdict } = margin;
  const capability = figureJson(assessment.figures.get(margin.capability));
  const demand = figureJson(assessment.figures.get(margin.demand));
  const common = { id, title, unit, verdict, capability, demand };
  if (margin.verdict === 'unknown')
    return { ...common, missing: margin.missing, reason: sentence(margin.problem) };
  return {
    ...common,
    marginOfSafety: {
      value: margin.marginOfSafety.value,
      standardUncertainty: standardUncertainty(margin.marginOfSafety),
    },
    lowerBound: margin.lowerBound,
  };
}

function figureJson(figure: Figure | undefined) {
  if (!figure) return undefined;
  const { name, title, unit, result } = figure;
  return result.ok
    ? { name, title, unit, value: result.value.value, standardUncertainty: standardUncertainty(result.value) }
    : { name, title, unit, missing: result.missing };
}
