/** The bodies of a vehicle on the sheet: outlines by shape and role, hidden bores, centre lines, the ballast's travel. */
import type { Ink, Primitive } from './primitive.ts';
import {
  arc,
  area,
  type Box,
  circle,
  corners,
  DASH,
  ellipse,
  LINE,
  line,
  lines,
  type Point,
  polyline,
} from './sketch.ts';
import {
  ballastPlace,
  halfExtents,
  type Projection,
  type VehicleViewInput,
  type ViewBallastDrive,
  type ViewBody,
  type ViewCentre,
  type ViewPart,
} from './vehicle.ts';

/** Metres on the vehicle → points on the sheet, for one view. */
export interface Sheet {
  readonly projection: Projection;
  /** Points per metre. */
  readonly scale: number;
  readonly at: (across: number, z: number) => Point;
  readonly em: number;
}

/** Parts with the ballast where its drive puts it at rest, broad bodies first so that small ones stay in sight. */
export function placedParts(input: VehicleViewInput, projection: Projection): ViewPart[] {
  const drive = input.ballast;
  const area = ({ body }: ViewPart): number => {
    const [across, up] = halfExtents(body, projection);
    return across * up;
  };
  return input.parts
    .map((part) => (part.role === 'ballast' && drive ? { ...part, y: 0, z: ballastPlace(drive, 0).z } : part))
    .sort((a, b) => area(b) - area(a));
}

const TINT = { structure: 0.1, pack: 0.16, rotor: 0.22, ballast: 0.28 } as const;

export function partOutline(part: ViewPart, sheet: Sheet): Primitive[] {
  const ink: Ink = part.role === 'rotor' ? 'rotor' : part.role === 'ballast' ? 'ballast' : 'structure';
  const centre = sheet.at(sheet.projection.across(part), part.z);
  return bodyOutline(part.body, centre, part.mass, sheet, {
    stroke: ink,
    width: LINE.broad * 0.75,
    fill: ink,
    tint: TINT[part.role],
  });
}

type BodyStyle = {
  readonly stroke: Ink;
  readonly width: number;
  readonly dash?: readonly number[];
  readonly fill?: Ink;
  readonly tint?: number;
};

function bodyOutline(
  body: ViewBody,
  centre: Point,
  mass: number,
  sheet: Sheet,
  style: BodyStyle,
): Primitive[] {
  const { projection, scale, em } = sheet;
  if (body.shape === 'point') {
    const radius = Math.min(em * 0.45, Math.max(em * 0.14, em * 0.3 * Math.cbrt(mass)));
    return [circle(centre, radius, { ...style, tint: 0.6 })];
  }
  const [across, up] = halfExtents(body, projection);
  const box = boxAround(centre, across * scale, up * scale);
  if (body.shape === 'box') return [polyline(corners(box), style, true)];

  const bore = ((body.bore ?? 0) / 2) * scale;
  const hidden = { stroke: style.stroke, width: LINE.thin, dash: DASH.hidden };
  if (body.axis === projection.sight) {
    const cross = across * scale + em * 0.4;
    return [
      circle(centre, across * scale, style),
      ...(bore > 0 ? [circle(centre, bore, { fill: 'paper', stroke: style.stroke, width: LINE.thin })] : []),
      ...centreCross(centre, cross, style.stroke),
    ];
  }
  const upright = body.axis === 'z';
  const reach = (upright ? up : across) * scale + em * 0.5;
  const alongAxis = (offset: number, length: number): readonly [Point, Point] =>
    upright
      ? [
          [centre[0] + offset, centre[1] - length],
          [centre[0] + offset, centre[1] + length],
        ]
      : [
          [centre[0] - length, centre[1] + offset],
          [centre[0] + length, centre[1] + offset],
        ];
  const inside = reach - em * 0.5;
  return [
    polyline(corners(box), style, true),
    ...(bore > 0 ? [lines([alongAxis(-bore, inside), alongAxis(bore, inside)], hidden)] : []),
    line(...alongAxis(0, reach), { stroke: style.stroke, width: LINE.hair, dash: DASH.centre }),
  ];
}

function boxAround([x, y]: Point, halfWidth: number, halfHeight: number): Box {
  return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight };
}

function centreCross([x, y]: Point, reach: number, ink: Ink): Primitive[] {
  return [
    lines(
      [
        [
          [x - reach, y],
          [x + reach, y],
        ],
        [
          [x, y - reach],
          [x, y + reach],
        ],
      ],
      { stroke: ink, width: LINE.hair, dash: DASH.centre },
    ),
  ];
}

/** The drive of the ballast and, in the rear view, both ends of its travel as phantom outlines. */
export function ballastTravel(input: VehicleViewInput, sheet: Sheet): Primitive[] {
  const drive = input.ballast;
  const part = input.parts.find(({ role }) => role === 'ballast');
  if (!drive) return [];
  const rest = ballastPlace(drive, 0);
  if (sheet.projection.name === 'side view') {
    const x = part?.x ?? 0;
    if (drive.kind === 'slide') return [];
    return [...armBar(sheet.at(x, drive.pivotHeight), sheet.at(x, rest.z), sheet.em)];
  }
  const ends = [-1, 1].map((share) => ballastPlace(drive, share));
  const ghost = { stroke: 'ballast' as const, width: LINE.thin, dash: DASH.ghost };
  const marks: Primitive[] = [travelPath(drive, sheet)];
  for (const end of ends) {
    const centre = sheet.at(-end.left, end.z);
    if (drive.kind === 'arm') marks.push(line(sheet.at(0, drive.pivotHeight), centre, ghost));
    if (part) marks.push(...bodyOutline(part.body, centre, part.mass, sheet, ghost).slice(0, 1));
  }
  if (drive.kind === 'arm')
    marks.push(...armBar(sheet.at(0, drive.pivotHeight), sheet.at(0, rest.z), sheet.em));
  return marks;
}

function travelPath(drive: ViewBallastDrive, sheet: Sheet): Primitive {
  const style = { stroke: 'ballast' as const, width: LINE.thin, dash: DASH.centre };
  if (drive.kind === 'slide') {
    return line(sheet.at(-drive.travel, drive.height), sheet.at(drive.travel, drive.height), style);
  }
  const turn = drive.direction === 1 ? 0 : Math.PI;
  return arc(
    sheet.at(0, drive.pivotHeight),
    drive.armLength * sheet.scale,
    turn - drive.travel,
    turn + drive.travel,
    style,
  );
}

function armBar(pivot: Point, end: Point, em: number): Primitive[] {
  return [
    line(pivot, end, { stroke: 'ballast', width: LINE.broad * 1.4 }),
    circle(pivot, em * 0.26, { fill: 'paper', stroke: 'ballast', width: LINE.broad * 0.75 }),
  ];
}

/** Radius of the 95 % region of two jointly normal coordinates in standard uncertainties, √5.991. */
const REGION_FACTOR = 2.4477;

/** The quartered circle of a centre of gravity over its 95 % region. */
export function centreOfGravityMark(centre: ViewCentre, sheet: Sheet): Primitive[] {
  const { projection, scale, em } = sheet;
  const at = sheet.at(projection.across(centre), centre.z);
  const rx = REGION_FACTOR * (projection.sight === 'x' ? centre.uy : centre.ux) * scale;
  const ry = REGION_FACTOR * centre.uz * scale;
  const radius = em * 0.42;
  const marks: Primitive[] = [];
  if (Math.max(rx, ry) > 0.6) {
    const style = { fill: 'band' as const, tint: 0.5, stroke: 'ink' as const, width: LINE.thin };
    marks.push(ellipse(at, Math.max(rx, 0.6), Math.max(ry, 0.6), style));
  }
  marks.push(circle(at, radius, { fill: 'paper' }));
  for (const [sx, sy] of [
    [1, -1],
    [-1, 1],
  ] as const) {
    marks.push(quarter(at, radius, sx, sy));
  }
  marks.push(circle(at, radius, { stroke: 'ink', width: LINE.thin }));
  return marks;
}

function quarter([x, y]: Point, r: number, sx: number, sy: number): Primitive {
  const k = 0.5522847498 * r;
  return {
    type: 'path',
    steps: [
      ['M', x, y],
      ['L', x + sx * r, y],
      ['C', x + sx * r, y + sy * k, x + sx * k, y + sy * r, x, y + sy * r],
      ['Z'],
    ],
    fill: 'ink',
  };
}

/** The ground, hatched below, with the contact point of the roll axis (or of the wheels, side view: the rear one). */
export function ground(from: Point, to: Point, contact: Point, em: number): Primitive[] {
  const pairs: (readonly [Point, Point])[] = [];
  for (let x = from[0] + em * 0.4; x <= to[0]; x += em * 0.55) {
    pairs.push([
      [x, from[1]],
      [x - em * 0.4, from[1] + em * 0.4],
    ]);
  }
  return [
    line(from, to, { stroke: 'ink', width: LINE.broad }),
    lines(pairs, { stroke: 'quiet', width: LINE.hair }),
    area(
      [
        contact,
        [contact[0] + em * 0.26, contact[1] - em * 0.45],
        [contact[0] - em * 0.26, contact[1] - em * 0.45],
      ],
      { fill: 'paper', stroke: 'ink', width: LINE.thin },
    ),
  ];
}
