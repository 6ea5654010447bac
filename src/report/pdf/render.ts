/** From the document tree to the bytes of a PDF: check the text, lay out, fill pages, draw them, write the file. */
import { bad, good, ProblemError, type Result } from '../../quantity/index.ts';
import type { Fonts } from '../fonts.ts';
import type { Block, ReportDocument } from '../tree.ts';
import { Canvas, type Typefaces } from './canvas.ts';
import { type Instant, instant } from './instant.ts';
import { layEquation, layIllustration, layPicture } from './lay-figures.ts';
import { layTable } from './lay-table.ts';
import { layCaution, layEndMark, layHeading, layList, layParagraph, layRule } from './lay-text.ts';
import { layTitle } from './lay-title.ts';
import { legible, nameOf } from './legible.ts';
import { LineBreaker } from './lines.ts';
import type { OutlineEntry } from './outline.ts';
import { INK_COLOURS } from './palette.ts';
import { shelve } from './pictures.ts';
import type { Setting } from './setting.ts';
import { type PlacedStrip, paginate, type Strip } from './strip.ts';
import { StructureElement } from './structure.ts';
import { FOOT_BASELINE, HEAD_BASELINE, MARGIN, PAPER, RULE, RUNNING } from './style.ts';
import { Typeface } from './typeface.ts';
import { type FileParts, writeFile } from './write.ts';

export interface RenderOptions {
  /**
   * A character that the typeface lacks: `name` prints its code, `[U+1F600]`, and says so at the end of the report;
   * `refuse` makes no report and names the character.
   */
  readonly unknownCharacters?: 'name' | 'refuse';
}

/**
 * Draws a report. The same document gives the same bytes.
 *
 * Fails with `report.unknown-character`, `report.unreadable-picture` or `report.bad-date`.
 */
export async function renderPdf(
  source: ReportDocument,
  fonts: Fonts,
  { unknownCharacters = 'name' }: RenderOptions = {},
): Promise<Result<Uint8Array>> {
  const issued = instant(source.issuedAt);
  if (!issued) return bad('report.bad-date', source.identification, { text: source.issuedAt });
  const faces: Typefaces = {
    regular: new Typeface(fonts.regular),
    semibold: new Typeface(fonts.semibold),
    italic: new Typeface(fonts.italic),
  };
  const { document, unknown } = legible(source, faces);
  const [first] = unknown;
  if (first && unknownCharacters === 'refuse') {
    const code = nameOf(first.character).slice(1, -1);
    return bad('report.unknown-character', source.identification, {
      character: first.character,
      code,
      near: first.near,
    });
  }
  const pictures = shelve(document.blocks);
  if (!pictures.ok) return pictures;

  const [width, height] = PAPER[document.paper];
  const outline: OutlineEntry[] = [];
  const structure = new StructureElement('Document');
  const setting: Setting = {
    faces,
    breaker: new LineBreaker(faces),
    left: MARGIN.side,
    width: width - 2 * MARGIN.side,
    pageHeight: height - MARGIN.top - MARGIN.bottom,
    parent: structure,
    pictures: pictures.value.shelf,
    outline: (level, text, page, top) => outline.push({ level, text, page, top }),
  };
  const strips = layDocument(
    document,
    unknown.map(({ character }) => character),
    setting,
  );
  const placed = paginate(strips, MARGIN.top, height - MARGIN.bottom);
  const canvases = drawPages(placed, document, issued, setting, [width, height]);
  const parts: FileParts = {
    canvases,
    faces,
    structure,
    outline,
    pictures: pictures.value.files,
    metadata: {
      title: document.title,
      author: document.author,
      subject: document.subject,
      identification: document.identification,
      language: 'en-GB',
      producer: 'Counterpoise',
      created: issued,
    },
  };
  try {
    return good(await writeFile(parts));
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}

function layDocument(document: ReportDocument, unknown: readonly string[], setting: Setting): Strip[] {
  let level = 0;
  const strips = layTitle(document, setting);
  for (const block of document.blocks) {
    if (block.type === 'heading') {
      // levels never skip, or the structure would have a gap
      level = Math.min(block.level, level + 1);
      strips.push(...layHeading({ ...block, level: level as 1 | 2 | 3 }, setting));
    } else strips.push(...layBlock(block, setting));
  }
  if (unknown.length > 0) {
    const names = unknown.map(nameOf).join(', ');
    const text = `The typeface of this report lacks some characters of the text; they are printed by their Unicode numbers: ${names}.`;
    strips.push(...layParagraph({ type: 'paragraph', content: [{ emphasis: text }] }, setting));
  }
  strips.push(...layEndMark(`End of report ${document.identification}`, setting));
  return strips;
}

function layBlock(block: Exclude<Block, { type: 'heading' }>, setting: Setting): Strip[] {
  switch (block.type) {
    case 'paragraph':
      return layParagraph(block, setting);
    case 'list':
      return layList(block, setting);
    case 'table':
      return layTable(block, setting);
    case 'equation':
      return layEquation(block, setting);
    case 'illustration':
      return layIllustration(block, setting);
    case 'picture':
      return layPicture(block, setting);
    case 'caution':
      return layCaution(block, setting);
    case 'rule':
      return layRule(setting);
  }
}

function drawPages(
  placed: readonly PlacedStrip[],
  document: ReportDocument,
  issued: Instant,
  setting: Setting,
  [width, height]: readonly [number, number],
): Canvas[] {
  const total = (placed.at(-1)?.page ?? 0) + 1;
  const canvases = Array.from({ length: total }, (_, page) => new Canvas(page, width, height, setting.faces));
  for (const { strip, page, top, continuationTop } of placed) {
    const canvas = canvases[page];
    if (!canvas) continue;
    if (continuationTop !== undefined) strip.continuation?.draw(canvas, continuationTop);
    strip.draw(canvas, top);
  }
  for (const canvas of canvases) drawRunningLines(canvas, document, issued, setting, total);
  return canvases;
}

/** Identification and title at the head, date of issue and page number at the foot of every page. */
function drawRunningLines(
  canvas: Canvas,
  document: ReportDocument,
  issued: Instant,
  { left, width, faces }: Setting,
  total: number,
): void {
  const { size } = RUNNING;
  const right = left + width;
  const foot = canvas.height - FOOT_BASELINE;
  const number = `page ${canvas.page + 1} of ${total}`;
  const identification = document.identification;
  const used = faces.semibold.width(identification, size) + 24;
  const title = cutTo(document.title, width - used, (text) => faces.regular.width(text, size));
  canvas.artifact(() => {
    canvas.text('semibold', size, left, HEAD_BASELINE, identification, INK_COLOURS.ink);
    canvas.text(
      'regular',
      size,
      right - faces.regular.width(title, size),
      HEAD_BASELINE,
      title,
      INK_COLOURS.quiet,
    );
    canvas.rule(left, right, HEAD_BASELINE + 5, RULE.hair, INK_COLOURS.quiet);
    canvas.text('regular', size, left, foot, `Issued ${issued.day}`, INK_COLOURS.quiet);
    canvas.text('regular', size, right - faces.regular.width(number, size), foot, number, INK_COLOURS.quiet);
  }, true);
}

function cutTo(text: string, room: number, measure: (text: string) => number): string {
  if (measure(text) <= room) return text;
  const letters = [...text];
  while (letters.length > 0 && measure(`${letters.join('')}…`) > room) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
