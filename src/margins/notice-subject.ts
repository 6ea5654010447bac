/** What a notice is made from: the records, the figures that are known, and the figures in words. */
import { DomainError } from '../mechanics/index.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { formatValue, standardUncertainty, type Uncertain } from '../quantity/index.ts';
import type { Figure, Notice } from './figure.ts';
import { inOrder, type TableRow } from './part-figures.ts';
import { registry } from './registry.ts';

export interface NoticeSubject {
  readonly prototype: Prototype;
  readonly revision: Revision;
  readonly figures: ReadonlyMap<string, Figure>;
  readonly parts: readonly TableRow<Revision['parts'][string]>[];
}

export type NoticeRule = (subject: NoticeSubject) => readonly Notice[];

export function noticeSubject(
  prototype: Prototype,
  revision: Revision,
  figures: ReadonlyMap<string, Figure>,
): NoticeSubject {
  return { prototype, revision, figures, parts: inOrder(revision.parts) };
}

export function knownFigure({ figures }: NoticeSubject, name: string): Uncertain | undefined {
  const figure = figures.get(name);
  return figure?.result.ok ? figure.result.value : undefined;
}

/** The values of several figures, or undefined while one of them is unknown. */
export function knownValues<const N extends string>(
  subject: NoticeSubject,
  names: readonly N[],
): Readonly<Record<N, number>> | undefined {
  const values: Partial<Record<N, number>> = {};
  for (const name of names) {
    const known = knownFigure(subject, name);
    if (!known) return undefined;
    values[name] = known.value;
  }
  return values as Record<N, number>;
}

/** A figure as it is read, with the digits that its uncertainty allows. */
export function inWords(subject: NoticeSubject, name: string): string {
  const figure = subject.figures.get(name);
  const known = knownFigure(subject, name);
  return figure && known ? formatValue(known.value, figure.display, standardUncertainty(known)) : 'unknown';
}

/** One output of a registered calculation for the values given; undefined where it is not defined. */
export function outputOf(
  calculation: string,
  output: string,
  inputs: Readonly<Record<string, number>>,
): number | undefined {
  try {
    return registry.get(calculation)?.compute(inputs)[output];
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

/** `Tray`, `Tray and Pack`, `Tray, Pack and 3 more`. */
export function listed(names: readonly string[]): string {
  const [first = '', second = ''] = names;
  if (names.length < 2) return first;
  if (names.length === 2) return `${first} and ${second}`;
  if (names.length === 3) return `${first}, ${second} and ${names[2]}`;
  return `${first}, ${second} and ${names.length - 2} more`;
}
