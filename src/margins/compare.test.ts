import { describe, expect, it } from 'vitest';
import { measured, part, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import type { Revision } from '../notebook/index.ts';
import { compareRevisions } from './compare.ts';

const inputs = (after: Revision) => compareRevisions(prototype, revision, after).inputs;

describe('two revisions', () => {
  it('that are equal show nothing', () => {
    const same = { ...revision, letter: 'B', reason: 'a copy', from: 'a', createdAt: '2025-04-01T09:00:00Z' };
    expect(compareRevisions(prototype, revision, same)).toEqual({ inputs: [], figures: [], margins: [] });
  });

  it('show a changed mass as it was typed, and each margin that it moves', () => {
    const heavier = withValue(revision, 'parts/ballast/mass', {
      ...measured(0.59, 0.0005),
      typed: '590.0(5) g',
    });
    const { inputs: changed, figures, margins } = compareRevisions(prototype, revision, heavier);
    expect(changed).toEqual([
      { path: 'parts/ballast/mass', label: 'mass of Ballast', before: '0.41', after: '590.0(5) g' },
    ]);
    expect(figures.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['total_mass', 'cg_height', 'roll_inertia', 'largest_lean', 'delay_margin']),
    );
    expect(figures.map(({ name }) => name)).not.toContain('rotor_peak_stress');
    const ids = margins.map(({ id }) => id);
    expect(ids).toContain('lean');
    expect(ids).not.toContain('run-time');
  });

  it('show a verdict that turned', () => {
    const slack = withValue(revision, 'pack/meanCurrent', measured(20));
    const { margins } = compareRevisions(prototype, revision, slack);
    expect(margins).toMatchObject([
      { id: 'run-time', turned: true, before: { verdict: 'holds' }, after: { verdict: 'fails' } },
    ]);
  });

  it('show what was filled in, emptied, and marked as not measured', () => {
    expect(inputs(withValue(revision, 'gimbal/centring', measured(0.01)))).toEqual([
      { path: 'gimbal/centring', label: 'centring stiffness of the gimbal', after: '0.01' },
    ]);
    expect(inputs(withValue(revision, 'weighedMass', undefined))).toEqual([
      { path: 'weighedMass', label: 'mass of the whole vehicle as weighed', before: '2.31' },
    ]);
    expect(inputs(withValue(revision, 'weighedMass', { notMeasured: true }))[0]?.after).toBe('not measured');
  });

  it('show the same value with another uncertainty or another basis', () => {
    expect(inputs(withValue(revision, 'weighedMass', measured(2.31, 0.002)))).toHaveLength(1);
    expect(inputs(withValue(revision, 'weighedMass', measured(2.31, 0.001, 'estimated')))).toHaveLength(1);
  });

  it('show a part that came or went as one change, and never its place in the list', () => {
    const added = withValue(
      revision,
      'parts/lamp',
      part('Lamp', 9, { mass: { ...measured(0.02), typed: '20 g' } }),
    );
    expect(inputs(added)).toEqual([{ path: 'parts/lamp', label: 'part Lamp', after: 'fitted, 20 g' }]);
    expect(inputs(withValue(revision, 'parts/tray', undefined))).toEqual([
      { path: 'parts/tray', label: 'part Tray', before: 'fitted, 0.107' },
    ]);
    expect(inputs(withValue(revision, 'parts/tray/order', 40))).toEqual([]);
  });

  it('show choices and fittings in words', () => {
    expect(inputs(withValue(revision, 'ballast/kind', 'hanging arm'))).toEqual([
      { path: 'ballast/kind', label: 'kind of ballast drive', before: 'upright arm', after: 'hanging arm' },
    ]);
    expect(inputs(withValue(revision, 'fittings/radio', false))).toEqual([
      { path: 'fittings/radio', label: 'radio link fitted', before: 'yes', after: 'no' },
    ]);
    expect(inputs(withValue(revision, 'pack/cellsInSeries', 4))).toEqual([
      { path: 'pack/cellsInSeries', label: 'cells in series', before: '3', after: '4' },
    ]);
    expect(inputs(withValue(revision, 'parts/tray/role', 'pack'))).toEqual([
      { path: 'parts/tray/role', label: 'role of Tray', before: 'structure', after: 'pack' },
    ]);
  });
});
