/**
 * What a revision hands to other programs: every figure by its name with its SI unit and standard uncertainty, and
 * the mass table. The forms that it is written in (C, Python, CSV, JSON) add nothing and leave nothing out.
 */
import {
  type Assessment,
  assess,
  type Figure,
  type FigureGroup,
  figureNames,
  howGot,
} from '../../margins/index.ts';
import {
  fingerprint,
  isKnown,
  type Part,
  type PartRole,
  type Prototype,
  type Revision,
} from '../../notebook/index.ts';
import { standardUncertainty } from '../../quantity/index.ts';
import { identifier } from './identifier.ts';

export interface DesignFigure {
  /** `RATE_GAIN_s` */
  readonly identifier: string;
  readonly name: string;
  readonly title: string;
  /** SI. */
  readonly unit: string;
  readonly group: FigureGroup;
  /** Undefined while it is not known, or where it is without limit. */
  readonly value: number | undefined;
  /** Standard uncertainty in the same unit; 0 where it is exact or nobody has stated one. */
  readonly uncertainty: number;
  /** `measured`, `calculated`, `constant` … */
  readonly how: string;
}

export interface DesignPart {
  /** From 1, in the order of the mass table. */
  readonly number: number;
  readonly name: string;
  readonly role: PartRole;
  /** mass, forward, left, height: where the part’s centre of gravity sits (ISO 8855). */
  readonly figures: readonly DesignFigure[];
}

export interface DesignFigures {
  readonly prototype: string;
  readonly letter: string;
  readonly status: Revision['status'];
  readonly issuedAt: string | undefined;
  /** Of what the revision physically is. */
  readonly fingerprint: string;
  readonly figures: readonly DesignFigure[];
  readonly parts: readonly DesignPart[];
}

export function designFigures(prototype: Prototype, revision: Revision): DesignFigures {
  const assessment = assess(prototype, revision);
  const known = figureNames.flatMap(({ name }) => assessment.figures.get(name) ?? []);
  return {
    prototype: prototype.name,
    letter: revision.letter,
    status: revision.status,
    issuedAt: revision.issuedAt,
    fingerprint: fingerprint(revision),
    figures: known.map(figureOf),
    parts: Object.values(revision.parts)
      .sort((a, b) => a.order - b.order)
      .map((part, index) => partOf(part, index + 1, assessment)),
  };
}

function figureOf(figure: Figure): DesignFigure {
  const { name, title, unit, group, result } = figure;
  const value = result.ok && Number.isFinite(result.value.value) ? result.value.value : undefined;
  return {
    identifier: identifier(name, unit),
    name,
    title,
    unit,
    group,
    value,
    uncertainty: result.ok && value !== undefined ? standardUncertainty(result.value) : 0,
    how: howHere(figure, value),
  };
}

/** As everywhere in the program, save for a calculated figure that has no number to hand over. */
function howHere(figure: Figure, value: number | undefined): string {
  if (figure.trace.kind === 'fact' || value !== undefined) return howGot(figure);
  return figure.result.ok ? 'without limit' : 'not known';
}

const COLUMNS = [
  { key: 'mass', name: 'mass', unit: 'kg', title: 'mass' },
  { key: 'x', name: 'forward', unit: 'm', title: 'distance forward' },
  { key: 'y', name: 'left', unit: 'm', title: 'distance to the left' },
  { key: 'z', name: 'height', unit: 'm', title: 'height' },
] as const;

function partOf(part: Part, number: number, assessment: Assessment): DesignPart {
  const figures = COLUMNS.map(({ key, name, unit, title }): DesignFigure => {
    const field = part[key];
    const [value, uncertainty, how] = isKnown(field)
      ? [field.si, field.u, field.basis]
      : (placedByDesign(part, key, assessment) ?? [
          undefined,
          0,
          field === undefined ? 'not entered' : 'not measured',
        ]);
    return {
      identifier: identifier(`part_${number}_${name}`, unit),
      name: `part_${number}_${name}`,
      title: `${title} of part ${number}`,
      unit,
      group: 'mass',
      value,
      uncertainty,
      how,
    };
  });
  return { number, name: part.name, role: part.role, figures };
}

/** The ballast is on the centre line at the height that its drive gives it; any other part left blank is on that line. */
function placedByDesign(
  part: Part,
  key: 'mass' | 'x' | 'y' | 'z',
  { figures }: Assessment,
): [value: number, uncertainty: number, how: string] | undefined {
  if (key === 'y' && part.y === undefined) return [0, 0, 'on the centre line'];
  const height = figures.get('ballast_height_centred')?.result;
  if (part.role !== 'ballast' || key !== 'z' || !height?.ok) return undefined;
  return [height.value.value, standardUncertainty(height.value), 'calculated'];
}
