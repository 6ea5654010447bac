/**
 * The handbook: every registered calculation with its equation, symbols, validity, source and one worked case, printed
 * from the registration itself, and with the published checks that hold it.
 */
import { registry } from '../../src/margins/index.ts';
import type { Calculation, SymbolSpec } from '../../src/mechanics/index.ts';
import { checkTables, isPublished, traced } from '../published/checks/index.ts';
import { cell, figure } from './markdown.ts';

const HEAD = `# Handbook of the calculations

Written by \`tests/generated/write.ts\` from the program's own registry; do not edit.

Every calculation that the program knows, with its equation, what the letters mean, where it holds, where it comes from
and one worked case. All quantities are SI; an angle is in radians. The identifier is the one of the command line
(\`counterpoise calc run IDENTIFIER --input FILE\`) and of the reports. A symbol with an index i or j stands for a list,
one figure for each part. What is held against publications is listed in [checks.md](checks.md).
`;

const FAMILIES: Readonly<Record<string, string>> = {
  mass: 'Masses',
  inertia: 'Inertia',
  body: 'Bodies',
  weighing: 'Weighing and hanging',
  swing: 'Swinging',
  ballast: 'Ballast',
  turn: 'Turns',
  rotor: 'Rotor',
  shaft: 'Shafts',
  gyro: 'Gyroscope and gimbal',
  wheel: 'Reaction wheel',
  actuator: 'Actuator',
  gear: 'Gears',
  drive: 'Screws and belts',
  motor: 'Motor',
  pack: 'Pack',
  power: 'Supply',
  wire: 'Wires',
  fuse: 'Fuses',
  stress: 'Stress',
  bar: 'Bars',
  arm: 'The arm as a bar',
  joint: 'Joints',
  load: 'Load cases',
  loop: 'Loop',
  margin: 'Margins',
};

export function handbookPage(): string {
  const families = byFamily();
  const checks = checksByCalculation();
  const contents = [...families].map(
    ([title, calculations]) =>
      `- ${title}: ${calculations.map(({ id, title: name }) => `[${name}](#${id})`).join(' · ')}`,
  );
  const chapters = [...families].map(
    ([title, calculations]) =>
      `\n## ${title}\n${calculations.map((each) => entry(each, checks.get(each.id))).join('')}`,
  );
  return `${HEAD}\n${contents.join('\n')}\n${chapters.join('')}`;
}

function byFamily(): ReadonlyMap<string, readonly Calculation[]> {
  const families = new Map<string, Calculation[]>();
  for (const calculation of registry.values()) {
    const title = family(calculation.id);
    families.set(title, [...(families.get(title) ?? []), calculation]);
  }
  return families;
}

function family(id: string): string {
  const title = FAMILIES[id.split('.')[0] ?? ''];
  if (title === undefined) throw new Error(`the handbook has no chapter for ${id}`);
  return title;
}

interface CheckCount {
  readonly all: number;
  /** Of these, the ones whose figure stands in a publication. */
  readonly published: number;
}

/** How many checks go through each calculation. */
function checksByCalculation(): ReadonlyMap<string, CheckCount> {
  const counts = new Map<string, CheckCount>();
  for (const check of checkTables.flatMap(({ checks }) => checks)) {
    for (const id of traced(check).ids) {
      const { all, published } = counts.get(id) ?? { all: 0, published: 0 };
      counts.set(id, { all: all + 1, published: published + (isPublished(check) ? 1 : 0) });
    }
  }
  return counts;
}

function checksLine(count: CheckCount | undefined): string {
  if (count === undefined) return '';
  return `\nChecks: ${count.all}, of them ${count.published} against publications ([checks.md](checks.md)).\n`;
}

function entry(calculation: Calculation, count: CheckCount | undefined): string {
  const results = calculation.compute(calculation.example);
  const rows = [
    ...Object.entries(calculation.inputs).map(([name, spec]) =>
      row(spec, calculation.example[name] ?? spec.default ?? Number.NaN),
    ),
    ...Object.entries(calculation.outputs).map(([name, spec]) =>
      row(spec, results[name] ?? Number.NaN, '**'),
    ),
  ];
  const related = calculation.related.map((id) => `[${id}](#${id})`).join(', ');
  return `
<a id="${calculation.id}"></a>

### ${calculation.title}

\`${calculation.id}\`

$$
${calculation.equation}
$$

| | quantity | unit | example |
|---|---|---|---|
${rows.join('\n')}

Holds: ${calculation.validity}

Source: ${sentence(calculation.source)}
${checksLine(count)}${related === '' ? '' : `\nSee also: ${related}.\n`}`;
}

function row(spec: SymbolSpec, value: number | readonly number[], weight = ''): string {
  const printed = typeof value === 'number' ? figure(value) : value.map((each) => figure(each)).join(', ');
  const unit = spec.slideUnit === undefined ? spec.unit : `${spec.unit} (slide: ${spec.slideUnit})`;
  const left = spec.default === undefined ? '' : ` (${figure(spec.default)} if left out)`;
  const quantity = `${spec.meaning}${left}`;
  return `| $${cell(spec.symbol)}$ | ${weight}${cell(quantity)}${weight} | ${unit === '1' ? '' : unit} | ${weight}${printed}${weight} |`;
}

function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
