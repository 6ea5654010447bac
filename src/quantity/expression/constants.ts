/** Names that every formula knows without being told. */
import { NUMBER } from '../dimension.ts';
import { exact } from '../uncertain.ts';
import { unitOf } from '../unit.ts';
import type { Scope } from './value.ts';

/** π, Euler's number, and the standard acceleration of free fall (CGPM 1901, exact). */
export const CONSTANTS: Scope = new Map([
  ['pi', { value: exact(Math.PI), dimension: NUMBER }],
  ['π', { value: exact(Math.PI), dimension: NUMBER }],
  ['e', { value: exact(Math.E), dimension: NUMBER }],
  ['g_n', { value: exact(unitOf('g_n').factor), dimension: unitOf('g_n').dimension }],
]);

/** Words of the language itself: no figure and no line of a calculation can have these names. */
export const KEYWORDS: ReadonlySet<string> = new Set(['and', 'or', 'not', 'in', 'true', 'false']);
