/** What the data of a revision say about themselves. */
import type { Prototype, Revision } from '../notebook/index.ts';
import type { Figure, Notice } from './figure.ts';

export function noticesOf(
  _prototype: Prototype,
  _revision: Revision,
  _figures: ReadonlyMap<string, Figure>,
): readonly Notice[] {
  return [];
}
