/** Units and values of g that sources print in, and how a figure that contains g passes from one value to another. */
import { standardGravity } from '../../../src/mechanics/index.ts';

export const rpm = (speed: number): number => (speed * Math.PI) / 30;
export const turns = (perSecond: number): number => 2 * Math.PI * perSecond;
export const degrees = (angle: number): number => (angle * 180) / Math.PI;
export const radians = (angle: number): number => (angle * Math.PI) / 180;
export const kmh = (speed: number): number => speed / 3.6;

/** A weight or a moment of weights as the source's g has it. */
export const weightAt = (gravity: number): number => gravity / standardGravity;

/** A time that swings or falls with the source's g: the same motion takes √(g/g_n) times as long with ours. */
export const timeAt = (gravity: number): number => Math.sqrt(gravity / standardGravity);

/** A speed whose square stands against g, such as that of a turn. */
export const speedAt = (gravity: number): number => Math.sqrt(standardGravity / gravity);
