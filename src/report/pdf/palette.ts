/**
 * Colours of the paper, sRGB: dark enough for 4.5 : 1 on white wherever text is set in them, and apart in grey.
 * Signal colours after ISO 3864-4 as published in sRGB; a print is never certified to them.
 */
import type { Ink } from '../drawing/primitive.ts';

export type Colour = readonly [red: number, green: number, blue: number];

function hex(text: string): Colour {
  const value = Number.parseInt(text.slice(1), 16);
  return [(value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
}

export const INK_COLOURS: Readonly<Record<Ink, Colour>> = {
  ink: hex('#16191d'),
  quiet: hex('#545b64'),
  faint: hex('#c3c8ce'),
  paper: hex('#ffffff'),
  capability: hex('#0a5470'),
  demand: hex('#8c3a10'),
  band: hex('#b9a468'),
  rotor: hex('#54437f'),
  ballast: hex('#73540b'),
  structure: hex('#414b55'),
};

/** A lighter solid colour: the share `tint` of the ink in the paper. */
export function tinted(ink: Ink, tint = 1): Colour {
  const [r, g, b] = INK_COLOURS[ink];
  return [1 - tint * (1 - r), 1 - tint * (1 - g), 1 - tint * (1 - b)];
}

export interface SignalColours {
  readonly panel: Colour;
  readonly word: Colour;
  /** NOTICE is not about injury and has no alert symbol. */
  readonly alert: boolean;
}

const WHITE: Colour = [1, 1, 1];
const BLACK: Colour = [0, 0, 0];

export const SIGNAL_COLOURS = {
  DANGER: { panel: hex('#9b2423'), word: WHITE, alert: true },
  WARNING: { panel: hex('#d05d29'), word: BLACK, alert: true },
  CAUTION: { panel: hex('#f9a800'), word: BLACK, alert: true },
  NOTICE: { panel: hex('#005387'), word: WHITE, alert: false },
} as const satisfies Record<string, SignalColours>;
