import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectPrinted } from '../../tests/published/printed.ts';
import { registry } from '../margins/index.ts';
import { captured } from './captured.ts';
import { DAMAGED, GOOD, NO, USAGE } from './terminal.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'counterpoise-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const fromInput = (id: string, ...pieces: readonly (string | Uint8Array)[]) =>
  captured(['calc', 'run', id, '--input', '-'], pieces);

interface Output {
  readonly value: number;
  readonly unit: string;
  readonly standardUncertainty: number;
  readonly meaning: string;
  readonly contributions: Readonly<Record<string, number>>;
}
async function outputsOf(id: string, values: object): Promise<Readonly<Record<string, Output>>> {
  const { code, out, err } = await fromInput(id, JSON.stringify(values));
  expect([code, err]).toEqual([GOOD, '']);
  const printed = JSON.parse(out) as { id: string; outputs: Readonly<Record<string, Output>> };
  expect(printed.id).toBe(id);
  return printed.outputs;
}
const output = async (id: string, name: string, values: object): Promise<number> =>
  (await outputsOf(id, values))[name]?.value ?? Number.NaN;

const rpm = (speed: number): number => (speed * Math.PI) / 30;

describe('calc list', () => {
  it('prints each calculation on a line of its own, id first', async () => {
    const { code, out } = await captured(['calc', 'list']);
    expect(code).toBe(GOOD);
    const lines = out
      .trimEnd()
      .split('\n')
      .map((line) => line.split('\t'));
    expect(lines).toEqual([...registry.values()].map(({ id, title }) => [id, title]));
  });

  it('as JSON says everything that the calculation needs', async () => {
    const { out } = await captured(['calc', 'list', '--json']);
    const listed = JSON.parse(out) as Record<string, unknown>[];
    expect(listed).toHaveLength(registry.size);
    for (const each of listed) {
      for (const member of [
        'id',
        'title',
        'equation',
        'inputs',
        'outputs',
        'validity',
        'source',
        'example',
      ]) {
        expect(each, `${each.id}`).toHaveProperty(member);
      }
    }
  });

  it.each([...registry.values()])('gives an example of $id that calc run takes', async ({ id, outputs }) => {
    const { out } = await captured(['calc', 'list', '--json']);
    const listed = (JSON.parse(out) as { id: string; example: object }[]).find((each) => each.id === id);
    const printed = await outputsOf(id, listed?.example ?? {});
    expect(Object.keys(printed)).toEqual(Object.keys(outputs));
    for (const { value } of Object.values(printed)) expect(Number.isFinite(value)).toBe(true);
  });
});

describe('calc run', () => {
  it('gives the peak stress of a bored disc as published', async () => {
    // Ugural & Fenster, Advanced Strength and Applied Elasticity, 2nd ed. 1981, example 8.4c: 211.7646 MPa
    const values = {
      outerDiameters: [0.5],
      boreDiameters: [0.1],
      density: 7800,
      poissonRatio: 0.3,
      speed: rpm(6900),
    };
    expectPrinted((await output('rotor.peak-stress', 'stress', values)) / 1e6, '211.7646');
  });

  it('gives the righting moments that are worked by hand', async () => {
    // Common practice, no source: 73 g and 590 g on 115 mm at 45°.
    const ballastOffset = 0.115 * Math.sin(Math.PI / 4);
    const moment = (ballastMass: number) =>
      output('ballast.righting-moment', 'moment', { ballastMass, ballastOffset });
    expectPrinted(await moment(0.073), '0.058');
    expectPrinted(await moment(0.59), '0.47');
  });

  it('carries uncertainties, and says which input adds how much', async () => {
    // y = g m e: u² = (g e u_m)² + (g m u_e)², JCGM 100 5.1.2.
    const { moment } = await outputsOf('ballast.righting-moment', {
      ballastMass: { value: 0.5, standardUncertainty: 0.002 },
      ballastOffset: { value: 0.1, standardUncertainty: 0.001 },
    });
    const [byMass, byOffset] = [9.80665 * 0.1 * 0.002, 9.80665 * 0.5 * 0.001];
    expect(moment?.contributions.ballastMass).toBeCloseTo(byMass, 12);
    expect(moment?.contributions.ballastOffset).toBeCloseTo(byOffset, 12);
    expect(moment?.standardUncertainty).toBeCloseTo(Math.hypot(byMass, byOffset), 12);
    expect(moment?.unit).toBe('N·m');
    expect(moment?.meaning).not.toBe('');
  });

  it('takes lists, whose items may have uncertainties, one by one', async () => {
    const { totalMass } = await outputsOf('mass.total', {
      masses: [1, { value: 2, standardUncertainty: 0.3 }, { value: 3, standardUncertainty: 0.4 }],
    });
    expect(totalMass?.value).toBe(6);
    expect(totalMass?.standardUncertainty).toBeCloseTo(0.5, 12);
    expect(Object.keys(totalMass?.contributions ?? {})).toEqual(['masses[1]', 'masses[2]']);
  });

  it('reads a file as well, in whatever pieces the standard input comes', async () => {
    const text = '{"inertia": 0.002, "speed": 100}';
    const path = join(folder, 'größe.json');
    await writeFile(path, text);
    const { code, out } = await captured(['calc', 'run', 'rotor.energy', '--input', path]);
    expect(code).toBe(GOOD);
    expect(JSON.parse(out).outputs.energy.value).toBeCloseTo(10, 12);
    const bytes = new TextEncoder().encode(text);
    expect((await fromInput('rotor.energy', ...[...text])).out).toBe(out);
    expect((await fromInput('rotor.energy', bytes.subarray(0, 5), bytes.subarray(5))).out).toBe(out);
  });

  it('reads a character that was cut between two pieces', async () => {
    const bytes = new TextEncoder().encode('{"größe": 1}');
    const cut = bytes.indexOf(0xc3) + 1;
    const { err } = await fromInput('rotor.energy', bytes.subarray(0, cut), bytes.subarray(cut));
    expect(err).toContain('“größe”');
  });

  it.each([
    ['an unknown calculation', 'rotor.colour', '{}', USAGE, /“rotor\.colour”.*calc list/],
    ['a name that every object has', 'constructor', '{}', USAGE, /“constructor”/],
    ['a missing input', 'rotor.energy', '{"inertia": 1}', USAGE, /speed.*missing.*rad\/s/],
    [
      'a misspelt input',
      'rotor.energy',
      '{"inertia": 1, "sped": 2, "speed": 1}',
      USAGE,
      /“sped”.*inertia, speed/,
    ],
    ['a list where one is wanted', 'rotor.energy', '{"inertia": [1], "speed": 1}', USAGE, /inertia.*single/],
    ['one where a list is wanted', 'mass.total', '{"masses": 1}', USAGE, /masses.*list/],
    [
      'an uncertainty below nought',
      'rotor.energy',
      '{"inertia": {"value": 1, "standardUncertainty": -1}, "speed": 1}',
      USAGE,
      /uncertainty of inertia/,
    ],
    [
      'a figure that is out of the domain',
      'rotor.energy',
      '{"inertia": -1, "speed": 1}',
      NO,
      /inertia is −1/,
    ],
    ['a vehicle that hangs', 'mass.toppling', '{"firstMoment": 0, "rollInertia": 1}', NO, /0/],
    ['no JSON', 'rotor.energy', '{"inertia": 1,', DAMAGED, /^standard input: is not JSON \(.+\)\. Give/],
    ['nothing', 'rotor.energy', '', DAMAGED, /^standard input: is not JSON/],
    ['a list', 'rotor.energy', '[1, 2]', DAMAGED, /^standard input: the whole does not have the form/],
    ['a text', 'rotor.energy', '{"inertia": "1", "speed": 1}', DAMAGED, /^standard input: inertia does not/],
    ['a unit', 'rotor.energy', '{"inertia": {"value": 1, "unit": "kg·m²"}, "speed": 1}', DAMAGED, /inertia/],
    ['a number without end', 'rotor.energy', '{"inertia": 1e999, "speed": 1}', DAMAGED, /inertia/],
    ['nothing for a figure', 'rotor.energy', '{"inertia": null, "speed": 1}', DAMAGED, /inertia/],
    ['a list of lists', 'mass.total', '{"masses": [[1]]}', DAMAGED, /masses/],
    [
      'a hundred thousand levels',
      'mass.total',
      `{"masses": ${'['.repeat(100_000)}${']'.repeat(100_000)}}`,
      DAMAGED,
      /^standard input: /,
    ],
  ])('answers %s with the place and the reason', async (_what, id, text, expected, message) => {
    const { code, out, err } = await fromInput(id, text);
    expect(err).toMatch(message);
    expect([code, out]).toEqual([expected, '']);
    expect(err.length).toBeLessThan(600);
  });

  it('does not find a file that is not there, and does not read a folder', async () => {
    const missing = join(folder, 'none.json');
    expect(await captured(['calc', 'run', 'rotor.energy', '--input', missing])).toMatchObject({
      code: USAGE,
      err: expect.stringContaining(`${missing}: there is no such file`),
    });
    expect(await captured(['calc', 'run', 'rotor.energy', '--input', folder])).toMatchObject({
      code: DAMAGED,
      err: expect.stringContaining(`${folder}: cannot be read`),
    });
  });
});
