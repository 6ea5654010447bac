/** What the blocks of a report are laid out with: the measure, the faces, the structure tree that they add to. */
import type { Canvas, Typefaces } from './canvas.ts';
import type { LineBreaker } from './lines.ts';
import type { StructureElement } from './structure.ts';

export interface Setting {
  readonly faces: Typefaces;
  readonly breaker: LineBreaker;
  /** Left edge and width of the text, points. */
  readonly left: number;
  readonly width: number;
  /** Height of the text on a page. */
  readonly pageHeight: number;
  /** Where the present block hangs in the structure tree. */
  readonly parent: StructureElement;
  readonly pictures: PictureShelf;
  /** Called while drawing, in reading order: an entry of the outline. */
  readonly outline: (level: number, text: string, page: number, top: number) => void;
}

export interface ShelvedPicture {
  /** Name among the page's resources. */
  readonly name: string;
  /** Pixels, the right way up. */
  readonly width: number;
  readonly height: number;
  /** Quarter turns to the right that bring it the right way up. */
  readonly turns: 0 | 1 | 2 | 3;
}

/** The pictures of the document by the bytes that they come from, embedded once each. */
export type PictureShelf = ReadonlyMap<Uint8Array, ShelvedPicture>;

export type Draw = (canvas: Canvas, top: number) => void;
