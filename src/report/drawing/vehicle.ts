/** What the views of a vehicle are drawn from: plain SI numbers in the frame of ISO 8855 (x forward, y left, z up). */

export type ViewBody =
  | { readonly shape: 'point' }
  /** Extents along x, y and z. */
  | { readonly shape: 'box'; readonly length: number; readonly width: number; readonly height: number }
  | {
      readonly shape: 'cylinder';
      readonly axis: 'x' | 'y' | 'z';
      readonly diameter: number;
      readonly length: number;
      readonly bore?: number;
    };

export interface ViewPart {
  readonly name: string;
  /** Its number in the mass table, lettered beside it. */
  readonly item?: number;
  readonly role: 'structure' | 'rotor' | 'ballast' | 'pack';
  readonly mass: number;
  /** Centre of gravity, m: forward of the rear contact point, left of the centre line, above the ground line. */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly body: ViewBody;
}

export interface ViewCentre {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Standard uncertainties, m. */
  readonly ux: number;
  readonly uy: number;
  readonly uz: number;
}

export type ViewBallastDrive =
  | {
      readonly kind: 'arm';
      readonly pivotHeight: number;
      readonly armLength: number;
      /** +1 upright, −1 hanging. */
      readonly direction: 1 | -1;
      /** rad to each side. */
      readonly travel: number;
    }
  | { readonly kind: 'slide'; readonly height: number /** m to each side. */; readonly travel: number };

export interface VehicleViewInput {
  readonly title: string;
  readonly parts: readonly ViewPart[];
  /** How many parts are left out because nobody has said where they are; said below the views. */
  readonly notPlaced?: number;
  readonly centreOfGravity?: ViewCentre | undefined;
  readonly ballast?: ViewBallastDrive | undefined;
  /** Largest lean that the ballast can hold, rad. */
  readonly limitLean?: number | undefined;
}

/** A direction of view: how the three axes fall on the sheet. */
export interface Projection {
  readonly name: 'rear view' | 'side view';
  /** Metres to the right on the sheet. */
  readonly across: (point: { readonly x: number; readonly y: number; readonly z: number }) => number;
  /** Axis of a body that lies along the line of sight. */
  readonly sight: 'x' | 'y';
}

/** Looking forward from behind: the vehicle's left is on the left. */
export const REAR: Projection = { name: 'rear view', across: (point) => -point.y, sight: 'x' };
/** Looking from its right: forward is to the right. */
export const SIDE: Projection = { name: 'side view', across: (point) => point.x, sight: 'y' };

/** Half extents of a body on the sheet, m. */
export function halfExtents(body: ViewBody, { sight }: Projection): readonly [across: number, up: number] {
  switch (body.shape) {
    case 'point':
      return [0, 0];
    case 'box':
      return [(sight === 'x' ? body.width : body.length) / 2, body.height / 2];
    case 'cylinder': {
      const along = body.length / 2;
      const round = body.diameter / 2;
      const sheetAxis = sight === 'x' ? 'y' : 'x';
      return [body.axis === sheetAxis ? along : round, body.axis === 'z' ? along : round];
    }
  }
}

/** Offset of the ballast to the left (y) and its height z, for a place of its drive between −1 and +1 of the travel. */
export function ballastPlace(
  drive: ViewBallastDrive,
  share: number,
): { readonly left: number; readonly z: number } {
  if (drive.kind === 'slide') return { left: -share * drive.travel, z: drive.height };
  const angle = share * drive.travel;
  return {
    left: -drive.armLength * Math.sin(angle),
    z: drive.pivotHeight + drive.direction * drive.armLength * Math.cos(angle),
  };
}
