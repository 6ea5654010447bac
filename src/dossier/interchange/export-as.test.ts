/** Figures for other programs: compilers take them, their values are those of the notebook, and names stay words. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figure, revisionOf, state } from '../../../tests/specimen/demo.ts';
import { requireTools, run } from '../../../tests/tools.ts';
import { figureNames } from '../../margins/index.ts';
import { fingerprint, type Prototype, type Revision } from '../../notebook/index.ts';
import { readCsv } from './csv.ts';
import { exportRevision } from './export-as.ts';
import { identifier, unitSuffix } from './identifier.ts';
import { commentText, cText, floatText, pythonText } from './source-text.ts';

const revision = revisionOf('C');
const prototype = state.prototype[revision.prototype] as Prototype;

/** Words that would end a comment, a text or a line, or begin code, in one language or the other. */
const HOSTILE = [
  '*/ int main(void) { return 1; } /*',
  '"; import os #',
  '""" + __import__("os").system("true") + """',
  'line\nimport os\nx = 1',
  'line\r#error broken',
  '\\',
  'ends with a backslash \\',
  '*\\/',
  '??/ ???/ ??)',
  '#define',
  'Grüße, 日本, 😀, \ud800',
  'turn \u202e round \u2028 and \u0085 on',
  '\0\x1b[31m',
  '%s %n {0} $x `id`',
];

function named(name: string): [Prototype, Revision] {
  const parts = Object.fromEntries(
    Object.entries(revision.parts).map(([id, part]) => [id, { ...part, name: `${name}` }]),
  );
  return [
    { ...prototype, name },
    { ...revision, parts, issuedAt: name },
  ];
}

let folder = '';
beforeAll(() => {
  requireTools('gcc', 'python3');
  folder = mkdtempSync(join(tmpdir(), 'figures-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** Compiles a program around the header and gives what it prints. */
function printedByC(header: string, body: string): string {
  file('design.h', header);
  const source = file(
    'main.c',
    `#include <stdio.h>\n#include "design.h"\nint main(void) { ${body} return 0; }\n`,
  );
  const program = join(folder, 'main');
  run('gcc', ['-std=c99', '-Wall', '-Wextra', '-Werror', '-pedantic', '-o', program, source]);
  return spawnSync(program, { encoding: 'utf8' }).stdout;
}

function printedByPython(module: string, body: string): string {
  file('design.py', module);
  return run('python3', [
    '-c',
    `import sys; sys.path.insert(0, ${JSON.stringify(folder)})\nimport design\n${body}`,
  ]);
}

describe('the C header', () => {
  const header = exportRevision(prototype, revision, 'c');

  it('gives the figures of the revision, to the last digit', () => {
    const names = ['LEAN_GAIN_m_per_rad', 'BALLAST_MASS_kg', 'ROTOR_SPEED_rad_per_s', 'LARGEST_LEAN_rad'];
    const body = names.map((name) => `printf("%.17g\\n", DESIGN_${name});`).join(' ');
    const printed = printedByC(header, body).trim().split('\n').map(Number);
    const expected = ['lean_gain', 'ballast_mass', 'rotor_speed', 'largest_lean'].map(
      (name) => figure('C', name).value,
    );
    expect(printed).toEqual(expected);
  });

  it('says which revision it is of, and counts the mass table', () => {
    const body =
      'printf("%s %s %s %d %.17g", DESIGN_PROTOTYPE, DESIGN_REVISION, DESIGN_FINGERPRINT, DESIGN_PARTS, DESIGN_PART_10_MASS_kg);';
    expect(printedByC(header, body)).toBe(
      `Sandpiper tool cart C ${fingerprint(revision)} 10 0.90000000000000002`,
    );
  });

  it('is not taken together with that of another revision', () => {
    const other = file('other.h', exportRevision(prototype, revisionOf('B'), 'c'));
    const both = file('both.c', `#include "${file('first.h', header)}"\n#include "${other}"\n`);
    expect(() => run('gcc', ['-fsyntax-only', both])).toThrow('included already');
  });

  it.each(HOSTILE)('keeps %j a word', (name) => {
    const printed = printedByC(exportRevision(...named(name), 'c'), 'fputs(DESIGN_PART_1_NAME, stdout);');
    expect(printed).toBe(name.replace('\ud800', '\ufffd').split('\0')[0]);
  });
});

describe('the module of Python', () => {
  it('gives the figures of the revision, to the last digit', () => {
    const module = exportRevision(prototype, revision, 'python');
    const printed = printedByPython(
      module,
      'print(repr(design.LEAN_GAIN_m_per_rad), design.PARTS, design.REVISION, design.FINGERPRINT)',
    );
    expect(printed.trim()).toBe(`${figure('C', 'lean_gain').value} 10 C ${fingerprint(revision)}`);
  });

  it.each(HOSTILE)('keeps %j a word', (name) => {
    const module = exportRevision(...named(name), 'python');
    const printed = printedByPython(
      module,
      'import json; print(json.dumps([design.PART_1_NAME, sorted(n for n in dir(design) if not n.startswith("_"))]))',
    );
    const [part, names] = JSON.parse(printed) as [string, string[]];
    expect(part).toBe(name.replace('\ud800', '\ufffd'));
    expect(names.filter((each) => !/^[A-Z][A-Z0-9]*(_[A-Za-z0-9]+)*$/.test(each))).toEqual([]);
  });
});

describe('CSV and JSON', () => {
  it('have the same names and values as the header', () => {
    const header = exportRevision(prototype, revision, 'c');
    const [head, ...rows] = readCsv(exportRevision(prototype, revision, 'csv')) ?? [];
    expect(head).toEqual(['name', 'title', 'value', 'unit', 'standard_uncertainty', 'how']);
    for (const [name = '', , value = ''] of rows) {
      if (value !== '') expect(header).toContain(`#define DESIGN_${name} (${floatText(Number(value))})`);
    }
    const json = JSON.parse(exportRevision(prototype, revision, 'json'));
    const parts = json.parts.flatMap((part: { figures: unknown[] }) => part.figures);
    expect([...json.figures, ...parts].map(({ identifier: name }) => name)).toEqual(
      rows.map(([name]) => name),
    );
    expect(json).toMatchObject({ revision: 'C', fingerprint: fingerprint(revision) });
  });

  it('leave a figure that is not known without a value, and say so in the header', () => {
    const { leanGain: _, ...loop } = revision.loop ?? { rateSource: 'rate gyro' };
    const lacking = { ...revision, loop };
    expect(exportRevision(prototype, lacking, 'c')).toContain(
      '/* DESIGN_LEAN_GAIN_m_per_rad is not defined: not entered */',
    );
    expect(exportRevision(prototype, lacking, 'csv')).toContain(
      'LEAN_GAIN_m_per_rad,gain on the lean,,m/rad,,not entered',
    );
  });
});

describe('the name of a figure', () => {
  it.each([
    ['rate_gain', 's', 'RATE_GAIN_s'],
    ['gimbal_friction', 'N·m·s/rad', 'GIMBAL_FRICTION_N_m_s_per_rad'],
    ['motor_speed_constant', 'rad/(s·V)', 'MOTOR_SPEED_CONSTANT_rad_per_s_V'],
    ['roll_inertia', 'kg·m²', 'ROLL_INERTIA_kg_m2'],
    ['pack_c_rate', '1/s', 'PACK_C_RATE_per_s'],
    ['pack_resistance', 'Ω', 'PACK_RESISTANCE_ohm'],
    ['overspeed_factor', '1', 'OVERSPEED_FACTOR'],
  ])('%s in %s is %s', (name, unit, written) => {
    expect(identifier(name, unit)).toBe(written);
  });

  it('is one of C and Python for every figure that there is, and no other’s', () => {
    const made = figureNames.map(({ name, unit }) => identifier(name, unit));
    for (const name of made) expect(name).toMatch(/^[A-Z][A-Z0-9_]*[A-Za-z0-9]+(_[A-Za-z0-9]+)*$/);
    const units = new Set(figureNames.map(({ unit }) => unit));
    expect(new Set([...units].map(unitSuffix)).size).toBe(units.size);
    expect(new Set(made).size).toBe(made.length);
  });

  it('is refused for a unit that has no plain one', () => {
    expect(() => unitSuffix('m/s/s')).toThrow(RangeError);
    expect(() => unitSuffix('‰')).toThrow(RangeError);
  });
});

describe('words in source text', () => {
  it('have no end of a comment and no line end in a comment', () => {
    for (const words of HOSTILE) {
      const comment = commentText(words);
      expect(comment).not.toMatch(/\*\/|\/\*|\\|\?\?|[\n\r\u0085\u2028\u2029\0]/);
    }
  });

  it('are written in plain ASCII as a constant', () => {
    for (const words of HOSTILE) {
      expect(cText(words)).toMatch(/^"[ -~]*"$/);
      expect(pythonText(words)).toMatch(/^"[ -~]*"$/);
    }
  });

  it.each([
    [4, '4.0'],
    [-0, '-0.0'],
    [1e21, '1e+21'],
    [5e-324, '5e-324'],
    [0.1, '0.1'],
  ])('the number %d is written %s', (value, written) => {
    expect(floatText(value)).toBe(written);
  });
});
