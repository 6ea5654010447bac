/**
 * A drawing as plain SVG elements. The window maps them to its own elements; `svgText` writes them out as a file.
 * Colours are roles: `--draw-ink`, `--draw-capability` and so on, given by the theme. Tints are solid mixes with
 * the paper, so that overlapping shapes look alike here and in print.
 */
import type { Drawing, Ink, PathPrimitive, PathStep, Primitive, TextPrimitive } from './primitive.ts';

export interface SvgElement {
  readonly tag: 'svg' | 'path' | 'text';
  /** Names in camel case, as a script sets them: `strokeWidth`, `textAnchor`. */
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgElement | string)[];
}

/** Name of the style variable that carries the colour of an ink: `--draw-ink`. */
export function inkVariable(ink: Ink): string {
  return `--draw-${ink}`;
}

function paint(ink: Ink, tint = 1): string {
  const full = `var(${inkVariable(ink)})`;
  return tint >= 1
    ? full
    : `color-mix(in srgb, ${full} ${rounded(tint * 100)}%, var(${inkVariable('paper')}))`;
}

/**
 * @param scalable  true (default): only a view box, the picture fills its container; false: its own size in points
 */
export function drawingToSvg(drawing: Drawing, scalable = true): SvgElement {
  return {
    tag: 'svg',
    attributes: {
      viewBox: `0 0 ${rounded(drawing.width)} ${rounded(drawing.height)}`,
      role: 'img',
      'aria-label': `${drawing.title}. ${drawing.description}`,
      fontFamily: "var(--draw-font, 'Source Sans 3', sans-serif)",
      ...(scalable ? {} : { width: `${rounded(drawing.width)}pt`, height: `${rounded(drawing.height)}pt` }),
    },
    children: drawing.primitives.map(element),
  };
}

function element(primitive: Primitive): SvgElement {
  return primitive.type === 'path' ? pathElement(primitive) : textElement(primitive);
}

function pathElement(path: PathPrimitive): SvgElement {
  const attributes: Record<string, string | number> = {
    d: pathData(path.steps),
    fill: path.fill ? paint(path.fill, path.tint) : 'none',
  };
  if (path.stroke) {
    attributes.stroke = paint(path.stroke);
    attributes.strokeWidth = path.width ?? 1;
    attributes.strokeLinejoin = 'round';
    if (path.dash) attributes.strokeDasharray = path.dash.join(' ');
  }
  return { tag: 'path', attributes, children: [] };
}

function textElement(text: TextPrimitive): SvgElement {
  const x = rounded(text.x);
  const y = rounded(text.y);
  return {
    tag: 'text',
    attributes: {
      x,
      y,
      fill: paint(text.ink),
      fontSize: rounded(text.size),
      ...(text.anchor === 'start' ? {} : { textAnchor: text.anchor }),
      ...(text.weight === 'semibold' ? { fontWeight: 600 } : {}),
      ...(text.rotate ? { transform: `rotate(${rounded(-text.rotate)} ${x} ${y})` } : {}),
    },
    children: [text.text],
  };
}

/** The `d` of a path, coordinates to two decimals. */
export function pathData(steps: readonly PathStep[]): string {
  return steps.map(([letter, ...numbers]) => letter + numbers.map(rounded).join(' ')).join('');
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** The elements as text of an SVG file. */
export function svgText(root: SvgElement): string {
  const namespace = root.tag === 'svg' ? ' xmlns="http://www.w3.org/2000/svg"' : '';
  const attributes = Object.entries(root.attributes)
    .map(([name, value]) => ` ${attributeName(name)}="${escaped(String(value))}"`)
    .join('');
  const inside = root.children
    .map((child) => (typeof child === 'string' ? escaped(child) : svgText(child)))
    .join('');
  return `<${root.tag}${namespace}${attributes}>${inside}</${root.tag}>`;
}

function attributeName(name: string): string {
  return name === 'viewBox' ? name : name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}
