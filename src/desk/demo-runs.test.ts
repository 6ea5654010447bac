/** The demo's runs went by their checklists, and its readings obey the same physics as anybody's. */
import { describe, expect, it } from 'vitest';
import { entries, figure, si, state } from '../../tests/specimen/demo.ts';
import { isWithin, outcomeOf } from '../checklist/index.ts';
import { fingerprint, type Revision, type Run, type TestCard } from '../notebook/index.ts';

const runs = Object.entries(state.run);
const reading = (run: Run, item: string): number => si(run.answers[item]?.reading);

describe('the demo’s runs', () => {
  it.each(runs)('%s was begun from a card and a revision that are still the same', (_id, run) => {
    const revision = state.revision[run.revision] as Revision;
    expect(run.fingerprint).toBe(fingerprint(revision));
    expect(state.card[run.card]?.fingerprint).toBe(run.fingerprint);
    expect(state.card[run.card]?.status).toBe('issued');
    expect(revision.status).toBe('issued');
    expect((revision.issuedAt ?? '') < run.startedAt).toBe(true);
    expect((state.card[run.card]?.issuedAt ?? '') < run.startedAt).toBe(true);
  });

  it.each(runs)('%s was cleared with everything before it met, within its limits', (_id, run) => {
    const before = run.items.filter(({ phase }) => phase === 'before');
    expect(before.length).toBeGreaterThan(20);
    for (const { id, measured, choices, kind } of before) {
      const answer = run.answers[id];
      expect(answer?.met, id).toBe(true);
      expect((answer?.at ?? '~') <= (run.clearedAt ?? ''), id).toBe(true);
      if (measured) expect(isWithin(reading(run, id), measured.low, measured.high), id).toBe(true);
      if (choices) expect(choices.find(({ text }) => text === answer?.choice)?.stops, id).toBe(false);
      if (kind === 'two-person') expect(answer?.second, id).not.toBe(answer?.initials);
    }
  });

  it.each(runs)('%s was made safe and signed at its end, whatever the end', (_id, run) => {
    for (const { id, phase } of run.items) if (phase === 'after') expect(run.answers[id], id).toBeDefined();
    expect(run.signedBy).not.toBe('');
    expect((run.finishedAt ?? '~') < (run.signedAt ?? '')).toBe(true);
    expect(run.summary).not.toBe('');
  });

  it('that passed had every item met, and the one that was broken off stopped at the answer that says so', () => {
    for (const [id, run] of runs) {
      const open = run.items.filter((item) => !run.answers[item.id]?.met).map((item) => item.id);
      if (run.outcome === 'passed') expect(open, id).toEqual([]);
      else expect(open).toContain('first-spin-up.three-quarter-speed');
    }
    expect(runs.map(([, { outcome }]) => outcome)).toEqual(['passed', 'aborted', 'passed']);
  });

  it.each(runs)('%s read what its card predicted, within twice the uncertainty', (_id, run) => {
    const compared = outcomeOf(state.card[run.card] as TestCard, run);
    expect(compared.filter(({ agrees }) => agrees === false)).toEqual([]);
    if (run.outcome === 'passed') expect(compared.some(({ agrees }) => agrees)).toBe(true);
  });

  it.each(runs)('%s has cell voltages that add up', (_id, run) => {
    const revision = state.revision[run.revision] as Revision;
    const low = reading(run, 'pack-inspection.lowest-cell');
    const high = reading(run, 'pack-inspection.highest-cell');
    const rest = reading(run, 'pack-inspection.rest-voltage');
    const cells = revision.pack?.cellsInSeries ?? 0;
    expect(reading(run, 'pack-inspection.spread')).toBeCloseTo(high - low, 9);
    expect(rest).toBeGreaterThanOrEqual(cells * low);
    expect(rest).toBeLessThanOrEqual(cells * high);
    const sag = si(revision.pack?.peakCurrent) * si(revision.pack?.resistance);
    expect(Math.abs(reading(run, 'pack-inspection.loaded-voltage') - (rest - sag))).toBeLessThanOrEqual(
      0.005,
    );
    const after = reading(run, 'after-run.lowest-cell');
    expect(after, 'a run takes charge out').toBeLessThan(low);
    const loaded = run.answers['first-spin-up.cell-under-load']?.reading?.si;
    if (loaded !== undefined) {
      expect(loaded, 'a cell rests higher than it works').toBeLessThanOrEqual(after);
      expect(si(run.readings['lowest-cell'])).toBe(loaded);
    }
    expect(si(run.readings['coast-down-quarter'])).toBe(reading(run, 'first-spin-up.first-coast-down'));
  });

  /**
   * Drag a + b Ω, from the two coast-downs: t = (I/b) ln(1 + b Ω/a). Its power at full speed has to come out of the
   * pack, and the pack gives more by what motor, driver and controller take for themselves.
   */
  it.each(runs.filter(([, { outcome }]) => outcome === 'passed'))(
    '%s held the speed on a current that its coast-down explains',
    (_id, run) => {
      const { letter } = state.revision[run.revision] as Revision;
      const full = si(run.readings['speed-reached']);
      const quarter = figure(letter, 'rotor_speed').value / 4;
      const [long, short] = [si(run.readings['coast-down-full']), si(run.readings['coast-down-quarter'])];
      const ratio = (x: number): number => Math.log1p(x) / Math.log1p((x * quarter) / full);
      let [low, high] = [1e-6, 100];
      expect(long / short, 'between dry friction alone and viscous friction alone').toBeLessThan(
        full / quarter,
      );
      for (let step = 0; step < 100; step++) {
        const middle = Math.sqrt(low * high);
        if (ratio(middle) > long / short) low = middle;
        else high = middle;
      }
      const inertia = figure(letter, 'rotor_inertia').value;
      const b = (inertia / long) * Math.log1p(low);
      const drag = (b * full) / low + b * full;
      const voltage = 3 * si(run.readings['lowest-cell']);
      const taken = si(run.readings['pack-current']) * voltage;
      expect(taken).toBeGreaterThan(drag * full);
      expect(taken).toBeLessThan(3 * drag * full);
      expect(si(run.readings['pack-current'])).toBeLessThan(figure(letter, 'pack_mean_current').value);
    },
  );
});

describe('the demo’s failure', () => {
  const [failure] = Object.values(state.failure);

  it('is closed by a later run that passed on the revision which carries the action', () => {
    const verifying = state.run[failure?.verifiedBy ?? ''];
    expect(failure?.status).toBe('closed');
    expect(verifying?.outcome).toBe('passed');
    expect(verifying?.revision).toBe(failure?.correctedIn);
    expect((verifying?.startedAt ?? '') > (failure?.at ?? '~')).toBe(true);
    expect(state.revision[failure?.correctedIn ?? '']?.from).toBe(failure?.revision);
  });

  it('was open until then, with no revision named that did not exist yet', () => {
    const told = entries.flatMap(({ at, change }) => (change.kind === 'failure' ? [{ at, change }] : []));
    const statuses = told.map(({ change }) =>
      change.op === 'create'
        ? (change.value as { status?: string }).status
        : change.set.find(({ path }) => path === 'status')?.value,
    );
    expect(statuses).toEqual(['open', 'action taken', 'closed']);
    expect(told[0]?.change.op === 'create' && told[0].change.value).not.toHaveProperty('correctedIn');
    expect((told.at(-1)?.at ?? '') > (state.run[failure?.verifiedBy ?? '']?.finishedAt ?? '~')).toBe(true);
  });

  it('tells the same coast-downs as the runs do', () => {
    const [first, second] = Object.values(state.run).map((run) => si(run.readings['coast-down-quarter']));
    expect(failure?.evidence).toContain(`${second} s against ${first} s on run 1`);
    const days =
      (Date.parse(failure?.at ?? '') - Date.parse(state.run['run-1']?.startedAt ?? '')) / 86_400_000;
    expect(Math.round(days)).toBe(6);
    expect(failure?.evidence).toContain('six days');
  });
});
