/** The text of `--help`, made from the commands themselves. */
import type { Command } from './run.ts';

export function help(commands: Readonly<Record<string, Command>>): string {
  const lines = Object.entries(commands).flatMap(([name, command]) => [
    ...command.usage.map((usage) => `  counterpoise ${name} ${usage}`),
    `      ${command.summary}`,
    '',
  ]);
  return [
    'Counterpoise on the command line. NOTEBOOK is the folder of a notebook.',
    '',
    ...lines,
    'Exit codes: 0 good, 1 the data say no, 2 usage, 3 damaged input.',
    '',
  ].join('\n');
}
