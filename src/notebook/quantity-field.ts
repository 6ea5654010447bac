/**
 * A physical input as it is kept: what was typed, what it means in SI, how well it is known, and how it was got.
 * An absent field is blank (nobody has said anything); `notMeasured` says that somebody looked and has no figure
 * yet; `si: 0` is a measured nought. The three are never confused.
 */
import { z } from 'zod';
import { readOnce } from './read-once.ts';

export const basis = z.enum(['estimated', 'calculated', 'measured', 'data sheet']);
export type Basis = z.infer<typeof basis>;

/** How the uncertainty was stated; its standard uncertainty follows by JCGM 100 4.3. */
export const uncertaintyKind = z.enum(['standard', 'bound', 'resolution']);
export type UncertaintyKind = z.infer<typeof uncertaintyKind>;

export const knownQuantity = z.strictObject({
  /** As typed, number and unit; shown as it stands. */
  typed: z.string().max(200),
  /** The value in the SI unit of the field. */
  si: z.number(),
  /** Standard uncertainty in the SI unit of the field; 0 when exact. */
  u: z.number().nonnegative(),
  /** How that uncertainty was typed, when it was typed apart from the value. */
  uncertainty: z.strictObject({ typed: z.string().max(200), kind: uncertaintyKind }).optional(),
  basis,
  instrument: z.string().max(200).optional(),
  /** RFC 3339 date or time of the measurement. */
  on: z.string().max(40).optional(),
});

export const quantityField = readOnce(
  z.union([
    knownQuantity,
    z.strictObject({ notMeasured: z.literal(true), note: z.string().max(500).optional() }),
  ]),
);

export type KnownQuantity = z.infer<typeof knownQuantity>;
export type QuantityField = z.infer<typeof quantityField>;

export function isKnown(field: QuantityField | undefined): field is KnownQuantity {
  return field !== undefined && 'si' in field;
}
