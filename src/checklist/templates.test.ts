import { describe, expect, it } from 'vitest';
import abnormalEvents from '../../templates/checklists/abnormal-events.json' with { type: 'json' };
import { phrase } from '../quantity/index.ts';
import { builtinCards, builtinChecklists } from './builtin.ts';
import type { TemplateItem } from './template.ts';
import { readCardTemplate, readChecklistTemplate, readTemplate, SHORTEST_PAUSE } from './templates.ts';

const sound = {
  id: 'club',
  version: 1,
  title: 'Club',
  purpose: 'Our own.',
  pauses: [
    {
      title: 'Ours',
      items: [
        {
          id: 'one',
          kind: 'measured',
          when: 'has_pack and pack_energy > 50 W·h',
          text: 'Read the pack, {{pack_full_voltage}} at most.',
          measured: { unit: 'V', high: 'pack_full_voltage', example: '12 V' },
          source: 'project choice',
        },
      ],
    },
  ],
};

/** The sound template with its one item changed. */
function withItem(changes: Readonly<Record<string, unknown>>): unknown {
  const [pause] = sound.pauses;
  return { ...sound, pauses: [{ ...pause, items: [{ ...pause?.items[0], ...changes }] }] };
}

function refusal(json: unknown): { code: string; place: string; reason: string } {
  const result = readTemplate(json);
  if (result.ok) throw new Error('the template was taken');
  return { code: result.problem.code, ...phrase(result.problem) };
}

describe('the templates that come with the program', () => {
  const templates = [...builtinChecklists, ...builtinCards];

  it.each(templates.map((template) => [template.id, template] as const))(
    '%s reads without a warning',
    (_, template) => {
      const result = readTemplate(template);
      expect(result).toMatchObject({ ok: true, value: { warnings: [] } });
    },
  );

  it('have ids of their own', () => {
    const ids = templates.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('cover what a spin-up can go wrong by', () => {
    const ids = new Set(
      builtinChecklists.flatMap(({ id, pauses }) =>
        pauses.flatMap(({ items }) => items.map((item) => `${id}.${item.id}`)),
      ),
    );
    for (const wanted of [
      'first-spin-up.speed-limit',
      'first-spin-up.enclosure-closed',
      'first-spin-up.fasteners',
      'pack-inspection.cells-in-series',
      'pack-inspection.lowest-cell',
      'pack-inspection.highest-cell',
      'pack-inspection.rest-voltage',
      'clear-and-arm.rotor-plane',
      'clear-and-arm.radio-loss',
      'clear-and-arm.stop-tested',
      'clear-and-arm.eye-protection',
      'clear-and-arm.two-people',
      'clear-and-arm.abort-aloud',
      'clear-and-arm.arm',
      'clear-and-arm.keep-clear',
      'bench-work.fire-provision',
      'after-run.coast-down-wait',
    ]) {
      expect(ids).toContain(wanted);
    }
  });

  it('set no keep-clear distance: the site types its own', () => {
    const item = itemNamed('clear-and-arm', 'keep-clear');
    expect(item?.measured).toEqual({ unit: 'm', example: '4 m' });
    expect(item?.source).toContain('no publication');
  });

  it('call a limit of their own a project choice', () => {
    const own: readonly (readonly [string, string])[] = [
      ['pack-inspection', 'spread'],
      ['pack-inspection', 'strapped'],
      ['captive-run', 'tether-strength'],
      ['captive-run', 'tether-reach'],
      ['first-spin-up', 'enclosure-proof'],
      ['clear-and-arm', 'radio-loss'],
      ['after-run', 'coast-down-wait'],
    ];
    for (const [checklist, id] of own) expect(itemNamed(checklist, id)?.source).toContain('project choice');
  });

  it('have pauses of at least five items before a run', () => {
    for (const pause of builtinChecklists.flatMap(({ pauses }) => pauses)) {
      if (pause.phase === 'before') expect(pause.items.length).toBeGreaterThanOrEqual(SHORTEST_PAUSE);
    }
  });
});

function itemNamed(checklist: string, id: string): TemplateItem | undefined {
  const template = builtinChecklists.find((candidate) => candidate.id === checklist);
  return template?.pauses.flatMap(({ items }) => items).find((item) => item.id === id);
}

describe('a template of one’s own', () => {
  it('is taken where it makes sense', () => {
    expect(readTemplate(sound)).toMatchObject({ ok: true, value: { kind: 'checklist', warnings: [] } });
  });

  it.each([
    ['a name that no figure has', { text: 'Spin at {{rotor_sped}}.' }, 'template.unknown-name'],
    ['an unknown name in its condition', { when: 'has_wings' }, 'template.unknown-name'],
    ['an expression that does not end', { when: 'pack_energy >' }, 'expression'],
    ['a limit that cannot be read', { measured: { unit: 'V', low: '3 +', example: '3 V' } }, 'expression'],
    ['a unit that nobody knows', { measured: { unit: 'furlong', example: '3' } }, 'quantity.unknown-unit'],
    ['an unknown unit in its text', { text: 'At {{pack_full_voltage | furlong}}.' }, 'quantity.unknown-unit'],
    [
      'a limit of another kind than its unit',
      { measured: { unit: 'V', high: 'pack_capacity', example: '3 V' } },
      'template.unit-mismatch',
    ],
    [
      'an example that is no reading',
      { measured: { unit: 'V', example: 'twelve volts' } },
      'quantity.not-a-number',
    ],
    ['a figure printed in a unit of another kind', { text: '{{pack_energy | V}}' }, 'template.unit-mismatch'],
    ['a condition that compares unlike things', { when: 'pack_energy > 3 V' }, 'expression'],
    ['braces left open', { text: 'At {{pack_full_voltage.' }, 'template.unclosed'],
    ['a measured item without what is measured', { measured: undefined }, 'template.lacks'],
    ['a choice without choices', { kind: 'choice', measured: undefined }, 'template.lacks'],
    ['an empty source', { source: ' ' }, 'template.no-source'],
    ['no source', { source: undefined }, 'template.no-source'],
    ['a field that the form does not know', { colour: 'red' }, 'template.not-the-form'],
    ['an id with a stroke in it', { id: 'a/b' }, 'template.not-the-form'],
  ])('is refused for %s', (_, changes, code) => {
    const refused = refusal(withItem(changes));
    expect(refused.code.startsWith(code)).toBe(true);
    expect(refused.place).toContain('club');
    expect(refused.reason).not.toMatch(/\{\w+\}/);
  });

  it('is refused for an id used twice, even in two pauses', () => {
    const [pause] = sound.pauses;
    expect(refusal({ ...sound, pauses: [pause, pause] }).code).toBe('template.duplicate');
  });

  it('is refused for the same answer offered twice', () => {
    const choices = [
      { text: 'Yes', stops: false },
      { text: 'Yes', stops: true },
    ];
    expect(refusal(withItem({ kind: 'choice', measured: undefined, choices })).code).toBe(
      'template.duplicate',
    );
  });

  it.each([null, 3, 'text', [], {}, { pauses: 7 }])('is refused, not thrown over, when it is %j', (json) => {
    expect(refusal(json).code).toBe('template.not-the-form');
  });

  it('is warned about a pause of more than nine items', () => {
    const items = Array.from({ length: 10 }, (_, index) => ({
      id: `item-${index}`,
      kind: 'tick',
      text: 'Do it.',
      source: 'project choice',
    }));
    const result = readChecklistTemplate({ ...sound, pauses: [{ title: 'Long', items }] });
    expect(result).toMatchObject({ ok: true, value: { warnings: [{ place: 'club, Long' }] } });
  });

  it('is warned about a killer item that stands behind an ordinary one', () => {
    const tick = { kind: 'tick', text: 'Do it.', source: 'project choice' };
    const items = [
      { id: 'a', ...tick },
      { id: 'b', ...tick, critical: true },
    ];
    const result = readChecklistTemplate({ ...sound, pauses: [{ title: 'Order', items }] });
    expect(result.ok && result.value.warnings).toHaveLength(1);
  });
});

describe('a card template', () => {
  const card = builtinCards[0];

  it('may name only checklists that there are', () => {
    const result = readCardTemplate({ ...card, checklists: ['no-such-list'] }, ['bench-work']);
    expect(result).toMatchObject({ ok: false, problem: { code: 'template.unknown-checklist' } });
  });

  it('is refused for a prediction that is no figure', () => {
    expect(refusal({ ...card, predictions: ['luck'] }).code).toBe('template.unknown-name');
  });

  it('is refused for a reading in a unit of another kind than its prediction', () => {
    const readings = [{ id: 'speed', label: 'Speed', unit: 'V', name: 'rotor_speed' }];
    expect(refusal({ ...card, readings }).code).toBe('template.unit-mismatch');
  });
});

it('the stop procedure is marked as read, not ticked', () => {
  expect(readChecklistTemplate(abnormalEvents)).toMatchObject({
    ok: true,
    value: { template: { use: 'read' } },
  });
});
