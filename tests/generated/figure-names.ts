/** The names that expressions may use, as the page of the documentation that template writers keep open. */
import { type FigureName, figureNames } from '../../src/margins/index.ts';

const HEAD = `# Names of figures

Written by \`tests/generated/write.ts\` from the program's own list; do not edit.

These names may be used in calculation blocks of the log, in templates of checklists and test cards
([templates.md](templates.md)) and on the command line. A figure is known in a revision when everything that it is
made from is entered; figures of equipment that a revision does not have do not exist there.
`;

const KINDS: readonly (readonly [FigureName['kind'], string])[] = [
  ['fact', 'Entered'],
  ['constant', 'Constant'],
  ['calculated', 'Calculated'],
];

export function figureNamesPage(): string {
  const tables = KINDS.map(([kind, title]) => {
    const rows = figureNames
      .filter((figure) => figure.kind === kind)
      .map(({ name, title: meaning, display }) => `| \`${name}\` | ${meaning} | ${display} |`);
    return `\n## ${title}\n\n| name | what it is | read in |\n|---|---|---|\n${rows.join('\n')}\n`;
  });
  return HEAD + tables.join('');
}
