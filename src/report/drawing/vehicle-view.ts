/**
 * Side view and rear view of a vehicle, drawn to one scale from its mass table: bodies, centre of gravity with its
 * 95 % region, the ballast's travel, the largest lean that can be held, and the dimensions that decide.
 */
import { levelDimension, uprightDimension } from './dimension.ts';
import { fixedText } from './number-text.ts';
import { labelColumn, partLabels } from './part-labels.ts';
import type { Drawing, Primitive } from './primitive.ts';
import {
  arc,
  area,
  arrowhead,
  type Box,
  corners,
  DASH,
  LINE,
  lettering,
  line,
  type Point,
  polyline,
} from './sketch.ts';
import { textWidth } from './text-width.ts';
import { ballastPlace, halfExtents, type Projection, REAR, SIDE, type VehicleViewInput } from './vehicle.ts';
import {
  ballastTravel,
  centreOfGravityMark,
  ground,
  partOutline,
  placedParts,
  type Sheet,
} from './vehicle-parts.ts';

export interface VehicleViewOptions {
  readonly width: number;
  /** The drawing is made no higher than this; by default three quarters of the width. */
  readonly largestHeight?: number;
  readonly textSize?: number;
  readonly views?: readonly Projection['name'][];
}

/** What a view takes up on the vehicle, m: to the left and right of its origin, and above the ground. */
interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

/** Room around each view for dimensions, in text sizes. */
const ROOM = { left: 3.2, right: 3.4, above: 3.2, below: 5, between: 1 } as const;
/** The line of the largest lean runs past the centre of gravity by this factor. */
const LEAN_REACH = 1.3;

export function vehicleView(input: VehicleViewInput, options: VehicleViewOptions): Drawing {
  const { width, textSize: em = 11, views = ['side view', 'rear view'] } = options;
  const largestHeight = options.largestHeight ?? width * 0.75;
  const projections = views.map((name) => (name === 'rear view' ? REAR : SIDE));
  const extents = projections.map((projection) => extentOf(input, projection));
  const labels = projections.includes(SIDE) ? labelColumn(input, width, em) : 0;
  const across = extents.reduce((sum, extent) => sum + extent.right - extent.left, 0);
  const up = Math.max(...extents.map(({ top }) => top));
  const room = width - labels - views.length * (ROOM.left + ROOM.right) * em - (views.length - 1) * em;
  const scale = Math.min(
    Math.max(room, em * 4) / across,
    Math.max(largestHeight - (ROOM.above + ROOM.below) * em, em * 4) / up,
  );
  const groundY = ROOM.above * em + up * scale;
  const used =
    across * scale + labels + views.length * (ROOM.left + ROOM.right) * em + (views.length - 1) * em;

  let cursor = Math.max(0, (width - used) / 2);
  const primitives: Primitive[] = [];
  projections.forEach((projection, index) => {
    const extent = extents[index] ?? { left: 0, right: 0, top: 0 };
    const origin = cursor + ROOM.left * em - extent.left * scale;
    const sheet: Sheet = {
      projection,
      scale,
      em,
      at: (a, z) => [origin + a * scale, groundY - z * scale],
    };
    primitives.push(
      ...(projection === REAR ? rearView(input, sheet, extent) : sideView(input, sheet, extent, labels)),
    );
    cursor =
      origin + extent.right * scale + (ROOM.right + ROOM.between) * em + (projection === SIDE ? labels : 0);
  });
  const height = groundY + ROOM.below * em;
  primitives.push(
    lettering([width - em * 0.3, height - em * 0.4], 'Dimensions in millimetres', em * 0.85, {
      anchor: 'end',
      ink: 'quiet',
    }),
  );
  const { notPlaced = 0 } = input;
  if (notPlaced > 0) {
    const text = `Not drawn, place not known: ${notPlaced} ${notPlaced === 1 ? 'part' : 'parts'}`;
    primitives.push(lettering([em * 0.3, height - em * 0.4], text, em * 0.85, { ink: 'quiet' }));
  }
  return { width, height, title: input.title, description: inWords(input), primitives };
}

function extentOf(input: VehicleViewInput, projection: Projection): Extent {
  let left = 0;
  let right = 0;
  let top = 0;
  const include = (across: number, z: number, halfAcross = 0, halfUp = 0): void => {
    left = Math.min(left, across - halfAcross);
    right = Math.max(right, across + halfAcross);
    top = Math.max(top, z + halfUp);
  };
  for (const part of placedParts(input, projection)) {
    include(projection.across(part), part.z, ...halfExtents(part.body, projection));
  }
  const cg = input.centreOfGravity;
  if (cg) include(projection.across(cg), cg.z);
  const drive = input.ballast;
  if (drive?.kind === 'arm') include(0, drive.pivotHeight);
  if (drive && projection === REAR) {
    const body = input.parts.find(({ role }) => role === 'ballast')?.body ?? { shape: 'point' };
    for (const share of [-1, 0, 1]) {
      const place = ballastPlace(drive, share);
      include(-place.left, place.z, ...halfExtents(body, projection));
    }
  }
  if (projection === REAR && cg && input.limitLean !== undefined) {
    const reach = LEAN_REACH * cg.z;
    for (const side of [-1, 1]) include(side * reach * Math.sin(input.limitLean), reach);
  }
  const smallest = 0.05 * Math.max(top, right - left, 0.01);
  return { left: Math.min(left, -smallest), right: Math.max(right, smallest), top: Math.max(top, smallest) };
}

function rearView(input: VehicleViewInput, sheet: Sheet, extent: Extent): Primitive[] {
  const { em, at } = sheet;
  const [leftX, groundY] = at(extent.left, 0);
  const rightX = at(extent.right, 0)[0];
  const topY = at(0, extent.top)[1];
  const cg = input.centreOfGravity;
  const marks: Primitive[] = [
    ...ground([leftX - em, groundY], [rightX + em * 1.2, groundY], at(0, 0), em),
    line([at(0, 0)[0], groundY + em * 0.7], [at(0, 0)[0], topY - em * 0.6], {
      stroke: 'quiet',
      width: LINE.hair,
      dash: DASH.centre,
    }),
    ...placedParts(input, sheet.projection).flatMap((part) => partOutline(part, sheet)),
    ...ballastTravel(input, sheet),
    ...leanLimit(input, sheet),
  ];
  if (cg) {
    marks.push(...centreOfGravityMark(cg, sheet));
    const [x, y] = at(sheet.projection.across(cg), cg.z);
    marks.push(
      ...uprightDimension(
        rightX + em * 2.2,
        [y, groundY],
        [x + em * 0.5, rightX + em],
        millimetres(cg.z, cg.uz),
        {
          size: em,
        },
      ),
    );
  }
  const drive = input.ballast;
  if (drive) {
    const end = ballastPlace(drive, 1);
    const [endX, endY] = at(-end.left, end.z);
    const [middleX] = at(0, 0);
    marks.push(
      ...levelDimension(
        topY - em * 1.2,
        [middleX, endX],
        [topY - em * 0.4, Math.min(endY, topY + em * 3)],
        millimetres(-end.left),
        { size: em },
      ),
    );
  }
  marks.push(viewName('Rear view', (leftX + rightX) / 2, groundY, em));
  return marks;
}

function leanLimit(input: VehicleViewInput, { at, scale, em }: Sheet): Primitive[] {
  const { limitLean: lean, centreOfGravity: cg } = input;
  if (lean === undefined || !cg || !(lean > 0)) return [];
  const reach = LEAN_REACH * cg.z;
  const foot = at(0, 0);
  const end = (side: number): Point => at(side * reach * Math.sin(lean), reach * Math.cos(lean));
  const style = { stroke: 'capability' as const, width: LINE.thin };
  const radius = reach * scale * 0.94;
  const tip = (side: number): Point => [
    foot[0] + side * radius * Math.sin(lean),
    foot[1] - radius * Math.cos(lean),
  ];
  const label = `±${fixedText((lean * 180) / Math.PI, 1)}°`;
  const right = end(1);
  const roomy = radius * lean * 2 > em * 1.6;
  const backing: Box = {
    left: right[0] + em * 0.15,
    right: right[0] + em * 0.4 + textWidth(label, em, 'semibold'),
    top: right[1] - em * 0.75,
    bottom: right[1] + em * 0.25,
  };
  return [
    polyline([end(-1), foot, end(1)], { ...style, dash: DASH.hidden }),
    arc(foot, radius, -lean, lean, style),
    ...(roomy
      ? [
          arrowhead(tip(-1), [-Math.cos(lean), Math.sin(lean)], em * 0.6, 'capability'),
          arrowhead(tip(1), [Math.cos(lean), Math.sin(lean)], em * 0.6, 'capability'),
        ]
      : []),
    area(corners(backing), { fill: 'paper' }),
    lettering([right[0] + em * 0.27, right[1] + em * 0.05], label, em, {
      ink: 'capability',
      weight: 'semibold',
    }),
  ];
}

function sideView(input: VehicleViewInput, sheet: Sheet, extent: Extent, labels: number): Primitive[] {
  const { em, at } = sheet;
  const [leftX, groundY] = at(extent.left, 0);
  const rightX = at(extent.right, 0)[0];
  const cg = input.centreOfGravity;
  const parts = placedParts(input, sheet.projection);
  const highest = Math.max(0, ...parts.map((part) => part.z + halfExtents(part.body, sheet.projection)[1]));
  const marks: Primitive[] = [
    ...ground([leftX - em, groundY], [rightX + em, groundY], at(0, 0), em),
    ...parts.flatMap((part) => partOutline(part, sheet)),
    ...ballastTravel(input, sheet),
  ];
  if (highest > 0) {
    marks.push(
      ...uprightDimension(
        leftX - em * 1.8,
        [at(0, highest)[1], groundY],
        [leftX - em * 0.2, leftX - em],
        millimetres(highest),
        { size: em },
      ),
    );
  }
  if (cg) {
    marks.push(...centreOfGravityMark(cg, sheet));
    const [x, y] = at(cg.x, cg.z);
    marks.push(
      ...levelDimension(
        groundY + em * 2,
        [at(0, 0)[0], x],
        [groundY + em * 0.4, y + em * 0.5],
        millimetres(cg.x, cg.ux),
        {
          size: em,
        },
      ),
    );
  }
  marks.push(...partLabels(parts, sheet, rightX + em * 1.6, labels, groundY));
  marks.push(
    ...directionOfTravel(rightX, groundY, em),
    viewName('Side view, from the right', (leftX + rightX) / 2, groundY, em),
  );
  return marks;
}

function directionOfTravel(rightX: number, groundY: number, em: number): Primitive[] {
  const y = groundY + em * 1.25;
  const from = rightX - em * 1.6;
  return [
    line([from, y], [from + em * 1.8, y], { stroke: 'quiet', width: LINE.thin }),
    arrowhead([from + em * 2.2, y], [1, 0], em * 0.6, 'quiet'),
    lettering([from + em * 2.5, y + em * 0.3], 'forward', em * 0.85, { ink: 'quiet' }),
  ];
}

function viewName(text: string, x: number, groundY: number, em: number): Primitive {
  return lettering([x, groundY + em * 3.4], text, em, { anchor: 'middle', weight: 'semibold' });
}

/** Whole millimetres, tenths where the figure is known that well. */
function millimetres(metres: number, u?: number): string {
  return fixedText(metres * 1000, u !== undefined && u > 0 && u < 0.0005 ? 1 : 0);
}

function inWords(input: VehicleViewInput): string {
  const cg = input.centreOfGravity;
  const words = [`${input.parts.length} parts drawn to scale.`];
  if (cg) {
    words.push(
      `Centre of gravity ${millimetres(cg.z)} mm above the ground and ${millimetres(cg.x)} mm forward of the rear contact point.`,
    );
  }
  if (input.ballast) {
    words.push(`The ballast travels ${millimetres(-ballastPlace(input.ballast, 1).left)} mm to each side.`);
  }
  if (input.limitLean !== undefined) {
    words.push(`The largest lean that it holds is ${fixedText((input.limitLean * 180) / Math.PI, 1)}°.`);
  }
  return words.join(' ');
}
