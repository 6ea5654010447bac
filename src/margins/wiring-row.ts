/** The shape of a row of the wiring, and the conditions under which rows apply. */
import type { FigureGroup, FigureSpec } from './figure.ts';
import type { Situation } from './situation.ts';

/** What is taken for each part or section, in the order of the table. */
export type ListFeed =
  | { readonly each: 'part' | 'part but the ballast'; readonly of: PartColumn }
  | { readonly each: 'section'; readonly of: SectionColumn };
export type PartColumn = 'mass' | 'forward' | 'left' | 'height' | 'own_inertia';
export type SectionColumn = 'outer_diameter' | 'bore_diameter' | 'thickness';

/** A figure's name; or one that is left to the calculation's default while it is unknown; or a list. */
export type Feed = string | { readonly ifKnown: string } | ListFeed;

export interface Row {
  readonly calculation: string;
  readonly when?: (situation: Situation) => boolean;
  /** Input of the calculation → what feeds it. Inputs that are left out take the calculation's default. */
  readonly inputs: Readonly<Record<string, Feed>>;
  /** Output of the calculation → the figure made from it. */
  readonly gives: Readonly<Record<string, FigureSpec>>;
}

/** Short form of a figure's description; the unit people read is the SI unit unless another is given. */
export const figure =
  (group: FigureGroup) =>
  (name: string, title: string, unit: string, display: string = unit): FigureSpec => ({
    name,
    title,
    unit,
    display,
    group,
  });
export const onArm = ({ drive }: Situation): boolean => drive === 'arm';
export const onSlide = ({ drive }: Situation): boolean => drive === 'slide';
export const withRotor = (situation: Situation): boolean => situation.rotor;
export const withGimballedRotor = (situation: Situation): boolean => situation.rotor && situation.gimbal;
export const withFreeGimbal = (situation: Situation): boolean =>
  withGimballedRotor(situation) && !situation.centred;
export const withCentredGimbal = (situation: Situation): boolean =>
  withGimballedRotor(situation) && situation.centred;
