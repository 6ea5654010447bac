import { describe, expect, it } from 'vitest';
import type { ChecklistItem, Revision } from '../notebook/index.ts';
import { builtinCards, builtinChecklists, checklistsOf } from './builtin.ts';
import type { Subject } from './card.ts';
import { generateChecklist, readingList } from './generate.ts';
import { known, sample, sampleRevision } from './sample.ts';
import { checklistTemplate } from './template.ts';
import { LONGEST_PAUSE } from './templates.ts';

const RPM = Math.PI / 30;

function itemsOf(
  { prototype, revision, assessment }: Subject,
  templates = builtinChecklists,
): ChecklistItem[] {
  return generateChecklist(templates, prototype, revision, assessment);
}

function item(subject: Subject, id: string): ChecklistItem | undefined {
  return itemsOf(subject).find((candidate) => candidate.id === id);
}

function ids(subject: Subject): string[] {
  return itemsOf(subject).map(({ id }) => id);
}

function withPack(changes: Partial<NonNullable<Revision['pack']>>): Subject {
  return sample({ pack: { ...sampleRevision.pack, chemistry: 'lithium-ion', ...changes } });
}

function withRotor(changes: Partial<NonNullable<Revision['rotor']>>): Subject {
  return sample({ rotor: { material: 'steel', sections: {}, ...sampleRevision.rotor, ...changes } });
}

const bare = sample({
  rotor: undefined,
  gimbal: undefined,
  ballast: undefined,
  loop: undefined,
  pack: undefined,
  parts: {},
  fittings: { radio: false, independentKill: false, driven: false },
});

describe('a checklist for a complete vehicle', () => {
  it('asks for nothing that the revision does not give', () => {
    for (const { id, missing } of itemsOf(sample())) expect({ id, missing }).toEqual({ id, missing: [] });
  });

  it('puts the figures of the revision into the texts, in the units that people read', () => {
    expect(item(sample(), 'first-spin-up.enclosure-closed')?.text).toContain('215.6\u202FJ at 8000\u202Frpm');
    expect(item(sample(), 'captive-run.configuration')?.text).toContain('Sandpiper, revision C');
  });

  it('lists on each item every figure that its text, limits or condition use', () => {
    expect(item(sample(), 'first-spin-up.enclosure-closed')?.figures).toEqual([
      'rotor_energy',
      'rotor_speed',
    ]);
    expect(item(sample(), 'pack-inspection.rest-voltage')?.figures).toEqual([
      'pack_rest_minimum_voltage',
      'pack_full_voltage',
    ]);
  });

  it('keeps limits in SI: the rest voltage of three cells lies between 9.0 V and 12.6 V', () => {
    const limits = item(sample(), 'pack-inspection.rest-voltage')?.measured;
    expect(limits?.low).toBeCloseTo(9, 12);
    expect(limits?.high).toBeCloseTo(12.6, 12);
    expect(item(sample(), 'first-spin-up.speed-limit')?.measured?.high).toBeCloseTo(8000 * RPM, 9);
    expect(item(sample(), 'after-run.pack-temperature')?.measured?.high).toBe(333.15);
  });

  it('comes in the order before, during, after, whatever the order of the templates', () => {
    const order = { before: 0, during: 1, after: 2 };
    const phases = itemsOf(sample(), builtinChecklists.toReversed()).map(({ phase }) => order[phase]);
    expect(phases).toEqual(phases.toSorted());
  });

  it('arms last of all that comes before the run, on every card', () => {
    for (const card of builtinCards) {
      const before = itemsOf(sample(), [...checklistsOf(card)]).filter(({ phase }) => phase === 'before');
      expect(before.at(-1)?.id).toBe('clear-and-arm.arm');
    }
  });

  it('names every item once, even where a template is given twice', () => {
    const all = ids(sample());
    expect(new Set(all).size).toBe(all.length);
    expect(itemsOf(sample(), [...builtinChecklists, ...builtinChecklists])).toEqual(itemsOf(sample()));
  });
});

describe('items follow the design', () => {
  it('a vehicle without a radio is not asked to switch the transmitter off', () => {
    expect(ids(sample())).toContain('clear-and-arm.radio-loss');
    const fittings = { radio: false, independentKill: true, driven: false };
    expect(ids(sample({ fittings }))).not.toContain('clear-and-arm.radio-loss');
  });

  it('a vehicle without rotor, ballast and pack keeps the items that concern people', () => {
    const left = ids(bare);
    expect(left.some((id) => id.startsWith('pack-inspection.'))).toBe(false);
    expect(left.some((id) => id.startsWith('first-spin-up.'))).toBe(false);
    expect(left).toEqual(
      expect.arrayContaining([
        'bench-work.second-person',
        'bench-work.eye-protection',
        'clear-and-arm.stop-tested',
        'clear-and-arm.arm',
        'after-run.plug-out',
      ]),
    );
  });

  it('a rotor of more than 100 J asks for the proof record of its enclosure', () => {
    expect(ids(sample())).toContain('first-spin-up.enclosure-proof');
    expect(ids(withRotor({ largestSpeed: known(5000 * RPM) }))).not.toContain(
      'first-spin-up.enclosure-proof',
    );
  });

  it('a rotor of less than 10 J asks for a guard in the place of an enclosure', () => {
    const slow = ids(withRotor({ largestSpeed: known(1500 * RPM) }));
    expect(slow).toContain('first-spin-up.guard');
    expect(slow).not.toContain('first-spin-up.enclosure-closed');
  });

  it('a rotor past its yield leaves no answer but to stop', () => {
    const weak = item(withRotor({ yieldStrength: known(20e6) }), 'first-spin-up.stress-fails');
    expect(weak?.hold).toBe(true);
    expect(weak?.choices?.every(({ stops }) => stops)).toBe(true);
    expect(ids(withRotor({ yieldStrength: known(20e6) }))).not.toContain('first-spin-up.stress-holds');
    expect(ids(sample())).not.toContain('first-spin-up.stress-fails');
  });

  it('a fuse above the limit of the pack leaves no answer but to stop', () => {
    expect(ids(sample())).not.toContain('pack-inspection.fuse-over-pack');
    const item45 = item(withPack({ fuseRating: known(45) }), 'pack-inspection.fuse-over-pack');
    expect(item45?.choices?.every(({ stops }) => stops)).toBe(true);
  });

  it('one cell is read once, several are read lowest and highest with their spread', () => {
    const one = ids(withPack({ cellsInSeries: 1 }));
    expect(one).toContain('pack-inspection.lowest-cell');
    expect(one).not.toContain('pack-inspection.highest-cell');
    expect(one).not.toContain('pack-inspection.spread');
  });

  it('above 10 000 rpm the finer balance grade is asked, and only that', () => {
    const fast = ids(withRotor({ largestSpeed: known(12_000 * RPM) }));
    expect(fast).toContain('first-spin-up.balance-record-fast');
    expect(fast).not.toContain('first-spin-up.balance-record');
  });

  it('iron phosphate cells carry their own limits', () => {
    const limits = item(
      withPack({ chemistry: 'lithium iron phosphate' }),
      'pack-inspection.lowest-cell',
    )?.measured;
    expect(limits).toMatchObject({ low: 2.5, high: 3.65 });
  });
});

describe('an item that lacks a figure', () => {
  it('stays and asks, where its condition cannot be decided', () => {
    const unknown = item(withRotor({ density: undefined }), 'first-spin-up.enclosure-closed');
    expect(unknown?.missing).toEqual(['rotor_density']);
    expect(unknown?.text).toMatch(/^If it applies, which is not known yet: .*: not known\]/);
  });

  it('stays and asks, where its limit cannot be worked out', () => {
    const unknown = item(withPack({ cellsInSeries: undefined }), 'pack-inspection.rest-voltage');
    expect(unknown?.missing).toEqual(['cells_in_series']);
    expect(unknown?.measured).not.toHaveProperty('low');
    expect(unknown?.measured).not.toHaveProperty('high');
  });

  it('vanishes all the same where the rest of its condition is enough to rule it out', () => {
    const noPack = sample({ pack: undefined, parts: {} });
    expect(ids(noPack)).not.toContain('pack-inspection.fuse-over-pack');
  });

  it('asks for the equipment that stands in the mass table but on no page of its own', () => {
    const inTableOnly = sample({ rotor: undefined });
    expect(item(inTableOnly, 'first-spin-up.rotor-sound')).toBeDefined();
    expect(item(inTableOnly, 'first-spin-up.speed-limit')?.missing).toContain('rotor_speed');
  });

  it('asks too where a figure makes the limit meaningless, such as a rotor speed of nought', () => {
    const still = item(withRotor({ largestSpeed: known(0) }), 'first-spin-up.balance-record');
    expect(still?.missing.length).toBeGreaterThan(0);
    expect(still?.measured).not.toHaveProperty('high');
  });
});

describe('every revision', () => {
  const subjects = {
    complete: sample(),
    bare,
    'without pack': sample({ pack: undefined }),
    'without ballast': sample({ ballast: undefined }),
    slide: sample({ ballast: { kind: 'slide', height: known(0.2), travel: known(0.06) } }),
    'just begun': sample({ rotor: { material: '', sections: {} }, pack: { chemistry: 'lithium-ion' } }),
  };

  it.each(Object.entries(subjects))(
    '%s: no text is left with braces, no limit with nonsense',
    (_, subject) => {
      for (const { text, detail, measured } of itemsOf(subject)) {
        expect(text + detail).not.toMatch(/\{\{|\}\}|NaN|undefined|Infinity/);
        for (const limit of [measured?.low, measured?.high]) {
          if (limit !== undefined) expect(Number.isFinite(limit)).toBe(true);
        }
      }
    },
  );

  it.each(Object.entries(subjects))('%s: at most nine items come in one pause', (_, subject) => {
    // Of a pair of opposite items that a figure decides between, both wait while it is missing.
    const put = itemsOf(subject).filter(({ missing }) => missing.length === 0);
    const counts = new Map<string, number>();
    for (const { pause } of put) counts.set(pause, (counts.get(pause) ?? 0) + 1);
    expect(Math.max(...counts.values())).toBeLessThanOrEqual(LONGEST_PAUSE);
  });
});

describe('the stop procedure', () => {
  it('is read and never ticked', () => {
    const { prototype, revision, assessment } = sample();
    const read = readingList(builtinChecklists, prototype, revision, assessment);
    expect(read.map(({ id }) => id)).toContain('abnormal-events.smoke-or-flame');
    expect(ids(sample()).some((id) => id.startsWith('abnormal-events.'))).toBe(false);
  });

  it('names no extinguishing agent, there or anywhere', () => {
    const { prototype, revision, assessment } = sample();
    const all = [...itemsOf(sample()), ...readingList(builtinChecklists, prototype, revision, assessment)];
    const words = all.map(({ text, detail }) => `${text} ${detail}`).join(' ');
    expect(words).not.toMatch(/\b(water|sand|foam|powder|CO2|CO₂|halon|class D|blanket)\b/i);
    expect(words).toMatch(/local fire plan/);
  });
});

describe('a template of one’s own', () => {
  const template = checklistTemplate.parse({
    id: 'club',
    version: 1,
    title: 'Club',
    purpose: 'Our own.',
    pauses: [
      {
        title: 'Ours',
        items: [
          {
            id: 'limit',
            kind: 'measured',
            text: 'Half the speed is {{rotor_speed / 2 | rpm}}, or {{rotor_speed in rpm}} whole.',
            measured: { unit: 'rpm', high: 'rotor_speed / 2', example: '4000 rpm' },
            source: 'project choice',
          },
          { id: 'hold', kind: 'hold', text: 'Hold.', source: 'project choice' },
        ],
      },
    ],
  });

  it('may print an expression in a unit of its choice', () => {
    expect(itemsOf(sample(), [template])[0]?.text).toBe(
      'Half the speed is 4000\u202Frpm, or 8000\u202Frpm whole.',
    );
  });

  it('makes a hold point of every item of kind hold', () => {
    expect(itemsOf(sample(), [template])[1]?.hold).toBe(true);
  });
});
