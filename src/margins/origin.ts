/**
 * Where each figure of one revision comes from, before anything is computed: a field of a record, a constant,
 * an output of a calculation fed from other names, or a choice that has still to be made.
 */
import type { QuantityField } from '../notebook/index.ts';
import type { FactPage } from './facts.ts';
import type { FigureSpec } from './figure.ts';

export type Origin = FactOrigin | ConstantOrigin | CalculationOrigin | UndecidedOrigin;

export interface FactOrigin {
  readonly kind: 'fact';
  readonly spec: FigureSpec;
  readonly record: 'prototype' | 'revision';
  readonly path: string;
  readonly page: FactPage;
  readonly field: QuantityField | undefined;
  /** A count is kept bare, without a quantity around it. */
  readonly count?: number;
  /** What a field left blank counts as. */
  readonly blank?: number;
}

export interface ConstantOrigin {
  readonly kind: 'constant';
  readonly spec: FigureSpec;
  readonly value: number;
  readonly source: string;
}

export interface CalculationOrigin {
  readonly kind: 'calculation';
  readonly spec: FigureSpec;
  /** Shared by all outputs of one use of a calculation, so that it is computed once. */
  readonly use: CalculationUse;
  readonly output: string;
}

export interface CalculationUse {
  readonly calculation: string;
  readonly inputs: Readonly<Record<string, BoundFeed>>;
}

export interface BoundFeed {
  /** One figure, or one for each row of a list. */
  readonly from: string | readonly string[];
  /** While unknown the calculation's default is taken. */
  readonly optional: boolean;
  /** For an empty list: the choice that would fill it. */
  readonly empty?: string;
}

/** Stands where a figure would be, if the person had said how the ballast moves or which part it is. */
export interface UndecidedOrigin {
  readonly kind: 'undecided';
  readonly spec: FigureSpec;
  readonly choice: string;
}

export type Origins = ReadonlyMap<string, Origin>;

/** Something to be chosen rather than measured, on which figures wait. */
export interface ChoiceSpec {
  readonly name: string;
  readonly title: string;
  readonly record: 'prototype' | 'revision';
  readonly path: string;
  readonly page: FactPage;
}

export const choiceSpecs: readonly ChoiceSpec[] = [
  {
    name: 'ballast_drive',
    title: 'the kind of ballast drive',
    record: 'revision',
    path: 'ballast/kind',
    page: 'Ballast',
  },
  { name: 'rotor', title: 'the rotor', record: 'revision', path: 'rotor', page: 'Rotor and gimbal' },
  { name: 'gimbal', title: 'the gimbal', record: 'revision', path: 'gimbal', page: 'Rotor and gimbal' },
  { name: 'loop', title: 'the control loop', record: 'revision', path: 'loop', page: 'Loop' },
  {
    name: 'ballast_part',
    title: 'the part that is the ballast',
    record: 'revision',
    path: 'parts',
    page: 'Masses',
  },
  {
    name: 'rotor_part',
    title: 'the part that is the rotor',
    record: 'revision',
    path: 'parts',
    page: 'Masses',
  },
  {
    name: 'mass_table',
    title: 'a part in the mass table',
    record: 'revision',
    path: 'parts',
    page: 'Masses',
  },
  {
    name: 'mass_table_without_ballast',
    title: 'a part besides the ballast in the mass table',
    record: 'revision',
    path: 'parts',
    page: 'Masses',
  },
  {
    name: 'rotor_sections',
    title: 'a section of the rotor',
    record: 'revision',
    path: 'rotor/sections',
    page: 'Rotor and gimbal',
  },
];
