/** The power goes at every single call to the disk, with every aftermath: what was promised is there, whole. */
import { describe, expect, it } from 'vitest';
import { openNotebook, verify } from '../../src/desk/index.ts';
import { seededRandom } from './random.ts';
import {
  areWholeGroups,
  attached,
  folder,
  type Promises,
  processNumbered,
  wholeDay,
  workingDay,
} from './script.ts';
import { type Aftermath, type SimulatedDisk, simulatedDisk } from './simulated-disk.ts';

const now = (): Date => new Date('2026-03-01T09:00:00Z');

async function day(disk: SimulatedDisk): Promise<Promises> {
  const promises: Promises = { created: false, entries: 0, attachment: undefined };
  await workingDay({ files: disk.files, now, processes: processNumbered(1) }, promises);
  return promises;
}

/** Opens on the disk as another process, and holds what is found against what was promised. */
async function expectKept(disk: SimulatedDisk, promises: Promises, when: string): Promise<void> {
  const ground = { files: disk.files, now, processes: processNumbered(2) };
  const opened = await openNotebook(folder, ground);
  if (!opened.ok) {
    expect(promises.created, `${when}: the notebook was promised`).toBe(false);
    expect(opened.problem.code, when).toBe('notebook.not-found');
    return;
  }
  const notebook = opened.value;
  expect(notebook.readOnly, `${when}: writable again`).toBe(false);
  expect(notebook.entries.length, `${when}: nothing promised is lost`).toBeGreaterThanOrEqual(
    promises.entries,
  );
  expect(areWholeGroups(notebook.entries), `${when}: no half group`).toBe(true);
  if (promises.attachment !== undefined) {
    const content = await notebook.readAttachment(promises.attachment);
    expect(content, `${when}: the attachment`).toEqual({ ok: true, value: attached });
  }
  // Work goes on where it stopped.
  const more = await notebook.append(notebook.entries.length, 'C', [
    { op: 'set', kind: 'notebook', id: 'notebook', set: [{ path: 'name', value: 'after' }] },
  ]);
  expect(more.ok, `${when}: goes on`).toBe(true);
  await notebook.close();
  const checked = await verify(folder, ground);
  expect(checked, when).toMatchObject({ ok: true, value: { chain: 'whole', problems: [] } });
}

const calmDisk = simulatedDisk();
const calm = await day(calmDisk);
const calls = calmDisk.calls();

describe('the power goes', () => {
  it('never in a calm run, in which everything is promised', async () => {
    expect(calm).toMatchObject({ created: true, entries: wholeDay });
    expect(calm.attachment).toBeDefined();
    expect(calls).toBeGreaterThan(25);
  });

  for (const aftermath of ['lost', 'kept', 'torn', 'holed'] as const satisfies readonly Aftermath[]) {
    it(`at each call to the disk, what was not synced is ${aftermath}`, async () => {
      for (let call = 1; call <= calls; call++) {
        const seeds = aftermath === 'torn' || aftermath === 'holed' ? 8 : 1;
        for (let seed = 1; seed <= seeds; seed++) {
          const disk = simulatedDisk();
          disk.plan({ powerCutAt: call });
          const promises = await day(disk);
          const after = disk.afterPowerCut(aftermath, seededRandom(call * 100 + seed));
          await expectKept(after, promises, `call ${call} (${disk.log.at(-1)}), ${aftermath}, seed ${seed}`);
        }
      }
    });
  }

  it('a second time while the torn end is being set aside', async () => {
    let torn = 0;
    for (let call = 1; call <= calls; call++) {
      const disk = simulatedDisk();
      disk.plan({ powerCutAt: call });
      const promises = await day(disk);
      const random = seededRandom(call);
      for (let second = 1; second <= 12; second++) {
        const once = disk.afterPowerCut('torn', seededRandom(call));
        once.plan({ powerCutAt: second });
        await openNotebook(folder, { files: once.files, now, processes: processNumbered(3) });
        if (once.log.some((line) => line.includes('set-aside'))) torn += 1;
        await expectKept(once.afterPowerCut('torn', random), promises, `call ${call}, then ${second}`);
      }
    }
    expect(torn).toBeGreaterThan(0); // the case has come up
  });
});

describe('the disk refuses', () => {
  for (const code of ['ENOSPC', 'EIO', 'EACCES']) {
    for (const forEver of [false, true]) {
      it(`each call with ${code}, ${forEver ? 'for ever' : 'once'}`, async () => {
        for (let call = 1; call <= calls; call++) {
          const disk = simulatedDisk();
          disk.plan({ failAt: { call, code, forEver } });
          const promises = await day(disk);
          disk.plan({});
          await expectKept(disk, promises, `call ${call} (${disk.log[call - 1]})`);
        }
      });
    }
  }

  it('to write more than a part of each write', async () => {
    for (let call = 1; call <= calls; call++) {
      for (const bytes of [0, 1, 100]) {
        const disk = simulatedDisk();
        disk.plan({ shortWriteAt: { call, bytes } });
        const promises = await day(disk);
        disk.plan({});
        await expectKept(disk, promises, `call ${call} (${disk.log[call - 1]}), ${bytes} bytes`);
      }
    }
  });
});
