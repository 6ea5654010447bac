/**
 * Standard uncertainty from what is known about a reading.
 *
 * Source: JCGM 100:2008 4.3.7 (bounds, nothing known within them: rectangular), F.2.2.1 (resolution of a display).
 */

/** How an uncertainty was stated: as u itself, as a bound ±a, or as the step d of the display. */
export type StatedAs = 'standard' | 'bound' | 'resolution';

/** u = a/√3 for a value that lies anywhere within ±a. JCGM 100 4.3.7. */
export function asBound(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** u = d/√12 for a display that steps by d, so that the value lies anywhere within ±d/2. JCGM 100 F.2.2.1. */
export function asResolution(step: number): number {
  return step / Math.sqrt(12);
}

/** @param spread  u, a or d, as `kind` says; not negative */
export function standardFrom(spread: number, kind: StatedAs): number {
  if (kind === 'bound') return asBound(spread);
  return kind === 'resolution' ? asResolution(spread) : spread;
}
