/** Every input of a revision and its requirements as it was typed, with its uncertainty and how it was got. */
import type { Assessment, Figure, FigureGroup } from '../../margins/index.ts';
import type { Block } from '../tree.ts';
import { isRow } from './calculation-section.ts';
import type { ReportFrame } from './report-source.ts';
import { basisText, fieldText, heading, sentenceCase, statedUncertaintyText } from './wording.ts';

const GROUPS: Readonly<Record<FigureGroup, string>> = {
  requirements: 'Requirements',
  mass: 'Masses',
  rotor: 'Rotor',
  gimbal: 'Gimbal',
  ballast: 'Ballast',
  actuator: 'Actuator of the ballast',
  loop: 'Balance loop',
  pack: 'Pack',
};

export function inputSection(assessment: Assessment, frame: ReportFrame): Block[] {
  const facts = [...assessment.figures.values()].filter(
    ({ name, trace }) =>
      trace.kind === 'fact' && trace.field !== undefined && !isRow(name) && !isOfPart(trace.path),
  );
  const tables = (Object.keys(GROUPS) as FigureGroup[]).flatMap((group) =>
    groupTable(
      GROUPS[group],
      facts.filter((figure) => figure.group === group),
      frame,
    ),
  );
  return tables.length === 0 ? [] : [heading(1, 'Inputs as entered'), ...tables];
}

/** Shown in the mass table. */
function isOfPart(path: string): boolean {
  return path.startsWith('parts/');
}

function groupTable(title: string, figures: readonly Figure[], frame: ReportFrame): Block[] {
  if (figures.length === 0) return [];
  // a requirement is set, not measured
  const required = figures.every(({ group }) => group === 'requirements');
  return [
    {
      type: 'table',
      caption: frame.table(title),
      columns: [
        { title: 'Quantity', align: 'left', share: 2.6 },
        { title: 'As typed', align: 'left', share: 1.7 },
        ...(required
          ? []
          : ([
              { title: 'Uncertainty', align: 'left', share: 1.5 },
              { title: 'How it was got', align: 'left', share: 2 },
            ] as const)),
      ],
      rows: figures.map(({ title: name, display, trace }) => {
        const field = trace.kind === 'fact' ? trace.field : undefined;
        const told = [sentenceCase(name), fieldText(field)];
        return required ? told : [...told, statedUncertaintyText(field, display), basisText(field)];
      }),
    },
  ];
}
