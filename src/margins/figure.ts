/** The figures of a revision by name, and the margins made from them: what every page, card and report draws on. */
import type { QuantityField } from '../notebook/index.ts';
import type { Problem, Uncertain } from '../quantity/index.ts';

export type FigureGroup =
  | 'requirements'
  | 'mass'
  | 'rotor'
  | 'gimbal'
  | 'ballast'
  | 'actuator'
  | 'loop'
  | 'pack';

export interface FigureSpec {
  /** The name in calc blocks, templates and on the command line: `largest_lean`. */
  readonly name: string;
  readonly title: string;
  /** SI unit of the value. */
  readonly unit: string;
  /** Unit that people read it in: `°`, `rpm`, `MPa`. */
  readonly display: string;
  readonly group: FigureGroup;
}

/** Where a figure comes from. */
export type Trace =
  | {
      readonly kind: 'fact';
      readonly record: 'prototype' | 'revision';
      /** Path in that record, segments joined by `/`. */
      readonly path: string;
      readonly field: QuantityField | undefined;
    }
  | { readonly kind: 'constant'; readonly source: string }
  | {
      readonly kind: 'calculation';
      readonly calculation: string;
      /** Which of its outputs. */
      readonly output: string;
      /** Input of the calculation → name of the figure, or names for a list. */
      readonly inputs: Readonly<Record<string, string | readonly string[]>>;
    };

export type FigureResult =
  | { readonly ok: true; readonly value: Uncertain }
  /** `missing` names the facts to enter, deepest first, so that the page can lead there. */
  | { readonly ok: false; readonly problem: Problem; readonly missing: readonly string[] };

export interface Figure extends FigureSpec {
  readonly result: FigureResult;
  readonly trace: Trace;
}

export type Verdict = 'holds' | 'in doubt' | 'fails' | 'unknown';

export interface MarginSpec {
  readonly id: string;
  readonly title: string;
  /** Figure names: what it can do, and what is asked of it. */
  readonly capability: string;
  readonly demand: string;
  readonly unit: string;
  readonly display: string;
  readonly group: FigureGroup;
}

export type Margin = MarginSpec &
  (
    | {
        readonly verdict: 'holds' | 'in doubt' | 'fails';
        /** MS = capability/demand − 1, a pure number. */
        readonly marginOfSafety: Uncertain;
        /** One-sided lower 95 % bound of MS, k = 1.645 (JCGM 106). */
        readonly lowerBound: number;
      }
    | { readonly verdict: 'unknown'; readonly problem: Problem; readonly missing: readonly string[] }
  );

/** Something that the data say about themselves: a weighed total that contradicts the parts, say. */
export interface Notice {
  readonly id: string;
  readonly group: FigureGroup;
  readonly text: string;
}

export interface Assessment {
  readonly figures: ReadonlyMap<string, Figure>;
  readonly margins: readonly Margin[];
  readonly notices: readonly Notice[];
}
