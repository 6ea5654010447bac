import { describe, expect, it } from 'vitest';
import { state } from '../../../tests/specimen/demo.ts';
import { assess } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import { pages } from '../place.ts';
import { type Standing, steps } from './steps.ts';

const bare: Prototype = {
  name: 'Rig',
  kind: 'pendulum rig',
  description: '',
  createdAt: '2026-03-01T09:00:00Z',
  requirements: {},
};
const empty: Revision = {
  prototype: 'rig',
  letter: 'A',
  status: 'draft',
  reason: '',
  createdAt: '2026-03-01T09:00:00Z',
  parts: {},
  fittings: { radio: false, independentKill: false, driven: false },
};

const standing = (prototype: Prototype, revision: Revision, cards = 0, runs = 0): Standing => ({
  prototype,
  revision,
  assessment: assess(prototype, revision),
  cards,
  runs,
});
const done = (at: Standing) => steps.filter((step) => step.done(at)).map(({ title }) => title);

describe('first steps', () => {
  it('of an empty prototype are all still to be done', () => {
    expect(done(standing(bare, empty))).toEqual([]);
  });

  it('are all done where everything is entered and a run was made', () => {
    const [prototype] = Object.values(state.prototype);
    const revision = Object.values(state.revision).at(-1);
    if (!prototype || !revision) throw new Error('the demo is empty');
    expect(done(standing(prototype, revision, 1, 1))).toEqual(steps.map(({ title }) => title));
    expect(done(standing(prototype, revision))).toEqual(steps.slice(0, -2).map(({ title }) => title));
  });

  it('begin with what is asked of the vehicle', () => {
    const q = { typed: '6°', si: 0.105, u: 0, basis: 'measured' } as const;
    expect(done(standing({ ...bare, requirements: { leanToRecover: q } }, empty))).toEqual([steps[0]?.title]);
  });

  it.each(steps)('“$title” leads to a page that there is', ({ page }) => {
    expect(pages.map(({ id }) => id)).toContain(page);
  });
});
