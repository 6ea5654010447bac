/** The figures of a revision as a C header, so that the firmware balances the vehicle that was weighed. */
import type { DesignFigure, DesignFigures } from './design-figures.ts';
import { commentText, cText, floatText, origin, uncertaintyRemark } from './source-text.ts';

const PREFIX = 'DESIGN_';

export function cHeader(design: DesignFigures): string {
  const lines = [
    '/*',
    ...origin(design).map((line) => ` * ${line}`.trimEnd()),
    ' */',
    `#ifdef ${PREFIX}FINGERPRINT`,
    '#error "the figures of a design are included already"',
    '#endif',
    '',
    `#define ${PREFIX}PROTOTYPE ${cText(design.prototype)}`,
    `#define ${PREFIX}REVISION ${cText(design.letter)}`,
    `#define ${PREFIX}FINGERPRINT ${cText(design.fingerprint)}`,
    '',
    ...design.figures.map(definition),
    '',
    `/* The mass table: forward of the rear contact point, to the left, above the ground (ISO 8855). */`,
    `#define ${PREFIX}PARTS ${design.parts.length}`,
    ...design.parts.flatMap(({ number, name, role, figures }) => [
      '',
      `#define ${PREFIX}PART_${number}_NAME ${cText(name)} /* ${role} */`,
      ...figures.map(definition),
    ]),
  ];
  return `${lines.join('\n')}\n`;
}

/** In brackets, so that a sign before the name cannot join the sign of the number. */
function definition({ identifier, value, uncertainty, how, title }: DesignFigure): string {
  const name = `${PREFIX}${identifier}`;
  if (value === undefined) return `/* ${name} is not defined: ${commentText(how)} */`;
  const remark = commentText(`${title}: ${uncertaintyRemark(uncertainty)}${how}`);
  return `#define ${name} (${floatText(value)}) /* ${remark} */`;
}
