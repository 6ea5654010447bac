/** The page of checks: what is published beside what the program computes, row by row. */
import { checkTables, type MechanicsCheck, statuses, traced } from '../published/checks/index.ts';
import { asPrinted, cell, figure } from './markdown.ts';

const HEAD = `# Checks against publications

Written by \`tests/generated/write.ts\` from the tables in \`tests/published/checks\`; do not edit.

Every row computes a published figure through the registered calculations of the [handbook](handbook.md), with the
inputs, the units and the value of g of its source. It counts as agreed when our figure, rounded as the source rounds,
is the printed one: the last printed digit is the whole tolerance. The loop, the propagation of uncertainty and the
quantities are checked in the same way; their tables hold matrices, loops and texts and stand in \`tests/published\`.
`;

/** Digits beyond the printed ones, so that a reader sees how near the rounding was. */
const MORE_DIGITS = 2;

export function checksPage(): string {
  const all = checkTables.flatMap(({ checks }) => checks);
  const counts = Object.entries(statuses).map(
    ([status, meaning]) =>
      `| ${status} | ${meaning} | ${all.filter((check) => check.status === status).length} |`,
  );
  const tables = checkTables.map(
    ({ title, checks }) =>
      `\n## ${title}\n\n| check | what | published | ours | seen | source | calculations |\n|---|---|---|---|---|---|---|\n${checks.map(row).join('\n')}\n`,
  );
  return `${HEAD}
How a figure was seen, ${all.length} in all:

| seen | meaning | rows |
|---|---|---|
${counts.join('\n')}
${tables.join('')}`;
}

function row(check: MechanicsCheck): string {
  const { computed, ids } = traced(check);
  const links = ids.map((id) => `[${id}](handbook.md#${id})`).join(', ');
  const cells = [
    check.id,
    check.what,
    asPrinted(check.printed),
    ours(computed, check.printed),
    check.status,
    check.source,
  ];
  return `| ${cells.map(cell).join(' | ')} | ${links} |`;
}

function ours(computed: number, printed: string): string {
  const digits = printed
    .replace(/e.*$/, '')
    .replace(/^-?0*\.?0*/, '')
    .replace(/[-.]/g, '').length;
  return figure(computed, Math.min(Math.max(digits, 1) + MORE_DIGITS, 15));
}
