/** What the window shows: a page of a revision, and on some pages one record. */
export const pages = [
  { id: 'requirements', title: 'Requirements' },
  { id: 'masses', title: 'Masses' },
  { id: 'rotor', title: 'Rotor and gimbal' },
  { id: 'ballast', title: 'Ballast' },
  { id: 'loop', title: 'Loop' },
  { id: 'power', title: 'Power' },
  { id: 'log', title: 'Log' },
  { id: 'cards', title: 'Test cards' },
  { id: 'runs', title: 'Runs' },
  { id: 'failures', title: 'Failures' },
  { id: 'compare', title: 'Compare' },
] as const;

export type PageId = (typeof pages)[number]['id'];

export interface Place {
  readonly revision: string | undefined;
  readonly page: PageId;
  /** An entry, card, run or failure on its page. */
  readonly record: string | undefined;
}
