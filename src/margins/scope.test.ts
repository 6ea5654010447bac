import { describe, expect, it } from 'vitest';
import { prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import { evaluateCalcBlock, evaluateExpression, parseExpression } from '../quantity/index.ts';
import { assess } from './assess.ts';
import { figureNames, scopeOf, whyUnknown } from './scope.ts';

const assessed = assess(prototype, revision);

describe('the scope', () => {
  it('has every known figure and none of a single part', () => {
    const scope = scopeOf(assessed);
    expect(scope.has('largest_lean')).toBe(true);
    expect(scope.has('g_n')).toBe(true);
    expect(
      [...scope.keys()].filter((name) => name.startsWith('part_') || name.startsWith('section_')),
    ).toEqual([]);
    expect(scopeOf(assessed)).toBe(scope);
  });

  it('serves expressions, with dimension and uncertainty', () => {
    const parsed = parseExpression('g_n * first_moment / toppling_stiffness');
    const result = parsed.ok ? evaluateExpression(parsed.value, scopeOf(assessed)) : parsed;
    expect(result.ok && result.value.value.value).toBeCloseTo(1, 12);
    expect(result.ok && result.value.dimension).toMatchObject({ kg: 0, m: 0, s: 0 });
    const [line] = evaluateCalcBlock('largest_lean in °', scopeOf(assessed));
    expect(line?.outcome.ok).toBe(true);
  });

  it('leaves out what is unknown, and says why', () => {
    const lacking = assess(prototype, withValue(revision, 'parts/tray/mass', undefined));
    expect(scopeOf(lacking).has('total_mass')).toBe(false);
    expect(whyUnknown(lacking, 'total_mass')).toMatchObject({ code: 'calculation.missing' });
    expect(whyUnknown(lacking, 'rotor_speed')).toBeUndefined();
    expect(whyUnknown(lacking, 'slide_travel')).toMatchObject({ code: 'figure.not-applicable' });
    expect(whyUnknown(lacking, 'total_mas')).toMatchObject({ code: 'figure.unknown' });
    expect(whyUnknown(lacking, 'part_tray_mass')).toMatchObject({ code: 'figure.unknown' });
  });
});

describe('the list of names', () => {
  it('says what each is and which calculation gives it', () => {
    const entry = (name: string) => figureNames.find((candidate) => candidate.name === name);
    expect(entry('required_lean')).toMatchObject({
      kind: 'fact',
      unit: 'rad',
      display: '°',
      calculations: [],
    });
    expect(entry('g_n')).toMatchObject({ kind: 'constant' });
    expect(entry('slow_toppling_time')).toMatchObject({
      kind: 'calculated',
      calculations: ['gyro.slow-toppling', 'gyro.centred-toppling'],
    });
    expect(entry('stop_to_stop_time')?.calculations).toEqual(['actuator.stop-to-stop']);
  });
});
