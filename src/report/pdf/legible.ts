/**
 * Every character of a report before it is set: one that the typeface lacks is never drawn as an empty box. Some
 * have a stand-in that means the same; any other is named by its code, and the report says so at its end.
 */
import type { Primitive } from '../drawing/primitive.ts';
import type { Block, Cell, Inline, ReportDocument } from '../tree.ts';
import type { Typefaces } from './canvas.ts';

/** Characters that mean the same, or near enough, as one that the typeface has. */
const STAND_INS: ReadonlyMap<string, string> = new Map([
  ['⌀', 'Ø'],
  ['∅', 'Ø'],
  ['⋅', '·'],
  ['∙', '·'],
  ['ϵ', 'ε'],
  ['ϕ', 'φ'],
  ['⁃', '–'],
  ['‒', '–'],
  ['―', '—'],
  ['‑', '-'],
  ['∝', '~'],
  ['\u2002', '\u00a0'],
  ['\u2003', '\u00a0'],
  ['\u2007', '\u00a0'],
  ['\u202f', '\u00a0'],
  ['\u3000', ' '],
  ['\t', ' '],
  ['\n', ' '],
  ['\r', ' '],
  ['\u2028', ' '],
  ['\u2029', ' '],
]);
/** Marks without a shape of their own that would only leave a box: joiners, soft hyphen, byte order mark, direction marks. */
const SHAPELESS = /\u00ad|[\u200b-\u200f]|[\u202a-\u202e]|[\u2060-\u2064]|\ufe0e|\ufe0f|\ufeff/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/g;

export interface LegibleDocument {
  readonly document: ReportDocument;
  /** Characters that no face has, each once, in order of appearance, with the words around the first. */
  readonly unknown: readonly { readonly character: string; readonly near: string }[];
}

export function legible(document: ReportDocument, faces: Typefaces): LegibleDocument {
  const unknown = new Map<string, string>();
  const all = Object.values(faces);
  const cache = new Map<string, string>();

  const text = (raw: string): string => {
    const known = cache.get(raw);
    if (known !== undefined) return known;
    let result = '';
    for (const character of raw.normalize('NFC').replace(SHAPELESS, '').replace(CONTROL, '')) {
      const code = character.codePointAt(0) ?? 0;
      if (all.every((face) => face.has(code))) {
        result += character;
        continue;
      }
      const other = STAND_INS.get(character);
      if (other !== undefined) {
        result += other;
        continue;
      }
      if (!unknown.has(character)) unknown.set(character, raw.slice(0, 60));
      result += nameOf(character);
    }
    cache.set(raw, result);
    return result;
  };
  const inline = (run: Inline): Inline => {
    if (typeof run === 'string') return text(run);
    if ('strong' in run) return { strong: text(run.strong) };
    if ('emphasis' in run) return { emphasis: text(run.emphasis) };
    if ('code' in run) return { code: text(run.code) };
    return run;
  };
  const cell = (value: Cell): Cell => (typeof value === 'string' ? text(value) : value.map(inline));
  const primitive = (mark: Primitive): Primitive =>
    mark.type === 'text' ? { ...mark, text: text(mark.text) } : mark;
  const block = (value: Block): Block => {
    switch (value.type) {
      case 'heading':
        return { ...value, text: text(value.text) };
      case 'caution':
        return { ...value, texts: value.texts.map(text) };
      case 'paragraph':
        return { ...value, content: value.content.map(inline) };
      case 'list':
        return { ...value, items: value.items.map((item) => item.map(inline)) };
      case 'table':
        return {
          ...value,
          caption: text(value.caption),
          columns: value.columns.map((column) => ({ ...column, title: text(column.title) })),
          rows: value.rows.map((row) => row.map(cell)),
        };
      case 'illustration':
        return {
          ...value,
          caption: text(value.caption),
          drawing: { ...value.drawing, primitives: value.drawing.primitives.map(primitive) },
        };
      case 'picture':
        return { ...value, caption: text(value.caption) };
      case 'equation':
      case 'rule':
        return value;
    }
  };
  return {
    document: {
      ...document,
      title: text(document.title),
      identification: text(document.identification),
      subject: text(document.subject),
      titleBlock: document.titleBlock.map(([label, value]) => [text(label), text(value)] as const),
      blocks: document.blocks.map(block),
    },
    unknown: [...unknown].map(([character, near]) => ({ character, near })),
  };
}

/** `[U+1F600]` */
export function nameOf(character: string): string {
  return `[U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`;
}
