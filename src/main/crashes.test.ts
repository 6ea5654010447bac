import { describe, expect, it, vi } from 'vitest';
import { createElectron } from '../../tests/stand-in/create-electron.ts';
import type { StandInContents } from '../../tests/stand-in/windows.ts';
import { setupCrashes } from './crashes.ts';

async function window() {
  const electron = createElectron();
  await electron.controls.becomeReady();
  const made = new electron.BrowserWindow({});
  const contents = made.webContents as unknown as StandInContents;
  const clock = { now: 1_000_000 };
  const quit = vi.fn();
  setupCrashes({ window: made, dialog: electron.dialog, quit, now: () => clock.now });
  const gone = async (reason: string) => {
    contents.emit('render-process-gone', {}, { reason, exitCode: 1 });
    await new Promise((resolve) => setImmediate(resolve));
  };
  return { contents, clock, quit, gone, answers: electron.controls.answers };
}

describe('a page that is gone', () => {
  it('is loaded again, and again when that was long ago', async () => {
    const { contents, clock, gone } = await window();
    await gone('crashed');
    clock.now += 60_000;
    await gone('oom');
    expect(contents.reloads).toBe(2);
  });

  it('twice within a minute is a question', async () => {
    const { contents, clock, gone, quit, answers } = await window();
    await gone('crashed');
    clock.now += 59_999;
    answers.push({ response: 0 });
    await gone('crashed');
    expect(contents.reloads).toBe(2);
    answers.push({ response: 1 });
    await gone('crashed');
    expect(contents.reloads).toBe(2);
    expect(quit).toHaveBeenCalledOnce();
  });

  it('because it ended by itself is left alone', async () => {
    const { contents, gone } = await window();
    await gone('clean-exit');
    expect(contents.reloads).toBe(0);
  });
});
