/** A report of some 40 pages with 20 plots of 2000 points, from document to bytes; the first without warm-up. */
import type { Block, Drawing, PathStep, ReportDocument } from '../../src/report/index.ts';
import { renderPdf } from '../../src/report/pdf/index.ts';
import { readFonts } from '../fonts.ts';
import { report } from './timing/percentiles.ts';

const WORDS =
  'the rotor was spun up to full speed with its guard closed and held for a minute while pack current voltage lean and tilt were logged at every sample against the limits as recorded before'.split(
    ' ',
  );

function plot(number: number): Drawing {
  const steps = Array.from({ length: 2000 }, (_, i): PathStep => {
    const y = 130 + 100 * Math.sin(i / 50 + number) * Math.exp(-i / 900);
    return [i === 0 ? 'M' : 'L', (i * 450) / 2000, y];
  });
  const primitives = [{ type: 'path', stroke: 'ink', width: 0.8, steps } as const];
  return { width: 450, height: 260, title: `Plot ${number}`, description: 'A decay.', primitives };
}

function paragraph(number: number): Block {
  const words = Array.from({ length: 90 }, (_, i) => WORDS[(i * 7 + number * 3 + i * i) % WORDS.length]);
  return { type: 'paragraph', content: [`${words.join(' ')}.`] };
}

function section(number: number): Block[] {
  return [
    { type: 'heading', level: 1, text: `Section ${number}` },
    ...Array.from({ length: 8 }, (_, i) => paragraph(number * 8 + i)),
    { type: 'illustration', drawing: plot(number), caption: `Figure ${number}` },
    {
      type: 'table',
      caption: `Table ${number}`,
      columns: [
        { title: 'Quantity', align: 'left', share: 2 },
        { title: 'Value', align: 'decimal', share: 1 },
      ],
      rows: Array.from({ length: 12 }, (_, i) => [`Row ${i}`, `${i * number}.${i}(12)`]),
    },
  ];
}

const document: ReportDocument = {
  title: 'A long report',
  identification: 'BENCH-1',
  subject: '',
  author: 'Bench',
  issuedAt: '2025-03-01T09:00:00Z',
  paper: 'A4',
  titleBlock: [],
  blocks: Array.from({ length: 20 }, (_, number) => section(number + 1)).flat(),
};

const fonts = readFonts();
const times: number[] = [];
for (let turn = 0; turn < 12; turn += 1) {
  const started = performance.now();
  const made = await renderPdf(document, fonts);
  if (!made.ok) throw new Error(made.problem.code);
  times.push(performance.now() - started);
  const pages = new TextDecoder('latin1').decode(made.value).match(/\/StructParents/g)?.length;
  if (turn === 0) console.log(`${pages ?? 'some'} pages, ${Math.round(made.value.length / 1000)} kB`);
}
report('report, cold', times.slice(0, 1));
report('report, warm', times.slice(2));
