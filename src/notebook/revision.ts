/** One physical state of a prototype: what was weighed, cut, set and wired. Issued, it never changes. */
import { z } from 'zod';
import { revisionNumber } from './letters.ts';
import { quantityField } from './quantity-field.ts';
import { readOnce } from './read-once.ts';

const q = quantityField.optional();
const name = z.string().max(120);
const order = z.number();
const axis = z.enum(['x', 'y', 'z']);

/** Body of a part about its own centre of gravity, for its roll inertia. Lengths m, axis as in ISO 8855. */
export const body = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('point') }),
  z.strictObject({ shape: z.literal('box'), length: q, width: q, height: q }),
  z.strictObject({ shape: z.literal('cylinder'), axis, diameter: q, length: q }),
  z.strictObject({ shape: z.literal('tube'), axis, diameter: q, bore: q, length: q }),
  z.strictObject({ shape: z.literal('rod'), axis, length: q }),
  z.strictObject({ shape: z.literal('inertia as measured'), rollInertia: q }), // kg·m²
]);
export type Body = z.infer<typeof body>;

/** What the rest of the program has to know about a part. At most one rotor and one ballast in a revision. */
export const partRole = z.enum(['structure', 'rotor', 'ballast', 'pack']);
export type PartRole = z.infer<typeof partRole>;

export const part = z.strictObject({
  name,
  order,
  role: partRole.default('structure'),
  mass: q, // kg
  x: q, // m forward of the rear contact point
  y: q, // m to the left of the centre line
  z: q, // m above the ground line; not used for the ballast, whose height follows from its drive
  body: body.default({ shape: 'point' }),
  note: z.string().max(2000).optional(),
});
export type Part = z.infer<typeof part>;

export const rotorSection = z.strictObject({
  name,
  order,
  outerDiameter: q, // m
  boreDiameter: q, // m; blank or 0 for a solid disc
  thickness: q, // m
});
export type RotorSection = z.infer<typeof rotorSection>;

export const rotor = z.strictObject({
  material: name.default(''),
  density: q, // kg/m³
  yieldStrength: q, // Pa
  poissonRatio: q, // 1
  largestSpeed: q, // rad/s, working
  /** No-load speed of the spin motor per volt, rad/s/V: what the speed could run away to. */
  motorSpeedConstant: q,
  sections: z.record(z.string(), readOnce(rotorSection)).default({}),
});
export type Rotor = z.infer<typeof rotor>;

export const gimbal = z.strictObject({
  travel: q, // rad, to each side
  inertia: q, // kg·m² of gimbal and rotor about the tilt axis
  friction: q, // N·m·s/rad, viscous
  centring: q, // N·m/rad; positive sprung or pendulous, negative top-heavy
});
export type Gimbal = z.infer<typeof gimbal>;

export const ballastDrive = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.enum(['upright arm', 'hanging arm']),
    pivotHeight: q, // m above the ground line
    armLength: q, // m, pivot to centre of gravity of the ballast
    travel: q, // rad to each side
  }),
  z.strictObject({
    kind: z.literal('slide'),
    height: q, // m above the ground line
    travel: q, // m to each side
  }),
]);
export type BallastDrive = z.infer<typeof ballastDrive>;

/** The ballast's own drive. Moments and rad/s for an arm; forces and m/s for a slide. */
export const actuator = z.strictObject({
  stallMoment: q, // N·m, arm
  stallForce: q, // N, slide
  noLoadSpeed: q, // rad/s or m/s
  naturalFrequency: q, // rad/s
  dampingRatio: q, // 1
});
export type Actuator = z.infer<typeof actuator>;

export const rateSource = z.enum(['rate gyro', 'difference of angle', 'gimbal tilt', 'gimbal rate']);
export type RateSource = z.infer<typeof rateSource>;

/** Gains give the ballast command against the lean: rad per rad for an arm, m per rad for a slide. */
export const loop = z.strictObject({
  leanGain: q,
  rateGain: q, // per rad/s
  gimbalGain: q, // per rad of gimbal tilt
  sampleTime: q, // s
  delay: q, // s, computing and actuator frame
  sensorLag: q, // s, first order
  rateSource: rateSource.default('rate gyro'),
});
export type Loop = z.infer<typeof loop>;

export const chemistry = z.enum(['lithium-ion', 'lithium iron phosphate']);
export type Chemistry = z.infer<typeof chemistry>;

export const pack = z.strictObject({
  chemistry: chemistry.default('lithium-ion'),
  cellsInSeries: z.number().int().min(1).max(40).optional(),
  capacity: q, // C (ampere seconds), typed as mAh or Ah
  resistance: q, // Ω, whole pack with leads
  largestCurrent: q, // A, the maker's continuous rating
  meanCurrent: q, // A, drawn over a run
  peakCurrent: q, // A
  /** Share of the capacity that may be used in a run. */
  usableShare: q, // 1
  fuseRating: q, // A
});
export type Pack = z.infer<typeof pack>;

export const fittings = z.strictObject({
  radio: z.boolean().default(false),
  independentKill: z.boolean().default(false),
  driven: z.boolean().default(false),
});
export type Fittings = z.infer<typeof fittings>;

export const revision = z.strictObject({
  prototype: z.string(),
  letter: z
    .string()
    .refine((letter) => revisionNumber(letter) !== undefined, 'is not a revision letter of ASME Y14.35'),
  status: z.enum(['draft', 'issued']).default('draft'),
  /** The revision that this one was made from. */
  from: z.string().optional(),
  /** What was changed and why, in a sentence. */
  reason: z.string().max(4000).default(''),
  createdAt: z.string(),
  issuedAt: z.string().optional(),
  issuedBy: z.string().optional(),
  /** The whole vehicle on the scale, to be held against the sum of the parts. */
  weighedMass: q, // kg
  parts: z.record(z.string(), readOnce(part)).default({}),
  rotor: readOnce(rotor).optional(),
  gimbal: readOnce(gimbal).optional(),
  ballast: readOnce(ballastDrive).optional(),
  actuator: readOnce(actuator).optional(),
  loop: readOnce(loop).optional(),
  pack: readOnce(pack).optional(),
  fittings: fittings.default({ radio: false, independentKill: false, driven: false }),
});
export type Revision = z.infer<typeof revision>;
