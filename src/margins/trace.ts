/** Walks from a figure back to the facts that it is made from, and says in words what they are. */
import { isKnown } from '../notebook/index.ts';
import { factSpecs } from './facts.ts';
import type { Assessment, Figure, Trace } from './figure.ts';

export type FactFigure = Figure & { readonly trace: Extract<Trace, { kind: 'fact' }> };

export function isFact(figure: Figure): figure is FactFigure {
  return figure.trace.kind === 'fact';
}

/** Names of the figures that a calculated figure is directly made from, each once. */
export function feedsOf(figure: Figure): readonly string[] {
  return figure.trace.kind === 'calculation' ? [...new Set(Object.values(figure.trace.inputs).flat())] : [];
}

/** The facts behind a figure, in the order in which the calculation asks for them, each once. */
export function factsBehind(assessment: Pick<Assessment, 'figures'>, name: string): readonly FactFigure[] {
  const seen = new Set<string>();
  const facts: FactFigure[] = [];
  const visit = (at: string): void => {
    const figure = assessment.figures.get(at);
    if (!figure || seen.has(at)) return;
    seen.add(at);
    if (isFact(figure)) facts.push(figure);
    for (const feed of feedsOf(figure)) visit(feed);
  };
  visit(name);
  return facts;
}

/** The name under which a fact contributes to the uncertainty of others: its record and its path in it. */
export function contributionName(place: { readonly record: string; readonly path: string }): string {
  return `${place.record}/${place.path}`;
}

/** How a figure was got, in a word or two: `measured`, `required`, `calculated`, `not entered`. */
export function howGot(figure: Figure): string {
  const { trace } = figure;
  if (trace.kind !== 'fact') return trace.kind === 'constant' ? 'constant' : 'calculated';
  const { field } = trace;
  // A requirement is set, not found out: it has no basis.
  if (isKnown(field)) return trace.record === 'prototype' ? 'required' : field.basis;
  if (field !== undefined) return 'not measured';
  if (!figure.result.ok) return 'not entered';
  return isCount(figure.name) ? 'as counted' : 'left blank';
}

function isCount(name: string): boolean {
  return factSpecs.some((spec) => spec.name === name && spec.kind === 'count');
}

/** `mass of Tray, measured`: what an input is and how it was got. */
export function inputLabel(figure: Figure): string {
  const { trace, title, result } = figure;
  const speaksForItself = trace.kind === 'constant' || (trace.kind === 'fact' && !trace.field && result.ok);
  return speaksForItself ? title : `${title}, ${howGot(figure)}`;
}

/** Where a figure comes from: the equation, the constant's source, or the reading with its instrument and day. */
export function sourceText(figure: Figure): string {
  const { trace } = figure;
  if (trace.kind === 'constant') return trace.source;
  if (trace.kind === 'calculation') return `calculated by ${trace.calculation}`;
  const { field } = trace;
  if (field === undefined) return howGot(figure);
  if (!isKnown(field)) return field.note ? `not measured: ${field.note}` : 'not measured';
  const how = [howGot(figure), field.instrument && `with ${field.instrument}`, field.on && `on ${field.on}`];
  return `${field.typed}, ${how.filter(Boolean).join(' ')}`;
}
