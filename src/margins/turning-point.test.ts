import { describe, expect, it } from 'vitest';
import { measured, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { assess } from './assess.ts';
import type { Verdict } from './figure.ts';
import { type TurningPoint, turningPoints } from './turning-point.ts';

function pointsOf(id: string, on: Prototype = prototype, held: Revision = revision): readonly TurningPoint[] {
  const found = turningPoints(on, held, id);
  if (!found.ok) throw new Error(id);
  return found.value;
}

function verdictWith(
  point: TurningPoint,
  si: number,
  id: string,
  on = prototype,
  held = revision,
): Verdict | undefined {
  const figure = assess(on, held).figures.get(point.name);
  if (figure?.trace.kind !== 'fact') throw new Error(point.name);
  const path = `${figure.trace.path}/si`;
  const assessed =
    figure.trace.record === 'prototype'
      ? assess(withValue(on, path, si), held)
      : assess(on, withValue(held, path, si));
  return assessed.margins.find((margin) => margin.id === id)?.verdict;
}

describe('a turning point', () => {
  it.each(['lean', 'cross-slope', 'rotor-strength', 'gimbal-time', 'actuator', 'run-time'])(
    'of %s is where the verdict turns and not before',
    (id) => {
      const points = pointsOf(id);
      expect(points.length).toBeGreaterThan(2);
      for (const point of points) {
        const within = point.now + 0.999 * (point.turnsAt - point.now);
        expect(verdictWith(point, within, id), `${point.name} at ${within}`).toBe('holds');
        expect(verdictWith(point, point.turnsAt, id), `${point.name} at ${point.turnsAt}`).toBe(
          point.verdict,
        );
      }
    },
  );

  it('of an exact demand is the capability, less what it is uncertain by', () => {
    const runTime = assess(prototype, revision).margins.find(({ id }) => id === 'run-time');
    const capability = assess(prototype, revision).figures.get('run_time')?.result;
    if (!capability?.ok || !runTime || runTime.verdict === 'unknown') throw new Error('run time');
    const demand = pointsOf('run-time').find(({ name }) => name === 'required_run_time');
    // MS − 1.645 u(MS) = 0 with an exact demand D: C − 1.645 u(C) = D, whatever D is
    const bound = capability.value.value * ((1 + runTime.lowerBound) / (1 + runTime.marginOfSafety.value));
    // beyond the turn, and no further than a hair
    expect(demand?.turnsAt).toBeGreaterThanOrEqual(bound);
    expect(demand?.turnsAt).toBeLessThan(bound * (1 + 4e-5));
    expect(demand?.verdict).toBe('in doubt');
  });

  it('of a margin that fails leads out of failure', () => {
    const asked = withValue(prototype, 'requirements/leanToRecover', measured(0.2));
    const points = pointsOf('lean', asked);
    expect(points.length).toBeGreaterThan(2);
    for (const point of points) {
      expect(['in doubt', 'holds']).toContain(point.verdict);
      expect(verdictWith(point, point.turnsAt, 'lean', asked)).toBe(point.verdict);
    }
  });

  it('of a margin in doubt leads to the nearer verdict', () => {
    const asked = withValue(prototype, 'requirements/leanToRecover', measured(0.134));
    expect(assess(asked, revision).margins.find(({ id }) => id === 'lean')?.verdict).toBe('in doubt');
    for (const point of pointsOf('lean', asked)) {
      expect(['holds', 'fails']).toContain(point.verdict);
      expect(verdictWith(point, point.turnsAt, 'lean', asked)).toBe(point.verdict);
    }
  });

  it('stays where a value may be: no negative mass, no travel beyond 90°', () => {
    const easy = withValue(prototype, 'requirements/leanToRecover', measured(0.001));
    for (const point of pointsOf('lean', easy)) {
      expect(point.turnsAt, point.name).toBeGreaterThan(0);
      expect(point.turnsAt, point.name).toBeLessThanOrEqual(10 * Math.abs(point.now));
    }
    const hard = withValue(prototype, 'requirements/leanToRecover', measured(0.5));
    expect(pointsOf('lean', hard).map(({ name }) => name)).not.toContain('arm_travel');
  });

  it('is not sought for a margin that is unknown or not there', () => {
    const lacking = withValue(revision, 'parts/tray/mass', undefined);
    expect(turningPoints(prototype, lacking, 'lean')).toMatchObject({
      ok: false,
      problem: { code: 'calculation.missing' },
    });
    expect(turningPoints({ ...prototype, requirements: {} }, revision, 'lean')).toMatchObject({
      ok: false,
      problem: { code: 'margin.unknown' },
    });
  });

  it('tries no more inputs than it is told to', () => {
    const found = turningPoints(prototype, revision, 'lean', { inputs: 2, factor: 10 });
    expect(found.ok && found.value.length).toBeLessThanOrEqual(2);
  });
});
