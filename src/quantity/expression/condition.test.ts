import { describe, expect, test } from 'vitest';
import { exact } from '../uncertain.ts';
import { dimension } from '../unit.ts';
import { evaluateCondition, type Scope } from './index.ts';

const scope: Scope = new Map([
  ['total_mass', { value: exact(12), dimension: dimension('kg') }],
  ['has_rotor', { value: exact(1), dimension: dimension('1') }],
  ['has_radio', { value: exact(0), dimension: dimension('1') }],
  ['cells_in_series', { value: exact(3), dimension: dimension('1') }],
]);

function holds(text: string): boolean | string {
  const result = evaluateCondition(text, scope);
  return result.ok ? result.value : result.problem.code;
}

describe('a condition', () => {
  test.each([
    ['total_mass > 10 kg', true],
    ['total_mass > 12000 g', false],
    ['total_mass >= 12 kg', true],
    ['total_mass ≥ 12 kg', true],
    ['total_mass < 12 kg', false],
    ['total_mass ≤ 12 kg', true],
    ['cells_in_series == 3', true],
    ['cells_in_series != 3', false],
    ['cells_in_series ≠ 2', true],
    ['1 kg < total_mass <= 12 kg', true],
    ['1 kg < total_mass < 12 kg', false],
    ['total_mass > 1 kg and has_rotor', true],
    ['has_radio or has_rotor', true],
    ['not has_radio', true],
    ['not (total_mass > 1 kg)', false],
    ['has_radio or has_rotor and has_radio', false],
    ['(has_radio or has_rotor) and has_rotor == 1', true],
    ['true', true],
    ['false or not true', false],
    ['2*total_mass + 1 kg > 24 kg', true],
  ])('%s: %s', (text, expected) => {
    expect(holds(text)).toBe(expected);
  });

  test('takes nought for nought in every unit', () => {
    expect(holds('total_mass > 0')).toBe(true);
    expect(holds('0 < total_mass')).toBe(true);
    expect(holds('total_mass > 1')).toBe('expression.dimensions-differ');
  });

  test('that hangs on a missing figure names it', () => {
    const result = evaluateCondition('rotor_speed > 100 rad/s and has_rotor', scope, 'item 3');
    expect(result.ok ? undefined : result.problem).toMatchObject({
      code: 'expression.unknown-symbol',
      place: 'item 3',
      figures: { name: 'rotor_speed' },
      range: [0, 11],
    });
    expect(holds('not rotor_fitted')).toBe('expression.unknown-symbol');
  });

  test('does not ask for a figure that cannot change the answer, on whichever side it stands', () => {
    expect(holds('has_radio and rotor_speed > 100 rad/s')).toBe(false);
    expect(holds('rotor_speed > 100 rad/s and has_radio')).toBe(false);
    expect(holds('has_rotor or rotor_speed > 100 rad/s')).toBe(true);
    expect(holds('rotor_speed > 100 rad/s or has_rotor')).toBe(true);
  });

  test.each([
    ['total_mass', 'expression.no-condition'],
    ['cells_in_series', 'expression.no-condition'],
    ['total_mass > 1 kg in g', 'expression.in-condition'],
    ['not total_mass > 0', 'expression.not-needs-brackets'],
    ['(total_mass > 0) > 0', 'expression.condition-here'],
    ['total_mass = 12 kg', 'expression.no-assignment'],
    ['total_mass >', 'expression.unfinished'],
    ['1/0 > 1', 'expression.division-by-zero'],
  ])('%s is refused as %s', (text, code) => {
    expect(holds(text)).toBe(code);
  });
});
