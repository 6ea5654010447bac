/** Where a missing fact is entered, so that a page can lead there. */

import type { FactPage } from './facts.ts';
import { factSpecs } from './facts.ts';
import type { Assessment } from './figure.ts';
import { choiceSpecs } from './origin.ts';

export interface FactLocation {
  readonly title: string;
  readonly record: 'prototype' | 'revision';
  /** Path in that record, segments joined by `/`. */
  readonly path: string;
  readonly page: FactPage;
}

/** The place of a name out of a figure's `missing`; undefined for a name that is no fact and no choice. */
export function locateFact(assessment: Assessment, name: string): FactLocation | undefined {
  const choice = choiceSpecs.find((candidate) => candidate.name === name);
  if (choice) return { title: choice.title, record: choice.record, path: choice.path, page: choice.page };
  const figure = assessment.figures.get(name);
  if (figure?.trace.kind !== 'fact') return undefined;
  const { record, path } = figure.trace;
  const page =
    factSpecs.find((spec) => spec.name === name)?.page ??
    (path.startsWith('rotor/') ? 'Rotor and gimbal' : 'Masses');
  return { title: figure.title, record, path, page };
}
