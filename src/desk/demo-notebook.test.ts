/**
 * The demo's verdicts tell the story that its prose tells, and what its prose calculates is what closed forms and the
 * mass table give.
 */
import { describe, expect, it } from 'vitest';
import { assessmentOf, figure, letters, revisionOf, si, state } from '../../tests/specimen/demo.ts';
import { explainMargin, scopeOf } from '../margins/index.ts';
import { isKnown, type Revision } from '../notebook/index.ts';
import { evaluateCalcBlock, phrase } from '../quantity/index.ts';

const degrees = (angle: number): number => (angle * 180) / Math.PI;

describe('the demo’s margins', () => {
  it('of lean go from failing, over doubt, to holding', () => {
    const verdicts = letters.map(
      (letter) => assessmentOf(letter).margins.find(({ id }) => id === 'lean')?.verdict,
    );
    expect(verdicts).toEqual(['fails', 'in doubt', 'holds']);
  });

  it('all hold on C, and none waits for a figure on any revision', () => {
    expect(assessmentOf('C').margins.filter(({ verdict }) => verdict !== 'holds')).toEqual([]);
    for (const letter of letters) {
      expect(
        assessmentOf(letter).margins.filter(({ verdict }) => verdict === 'unknown'),
        letter,
      ).toEqual([]);
    }
  });

  it('are in doubt on B because of the tray, as the entry says', () => {
    const explained = explainMargin(assessmentOf('B'), 'lean');
    if (!explained.ok) throw new Error('not explained');
    const share = (part: string): number =>
      explained.value.budget
        .filter(({ name }) => name.startsWith(part))
        .reduce((sum, { share }) => sum + share, 0);
    const others = ['frame', 'gimbal', 'rotor', 'pack', 'slide', 'ballast'].map((part) =>
      share(`part_${part}_`),
    );
    expect(share('part_tray_')).toBeGreaterThan(Math.max(...others, share('slide_travel')));
  });

  it.each(letters)('on %s are drawn from masses that the scale does not contradict', (letter) => {
    const revision = revisionOf(letter);
    const weighed = revision.weighedMass;
    if (!isKnown(weighed)) throw new Error('not weighed');
    const parts = Object.values(revision.parts)
      .map(({ mass }) => mass)
      .filter(isKnown);
    expect(parts.length).toBe(Object.keys(revision.parts).length);
    const sum = parts.reduce((total, mass) => total + mass.si, 0);
    const u = Math.hypot(weighed.u, ...parts.map((mass) => mass.u));
    expect(Math.abs(weighed.si - sum)).toBeLessThanOrEqual(2 * u);
    expect(assessmentOf(letter).notices.map(({ id }) => id)).not.toContain('weighed-total');
  });

  it('improve where something was measured: every figure of C lies where B’s uncertainty let it', () => {
    for (const [id, before] of Object.entries(revisionOf('A').parts)) {
      const after = revisionOf('C').parts[id];
      for (const field of ['mass', 'x', 'z'] as const) {
        const [a, c] = [before[field], after?.[field]];
        // The ballast was exchanged, and the gimbal got a plate instead of its spring.
        if (
          !isKnown(a) ||
          !isKnown(c) ||
          a.si === c.si ||
          id === 'ballast' ||
          (id === 'gimbal' && field === 'mass')
        )
          continue;
        expect(Math.abs(a.si - c.si), `${id} ${field}`).toBeLessThanOrEqual(2 * Math.hypot(a.u, c.u));
      }
    }
    const [b, c] = [revisionOf('B').gimbal, revisionOf('C').gimbal];
    for (const field of ['inertia', 'friction', 'travel'] as const) {
      const [estimate, found] = [b?.[field], c?.[field]];
      if (!isKnown(estimate) || !isKnown(found)) throw new Error('blank');
      expect(Math.abs(estimate.si - found.si), field).toBeLessThanOrEqual(
        2 * Math.hypot(estimate.u, found.u),
      );
    }
  });
});

describe('the demo’s entries', () => {
  const calculated = Object.values(state.entry).map((entry) => {
    const { letter } = state.revision[entry.revision] as Revision;
    const blocks = [...entry.text.matchAll(/^```calc\n([\s\S]*?)^```$/gm)].map(([, code = '']) => code);
    let scope = scopeOf(assessmentOf(letter));
    const lines = blocks.flatMap((code) => {
      const evaluated = evaluateCalcBlock(code, scope);
      scope = new Map([
        ...scope,
        ...evaluated.flatMap(({ name, outcome }) =>
          name && outcome.ok ? [[name, outcome.value] as const] : [],
        ),
      ]);
      return evaluated;
    });
    return { title: entry.title, letter, lines, text: entry.text };
  });
  const lineOf = (title: string, name: string): number => {
    const line = calculated.find((each) => each.title === title)?.lines.find((each) => each.name === name);
    if (!line?.outcome.ok) throw new Error(`${title} does not give ${name}`);
    return line.outcome.value.value.value;
  };

  it.each(calculated)('“$title” calculates without a problem', ({ lines, text }) => {
    expect(lines.length).toBeGreaterThan(0);
    for (const { text: line, outcome } of lines) {
      expect(outcome.ok ? '' : `${line}: ${phrase(outcome.problem).reason}`).toBe('');
    }
    expect(text.split('```').length % 2, 'every block ends').toBe(1);
  });

  it('say of A what its parts say: the lean, and the mass or travel that would do', () => {
    const revision = revisionOf('A');
    const ballast = revision.parts.ballast;
    const travel = si(revision.ballast?.travel);
    const height = si(revision.ballast?.kind === 'slide' ? revision.ballast.height : undefined);
    const moment = Object.entries(revision.parts).reduce(
      (sum, [id, { mass, z }]) => sum + si(mass) * (id === 'ballast' ? height : si(z)),
      0,
    );
    const lean = Math.atan((si(ballast?.mass) * travel) / moment);
    const title = 'First weighing, and what it says';
    expect(lineOf(title, 'lean')).toBeCloseTo(lean, 9);
    expect(lineOf(title, 'mass_needed')).toBeCloseTo((Math.tan(Math.PI / 36) * moment) / travel, 9);
    expect(lineOf(title, 'travel_needed')).toBeCloseTo(
      (Math.tan(Math.PI / 36) * moment) / si(ballast?.mass),
      9,
    );
    // “more than a degree and a half before the five that we want”, and “A can hold 3.4° only”
    expect(5 - degrees(lean)).toBeGreaterThan(1.5);
    expect(5 - degrees(lean)).toBeLessThan(2);
    expect(degrees(lean).toFixed(1)).toBe('3.4');
    expect(revisionOf('B').reason).toContain('3.4°');
  });

  it('say of the spring what the closed forms say', () => {
    const H = figure('A', 'spin_momentum').value;
    const K = figure('A', 'toppling_stiffness').value;
    const { gimbal } = revisionOf('A');
    const [c, k, inertia] = [si(gimbal?.friction), si(gimbal?.centring), si(gimbal?.inertia)];
    // H² s² − g M c s − g M k = 0, quasi-static; free: (H² − g M I_g)/(c g M)
    const root = (K * c + Math.sqrt((K * c) ** 2 + 4 * H ** 2 * K * k)) / (2 * H ** 2);
    const title = 'Why the spring has to go';
    expect(lineOf(title, 'with_spring') * root).toBeCloseTo(1, 1);
    expect(lineOf(title, 'free')).toBeCloseTo((H ** 2 - K * inertia) / (c * K), 6);
    expect(lineOf(title, 'gain')).toBeGreaterThan(10);
  });

  it('say of B that it holds on paper by less than the tray’s share, and give C the belt’s 15 mm', () => {
    const title = 'In doubt, because of the tray';
    expect(degrees(lineOf(title, 'spare'))).toBeGreaterThan(0);
    expect(lineOf(title, 'spare') / figure('B', 'required_lean').value).toBeLessThan(0.02);
    const travel = (letter: string): number => si(revisionOf(letter).ballast?.travel);
    expect(travel('C') - travel('B')).toBeCloseTo(0.015, 9);
    expect(revisionOf('C').reason).toContain(`${travel('C') * 1000} mm`);
  });

  it('say of C that the rotor buys a second and more from half of the lean', () => {
    const t = lineOf('Where we stand', 't');
    expect(t).toBeGreaterThan(figure('C', 'gimbal_stop_time').value);
    expect(t).toBeGreaterThan(1);
  });
});
