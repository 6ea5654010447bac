/** A revision as its rear or side view, drawn to scale from the mass table and the figures made from it. */
import type { Assessment } from '../margins/index.ts';
import { type Body, isKnown, type QuantityField, type Revision } from '../notebook/index.ts';
import { standardUncertainty } from '../quantity/index.ts';
import type { Drawing } from './drawing/primitive.ts';
import type { ViewBallastDrive, ViewBody, ViewCentre, ViewPart } from './drawing/vehicle.ts';
import { type VehicleViewOptions, vehicleView } from './drawing/vehicle-view.ts';

/** Parts without a mass or a place are left out: the figures say what is missing. */
export function vehicleDrawing(
  title: string,
  revision: Revision,
  assessment: Assessment,
  options: VehicleViewOptions,
): Drawing {
  return vehicleView(
    {
      title,
      parts: viewParts(revision, assessment),
      centreOfGravity: centre(assessment),
      ballast: drive(revision),
      limitLean: value(assessment, 'largest_lean'),
    },
    options,
  );
}

function viewParts(revision: Revision, assessment: Assessment): ViewPart[] {
  const rotorDiameter = Math.max(
    0,
    ...Object.values(revision.rotor?.sections ?? {}).map((section) => si(section.outerDiameter) ?? 0),
  );
  return Object.values(revision.parts)
    .sort((a, b) => a.order - b.order)
    .flatMap((part, index) => {
      const mass = si(part.mass);
      const x = si(part.x);
      const isBallast = part.role === 'ballast';
      const z = isBallast ? value(assessment, 'ballast_height_centred') : si(part.z);
      if (mass === undefined || z === undefined) return [];
      return [
        {
          name: part.name,
          item: index + 1,
          role: part.role,
          mass,
          x: x ?? 0,
          y: isBallast ? 0 : (si(part.y) ?? 0),
          z,
          body: viewBody(part.body, part.role === 'rotor' ? rotorDiameter : 0),
        },
      ];
    });
}

function viewBody(body: Body, rotorDiameter: number): ViewBody {
  const known = (field: QuantityField | undefined): number => si(field) ?? 0;
  switch (body.shape) {
    case 'box':
      return {
        shape: 'box',
        length: known(body.length),
        width: known(body.width),
        height: known(body.height),
      };
    case 'cylinder':
      return {
        shape: 'cylinder',
        axis: body.axis,
        diameter: known(body.diameter),
        length: known(body.length),
      };
    case 'tube':
      return {
        shape: 'cylinder',
        axis: body.axis,
        diameter: known(body.diameter),
        length: known(body.length),
        bore: known(body.bore),
      };
    case 'rod':
      return { shape: 'cylinder', axis: body.axis, diameter: 0, length: known(body.length) };
    default:
      return rotorDiameter > 0
        ? { shape: 'cylinder', axis: 'z', diameter: rotorDiameter, length: 0 }
        : { shape: 'point' };
  }
}

function centre(assessment: Assessment): ViewCentre | undefined {
  const [x, y, z] = ['cg_forward', 'cg_left', 'cg_height'].map(
    (name) => assessment.figures.get(name)?.result,
  );
  if (!z?.ok) return undefined;
  return {
    x: x?.ok ? x.value.value : 0,
    y: y?.ok ? y.value.value : 0,
    z: z.value.value,
    ux: x?.ok ? standardUncertainty(x.value) : 0,
    uy: y?.ok ? standardUncertainty(y.value) : 0,
    uz: standardUncertainty(z.value),
  };
}

function drive({ ballast }: Revision): ViewBallastDrive | undefined {
  if (!ballast) return undefined;
  const travel = si(ballast.travel);
  if (travel === undefined) return undefined;
  if (ballast.kind === 'slide') {
    const height = si(ballast.height);
    return height === undefined ? undefined : { kind: 'slide', height, travel };
  }
  const pivotHeight = si(ballast.pivotHeight);
  const armLength = si(ballast.armLength);
  if (pivotHeight === undefined || armLength === undefined) return undefined;
  return { kind: 'arm', pivotHeight, armLength, direction: ballast.kind === 'upright arm' ? 1 : -1, travel };
}

function si(field: QuantityField | undefined): number | undefined {
  return isKnown(field) ? field.si : undefined;
}

function value(assessment: Assessment, name: string): number | undefined {
  const result = assessment.figures.get(name)?.result;
  return result?.ok ? result.value.value : undefined;
}
