/**
 * Typeset equations as drawings: the outlines come from the generated table of all registered equations and symbols,
 * so that screen and paper show the same glyphs and nothing is typeset at run time.
 */
import type { Drawing, PathStep, Primitive } from '../drawing/primitive.ts';
import table from './glyphs.generated.json' with { type: 'json' };
import { linearEquation } from './linear.ts';
import { outlineSteps } from './outline.ts';

interface Typeset {
  readonly box: readonly number[];
  readonly glyphs: readonly (readonly number[])[];
  readonly rules: readonly (readonly number[])[];
}

const OUTLINES: readonly string[] = table.outlines;
const EQUATIONS: Readonly<Record<string, Typeset>> = table.equations;

export interface EquationDrawing extends Drawing {
  /** Distance of the baseline from the top edge, points. */
  readonly baseline: number;
}

/** A hair of room above and below, so that no outline touches the edge of its picture. */
const AIR = 40;

const drawn = new Map<string, EquationDrawing>();

/**
 * The equation as one filled path.
 *
 * @param tex   as registered with its calculation; any other text is not in the table
 * @param size  type size, points
 * @returns     the drawing, or undefined where the table does not know the text
 */
export function equationDrawing(tex: string, size = 11): EquationDrawing | undefined {
  const key = `${size} ${tex}`;
  const known = drawn.get(key);
  if (known) return known;
  const typeset = Object.hasOwn(EQUATIONS, tex) ? EQUATIONS[tex] : undefined;
  if (!typeset) return undefined;
  const drawing = lay(tex, typeset, size / 1000);
  drawn.set(key, drawing);
  return drawing;
}

function lay(tex: string, { box, glyphs, rules }: Typeset, scale: number): EquationDrawing {
  const [width = 0, inkHeight = 0, inkDepth = 0] = box;
  const height = inkHeight + AIR;
  const depth = inkDepth + AIR;
  const baseline = height * scale;
  const steps: PathStep[] = [];
  for (const [glyph = 0, x = 0, y = 0, size = 1] of glyphs) {
    const place = { x: x * scale, y: baseline - y * scale, scale: size * scale };
    for (const step of outlineSteps(OUTLINES[glyph] ?? '', place)) steps.push(step);
  }
  for (const [x = 0, y = 0, w = 0, h = 0] of rules) {
    const left = x * scale;
    const right = left + w * scale;
    const bottom = baseline - y * scale;
    const top = bottom - h * scale;
    steps.push(['M', left, top], ['L', right, top], ['L', right, bottom], ['L', left, bottom], ['Z']);
  }
  const primitive: Primitive = { type: 'path', steps, fill: 'ink' };
  return {
    width: width * scale,
    height: (height + depth) * scale,
    baseline,
    title: 'Equation',
    description: linearEquation(tex),
    primitives: [primitive],
  };
}
