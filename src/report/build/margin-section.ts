/** The margins of a revision: one table to see them all, each drawn as a scale, and the rule that they are judged by. */
import { type Assessment, explainMargin, type Margin } from '../../margins/index.ts';
import { formatUncertain, phrase } from '../../quantity/index.ts';
import type { Block } from '../tree.ts';
import { marginDrawing } from './margin-drawing.ts';
import type { ReportFrame } from './report-source.ts';
import { boundText, heading, marginText, sentenceCase } from './wording.ts';

const SCALE_WIDTH = 450;
const SCALE_TEXT = 8.6;

export function marginTable(assessment: Assessment, frame: ReportFrame): Block[] {
  if (assessment.margins.length === 0) {
    return [{ type: 'paragraph', content: ['The prototype has no requirements yet, and so no margins.'] }];
  }
  return [
    {
      type: 'table',
      caption: frame.table('Margins: capability against demand'),
      columns: [
        { title: 'Margin', align: 'left', share: 2.3 },
        { title: 'Capability', align: 'decimal', share: 1.6 },
        { title: 'Demand', align: 'decimal', share: 1.5 },
        { title: 'MS', align: 'decimal', share: 1.1 },
        { title: 'At least (95 %)', align: 'decimal', share: 1 },
        { title: 'Verdict', align: 'left', share: 0.9 },
      ],
      rows: assessment.margins.map((margin) => [
        margin.title,
        figureText(assessment, margin.capability, margin.display),
        figureText(assessment, margin.demand, margin.display),
        margin.verdict === 'unknown' ? '–' : marginText(margin.marginOfSafety),
        margin.verdict === 'unknown' ? '–' : boundText(margin.lowerBound),
        [{ strong: margin.verdict }],
      ]),
    },
  ];
}

/** Value with uncertainty in the margin's unit, or a dash. */
export function figureText(assessment: Pick<Assessment, 'figures'>, name: string, display: string): string {
  const result = assessment.figures.get(name)?.result;
  return result?.ok ? formatUncertain(result.value, display) : '–';
}

export const decisionRule: readonly Block[] = [
  {
    type: 'paragraph',
    content: [
      'The margin of safety is MS = capability/demand − 1. Uncertainty is carried to first order from the inputs ',
      '(JCGM 100), what they share accounted for. The decision rule is guarded acceptance (JCGM 106) with a guard band of k = 1.645 ',
      'standard uncertainties: a margin ',
      { strong: 'holds' },
      ' when the one-sided lower 95 % bound of MS is at or above nought; it is ',
      { strong: 'in doubt' },
      ' when MS is, but that bound is not; it ',
      { strong: 'fails' },
      ' when MS is below nought; it is ',
      { strong: 'unknown' },
      ' while an input is missing. A figure in brackets is the standard uncertainty on the last digits, and hatching on a scale is 1.645 of it to either side.',
    ],
  },
];

/** Each margin drawn, without the calculation behind it. */
export function marginScales(assessment: Assessment): Block[] {
  return assessment.margins.map((margin) => ({
    type: 'illustration',
    drawing: marginDrawing(margin, assessment, SCALE_WIDTH, SCALE_TEXT),
    caption: '',
  }));
}

/** Each margin drawn, with what it rests on and where its uncertainty comes from. */
export function marginDetails(assessment: Assessment): Block[] {
  return assessment.margins.flatMap((margin) => [
    heading(2, margin.title),
    {
      type: 'illustration',
      drawing: marginDrawing(margin, assessment, SCALE_WIDTH, SCALE_TEXT, true),
      caption: '',
    } satisfies Block,
    ...marginWords(margin, assessment),
  ]);
}

function marginWords(margin: Margin, assessment: Assessment): Block[] {
  const title = (name: string): string => assessment.figures.get(name)?.title ?? name;
  const sides = `Capability is the ${title(margin.capability)}, demand the ${title(margin.demand)}.`;
  if (margin.verdict === 'unknown') {
    const { reason, remedy } = phrase(margin.problem);
    return [{ type: 'paragraph', content: [`${sides} The verdict is unknown: ${reason} ${remedy}`] }];
  }
  const explained = explainMargin(assessment, margin.id);
  const budget = explained.ok ? explained.value.budget.slice(0, 4).filter(({ share }) => share >= 0.01) : [];
  const parts = budget.map(({ label, share }) => `${label} (${Math.round(share * 100)} %)`);
  const spread =
    parts.length > 0 ? ` The variance comes from: ${parts.join('; ')}.` : ' No input states an uncertainty.';
  const exact = explained.ok ? explained.value.takenAsExact.map((figure) => figure.title) : [];
  const warning =
    exact.length > 0 ? ` Taken as exact for want of a stated uncertainty: ${listed(exact)}.` : '';
  return [
    { type: 'paragraph', content: [`${sides}${spread}${warning}`] },
    ...(explained.ok && explained.value.advice
      ? ([{ type: 'paragraph', content: [{ emphasis: explained.value.advice }] }] satisfies Block[])
      : []),
  ];
}

const MOST_LISTED = 6;

function listed(names: readonly string[]): string {
  const shown = names.slice(0, MOST_LISTED).join('; ');
  return names.length > MOST_LISTED ? `${shown}; and ${names.length - MOST_LISTED} more` : shown;
}

/** What the data say about themselves. */
export function noticeList(assessment: Assessment): Block[] {
  if (assessment.notices.length === 0) return [];
  return [
    heading(2, 'What the data say about themselves'),
    { type: 'list', ordered: false, items: assessment.notices.map(({ text }) => [sentenceCase(text)]) },
  ];
}
