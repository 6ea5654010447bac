import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { homedir, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { set } from '../notebook/index.ts';
import type { OpenNotebook, Outcome } from '../preload/index.ts';
import { bad, good } from '../quantity/index.ts';
import { answer } from './answer.ts';
import { type DeskSpec, deskHandlers, homeFolder, type OpenDesk } from './desk.ts';
import { createNotebook } from './notebook-folder.ts';

let home: string;
let open: OpenDesk[];
beforeEach(async () => {
  home = join(await mkdtemp(join(tmpdir(), 'counterpoise-desk-')), 'home');
  open = [];
});
afterEach(async () => {
  for (const desk of open) await desk.closeAll();
  await rm(join(home, '..'), { recursive: true, force: true });
});

function desk(spec: Partial<DeskSpec> = {}): OpenDesk {
  const made = deskHandlers({ home, ...spec });
  open.push(made);
  return made;
}

function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

const renamed = (name: string) => set('notebook', 'notebook', { name });

describe('the home folder', () => {
  it('is the chosen one, else a folder Counterpoise of the person', () => {
    expect(homeFolder({ COUNTERPOISE_HOME: 'elsewhere' })).toBe(resolve('elsewhere'));
    expect(homeFolder({})).toBe(join(homedir(), 'Counterpoise'));
    expect(homeFolder({ COUNTERPOISE_HOME: '' })).toBe(join(homedir(), 'Counterpoise'));
  });
});

describe('notebooks at the desk', () => {
  it('are created, listed in the order of people, opened by name', async () => {
    const { handlers } = desk();
    expect(value(await handlers['notebooks.list']({}))).toEqual([]);
    for (const name of ['Rig 10', 'Rig 9', 'übung', 'Alpha']) {
      value(await handlers['notebook.create']({ name, author: 'B' }));
    }
    await mkdir(join(home, 'No notebook'));
    await writeFile(join(home, 'letter.txt'), '');
    const listed = value(await handlers['notebooks.list']({}));
    expect(listed.map(({ name }) => name)).toEqual(['Alpha', 'Rig 9', 'Rig 10', 'übung']);
    expect(listed[0]?.changedAt).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d$/);
    expect(value(await handlers['notebook.open']({ name: 'Rig 9' })).name).toBe('Rig 9');
  });

  it('with a name that leads elsewhere are neither created nor opened', async () => {
    const { handlers } = desk();
    await createNotebook(join(home, '..', 'outside'), { author: 'B' });
    for (const name of ['../outside', '..', 'CON', '/etc', 'a/../../outside']) {
      expect(await handlers['notebook.open']({ name })).toMatchObject({
        ok: false,
        problem: { code: 'notebook.bad-name' },
      });
      expect((await handlers['notebook.create']({ name, author: 'B' })).ok).toBe(false);
    }
  });

  it('are shared by the windows of one process, which hear of each other by the sequence', async () => {
    const { handlers } = desk();
    const first = value(await handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    const second = value(await handlers['notebook.open']({ name: 'Rig' }));
    expect(second.readOnly).toBe(false);
    expect(second.session).not.toBe(first.session);
    const write = (session: string, after: number, name: string) =>
      handlers['notebook.append']({ session, after, by: 'B', changes: [renamed(name)] });
    value(await write(first.session, 1, 'a'));
    expect(await write(second.session, 1, 'b')).toMatchObject({
      ok: false,
      problem: { code: 'journal.changed-elsewhere' },
    });
    value(await handlers['notebook.close']({ session: first.session }));
    value(await write(second.session, 2, 'b'));
    expect(await write(first.session, 3, 'c')).toMatchObject({
      ok: false,
      problem: { code: 'notebook.not-open' },
    });
  });

  it('can be opened by another process once the last window has closed them', async () => {
    const one = desk();
    const other = desk();
    const first = value(await one.handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    const again = value(await one.handlers['notebook.open']({ name: 'Rig' }));
    expect(value(await other.handlers['notebook.open']({ name: 'Rig' })).readOnly).toBe(true);
    await one.handlers['notebook.close']({ session: first.session });
    expect(value(await other.handlers['notebook.open']({ name: 'Rig' })).readOnly).toBe(true);
    await one.handlers['notebook.close']({ session: again.session });
    expect(value(await other.handlers['notebook.open']({ name: 'Rig' })).readOnly).toBe(false);
  });

  it('opened twice at the same moment are opened once', async () => {
    const { handlers } = desk();
    await createNotebook(join(await home0(), 'Rig'), { author: 'B' });
    const both = await Promise.all([
      handlers['notebook.open']({ name: 'Rig' }),
      handlers['notebook.open']({ name: 'Rig' }),
    ]);
    expect(both.map((outcome) => value<OpenNotebook>(outcome).readOnly)).toEqual([false, false]);
  });

  it('are all given back when the desk closes', async () => {
    const one = desk();
    value(await one.handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    await one.closeAll();
    expect(value(await desk().handlers['notebook.open']({ name: 'Rig' })).readOnly).toBe(false);
  });

  it('finish the writing under way before they close', async () => {
    const one = desk();
    const { session } = value(await one.handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    const writing = one.handlers['notebook.append']({ session, after: 1, by: 'B', changes: [renamed('a')] });
    await one.closeAll();
    value(await writing);
    expect(value(await desk().handlers['notebook.open']({ name: 'Rig' })).entries).toHaveLength(2);
  });

  async function home0(): Promise<string> {
    await mkdir(home, { recursive: true });
    return home;
  }
});

describe('the demo notebook', () => {
  it('is written under a name not yet taken, and opened', async () => {
    const { handlers } = desk({ demo: (folder) => createNotebook(folder, { author: 'B' }) });
    expect(value(await handlers['notebook.demo']({})).name).toBe('Demo');
    expect(value(await handlers['notebook.demo']({})).name).toBe('Demo 2');
  });

  it('that cannot be written, or is not there, is a problem', async () => {
    const failing = desk({ demo: async () => bad('file.failed', 'Demo', { detail: 'x' }) });
    expect(await failing.handlers['notebook.demo']({})).toMatchObject({
      ok: false,
      problem: { code: 'file.failed' },
    });
    expect(await desk().handlers['notebook.demo']({})).toMatchObject({
      ok: false,
      problem: { code: 'desk.no-demo' },
    });
  });
});

describe('settings', () => {
  it('are the usual ones until others are chosen, and stay', async () => {
    const { handlers } = desk();
    expect(value(await handlers['settings.read']({}))).toEqual({
      author: '',
      theme: 'system',
      paper: 'A4',
      copiesFolder: '',
    });
    const chosen = { author: 'B', theme: 'dark', paper: 'Letter', copiesFolder: '/stick' } as const;
    expect(value(await handlers['settings.write'](chosen))).toEqual(chosen);
    expect(value(await desk().handlers['settings.read']({}))).toEqual(chosen);
    expect(JSON.parse(await readFile(join(home, 'settings.json'), 'utf8'))).toEqual(chosen);
  });

  it.each(['', '{', '{"theme":"pink"}', '[]'])(
    'that read %j are moved aside, reported once, and usual again',
    async (text) => {
      await mkdir(home);
      await writeFile(join(home, 'settings.json'), text);
      const { handlers } = desk();
      expect(await handlers['settings.read']({})).toMatchObject({
        ok: false,
        problem: { code: 'settings.damaged', figures: { file: 'settings.damaged.json' } },
      });
      expect(await readFile(join(home, 'settings.damaged.json'), 'utf8')).toBe(text);
      expect(value(await handlers['settings.read']({})).theme).toBe('system');
    },
  );
});

describe('copies at the desk', () => {
  async function withCopies(): Promise<OpenDesk> {
    const made = desk();
    await mkdir(join(home, '..', 'stick'));
    const settings = value(await made.handlers['settings.read']({}));
    value(await made.handlers['settings.write']({ ...settings, copiesFolder: join(home, '..', 'stick') }));
    return made;
  }

  it('come by themselves, are on the list, and become a notebook again beside the one they are of', async () => {
    const one = await withCopies();
    const { session } = value(await one.handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    await one.closeAll(); // waits for the copy that the opening began
    const { copies, failure } = value(await one.handlers['copies.list']({}));
    expect({ failure, names: copies.map(({ name }) => name) }).toEqual({
      failure: undefined,
      names: ['Rig'],
    });
    const [copy] = copies;
    if (copy === undefined) throw new Error('no copy');
    const { shelf, file } = copy;
    expect(await one.handlers['copies.restore']({ shelf, file, name: 'Rig' })).toMatchObject({
      ok: false,
      problem: { code: 'notebook.exists' },
    });
    const back = value(await one.handlers['copies.restore']({ shelf, file, name: 'Rig as it was' }));
    expect(back).toMatchObject({ name: 'Rig as it was', readOnly: false, problems: [] });
    expect(back.session).not.toBe(session);
  });

  it('lead nowhere but to what is on the list', async () => {
    const one = await withCopies();
    await createNotebook(join(home, '..', 'outside'), { author: 'B' });
    for (const [shelf, file] of [
      ['..', 'outside'],
      ['../outside', 'journal.jsonl'],
      ['.', '.'],
    ] as const) {
      expect(await one.handlers['copies.restore']({ shelf, file, name: 'Out' })).toMatchObject({
        ok: false,
        problem: { code: 'copies.not-found' },
      });
    }
  });

  it('that cannot be made are told on the list, and hold up nothing', async () => {
    const one = await withCopies();
    await rm(join(home, '..', 'stick'), { recursive: true });
    const { session } = value(await one.handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    value(await one.handlers['notebook.append']({ session, after: 1, by: 'B', changes: [renamed('a')] }));
    expect(await one.handlers['copies.make']({ session })).toMatchObject({
      ok: false,
      problem: { code: 'copies.failed' },
    });
    await mkdir(join(home, '..', 'stick'));
    expect(value(await one.handlers['copies.list']({})).failure?.code).toBe('copies.failed');
  });

  it('need a folder to be chosen', async () => {
    const { handlers } = desk();
    const { session } = value(await handlers['notebook.create']({ name: 'Rig', author: 'B' }));
    expect(value(await handlers['copies.list']({}))).toEqual({ folder: '', copies: [] });
    expect(await handlers['copies.make']({ session })).toMatchObject({
      ok: false,
      problem: { code: 'copies.no-folder' },
    });
  });
});

describe('saving a file', () => {
  it('is passed on to who can ask the person', async () => {
    const saved: string[] = [];
    const { handlers } = desk({
      async saveFile(name, bytes) {
        saved.push(`${name} ${bytes.length}`);
        return good('/somewhere');
      },
    });
    const args = { suggestedName: 'report.pdf', bytes: new Uint8Array(3) };
    expect(await handlers['file.save'](args)).toEqual({ ok: true, value: '/somewhere' });
    expect(saved).toEqual(['report.pdf 3']);
    expect((await desk().handlers['file.save'](args)).ok).toBe(false);
  });
});

describe('the door to the desk', () => {
  it('answers a channel that is none with a problem', async () => {
    for (const channel of ['notebook.delete', 'constructor', '__proto__', 'toString', '']) {
      expect(await answer(desk().handlers, channel, {})).toMatchObject({
        ok: false,
        problem: { code: 'desk.bad-request' },
      });
    }
  });

  it.each([
    ['settings.write', { theme: 'pink' }],
    ['settings.read', { extra: 1 }],
    ['settings.read', undefined],
    ['notebook.create', { name: 'x' }],
    ['notebook.append', { session: 's', after: -1, by: '', changes: [] }],
    ['notebook.append', { session: 's', after: 0, by: '', changes: [{ op: 'set', kind: 'x', id: 'y' }] }],
    ['attachment.add', { session: 's', bytes: [1, 2] }],
    ['attachment.read', { session: 's', sha256: '../../etc/passwd' }],
  ])('checks what %s is asked with', async (channel, args) => {
    expect(await answer(desk().handlers, channel, args)).toMatchObject({
      ok: false,
      problem: { code: 'desk.bad-request', place: 'Desk' },
    });
  });

  it('turns a mistake of the program into a problem', async () => {
    const { handlers } = desk();
    const broken = {
      ...handlers,
      'notebooks.list': async () => {
        throw new Error('no such thing');
      },
    };
    expect(await answer(broken, 'notebooks.list', {})).toEqual({
      ok: false,
      problem: { code: 'desk.defect', place: 'notebooks.list', figures: { detail: 'no such thing' } },
    });
  });
});
