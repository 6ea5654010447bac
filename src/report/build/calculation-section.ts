/** Every calculation that a margin rests on, once each, in the order in which one feeds the next. */
import {
  type Assessment,
  type ExplainedInput,
  explainFigure,
  type Figure,
  sourceText,
} from '../../margins/index.ts';
import { formatUncertain, formatValue } from '../../quantity/index.ts';
import { linearEquation } from '../equation/linear.ts';
import type { Block, Cell } from '../tree.ts';
import type { ReportFrame } from './report-source.ts';
import { heading, sentenceCase } from './wording.ts';

export function calculationSection(assessment: Assessment, frame: ReportFrame): Block[] {
  const figures = figuresInOrder(assessment);
  if (figures.length === 0) return [];
  const said = new Set<string>();
  return [
    heading(1, 'Calculations'),
    {
      type: 'paragraph',
      content: [
        'In the order in which one feeds the next. Inputs that are calculated themselves are found further up; the rows of the mass table are in the section on the vehicle.',
      ],
    },
    ...figures.flatMap((figure) => calculationBlocks(figure, assessment, frame, said)),
  ];
}

function figuresInOrder(assessment: Assessment): Figure[] {
  const seen = new Set<string>();
  const order: Figure[] = [];
  const visit = (name: string): void => {
    const figure = assessment.figures.get(name);
    if (!figure || seen.has(name)) return;
    seen.add(name);
    if (figure.trace.kind !== 'calculation') return;
    for (const feed of Object.values(figure.trace.inputs).flat()) visit(feed);
    if (!isRow(name)) order.push(figure);
  };
  for (const margin of assessment.margins) {
    visit(margin.capability);
    visit(margin.demand);
  }
  return order;
}

/** Figures of single parts and of sections of the rotor stand in their tables. */
export function isRow(name: string): boolean {
  return name.startsWith('part_') || name.startsWith('section_');
}

/** Several figures may come out of one calculation: the equation is set with the first of them. */
function calculationBlocks(
  figure: Figure,
  assessment: Assessment,
  frame: ReportFrame,
  said: Set<string>,
): Block[] {
  const explained = explainFigure(assessment, figure.name);
  if (!explained.ok || figure.trace.kind !== 'calculation') return [];
  const { calculation, inputs } = explained.value;
  if (!calculation) return [];
  const result: Block = {
    type: 'paragraph',
    content: [
      'Result: ',
      { strong: figure.result.ok ? formatUncertain(figure.result.value, figure.display) : 'unknown' },
      '.',
    ],
  };
  const key = JSON.stringify([figure.trace.calculation, figure.trace.inputs]);
  const head = heading(2, sentenceCase(figure.title));
  if (said.has(key)) {
    return [
      head,
      {
        type: 'paragraph',
        content: [`By the same calculation with the same inputs, “${calculation.title}”.`],
      },
      result,
    ];
  }
  said.add(key);
  return [
    head,
    {
      type: 'equation',
      tex: calculation.equation,
      spoken: `${calculation.title}: ${linearEquation(calculation.equation)}`,
    },
    {
      type: 'table',
      caption: frame.table(`Inputs of “${calculation.title}”`),
      columns: [
        { title: 'Symbol', align: 'left', share: 0.8 },
        { title: 'Meaning', align: 'left', share: 3 },
        { title: 'Value', align: 'decimal', share: 1.7 },
        { title: 'Where it comes from', align: 'left', share: 2.3 },
      ],
      rows: inputs.map((input) => inputRow(input, calculation.inputs[input.input]?.unit ?? '1')),
    },
    result,
    {
      type: 'paragraph',
      content: [
        { emphasis: 'Valid: ' },
        `${calculation.validity} `,
        { emphasis: 'Source: ' },
        endSentence(calculation.source),
      ],
    },
  ];
}

function inputRow(input: ExplainedInput, unit: string): Cell[] {
  const { symbol, meaning, figures, taken } = input;
  const head: Cell[] = [[{ math: symbol, spoken: linearEquation(symbol) }], meaning];
  const [first] = figures;
  if (taken !== undefined) return [...head, formatValue(taken, unit), 'not entered: default taken'];
  if (!first) return [...head, '–', ''];
  if (figures.length > 1) return [...head, `${figures.length} values`, listSource(figures)];
  const { result, display } = first;
  return [...head, result.ok ? formatUncertain(result.value, display) : '–', shortSource(first)];
}

function listSource(figures: readonly Figure[]): string {
  const rotor = figures.every(({ name }) => name.startsWith('section_'));
  return rotor ? 'sections of the rotor' : 'mass table';
}

function shortSource(figure: Figure): string {
  return figure.trace.kind === 'calculation' ? `calculated: ${figure.title}` : sourceText(figure);
}

function endSentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
