/** The method of a run after its card, and what was measured beside what was predicted. */
import { type Comparison, outcomeOf } from '../../checklist/index.ts';
import type { FrozenFigure, KnownQuantity, Run, TestCard } from '../../notebook/index.ts';
import { formatUncertain, formatValue, independent } from '../../quantity/index.ts';
import type { Block } from '../tree.ts';
import type { ReportFrame } from './report-source.ts';
import { heading, prose, sentenceCase } from './wording.ts';

export function methodSection(card: TestCard, frame: ReportFrame): Block[] {
  const part = (title: string, text: string): Block[] =>
    text.trim() === '' ? [] : [heading(2, title), ...prose(text)];
  const limits = Object.values(card.abortLimits).toSorted((a, b) => a.order - b.order);
  return [
    heading(1, 'Method'),
    {
      type: 'paragraph',
      content: [
        `Test card ${card.number}, “${card.title}”, `,
        card.issuedAt
          ? `issued ${frame.moment(card.issuedAt)}${card.issuedBy ? ` by ${card.issuedBy}` : ''}.`
          : 'not issued: its texts and predictions could still change.',
      ],
    },
    ...part('Purpose', card.purpose),
    ...part('Set-up', card.setUp),
    ...part('Prerequisites', card.prerequisites),
    ...(card.steps.length > 0
      ? [
          heading(2, 'Steps'),
          { type: 'list', ordered: true, items: card.steps.map((step) => [step]) } satisfies Block,
        ]
      : []),
    ...(limits.length > 0
      ? [
          heading(2, 'Abort limits'),
          {
            type: 'list',
            ordered: false,
            items: limits.map(({ label, text }) => [{ strong: `${label}: ` }, text]),
          } satisfies Block,
        ]
      : []),
  ];
}

export function resultSection(card: TestCard, run: Run, frame: ReportFrame): Block[] {
  const comparisons = outcomeOf(card, run);
  const compared = new Set(
    Object.values(card.readings).flatMap(({ name }) => (name === undefined ? [] : [name])),
  );
  const others = Object.values(card.predictions).filter(({ name }) => !compared.has(name));
  return [
    heading(1, 'Results'),
    { type: 'paragraph', content: ['Outcome as recorded: ', { strong: run.outcome ?? run.status }, '.'] },
    ...prose(run.summary),
    ...comparisonBlocks(comparisons, frame),
    ...predictionBlocks(others, frame),
  ];
}

function comparisonBlocks(comparisons: readonly Comparison[], frame: ReportFrame): Block[] {
  if (comparisons.length === 0) return [{ type: 'paragraph', content: ['The card asks for no readings.'] }];
  return [
    {
      type: 'table',
      caption: frame.table('Measured beside predicted'),
      columns: [
        { title: 'Reading', align: 'left', share: 2.2 },
        { title: 'Measured', align: 'decimal', share: 1.4 },
        { title: 'Predicted', align: 'decimal', share: 1.4 },
        { title: 'Difference', align: 'decimal', share: 1.3 },
        { title: 'Judgement', align: 'left', share: 1.7 },
      ],
      rows: comparisons.map((comparison) => [
        sentenceCase(comparison.label),
        comparison.measured ? measuredText(comparison.measured, comparison.unit) : '–',
        comparison.predicted ? frozenText(comparison.predicted) : '–',
        comparison.difference === undefined
          ? '–'
          : formatValue(comparison.difference, comparison.unit, comparison.combined),
        comparison.words,
      ]),
    },
    {
      type: 'paragraph',
      content: [
        'Figures were predicted from the revision and frozen before the run. A measured figure agrees when it differs from the prediction by no more than twice the combined standard uncertainty (k = 2).',
      ],
    },
  ];
}

function measuredText(measured: KnownQuantity, unit: string): string {
  return formatUncertain(independent('x', measured.si, measured.u), unit);
}

function frozenText({ value, u, unit }: FrozenFigure): string {
  return formatUncertain(independent('x', value, u), unit);
}

function predictionBlocks(predictions: readonly FrozenFigure[], frame: ReportFrame): Block[] {
  if (predictions.length === 0) return [];
  return [
    {
      type: 'table',
      caption: frame.table('Predicted for this run and not read'),
      columns: [
        { title: 'Figure', align: 'left', share: 3 },
        { title: 'Predicted', align: 'decimal', share: 2 },
      ],
      rows: predictions.map((figure) => [sentenceCase(figure.label), frozenText(figure)]),
    },
  ];
}
