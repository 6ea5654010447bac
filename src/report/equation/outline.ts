/** Path data of a glyph outline (M L H V Q T Z, absolute) as path steps, placed and turned y down. */
import type { PathStep } from '../drawing/primitive.ts';

export interface Placement {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

const COMMAND = /([MLHVQTCZ])([^MLHVQTCZ]*)/g;

/** @param data  y upwards; `to` gives the place of its origin and the points per unit, y downwards */
export function outlineSteps(data: string, to: Placement): PathStep[] {
  const steps: PathStep[] = [];
  let x = 0;
  let y = 0;
  /** Control point of the last quadratic curve, for its smooth continuation. */
  let control: readonly [number, number] | undefined;
  const atX = (value: number): number => to.x + value * to.scale;
  const atY = (value: number): number => to.y - value * to.scale;
  for (const [, letter = '', list = ''] of data.matchAll(COMMAND)) {
    const n = list.match(/-?\d*\.?\d+/g)?.map(Number) ?? [];
    if (letter === 'Z') {
      steps.push(['Z']);
      control = undefined;
      continue;
    }
    const size = { M: 2, L: 2, H: 1, V: 1, Q: 4, T: 2, C: 6 }[letter] ?? 1;
    for (let i = 0; i + size <= n.length; i += size) {
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n.slice(i, i + size);
      let next: readonly [number, number] | undefined;
      switch (letter) {
        case 'M':
        case 'L':
          steps.push([letter === 'M' && i === 0 ? 'M' : 'L', atX(a), atY(b)]);
          [x, y] = [a, b];
          break;
        case 'H':
          steps.push(['L', atX(a), atY(y)]);
          x = a;
          break;
        case 'V':
          steps.push(['L', atX(x), atY(a)]);
          y = a;
          break;
        case 'Q':
          steps.push(['Q', atX(a), atY(b), atX(c), atY(d)]);
          next = [a, b];
          [x, y] = [c, d];
          break;
        case 'T':
          next = control ? [2 * x - control[0], 2 * y - control[1]] : [x, y];
          steps.push(['Q', atX(next[0]), atY(next[1]), atX(a), atY(b)]);
          [x, y] = [a, b];
          break;
        default:
          steps.push(['C', atX(a), atY(b), atX(c), atY(d), atX(e), atY(f)]);
          [x, y] = [e, f];
      }
      control = next;
    }
  }
  return steps;
}
