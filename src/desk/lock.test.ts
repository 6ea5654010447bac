import { describe, expect, it } from 'vitest';
import { simulatedDisk } from '../../tests/durability/simulated-disk.ts';
import { type Processes, takeLock } from './lock.ts';

const now = new Date('2026-03-01T09:00:00Z');

/** A computer on which the processes of the list run. */
function computer(pid: number, running: Readonly<Record<number, string>>, host = 'garage'): Processes {
  return {
    pid,
    host,
    isAlive: (other) => other in running,
    began: (other) => running[other] ?? '',
    wait: async () => {},
  };
}

async function lockLeftBy(processes: Processes): Promise<ReturnType<typeof simulatedDisk>> {
  const disk = simulatedDisk();
  expect((await takeLock(disk.files, '/home', now, processes)).ok).toBe(true);
  return disk;
}

describe('a lock', () => {
  it('is refused to a second process, with the name of the first', async () => {
    const running = { 7: 'monday', 8: 'tuesday' };
    const disk = await lockLeftBy(computer(7, running));
    expect(await takeLock(disk.files, '/home', now, computer(8, running))).toMatchObject({
      ok: false,
      problem: { code: 'notebook.locked', figures: { pid: 7, host: 'garage' } },
    });
  });

  it('is refused a second time within one process', async () => {
    const disk = await lockLeftBy(computer(7, { 7: '' }));
    expect((await takeLock(disk.files, '/home', now, computer(7, { 7: '' }))).ok).toBe(false);
  });

  it('can be taken again after it was given back', async () => {
    const disk = simulatedDisk();
    const first = await takeLock(disk.files, '/home', now, computer(7, { 7: '' }));
    if (first.ok) await first.value.release();
    expect(await disk.files.list('/home')).toEqual([]);
    expect((await takeLock(disk.files, '/home', now, computer(8, { 8: '' }))).ok).toBe(true);
  });

  it('is stale when its process is gone', async () => {
    const disk = await lockLeftBy(computer(7, { 7: '' }));
    expect((await takeLock(disk.files, '/home', now, computer(8, { 8: '' }))).ok).toBe(true);
    expect(await disk.files.list('/home')).toEqual(['lock']);
  });

  it('is stale when another program has the number of its process', async () => {
    const disk = await lockLeftBy(computer(7, { 7: 'monday' }));
    const later = computer(8, { 7: 'wednesday', 8: 'wednesday' });
    expect((await takeLock(disk.files, '/home', now, later)).ok).toBe(true);
  });

  it('is stale when this very process has the number but never took it', async () => {
    const disk = await lockLeftBy(computer(7, { 7: '' }));
    const text = Buffer.from(disk.peek('/home/lock')).toString('utf8');
    const foreign = text.replace(/"token":"[^"]*"/, '"token":"of a process before the crash"');
    disk.poke('/home/lock', Buffer.from(foreign));
    expect((await takeLock(disk.files, '/home', now, computer(7, { 7: '' }))).ok).toBe(true);
  });

  it('of another computer is never taken: nobody can tell from here', async () => {
    const disk = await lockLeftBy(computer(7, {}, 'laboratory'));
    expect(await takeLock(disk.files, '/home', now, computer(8, {}, 'garage'))).toMatchObject({
      ok: false,
      problem: { figures: { host: 'laboratory' } },
    });
  });

  it('that stays unreadable was cut short by a crash', async () => {
    const disk = simulatedDisk();
    disk.poke('/home/lock', Buffer.from('{"tok'));
    expect((await takeLock(disk.files, '/home', now, computer(8, {}))).ok).toBe(true);
  });

  it('that is just being written is waited for', async () => {
    const other = await lockLeftBy(computer(7, { 7: '' }));
    const disk = simulatedDisk();
    disk.poke('/home/lock', new Uint8Array());
    const patient: Processes = {
      ...computer(8, { 7: '', 8: '' }),
      wait: async () => disk.poke('/home/lock', other.peek('/home/lock')),
    };
    expect(await takeLock(disk.files, '/home', now, patient)).toMatchObject({
      ok: false,
      problem: { figures: { pid: 7 } },
    });
  });

  it('knows when its file was replaced, and leaves that one alone', async () => {
    const disk = simulatedDisk();
    const taken = await takeLock(disk.files, '/home', now, computer(7, { 7: '' }));
    if (!taken.ok) throw new Error('not taken');
    expect(await taken.value.isHeld()).toBe(true);
    disk.poke('/home/lock', Buffer.from('{}'));
    expect(await taken.value.isHeld()).toBe(false);
    await taken.value.release();
    expect(await disk.files.list('/home')).toEqual(['lock']);
  });
});
