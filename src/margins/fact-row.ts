/** The shape of a fact, and the short form in which the tables of facts are written. */
import type { FieldSpec, Range } from './field.ts';
import type { FigureGroup, FigureSpec } from './figure.ts';

/** The page of the window on which the field is entered. */
export type FactPage = 'Requirements' | 'Masses' | 'Rotor and gimbal' | 'Ballast' | 'Loop' | 'Power';

export type DriveFamily = 'arm' | 'slide';

export interface FactSpec extends FigureSpec, Pick<FieldSpec, 'range' | 'example' | 'blank'> {
  readonly record: 'prototype' | 'revision';
  /** Path in that record, segments joined by `/`. */
  readonly path: string;
  readonly page: FactPage;
  /** A count is kept as a bare whole number; everything else as a quantity. */
  readonly kind: 'quantity' | 'count';
  /** Only for a ballast on an arm, or only for one on a slide. */
  readonly drive?: DriveFamily;
  /** What differs where the ballast moves on a slide. */
  readonly onSlide?: Pick<FigureSpec, 'unit' | 'display'> & Pick<FieldSpec, 'example'>;
}

type Row = readonly [
  name: string,
  path: string,
  title: string,
  unit: string,
  display: string,
  range: Range,
  example: string,
];
type Extra = Partial<Pick<FactSpec, 'blank' | 'kind' | 'drive' | 'onSlide'>>;

/** One group of facts of a page, a row each. */
export function facts(
  record: FactSpec['record'],
  page: FactPage,
  group: FigureGroup,
  rows: readonly (Row | readonly [...Row, Extra])[],
): FactSpec[] {
  return rows.map(([name, path, title, unit, display, range, example, extra]) => ({
    name,
    record,
    path,
    title,
    unit,
    display,
    range,
    example,
    group,
    page,
    kind: 'quantity',
    ...extra,
  }));
}
