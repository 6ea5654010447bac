/**
 * Pictures as data: every plot, scale and view of the vehicle is laid out once into these primitives and then
 * drawn as SVG in the window or as operators in the PDF, with the same font in both.
 *
 * Lengths in points (1/72 in), x to the right, y down, origin at the top left corner.
 */

/** Roles of colour, not colours: the theme of the window and the paper give each its value. */
export type Ink =
  | 'ink' // text and main lines
  | 'quiet' // secondary text, axes
  | 'faint' // grid, extension lines
  | 'paper' // background, to blank out
  | 'capability'
  | 'demand'
  | 'band' // uncertainty
  | 'rotor'
  | 'ballast'
  | 'structure';

export type PathStep =
  | readonly ['M' | 'L', x: number, y: number]
  | readonly ['C', x1: number, y1: number, x2: number, y2: number, x: number, y: number]
  | readonly ['Q', x1: number, y1: number, x: number, y: number]
  | readonly ['Z'];

export interface PathPrimitive {
  readonly type: 'path';
  readonly steps: readonly PathStep[];
  readonly stroke?: Ink;
  readonly width?: number;
  readonly dash?: readonly number[];
  readonly fill?: Ink;
  /** Tint of the fill, 0…1; drawn as a lighter solid colour, not as transparency. */
  readonly tint?: number;
}

export interface TextPrimitive {
  readonly type: 'text';
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly weight?: 'regular' | 'semibold';
  readonly ink: Ink;
  /** Degrees, anticlockwise. */
  readonly rotate?: number;
}

export type Primitive = PathPrimitive | TextPrimitive;

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** Short name and a sentence for those who cannot see it. */
  readonly title: string;
  readonly description: string;
  readonly primitives: readonly Primitive[];
}
