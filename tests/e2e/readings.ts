/** What a person would read off an instrument to meet an item of the checklist. */

/** A value inside `a unit to b unit`, `exactly a unit`, `at least a unit`, `at most b unit`; none where there is no limit. */
export function fitting(limits: string): string | undefined {
  const [low, high] = [...limits.matchAll(/(−?[\d.\u202f ]*\d)[\s\u202f]*([^\s\d]+)?/g)].map(
    ([, number = '', unit = '']) => ({
      value: Number(number.replace('−', '-').replace(/[\s\u202f]/g, '')),
      unit: unit === 'to' ? '' : unit,
    }),
  );
  if (!low) return undefined;
  if (high) return `${(low.value + high.value) / 2} ${high.unit}`;
  if (/at least/i.test(limits)) return `${low.value * 1.05} ${low.unit}`;
  if (/at most/i.test(limits)) return `${low.value * 0.5} ${low.unit}`;
  return `${low.value} ${low.unit}`;
}
