/**
 * Whether a typed unit may stand in a field, and which unit it then is. Dimensions have to agree; beyond that
 * an angle, which is the number 1 in every sum, may not come or go unnoticed where people type:
 *
 * - a field of plain numbers takes no ° or rad, and an angle takes no percentage;
 * - an angular speed in turns or radians takes no `1/s`, which could mean either. Two spellings are settled by
 *   custom: `1/min` of a rotating part is a turn a minute, and hertz in a field of rad/s is a frequency, ω = 2πf;
 * - per radian may be left out, as the SI has it: a friction typed in N·m·s stands for N·m·s/rad.
 *
 * In a field of acceleration the lone letter g is the standard acceleration of free fall; elsewhere it is a gram.
 */
import { describeDimension, isNumber, sameDimension, timesPower } from './dimension.ts';
import { exampleFor } from './example.ts';
import { bad, good, type Problem, type Result } from './problem.ts';
import { type Unit, unitOf } from './unit.ts';

/**
 * @param typed  the unit as read from what was typed
 * @param field  the unit of the field
 * @param text   what was typed, for the message
 * @returns      the unit to convert with
 */
export function unitForField(
  typed: Unit,
  field: Unit,
  text: string,
  place: string,
  range: NonNullable<Problem['range']>,
): Result<Unit> {
  const example = exampleFor(field);
  if (typed.text === 'g' && sameDimension(field.dimension, unitOf('m/s²').dimension))
    return good(unitOf('g_n'));
  if (!sameDimension(typed.dimension, field.dimension)) {
    const expected = describeUnit(field);
    return isWeightAsMass(typed, field)
      ? bad('quantity.weight-as-mass', place, { text, expected, example: asWeight(text) }, range)
      : bad(
          'quantity.wrong-dimension',
          place,
          { text, found: describeUnit(typed), expected, example },
          range,
        );
  }
  if (typed.angle === field.angle) return good(typed);
  if (field.angle < 0 && typed.angle === 0) return good(typed);
  if (field.angle === 1 && typed.angle === 0 && isAngularSpeed(field)) {
    if (/^(1?\/min|min(⁻¹|\^?-1))$/.test(typed.text)) return good(unitOf('rpm'));
    if (/^[GMkm]?Hz$/.test(typed.text) && field.text === 'rad/s') {
      return good({ ...unitOf('rev/s'), ...scaled(typed) });
    }
  }
  if (typed.angle === 0 && field.angle === 1 && !isNumber(field.dimension)) {
    return bad('quantity.turns-or-radians', place, { text, example }, range);
  }
  return bad(
    'quantity.wrong-dimension',
    place,
    { text, found: describeUnit(typed), expected: describeUnit(field), example },
    range,
  );
}

/** A turn for each cycle: k hertz is k · 2π rad/s. */
function scaled(hertz: Unit): Pick<Unit, 'exact' | 'factor'> {
  const turn = unitOf('rev');
  const ratio = {
    numerator: hertz.exact.ratio.numerator * turn.exact.ratio.numerator,
    denominator: hertz.exact.ratio.denominator * turn.exact.ratio.denominator,
  };
  return { exact: { ratio, pi: turn.exact.pi }, factor: hertz.factor * turn.factor };
}

function isAngularSpeed(unit: Unit): boolean {
  return sameDimension(unit.dimension, unitOf('rad/s').dimension);
}

/** kg·cm on a servo's label means kgf·cm. */
function isWeightAsMass(typed: Unit, field: Unit): boolean {
  return (
    typed.dimension.kg === 1 &&
    sameDimension(timesPower(typed.dimension, unitOf('m/s²').dimension, 1), field.dimension)
  );
}

/** `20 kg·cm` becomes `20 kgf·cm`. */
function asWeight(text: string): string {
  return text.replace(/(kg|lb|oz|g)s?(?!\p{L})/u, '$1f');
}

const WITH_ANGLE: readonly (readonly [unit: string, name: string])[] = [
  ['rad', 'an angle'],
  ['rad/s', 'an angular speed'],
  ['rad/s²', 'an angular acceleration'],
  ['N·m/rad', 'a stiffness in moment per angle'],
  ['N·m·s/rad', 'a friction in moment per angular speed'],
  ['rad/(s·V)', 'a motor speed constant'],
];

/** What a unit measures, in the trade's words, telling angles from numbers. */
export function describeUnit(unit: Unit): string {
  if (unit.angle === 0) {
    if (sameDimension(unit.dimension, unitOf('1/s').dimension)) return 'a frequency';
    return describeDimension(unit.dimension);
  }
  const entry = WITH_ANGLE.find(([text]) => {
    const other = unitOf(text);
    return other.angle === unit.angle && sameDimension(other.dimension, unit.dimension);
  });
  return entry?.[1] ?? `a quantity in ${unit.text}`;
}
