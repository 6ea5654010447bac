/** What the scale says about the mass table: a total that does not agree, parts that are only assumed. */
import { isKnown } from '../notebook/index.ts';
import { combine, formatValue, standardUncertainty, type Uncertain } from '../quantity/index.ts';
import type { Notice } from './figure.ts';
import {
  inWords,
  knownFigure,
  knownValues,
  listed,
  type NoticeRule,
  type NoticeSubject,
  outputOf,
} from './notice-subject.ts';

/** Two results agree while their difference is within twice its standard uncertainty (JCGM 100:2008, 6.3.3). */
const AGREEMENT_FACTOR = 2;
/** Digits beyond which two decimal numbers are the same number. */
const ROUNDING = 1e-9;

/** How far one mass is from another, where that is more than their uncertainties allow. */
export function disagreement(
  a: Uncertain,
  b: Uncertain,
): { readonly difference: number; readonly u: number } | undefined {
  const difference = combine(a.value - b.value, [
    [1, a],
    [-1, b],
  ]);
  const u = standardUncertainty(difference);
  const allowed = Math.max(AGREEMENT_FACTOR * u, ROUNDING * Math.abs(a.value));
  return Math.abs(difference.value) > allowed ? { difference: difference.value, u } : undefined;
}

export const weighedTotal: NoticeRule = (subject) => {
  const weighed = knownFigure(subject, 'weighed_mass');
  if (!weighed) return [];
  const sum = knownFigure(subject, 'total_mass');
  if (!sum) return weighedButIncomplete(subject, weighed);
  const found = disagreement(weighed, sum);
  if (!found) return [];
  const amount = grams(Math.abs(found.difference), found.u);
  const allowed = grams(AGREEMENT_FACTOR * found.u);
  const facts =
    `The vehicle weighs ${inWords(subject, 'weighed_mass')}, its parts add up to ${inWords(subject, 'total_mass')}: ` +
    `${amount} ${found.difference > 0 ? 'more' : 'less'}, where the uncertainties allow ${allowed} (k = 2).`;
  const cause =
    found.difference > 0
      ? 'A part is missing from the table or weighed too light.'
      : 'A part stands twice in the table, is not on the vehicle, or was weighed too heavy.';
  const text = [facts, cause, suspects(subject, found), consequence(subject, found.difference)];
  return [{ id: 'weighed-total', group: 'mass', text: text.filter(Boolean).join(' ') }];
};

/** With some parts not weighed, the total says what these have to weigh together. */
function weighedButIncomplete({ parts, figures }: NoticeSubject, weighed: Uncertain): Notice[] {
  const unweighed = parts.filter(({ row }) => !isKnown(row.mass)).map(({ row }) => row.name);
  const total = figures.get('total_mass');
  if (unweighed.length === 0 || !total || total.result.ok) return [];
  const known = parts.reduce((sum, { row }) => sum + (isKnown(row.mass) ? row.mass.si : 0), 0);
  const left = weighed.value - known;
  const names = listed(unweighed);
  const text =
    left > 0
      ? `On the whole vehicle’s weight, ${names} should come to ${grams(left)}${unweighed.length > 1 ? ' together' : ''}.`
      : `The parts with a mass already weigh ${grams(-left)} more than the whole vehicle, without ${names}.`;
  return [{ id: 'weighed-total', group: 'mass', text }];
}

/** Parts whose own mass is the difference. */
function suspects(
  { parts }: NoticeSubject,
  { difference, u }: { readonly difference: number; readonly u: number },
): string {
  if (difference > 0) return '';
  const names = parts
    .filter(({ row }) => isKnown(row.mass) && Math.abs(row.mass.si + difference) <= AGREEMENT_FACTOR * u)
    .map(({ row }) => row.name);
  if (names.length === 0) return '';
  return `${listed(names)} ${names.length > 1 ? 'each weigh' : 'weighs'} just that much.`;
}

/** The height is not known from a weighing; but what it would mean at some heights is. */
function consequence(subject: NoticeSubject, difference: number): string {
  const values = knownValues(subject, [
    'ballast_mass',
    'ballast_offset_max',
    'ballast_height_at_limit',
    'rest_first_moment',
    'largest_lean',
    'cg_height',
  ]);
  if (!values) return '';
  const leanWith = (height: number): number | undefined =>
    outputOf('ballast.largest-lean', 'lean', {
      ballastMass: values.ballast_mass,
      ballastOffset: values.ballast_offset_max,
      ballastHeight: values.ballast_height_at_limit,
      firstMomentWithout: values.rest_first_moment + difference * height,
    });
  const atCentre = leanWith(values.cg_height);
  if (atCentre === undefined) return '';
  const parts = [
    `At the height of the centre of gravity, ${inWords(subject, 'cg_height')}, it would make the largest lean`,
    `${degrees(atCentre)} instead of ${degrees(values.largest_lean)}`,
  ];
  const required = knownFigure(subject, 'required_lean')?.value;
  const limit = required === undefined ? undefined : heightForLean(leanWith, required, values.cg_height);
  const needed = required === undefined ? '' : degrees(required);
  const turn =
    limit === undefined
      ? '.'
      : `; ${difference > 0 ? 'above' : 'below'} ${formatValue(limit, 'mm')} the ${needed} to recover from would be lost.`;
  return parts.join(' ') + turn;
}

/** How far up an unlisted part is looked for, in heights of the centre of gravity. */
const HIGHEST = 10;

/** Height of the unexplained mass at which just the required lean is held; undefined where no likely height does. */
function heightForLean(
  leanWith: (height: number) => number | undefined,
  required: number,
  centre: number,
): number | undefined {
  const held = (height: number): boolean | undefined => {
    const lean = leanWith(height);
    return lean === undefined ? undefined : lean >= required;
  };
  let [low, high] = [0, HIGHEST * Math.abs(centre)];
  const [atGround, atTop] = [held(low), held(high)];
  if (atGround === undefined || atTop === undefined || atGround === atTop) return undefined;
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (held(middle) === atGround) low = middle;
    else high = middle;
  }
  return high;
}

/** Blank positions are taken on the centre line: nobody should have to guess that they were. */
export const assumedOnCentreLine: NoticeRule = ({ parts, revision }) => {
  const ballast = parts.find(({ row }) => row.role === 'ballast');
  const names = parts
    .filter((part) => part !== ballast && part.row.y === undefined)
    .map(({ row }) => row.name);
  if (names.length === 0 || Object.keys(revision.parts).length === 0) return [];
  const verb = names.length > 1 ? 'are' : 'is';
  const text = `${listed(names)} ${verb} taken to sit on the centre line; no distance to the left is entered.`;
  return [{ id: 'assumed-on-centre-line', group: 'mass', text }];
};

/** The sums know one rotor and one ballast. */
export const oneOfEachRole: NoticeRule = ({ parts }) =>
  (['rotor', 'ballast'] as const).flatMap((role) => {
    const names = parts.filter(({ row }) => row.role === role).map(({ row }) => row.name);
    if (names.length < 2) return [];
    const text = `${listed(names)} are all marked as the ${role}; only ${names[0]} is counted as it, the others as structure.`;
    return [{ id: `one-${role}`, group: role, text }];
  });

function grams(mass: number, u?: number): string {
  const unit = Math.abs(mass) < 1 ? 'g' : 'kg';
  return formatValue(mass, unit, u);
}

function degrees(lean: number): string {
  return formatValue(lean, '°');
}
