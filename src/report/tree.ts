/** A report as a tree of meaning: built from the notebook, drawn to PDF, and itself the structure tree of the PDF. */
import type { Drawing } from './drawing/primitive.ts';

/** A run of text. `math` is the TeX of a registered equation or symbol, set inline; `spoken` is read in its place. */
export type Inline =
  | string
  | { readonly strong: string }
  | { readonly emphasis: string }
  | { readonly code: string }
  | { readonly math: string; readonly spoken: string };

export interface Heading {
  readonly type: 'heading';
  readonly level: 1 | 2 | 3;
  readonly text: string;
}

export interface Paragraph {
  readonly type: 'paragraph';
  readonly content: readonly Inline[];
}

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right' | 'decimal';
  /** Share of the table's width. */
  readonly share: number;
}

export type Cell = string | readonly Inline[];

export interface Table {
  readonly type: 'table';
  readonly caption: string;
  readonly columns: readonly Column[];
  /** The first cell of a row names it. */
  readonly rows: readonly (readonly Cell[])[];
  /** Points: room to write in by hand. */
  readonly leastRowHeight?: number;
}

export interface Equation {
  readonly type: 'equation';
  readonly tex: string;
  /** Read aloud in its place. */
  readonly spoken: string;
}

export interface Illustration {
  readonly type: 'illustration';
  readonly drawing: Drawing;
  readonly caption: string;
}

export interface Picture {
  readonly type: 'picture';
  readonly bytes: Uint8Array;
  readonly mediaType: 'image/png' | 'image/jpeg';
  readonly caption: string;
}

export interface List {
  readonly type: 'list';
  readonly ordered: boolean;
  readonly items: readonly (readonly Inline[])[];
}

/** Safety messages under one signal word (ISO 3864, ANSI Z535). */
export interface Caution {
  readonly type: 'caution';
  readonly signal: 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';
  readonly texts: readonly string[];
}

export interface Rule {
  readonly type: 'rule';
}

export type Block = Heading | Paragraph | Table | Equation | Illustration | Picture | List | Caution | Rule;

export interface ReportDocument {
  readonly title: string;
  /** Unique; on every page. */
  readonly identification: string;
  readonly subject: string;
  readonly author: string;
  /** RFC 3339; the clock is never read while drawing. */
  readonly issuedAt: string;
  readonly paper: 'A4' | 'Letter';
  /** Pairs for the title block. */
  readonly titleBlock: readonly (readonly [label: string, value: string])[];
  readonly blocks: readonly Block[];
}
