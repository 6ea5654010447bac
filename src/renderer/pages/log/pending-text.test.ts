import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { PAUSE, pendingText } from './pending-text.ts';

describe('text on its way to the notebook', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('what is typed without a pause is recorded once, as it stands at the end', () => {
    const recorded: string[] = [];
    const pending = pendingText((text) => recorded.push(text));
    for (const text of ['a', 'ab', 'abc']) {
      pending.type(text);
      vi.advanceTimersByTime(PAUSE / 2);
    }
    expect(recorded).toEqual([]);
    vi.advanceTimersByTime(PAUSE);
    expect(recorded).toEqual(['abc']);
    expect(pending.isPending()).toBe(false);
  });

  it('leaving the field records what is waiting at once, and the pause records nothing more', () => {
    const recorded: string[] = [];
    const pending = pendingText((text) => recorded.push(text));
    pending.type('left early');
    pending.commit();
    expect(recorded).toEqual(['left early']);
    vi.advanceTimersByTime(10 * PAUSE);
    expect(recorded).toEqual(['left early']);
  });

  it('leaving a field that nobody typed in records nothing', () => {
    const recorded: string[] = [];
    pendingText((text) => recorded.push(text)).commit();
    expect(recorded).toEqual([]);
  });

  it('an emptied text is recorded like any other', () => {
    const recorded: string[] = [];
    const pending = pendingText((text) => recorded.push(text));
    pending.type('');
    pending.commit();
    expect(recorded).toEqual(['']);
  });
});
