/** What the data of a revision say about themselves. A notice more is one rule in this list. */
import type { Prototype, Revision } from '../notebook/index.ts';
import { handAndExact } from './ballast-notices.ts';
import type { Figure, Notice } from './figure.ts';
import { rateSource, unstableLoop } from './loop-notices.ts';
import { assumedOnCentreLine, oneOfEachRole, weighedTotal } from './mass-notices.ts';
import { type NoticeRule, noticeSubject } from './notice-subject.ts';
import {
  centringSpring,
  judgedSpeed,
  neutralGimbal,
  rotorAlone,
  rotorMass,
  spinAxis,
  weakRotor,
} from './rotor-notices.ts';

const rules: readonly NoticeRule[] = [
  weighedTotal,
  assumedOnCentreLine,
  oneOfEachRole,
  rotorMass,
  judgedSpeed,
  spinAxis,
  centringSpring,
  neutralGimbal,
  rotorAlone,
  weakRotor,
  unstableLoop,
  rateSource,
  handAndExact,
];

export function noticesOf(
  prototype: Prototype,
  revision: Revision,
  figures: ReadonlyMap<string, Figure>,
): readonly Notice[] {
  const subject = noticeSubject(prototype, revision, figures);
  return rules.flatMap((rule) => rule(subject));
}
