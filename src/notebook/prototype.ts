/** One vehicle under development, and the figures that it has to reach. */
import { z } from 'zod';
import { quantityField } from './quantity-field.ts';

export const requirements = z.strictObject({
  leanToRecover: quantityField.optional(), // rad
  lateralAcceleration: quantityField.optional(), // m/s²
  turnRadius: quantityField.optional(), // m, at turnSpeed
  turnSpeed: quantityField.optional(), // m/s
  crossSlope: quantityField.optional(), // rad
  /** Part of the largest lean that is kept for pushes and gusts while standing on a cross slope. */
  disturbanceReserve: quantityField.optional(), // rad
  runTime: quantityField.optional(), // s
  /** Speed that the rotor's stress is judged at, over its largest working speed. */
  overspeedFactor: quantityField.optional(), // 1
  /** Least factor by which the loop gain may rise, and the inverse of what it may fall to. */
  gainMargin: quantityField.optional(), // 1
  delayMargin: quantityField.optional(), // s
  /** Time that the gimbal has to buy before it meets its stop. */
  gimbalTime: quantityField.optional(), // s
});
export type Requirements = z.infer<typeof requirements>;

export const prototype = z.strictObject({
  name: z.string().min(1).max(120),
  kind: z.enum(['inline two-wheeler', 'monorail car', 'pendulum rig']),
  description: z.string().max(4000).default(''),
  requirements: requirements.default({}),
  createdAt: z.string(),
});
export type Prototype = z.infer<typeof prototype>;
