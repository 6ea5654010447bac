/** Where the sum that people do by hand parts from the exact one, and why. */
import { formatValue } from '../quantity/index.ts';
import { inWords, knownValues, type NoticeRule } from './notice-subject.ts';

/** Below this the two forms serve equally. */
const WORTH_SAYING = 0.1;

export const handAndExact: NoticeRule = (subject) => {
  const values = knownValues(subject, [
    'largest_lean',
    'largest_lean_by_hand',
    'first_moment',
    'ballast_mass',
    'ballast_height_centred',
    'ballast_height_at_limit',
  ]);
  if (!values || Math.abs(values.largest_lean_by_hand / values.largest_lean - 1) <= WORTH_SAYING) return [];
  const moved = values.ballast_mass * (values.ballast_height_at_limit - values.ballast_height_centred);
  const byHeight = Math.abs(Math.log(1 + moved / values.first_moment));
  const byAngle = Math.abs(
    Math.log(Math.sin(values.largest_lean_by_hand) / Math.tan(values.largest_lean_by_hand)),
  );
  const why =
    byHeight > byAngle
      ? `By hand the first moment is taken with the ballast centred, ${inWords(subject, 'ballast_height_centred')} up; at its ` +
        `limit it is ${inWords(subject, 'ballast_height_at_limit')} up, which changes the first moment by ` +
        `${formatValue(moved / values.first_moment, '%')}.`
      : 'By hand the ballast’s moment is taken as if it stayed level; it leans with the vehicle, so that the tangent of ' +
        'the lean counts, not the sine.';
  const text =
    `Worked by hand the largest lean is ${inWords(subject, 'largest_lean_by_hand')}, exactly ` +
    `${inWords(subject, 'largest_lean')}. ${why} The margins use the exact figure.`;
  return [{ id: 'hand-and-exact', group: 'ballast', text }];
};
