/** Walks from a figure back to the facts that it is made from, and says in words what they are. */
import { isKnown } from '../notebook/index.ts';
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

/** `mass of Tray, measured`: what an input is and how it was got. */
export function inputLabel(figure: Figure): string {
  if (figure.trace.kind === 'constant') return figure.title;
  if (figure.trace.kind === 'calculation') return `${figure.title}, calculated`;
  const { field } = figure.trace;
  if (isKnown(field)) return `${figure.title}, ${field.basis}`;
  return field === undefined && figure.result.ok ? figure.title : `${figure.title}, not entered`;
}

/** Where a figure comes from: the equation, the constant's source, or the reading with its instrument and day. */
export function sourceText(figure: Figure): string {
  const { trace } = figure;
  switch (trace.kind) {
    case 'constant':
      return trace.source;
    case 'calculation':
      return `calculated by ${trace.calculation}`;
    case 'fact': {
      const { field } = trace;
      if (field === undefined) return figure.result.ok ? 'as counted, or left blank' : 'nothing entered';
      if (!isKnown(field)) return field.note ? `not measured: ${field.note}` : 'not measured';
      const how = [field.basis, field.instrument && `with ${field.instrument}`, field.on && `on ${field.on}`];
      return `${field.typed}, ${how.filter(Boolean).join(' ')}`;
    }
  }
}
