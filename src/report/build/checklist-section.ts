/** The checklist of a run as it was signed: every item, its answer, its limits, by whom and when. */
import { isWithin, limitsInWords } from '../../checklist/index.ts';
import type { ChecklistAnswer, ChecklistItem, Run } from '../../notebook/index.ts';
import type { Block, Cell } from '../tree.ts';
import type { ReportFrame } from './report-source.ts';
import { heading } from './wording.ts';

const PHASES = [
  ['before', 'Before the run'],
  ['during', 'During the run'],
  ['after', 'After the run'],
] as const;

export function checklistSection(run: Run, frame: ReportFrame): Block[] {
  if (run.items.length === 0) return [];
  let number = 0;
  const numbers = new Map(
    run.items.map((item) => {
      number += 1;
      return [item.id, number] as const;
    }),
  );
  return [
    heading(1, 'Checklist as signed'),
    {
      type: 'paragraph',
      content: [
        'Limits are those that were put to the people on the day. Times are those of ',
        `${frame.day(run.startedAt)} unless a date is given, zone ${frame.zone}. A reading on its limit meets it.`,
      ],
    },
    ...PHASES.flatMap(([phase, title]): Block[] => {
      const items = run.items.filter((item) => item.phase === phase);
      if (items.length === 0) return [];
      return [
        heading(2, title),
        ...pausesOf(items).map(([pause, group]): Block => pauseTable(pause, group, run, numbers, frame)),
      ];
    }),
  ];
}

/** Items under one head, in their order. */
function pausesOf(items: readonly ChecklistItem[]): [string, ChecklistItem[]][] {
  const pauses: [string, ChecklistItem[]][] = [];
  for (const item of items) {
    const last = pauses.at(-1);
    if (last?.[0] === item.pause) last[1].push(item);
    else pauses.push([item.pause, [item]]);
  }
  return pauses;
}

function pauseTable(
  pause: string,
  items: readonly ChecklistItem[],
  run: Run,
  numbers: ReadonlyMap<string, number>,
  frame: ReportFrame,
): Block {
  return {
    type: 'table',
    caption: frame.table(pause),
    columns: [
      { title: 'No.', align: 'right', share: 0.45 },
      { title: 'Item', align: 'left', share: 4 },
      { title: 'Answer', align: 'left', share: 1.5 },
      { title: 'Limits', align: 'left', share: 1.5 },
      { title: 'By, at', align: 'left', share: 1.25 },
    ],
    rows: items.map((item) => itemRow(item, run, numbers.get(item.id) ?? 0, frame)),
  };
}

function itemRow(item: ChecklistItem, run: Run, number: number, frame: ReportFrame): Cell[] {
  const answer = run.answers[item.id];
  const marks = [item.hold ? 'Hold point. ' : '', item.critical ? 'Critical. ' : ''].join('');
  const text: Cell = marks === '' ? item.text : [{ strong: marks }, item.text];
  const { measured } = item;
  const limited = measured?.low !== undefined || measured?.high !== undefined;
  const limits = measured && limited ? limitsInWords(measured.low, measured.high, measured.unit) : '';
  return [
    String(number),
    text,
    answerCell(item, answer),
    limits,
    answer ? signatureText(answer, run, frame) : '',
  ];
}

function answerCell(item: ChecklistItem, answer: ChecklistAnswer | undefined): Cell {
  if (!answer) return [{ emphasis: 'not answered' }];
  const words = answer.reading?.typed ?? answer.choice ?? (item.kind === 'tick' ? 'done' : 'met');
  const note = answer.note ? ` (${answer.note})` : '';
  return wasMet(item, answer)
    ? `${words}${note}`
    : [
        { strong: 'Not met: ' },
        `${answer.met ? words : answer.reading || answer.choice ? words : 'no'}${note}`,
      ];
}

/** Decided from the item and the answer, not from the stored mark alone. */
export function wasMet(item: ChecklistItem, answer: ChecklistAnswer | undefined): boolean {
  if (!answer?.met || item.missing.length > 0) return false;
  if (item.measured) {
    const { low, high } = item.measured;
    if (!answer.reading || !isWithin(answer.reading.si, low, high)) return false;
  }
  const choice = item.choices?.find(({ text }) => text === answer.choice);
  return !item.choices || (choice !== undefined && !choice.stops);
}

function signatureText(answer: ChecklistAnswer, run: Run, frame: ReportFrame): string {
  const day = frame.day(answer.at) === frame.day(run.startedAt) ? '' : `${frame.day(answer.at)} `;
  const who = answer.second ? `${answer.initials} + ${answer.second}` : answer.initials;
  return `${who}, ${day}${frame.time(answer.at)}`;
}
