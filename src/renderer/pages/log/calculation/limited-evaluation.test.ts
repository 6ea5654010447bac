import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { limitedEvaluation, type RunningWorker } from './limited-evaluation.ts';

const limits = { answer: 500, start: 10_000 };

/** Doubles a number after that many milliseconds; never for a negative one. */
function slowWorker(log: string[], loading?: number): () => RunningWorker<number, number> {
  return () => {
    log.push('start');
    const loaded =
      loading === undefined ? Promise.resolve() : new Promise((resolve) => setTimeout(resolve, loading));
    return {
      ready: () => loaded,
      answer: (delay) =>
        new Promise((resolve) => {
          if (delay >= 0) setTimeout(() => resolve(2 * delay), delay);
        }),
      stop: () => log.push('stop'),
    };
  };
}

describe('evaluation within a time limit', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('an answer in time comes through, from one worker for all questions', async () => {
    const log: string[] = [];
    const ask = limitedEvaluation(slowWorker(log), limits);
    const answers = Promise.all([ask(100), ask(200)]);
    await vi.runAllTimersAsync();
    expect(await answers).toEqual([
      { ok: true, value: 200 },
      { ok: true, value: 400 },
    ]);
    expect(log).toEqual(['start']);
  });

  it('an endless question is stopped, says so, and the next one gets a new worker', async () => {
    const log: string[] = [];
    const ask = limitedEvaluation(slowWorker(log), limits);
    const answers = Promise.all([ask(-1), ask(1)]);
    await vi.runAllTimersAsync();
    const [endless, next] = await answers;
    expect(endless).toMatchObject({ ok: false, problem: { code: 'calc.stopped', figures: { limit: 0.5 } } });
    expect(next).toEqual({ ok: true, value: 2 });
    expect(log).toEqual(['start', 'stop', 'start']);
  });

  it('waiting for others and loading do not count against the limit', async () => {
    const ask = limitedEvaluation(slowWorker([], 5000), limits);
    const answers = Promise.all([ask(400), ask(400), ask(400)]);
    await vi.runAllTimersAsync();
    expect((await answers).every((answer) => answer.ok)).toBe(true);
  });

  it('a worker that does not load or breaks is a problem, not an exception', async () => {
    const never = limitedEvaluation(slowWorker([], 60_000), limits);
    const late = never(1);
    await vi.advanceTimersByTimeAsync(limits.start);
    expect(await late).toMatchObject({ ok: false, problem: { code: 'calc.not-started' } });

    const broken = limitedEvaluation<number, number>(() => {
      throw new Error('no workers here');
    }, limits);
    expect(await broken(1)).toMatchObject({ ok: false, problem: { figures: { detail: 'no workers here' } } });
  });
});
