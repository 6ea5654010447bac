/** Names of the parts in a column beside a view, each with a leader to its part. */
import type { Primitive } from './primitive.ts';
import { circle, LINE, lettering, polyline } from './sketch.ts';
import { fittedText, textWidth } from './text-width.ts';
import type { VehicleViewInput, ViewPart } from './vehicle.ts';
import type { Sheet } from './vehicle-parts.ts';

function labelText({ item, name }: ViewPart): string {
  return item === undefined ? name : `${item}\u00a0\u00a0${name}`;
}

/** Width of the column of names, never more than a fifth of the drawing. */
export function labelColumn(input: VehicleViewInput, width: number, em: number): number {
  const longest = Math.max(0, ...input.parts.map((part) => textWidth(labelText(part), em * 0.9)));
  return Math.min(longest, width * 0.22, em * 14);
}

/** Names in a column beside the view, each with a leader to its part; the heaviest where there is no room for all. */
export function partLabels(
  parts: readonly ViewPart[],
  sheet: Sheet,
  x: number,
  width: number,
  groundY: number,
): Primitive[] {
  const { em, at, projection } = sheet;
  const spacing = em * 1.2;
  const top = em * 1.1;
  const most = Math.max(1, Math.floor((groundY - top) / spacing));
  const chosen = [...parts]
    .sort((a, b) => b.mass - a.mass)
    .slice(0, most)
    .sort((a, b) => b.z - a.z || a.x - b.x);
  const wanted = chosen.map((part) => at(0, part.z)[1]);
  const places = spread(wanted, spacing, top, groundY - em * 0.2);
  const size = em * 0.9;
  return chosen.flatMap((part, index): Primitive[] => {
    const [px, py] = at(projection.across(part), part.z);
    const y = places[index] ?? py;
    return [
      polyline(
        [
          [px, py],
          [x - em * 0.9, y],
          [x - em * 0.3, y],
        ],
        { stroke: 'quiet', width: LINE.hair },
      ),
      circle([px, py], em * 0.12, { fill: 'ink' }),
      lettering([x, y + size * 0.34], fittedText(labelText(part), width, size), size),
    ];
  });
}

/** Moves sorted places apart until neighbours keep their distance, and all lie between the ends. */
export function spread(wanted: readonly number[], spacing: number, low: number, high: number): number[] {
  const places: number[] = [];
  for (const place of wanted) places.push(Math.max(place, (places.at(-1) ?? low - spacing) + spacing));
  let limit = high;
  for (let i = places.length - 1; i >= 0; i -= 1) {
    const place = Math.min(places[i] ?? limit, limit);
    places[i] = place;
    limit = place - spacing;
  }
  return places;
}
