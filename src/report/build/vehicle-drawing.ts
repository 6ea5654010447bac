/** A revision as the views to scale need it: parts with a known place, centre of gravity, ballast drive, limit lean. */
import type { Assessment } from '../../margins/index.ts';
import {
  type BallastDrive,
  type Body,
  isKnown,
  type Part,
  type QuantityField,
  type Revision,
  type Rotor,
} from '../../notebook/index.ts';
import { standardUncertainty } from '../../quantity/index.ts';
import type { Drawing } from '../drawing/primitive.ts';
import type {
  VehicleViewInput,
  ViewBallastDrive,
  ViewBody,
  ViewCentre,
  ViewPart,
} from '../drawing/vehicle.ts';
import { type VehicleViewOptions, vehicleView } from '../drawing/vehicle-view.ts';

export function vehicleDrawing(
  name: string,
  revision: Revision,
  assessment: Pick<Assessment, 'figures'>,
  options: VehicleViewOptions,
): Drawing {
  return vehicleView(vehicleInput(name, revision, assessment), options);
}

function vehicleInput(
  name: string,
  revision: Revision,
  assessment: Pick<Assessment, 'figures'>,
): VehicleViewInput {
  const ballast = driveOf(revision.ballast);
  const rows = Object.values(revision.parts).sort((a, b) => a.order - b.order);
  const parts = rows.flatMap((part, index) => {
    const placed = placedPart(part, index + 1, ballast, revision.rotor);
    return placed ? [placed] : [];
  });
  const lean = assessment.figures.get('largest_lean')?.result;
  return {
    title: `${name}, revision ${revision.letter}`,
    parts,
    notPlaced: rows.length - parts.length,
    centreOfGravity: centreOf(assessment),
    ballast,
    limitLean: lean?.ok ? lean.value.value : undefined,
  };
}

function si(field: QuantityField | undefined): number | undefined {
  return isKnown(field) && Number.isFinite(field.si) ? field.si : undefined;
}

/** Undefined while it is not known where the part sits; blank to the left means on the centre line. */
function placedPart(
  part: Part,
  item: number,
  drive: ViewBallastDrive | undefined,
  rotor: Rotor | undefined,
): ViewPart | undefined {
  const x = si(part.x);
  const z = part.role === 'ballast' && drive ? 0 : si(part.z);
  const y = part.y === undefined ? 0 : si(part.y);
  if (x === undefined || y === undefined || z === undefined) return undefined;
  const own = bodyOf(part.body);
  const body = own.shape === 'point' && part.role === 'rotor' ? rotorBody(rotor) : own;
  return {
    name: part.name,
    item,
    role: part.role,
    mass: si(part.mass) ?? 0,
    x,
    y,
    z,
    body,
  };
}

const POINT: ViewBody = { shape: 'point' };
/** A rod has no thickness in the data; this share of its length draws as one. */
const ROD_THICKNESS = 0.02;

function bodyOf(body: Body): ViewBody {
  switch (body.shape) {
    case 'point':
    case 'inertia as measured':
      return POINT;
    case 'box': {
      const [length, width, height] = [si(body.length), si(body.width), si(body.height)];
      return length && width && height ? { shape: 'box', length, width, height } : POINT;
    }
    case 'cylinder':
    case 'tube': {
      const [diameter, length] = [si(body.diameter), si(body.length)];
      const bore = body.shape === 'tube' ? si(body.bore) : undefined;
      if (!diameter || !length) return POINT;
      return { shape: 'cylinder', axis: body.axis, diameter, length, ...(bore ? { bore } : {}) };
    }
    case 'rod': {
      const length = si(body.length);
      return length
        ? { shape: 'cylinder', axis: body.axis, diameter: length * ROD_THICKNESS, length }
        : POINT;
    }
  }
}

/** Without a body of its own in the mass table the rotor is as large as its sections, its axis upright. */
function rotorBody(rotor: Rotor | undefined): ViewBody {
  const sections = Object.values(rotor?.sections ?? {});
  const diameter = Math.max(0, ...sections.map(({ outerDiameter }) => si(outerDiameter) ?? 0));
  const length = sections.reduce((sum, { thickness }) => sum + (si(thickness) ?? 0), 0);
  return diameter > 0 && length > 0 ? { shape: 'cylinder', axis: 'z', diameter, length } : POINT;
}

function driveOf(drive: BallastDrive | undefined): ViewBallastDrive | undefined {
  const travel = si(drive?.travel);
  if (!drive || travel === undefined) return undefined;
  if (drive.kind === 'slide') {
    const height = si(drive.height);
    return height === undefined ? undefined : { kind: 'slide', height, travel };
  }
  const [pivotHeight, armLength] = [si(drive.pivotHeight), si(drive.armLength)];
  if (pivotHeight === undefined || armLength === undefined) return undefined;
  const direction = drive.kind === 'upright arm' ? 1 : -1;
  return { kind: 'arm', pivotHeight, armLength, direction, travel };
}

function centreOf({ figures }: Pick<Assessment, 'figures'>): ViewCentre | undefined {
  const [forward, left, height] = ['cg_forward', 'cg_left', 'cg_height'].map(
    (name) => figures.get(name)?.result,
  );
  if (!forward?.ok || !left?.ok || !height?.ok) return undefined;
  return {
    x: forward.value.value,
    y: left.value.value,
    z: height.value.value,
    ux: standardUncertainty(forward.value),
    uy: standardUncertainty(left.value),
    uz: standardUncertainty(height.value),
  };
}
