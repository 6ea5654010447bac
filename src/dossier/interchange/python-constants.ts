/** The figures of a revision as a module of Python, for analysis beside the notebook and for firmware written in it. */
import type { DesignFigure, DesignFigures } from './design-figures.ts';
import { commentText, floatText, origin, pythonText, uncertaintyRemark } from './source-text.ts';

export function pythonConstants(design: DesignFigures): string {
  const lines = [
    ...origin(design).map((line) => `# ${line}`.trimEnd()),
    '',
    `PROTOTYPE = ${pythonText(design.prototype)}`,
    `REVISION = ${pythonText(design.letter)}`,
    `FINGERPRINT = ${pythonText(design.fingerprint)}`,
    '',
    ...design.figures.map(assignment),
    '',
    '# The mass table: forward of the rear contact point, to the left, above the ground (ISO 8855).',
    `PARTS = ${design.parts.length}`,
    ...design.parts.flatMap(({ number, name, role, figures }) => [
      '',
      `PART_${number}_NAME = ${pythonText(name)}  # ${role}`,
      ...figures.map(assignment),
    ]),
  ];
  return `${lines.join('\n')}\n`;
}

function assignment({ identifier, value, uncertainty, how, title }: DesignFigure): string {
  const remark = commentText(`${title}: ${uncertaintyRemark(uncertainty)}${how}`);
  if (value === undefined) return `# ${identifier} is not defined: ${commentText(how)}`;
  return `${identifier} = ${floatText(value)}  # ${remark}`;
}
