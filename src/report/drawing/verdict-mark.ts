/**
 * The sign of a verdict: a balance beam on its fulcrum. Level and solid, tipping, fallen, or only sketched in dots:
 * told apart by shape alone, so that a black and white print loses nothing.
 */
import type { Primitive } from './primitive.ts';
import { area, type Point, polyline } from './sketch.ts';

export type VerdictWord = 'holds' | 'in doubt' | 'fails' | 'unknown';

const TILT: Readonly<Record<VerdictWord, number>> = { holds: 0, 'in doubt': 0.3, fails: 0.62, unknown: 0 };

/** @param size  width of the sign; it is 0.8 as high, its foot on `bottom` */
export function verdictMark(verdict: VerdictWord, left: number, bottom: number, size: number): Primitive[] {
  const centre = left + size / 2;
  const apex: Point = [centre, bottom - size * 0.52];
  const foot = size * 0.3;
  const wedge: Point[] = [apex, [centre + foot, bottom], [centre - foot, bottom]];
  const width = Math.max(0.6, size * 0.08);
  const fulcrum: Primitive[] =
    verdict === 'holds'
      ? [area(wedge, { fill: 'ink' })]
      : [
          polyline(
            wedge,
            { stroke: 'ink', width, ...(verdict === 'unknown' ? { dash: [width, width * 1.6] } : {}) },
            true,
          ),
          ...(verdict === 'in doubt'
            ? [area([apex, [centre + foot, bottom], [centre, bottom]], { fill: 'ink' })]
            : []),
        ];
  const dx = (Math.cos(TILT[verdict]) * size) / 2;
  const dy = (Math.sin(TILT[verdict]) * size) / 2;
  const lift = size * 0.06;
  const beam: Point[] = [
    [centre - dx, apex[1] - lift - dy],
    [centre + dx, apex[1] - lift + dy],
  ];
  const beamStyle = { stroke: 'ink' as const, width: size * 0.14 };
  return [
    ...fulcrum,
    polyline(beam, verdict === 'unknown' ? { ...beamStyle, width, dash: [width, width * 1.6] } : beamStyle),
  ];
}
