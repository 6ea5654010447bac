/** The vehicle: views to scale, mass table, rotor, and what is calculated from them. */
import type { Assessment } from '../../margins/index.ts';
import { type Body, isKnown, type Revision } from '../../notebook/index.ts';
import { formatUncertain } from '../../quantity/index.ts';
import type { Block } from '../tree.ts';
import type { ReportFrame } from './report-source.ts';
import { vehicleDrawing } from './vehicle-drawing.ts';
import { fieldBareText, heading, sentenceCase } from './wording.ts';

const VIEW_WIDTH = 452;
const VIEW_TEXT = 8;

export function vehicleSection(
  name: string,
  revision: Revision,
  assessment: Assessment,
  frame: ReportFrame,
): Block[] {
  const parts = Object.entries(revision.parts).sort(([, a], [, b]) => a.order - b.order);
  if (parts.length === 0) return [];
  return [
    heading(1, 'Vehicle'),
    {
      type: 'illustration',
      drawing: vehicleDrawing(name, revision, assessment, {
        width: VIEW_WIDTH,
        textSize: VIEW_TEXT,
        largestHeight: 300,
      }),
      caption: frame.figure(
        'Side view and rear view to scale, from the mass table: centre of gravity with its 95 % region where it is large enough to see, ballast travel, and the largest lean that the ballast holds.',
      ),
    },
    {
      type: 'table',
      caption: frame.table(
        'Mass table: x forward of the rear contact point, y to the left, z above the ground (ISO 8855)',
      ),
      columns: [
        { title: 'No.', align: 'right', share: 0.45 },
        { title: 'Part', align: 'left', share: 2 },
        { title: 'Mass / g', align: 'decimal', share: 1.1 },
        { title: 'x / mm', align: 'decimal', share: 1 },
        { title: 'y / mm', align: 'decimal', share: 0.95 },
        { title: 'z / mm', align: 'decimal', share: 1 },
        { title: 'Body', align: 'left', share: 1.45 },
        { title: 'Mass is', align: 'left', share: 1.05 },
      ],
      rows: parts.map(([, part], index) => [
        String(index + 1),
        part.role === 'structure' ? part.name : `${part.name} (${part.role})`,
        fieldBareText(part.mass, 'g'),
        fieldBareText(part.x, 'mm'),
        part.role === 'ballast' ? '0' : fieldBareText(part.y, 'mm') || '0',
        part.role === 'ballast' ? heightOfBallast(assessment) : fieldBareText(part.z, 'mm'),
        bodyText(part.body),
        isKnown(part.mass) ? part.mass.basis : '',
      ]),
    },
    ...rotorTable(revision, frame),
    ...figureTable(assessment, frame),
  ];
}

function heightOfBallast({ figures }: Assessment): string {
  const result = figures.get('ballast_height_centred')?.result;
  return result?.ok ? formatUncertain(result.value, 'mm').replace(/\s*mm$/, '') : '';
}

function bodyText(body: Body): string {
  return 'axis' in body ? `${body.shape}, axis ${body.axis}` : body.shape;
}

function rotorTable({ rotor }: Revision, frame: ReportFrame): Block[] {
  const sections = Object.values(rotor?.sections ?? {}).sort((a, b) => a.order - b.order);
  if (!rotor || sections.length === 0) return [];
  const material = rotor.material === '' ? '' : ` of ${rotor.material}`;
  return [
    {
      type: 'table',
      caption: frame.table(`Sections of the rotor${material}`),
      columns: [
        { title: 'Section', align: 'left', share: 3 },
        { title: 'Outer diameter / mm', align: 'decimal', share: 1.5 },
        { title: 'Bore / mm', align: 'decimal', share: 1.5 },
        { title: 'Thickness / mm', align: 'decimal', share: 1.5 },
      ],
      rows: sections.map((section) => [
        section.name,
        fieldBareText(section.outerDiameter, 'mm'),
        fieldBareText(section.boreDiameter, 'mm') || '0',
        fieldBareText(section.thickness, 'mm'),
      ]),
    },
  ];
}

const OF_THE_VEHICLE = [
  'total_mass',
  'cg_height',
  'cg_forward',
  'cg_left',
  'first_moment',
  'roll_inertia',
  'toppling_time',
  'spin_momentum',
  'rotor_energy',
  'righting_moment',
  'largest_lean',
  'largest_lean_by_hand',
];

function figureTable(assessment: Assessment, frame: ReportFrame): Block[] {
  const rows = OF_THE_VEHICLE.flatMap((name) => {
    const figure = assessment.figures.get(name);
    return figure?.result.ok
      ? [[sentenceCase(figure.title), formatUncertain(figure.result.value, figure.display)]]
      : [];
  });
  if (rows.length === 0) return [];
  return [
    {
      type: 'table',
      caption: frame.table('What follows from it'),
      columns: [
        { title: 'Figure', align: 'left', share: 3 },
        { title: 'Value', align: 'decimal', share: 2 },
      ],
      rows,
    },
  ];
}
