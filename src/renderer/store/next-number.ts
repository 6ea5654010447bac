/** Numbers of entries, cards, runs and failures count up within the notebook and are never used again. */
export function nextNumber(records: Readonly<Record<string, { readonly number: number }>>): number {
  return Object.values(records).reduce((largest, record) => Math.max(largest, record.number), 0) + 1;
}
