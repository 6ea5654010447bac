/** What calculations may use, and what their lines come to: the types of `quantity/` that this page passes around. */
export type { CalcLine, Scope } from '../../../../quantity/index.ts';
