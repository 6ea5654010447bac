import { describe, expect, it } from 'vitest';
import { evaluateCalcBlock, exact, independent, parseUnit } from '../../../../quantity/index.ts';
import { findCalcBlocks } from './calc-blocks.ts';
import { type EvaluateBlock, entryCalculation, type Figures } from './evaluate-entry.ts';
import { spoken } from './shown-result.ts';

const directly: EvaluateBlock = async (code, scope) => ({ ok: true, value: evaluateCalcBlock(code, scope) });

function dimensionOf(unit: string) {
  const parsed = parseUnit(unit);
  if (!parsed.ok) throw new Error(`no unit ${unit}`);
  return parsed.value.dimension;
}

const figures: Figures = {
  scope: new Map([
    [
      'ballast_mass',
      { value: independent('revision/parts/b/mass', 0.5, 0.002), dimension: dimensionOf('kg') },
    ],
    ['arm_length', { value: exact(0.12), dimension: dimensionOf('m') }],
  ]),
  whyUnknown: (name) =>
    name === 'total_mass'
      ? {
          code: 'calculation.missing',
          place: 'Total mass',
          figures: { name: 'Mass of the wheel', page: 'Masses' },
        }
      : undefined,
};

const shown = async (...codes: string[]): Promise<string[][]> => {
  const blocks = await entryCalculation(directly)(codes, figures);
  return blocks.map(({ lines }) => lines.map((line) => spoken(line).replace(/\u202f/g, ' '))); // narrow spaces
};

describe('the calculations of an entry', () => {
  it('use the figures of the revision by name and show uncertainty and unit', async () => {
    const [lines] = await shown('reach = ballast_mass * arm_length in kg·m');
    // u = 0.12 m × 0.002 kg = 0.00024 kg·m; by hand
    expect(lines).toEqual(['reach = 0.060 00(24) kg·m']);
  });

  it('a line without a name is shown under its formula, without its comment', async () => {
    expect(await shown('2 * arm_length in mm # both sides')).toEqual([['2 * arm_length in mm = 240 mm']]);
  });

  it('a block knows the names of the blocks above it, not of those below', async () => {
    const [first, second] = await shown('b = a + 1', 'a = 2', 'b = a + 1').then((all) => [all[0], all[2]]);
    expect(first?.[0]).toMatch(/^line 1: .*a/);
    expect(second).toEqual(['b = 3']);
  });

  it('an uncertainty that two blocks share stays shared: twice the same mass less itself is exact', async () => {
    const [, difference] = await shown('m = ballast_mass', 'd = m - ballast_mass');
    expect(difference).toEqual(['d = 0 kg']);
  });

  it('a name given by a block above cannot be given again, and the message says by whom it was given', async () => {
    const [, again] = await shown('a = 1', 'a = 2');
    expect(again?.[0]).toMatch(/line 1: .*“a”.*above/);
  });

  it('a problem names its line, reason and characters, and the other lines go on', async () => {
    const text = 'Note\n\n```calc\nok = 1 + 1\nbad = 2 * nowhere\nalso = ok * 3\n```\n';
    const [block] = findCalcBlocks(text);
    const [evaluated] = await entryCalculation(directly)([block?.code ?? ''], figures);
    const problem = evaluated?.lines[1];
    if (problem?.kind !== 'problem' || !problem.range) throw new Error('no problem with a range');
    expect(problem.line).toBe(2);
    expect(problem.reason).toContain('nowhere');
    expect(block?.code.slice(...problem.range)).toBe('nowhere');
    expect(evaluated?.lines[2]).toEqual({ kind: 'value', name: 'also', value: '6' });
  });

  it('a figure of the revision that waits for a measurement says for which one', async () => {
    const [lines] = await shown('half = total_mass / 2');
    expect(lines?.[0]).toMatch(/^line 1: .*Mass of the wheel/);
  });

  it('a block that was stopped says so under the block, and the next ones are calculated', async () => {
    const stopping: EvaluateBlock = async (code, scope) =>
      code === 'endless'
        ? { ok: false, problem: { code: 'calc.stopped', place: '', figures: { limit: 0.5 } } }
        : directly(code, scope);
    const blocks = await entryCalculation(stopping)(['endless', 'a = 1'], figures);
    expect(blocks[0]?.lines.map(spoken)).toEqual([expect.stringMatching(/0\.5 s.*stopped/)]);
    expect(blocks[1]?.lines.map(spoken)).toEqual(['a = 1']);
  });
});

describe('what was calculated once', () => {
  it('is not calculated again for the same text over the same figures', async () => {
    const asked: string[] = [];
    const calculate = entryCalculation((code, scope) => {
      asked.push(code);
      return directly(code, scope);
    });
    await calculate(['a = 1', 'b = a'], figures);
    await calculate(['a = 1', 'b = a'], figures);
    expect(asked).toEqual(['a = 1', 'b = a']);
    await calculate(['a = 2', 'b = a'], figures);
    expect(asked).toEqual(['a = 1', 'b = a', 'a = 2', 'b = a']);
  });

  it('is calculated again when the figures are other ones', async () => {
    const asked: string[] = [];
    const calculate = entryCalculation((code, scope) => {
      asked.push(code);
      return directly(code, scope);
    });
    await calculate(['arm_length'], figures);
    await calculate(['arm_length'], { ...figures, scope: new Map(figures.scope) });
    expect(asked).toHaveLength(2);
  });

  it('one that was stopped is not tried at each key, but again after a while', async () => {
    let now = 0;
    let asked = 0;
    const stopping: EvaluateBlock = async () => {
      asked++;
      return { ok: false, problem: { code: 'calc.stopped', place: '', figures: { limit: 0.5 } } };
    };
    const calculate = entryCalculation(stopping, () => now);
    await calculate(['a = 1'], figures);
    await calculate(['a = 1'], figures);
    expect(asked).toBe(1);
    now += 60_000;
    await calculate(['a = 1'], figures);
    expect(asked).toBe(2);
  });
});
