/**
 * What the checklists put in front of people, against what is published: the limits as they come out of a whole
 * revision, the risk matrix cell by cell, the rules for the length of a pause.
 */
import { describe, expect, it } from 'vitest';
import {
  builtinCards,
  builtinChecklists,
  checklistsOf,
  generateChecklist,
  type Probability,
  riskOf,
  type Severity,
  waitTime,
} from '../../src/checklist/index.ts';
import { assess } from '../../src/margins/index.ts';
import type { ChecklistItem, KnownQuantity, Prototype, Revision, Run } from '../../src/notebook/index.ts';
import { toDisplay } from '../../src/quantity/index.ts';
import { expectPrinted, type PublishedCheck } from './printed.ts';

const prototype: Prototype = {
  name: 'Published',
  kind: 'pendulum rig',
  description: '',
  requirements: { overspeedFactor: known(1.2) },
  createdAt: '2025-01-01T00:00:00Z',
};

const underWay: Omit<Run, 'items'> = {
  prototype: 'p',
  revision: 'r',
  card: 'c',
  number: 1,
  startedAt: '2025-01-01T00:00:00Z',
  startedBy: 'A',
  fingerprint: '',
  answers: {},
  status: 'cleared',
  summary: '',
  readings: {},
  notes: {},
  attachments: {},
};

function known(si: number): KnownQuantity {
  return { typed: String(si), si, u: 0, basis: 'measured' };
}

function revision(changes: Partial<Revision>): Revision {
  return {
    prototype: 'p',
    letter: 'A',
    status: 'draft',
    reason: '',
    createdAt: '2025-01-01T00:00:00Z',
    parts: {},
    fittings: { radio: true, independentKill: true, driven: true },
    ...changes,
  };
}

function itemsFor(changes: Partial<Revision>): ChecklistItem[] {
  const made = revision(changes);
  return generateChecklist(builtinChecklists, prototype, made, assess(prototype, made));
}

/** A limit of an item, in the unit that people read it in. */
function limit(changes: Partial<Revision>, id: string, end: 'low' | 'high'): number {
  const measured = itemsFor(changes).find((item) => item.id === id)?.measured;
  const si = measured?.[end];
  if (measured === undefined || si === undefined) throw new Error(`${id} has no limit`);
  return toDisplay(si, measured.unit);
}

/** Seconds that a wait asks for in a run that has measured nothing. */
function waitOf(changes: Partial<Revision>, id: string): number {
  const items = itemsFor(changes);
  const run: Run = { ...underWay, items };
  const time = waitTime(run, id);
  if (!time.ok) throw new Error(time.problem.code);
  return time.value.seconds;
}

function pack(
  cellsInSeries: number,
  ampereHours: number,
  chemistry: 'lithium-ion' | 'lithium iron phosphate' = 'lithium-ion',
): Partial<Revision> {
  return { pack: { chemistry, cellsInSeries, capacity: known(ampereHours * 3600) } };
}

const RPM = Math.PI / 30;
const DENSITY = 7850;

/** A ring of a given mass: thick enough for it, at a speed in rpm. Radii in millimetres; bore 0 for a disc. */
function ring(mass: number, outer: number, bore: number, speed: number): Partial<Revision> {
  const [outerRadius, boreRadius] = [outer / 1000, bore / 1000];
  const thickness = mass / (DENSITY * Math.PI * (outerRadius ** 2 - boreRadius ** 2));
  return {
    rotor: {
      material: 'steel',
      density: known(DENSITY),
      largestSpeed: known(speed * RPM),
      sections: {
        ring: {
          name: 'ring',
          order: 1,
          outerDiameter: known(2 * outerRadius),
          boreDiameter: known(2 * boreRadius),
          thickness: known(thickness),
        },
      },
    },
  };
}

function figure(changes: Partial<Revision>, name: string): number {
  const result = assess(prototype, revision(changes)).figures.get(name)?.result;
  if (!result?.ok) throw new Error(`${name} is not known`);
  return result.value.value;
}

const MIT = 'MIT course 2.007, battery safety: working window of a pack of two cells';
const UW = 'University of Washington EH&S, lithium battery practices';
const DERIVED =
  'DERIVED from the radii, mass and speed by elementary mechanics in an independent computation; no publication';
const BALANCE =
  'ISO 21940-11 (ISO 1940) formula U = 9549 G m / n, constant from memory; product by independent computation';

const limits: readonly PublishedCheck[] = [
  {
    id: 'pack of two, lowest',
    source: MIT,
    what: 'V',
    printed: '6.0',
    computed: () => limit(pack(2, 0.5), 'pack-inspection.rest-voltage', 'low'),
  },
  {
    id: 'pack of two, highest',
    source: MIT,
    what: 'V',
    printed: '8.4',
    computed: () => limit(pack(2, 0.5), 'pack-inspection.rest-voltage', 'high'),
  },
  {
    id: 'cell, lowest at rest',
    source: UW,
    what: 'V',
    printed: '3.0',
    computed: () => limit(pack(4, 2), 'pack-inspection.lowest-cell', 'low'),
  },
  {
    id: 'cell, highest',
    source: UW,
    what: 'V',
    printed: '4.2',
    computed: () => limit(pack(4, 2), 'pack-inspection.highest-cell', 'high'),
  },
  {
    id: 'iron phosphate cell, lowest',
    source: 'iron phosphate charge tables in common use (two, of low authority)',
    what: 'V',
    printed: '2.5',
    computed: () => limit(pack(4, 2, 'lithium iron phosphate'), 'pack-inspection.lowest-cell', 'low'),
  },
  {
    id: 'iron phosphate cell, highest',
    source: 'iron phosphate charge tables in common use (two, of low authority)',
    what: 'V',
    printed: '3.65',
    computed: () => limit(pack(4, 2, 'lithium iron phosphate'), 'pack-inspection.highest-cell', 'high'),
  },
  {
    id: 'pack after the run',
    source: 'Duke University combat robotics, battery management (2025): too hot to hold, treat as dangerous',
    what: '°C',
    printed: '60',
    computed: () => limit(pack(4, 2), 'after-run.pack-temperature', 'high'),
  },
  {
    id: 'pack of 2.2 A·h, largest charging current at 1 C',
    source:
      'University of Maryland robotics facility: 1 C; University of Tartu robotics course: 1 A·h at 10 C is 10 A',
    what: 'A',
    printed: '2.2',
    computed: () => limit(pack(3, 2.2), 'charging-and-storage.charging-current', 'high'),
  },
  {
    id: 'pack before charging, coldest',
    source: 'charge window of a cell guide (low authority)',
    what: '°C',
    printed: '0',
    computed: () => limit(pack(3, 2.2), 'charging-and-storage.pack-temperature', 'low'),
  },
  {
    id: 'pack before charging, warmest',
    source: 'charge window of a cell guide (low authority)',
    what: '°C',
    printed: '45',
    computed: () => limit(pack(3, 2.2), 'charging-and-storage.pack-temperature', 'high'),
  },
  {
    id: 'cell off the charger, highest',
    source: UW,
    what: 'V',
    printed: '4.2',
    computed: () => limit(pack(3, 2.2), 'charging-and-storage.highest-cell', 'high'),
  },
  {
    id: 'pack in store, coldest',
    source: UW,
    what: '°C',
    printed: '5',
    computed: () => limit(pack(3, 2.2), 'charging-and-storage.storage-temperature', 'low'),
  },
  {
    id: 'pack in store, warmest',
    source: UW,
    what: '°C',
    printed: '20',
    computed: () => limit(pack(3, 2.2), 'charging-and-storage.storage-temperature', 'high'),
  },
  {
    id: 'overspeed proof of a rotor with nothing to run away to, over its working speed',
    source: '14 CFR 33.27(a), amendment 33-31: 120 % of the highest permitted speed',
    what: '1',
    printed: '1.20',
    computed: () => limit(ring(0.3, 50, 40, 10_000), 'overspeed-proof.proof-speed', 'low') / 10_000,
  },
  {
    id: 'overspeed proof, time at speed',
    source: '14 CFR 33.27(a), amendment 33-31: must not burst in 5 minutes',
    what: 'min',
    printed: '5',
    computed: () => waitOf(ring(0.3, 50, 40, 10_000), 'overspeed-proof.dwell') / 60,
  },
  {
    id: 'controller default, cut-off under load',
    source: 'default of one open motor controller (low authority); project choice here',
    what: 'V per cell',
    printed: '3.3',
    computed: () => limit(pack(4, 2), 'first-spin-up.cell-under-load', 'low'),
  },
  {
    id: 'energy of a pack of two',
    source: 'US DOT PHMSA letter 14-0218: 7.4 V, 1100 mA·h; product by independent computation',
    what: 'W·h',
    printed: '8.14',
    computed: () => figure(pack(2, 1.1), 'pack_energy') / 3600,
  },
  {
    id: 'unbalance, 0.3 kg, G 6.3, 10 000 rpm',
    source: BALANCE,
    what: 'g·mm',
    printed: '1.80',
    computed: () => limit(ring(0.3, 50, 40, 10_000), 'first-spin-up.balance-record', 'high'),
  },
  {
    id: 'unbalance, 0.3 kg, G 2.5, 20 000 rpm',
    source: BALANCE,
    what: 'g·mm',
    printed: '0.36',
    computed: () => limit(ring(0.3, 40, 30, 20_000), 'first-spin-up.balance-record-fast', 'high'),
  },
];

/** Mass kg, radii mm, rpm; energy J, rim m/s, momentum N·m·s. */
const rotors: readonly (readonly [
  string,
  Partial<Revision>,
  energy: string,
  rim: string,
  momentum: string,
])[] = [
  ['ring 0.30 kg, 50/40 mm, 10 000 rpm', ring(0.3, 50, 40, 10_000), '337', '52.4', '0.64'],
  ['disc 0.30 kg, 50 mm, 10 000 rpm', ring(0.3, 50, 0, 10_000), '206', '52.4', '0.39'],
  ['ring 0.30 kg, 40/30 mm, 20 000 rpm', ring(0.3, 40, 30, 20_000), '822', '83.8', '0.79'],
  ['ring 0.50 kg, 60/50 mm, 20 000 rpm', ring(0.5, 60, 50, 20_000), '3345', '125.7', '3.19'],
];

const energies: readonly PublishedCheck[] = rotors.flatMap(([id, rotor, energy, rim, momentum]) => [
  {
    id: `${id}: energy`,
    source: DERIVED,
    what: 'J',
    printed: energy,
    computed: () => figure(rotor, 'rotor_energy'),
  },
  {
    id: `${id}: rim`,
    source: DERIVED,
    what: 'm/s',
    printed: rim,
    computed: () => figure(rotor, 'rotor_rim_speed'),
  },
  {
    id: `${id}: momentum`,
    source: DERIVED,
    what: 'N·m·s',
    printed: momentum,
    computed: () => figure(rotor, 'spin_momentum'),
  },
]);

describe('limits and energies on the checklists', () => {
  it.each([...limits, ...energies])('$id ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});

describe('packs and the 100 W·h line of passenger aircraft (US TSA)', () => {
  const asked = (changes: Partial<Revision>): boolean =>
    itemsFor(changes).some(({ id, missing }) => id === 'pack-inspection.transport' && missing.length === 0);

  it('six cells of 5 A·h hold 111 W·h and are asked about', () => {
    expectPrinted(figure(pack(6, 5), 'pack_energy') / 3600, '111');
    expect(asked(pack(6, 5))).toBe(true);
  });

  it('six cells cross the line at 4.50 A·h (DERIVED)', () => {
    expect(asked(pack(6, 4.5))).toBe(false);
    expect(asked(pack(6, 4.51))).toBe(true);
  });

  it('the accepted and the refused example of a freight agent, 26 W·h and 120 W·h, fall on the two sides', () => {
    expect(asked(pack(1, 26 / 3.7))).toBe(false);
    expect(asked(pack(1, 120 / 3.7))).toBe(true);
  });
});

describe('the risk matrix (MIL-STD-882E, table III)', () => {
  const columns: readonly Severity[] = ['I', 'II', 'III', 'IV'];
  const table: Readonly<Record<Probability, readonly string[]>> = {
    A: ['High', 'High', 'Serious', 'Medium'],
    B: ['High', 'High', 'Serious', 'Medium'],
    C: ['High', 'Serious', 'Medium', 'Low'],
    D: ['Serious', 'Medium', 'Medium', 'Low'],
    E: ['Medium', 'Medium', 'Medium', 'Low'],
  };

  it.each(Object.entries(table))('row %s', (probability, row) => {
    expect(columns.map((severity) => riskOf(severity, probability as Probability))).toEqual(row);
  });

  it('calls Improbable × Marginal Medium, where one public transcription prints Low', () => {
    expect(riskOf('III', 'E')).toBe('Medium');
  });
});

describe('the form of the lists', () => {
  const whole: Partial<Revision> = {
    ...ring(0.3, 50, 40, 10_000),
    ...pack(4, 2),
    ballast: { kind: 'upright arm' },
    gimbal: {},
    actuator: {},
    loop: { rateSource: 'rate gyro' },
  };

  // Digest of A. Gawande, The Checklist Manifesto (2009): 5 to 7, from memory 5 to 9 items a pause.
  it('a pause has at most nine items, whatever the vehicle', () => {
    const counts = new Map<string, number>();
    for (const { pause, missing } of itemsFor(whole)) {
      if (missing.length === 0) counts.set(pause, (counts.get(pause) ?? 0) + 1);
    }
    expect(Math.max(...counts.values())).toBeLessThanOrEqual(9);
  });

  // Not a figure of a publication: what the sets have to cover between them.
  it('there are more than sixty items, each with its source, in sets from the bench to abnormal events', () => {
    const items = builtinChecklists.flatMap(({ pauses }) => pauses.flatMap((pause) => pause.items));
    expect(items.length).toBeGreaterThan(60);
    for (const { source } of items) expect(source.trim()).not.toBe('');
    const events = builtinChecklists.find(({ id }) => id === 'abnormal-events');
    const words = JSON.stringify(events);
    for (const event of [
      'Smoke or flame',
      'Parts thrown',
      'Rotor faster',
      'Vehicle goes',
      'Link lost',
      'Somebody hurt',
    ]) {
      expect(words).toContain(event);
    }
  });

  // Degani and Wiener, NASA CR-177549 (1990): critical items early in their chunk (wording from memory).
  it('killer items come first in their pause', () => {
    for (const pause of builtinChecklists.flatMap(({ pauses }) => pauses)) {
      const marks = pause.items.map(({ critical }) => critical);
      expect(marks).toEqual(marks.toSorted((a, b) => Number(b) - Number(a)));
    }
  });

  // Degani and Wiener (1990, 1993): the answer is the value or state that is wanted, not “checked”.
  it('choices answer with the state seen, never with “checked” or “set”', () => {
    const answers = builtinChecklists
      .flatMap(({ pauses }) => pauses)
      .flatMap(({ items }) => items)
      .flatMap(({ choices = [] }) => choices.map(({ text }) => text));
    expect(answers.length).toBeGreaterThan(10);
    for (const answer of answers) expect(answer).not.toMatch(/^(checked|set|ok|done|yes)$/i);
  });

  // 29 CFR 1926.307, WAC 296-806-40504: rules go by enclosure, not by distance; no stand-off for small rotors was found.
  it('no item carries a stand-off distance as a limit', () => {
    const item = itemsFor(whole).find(({ id }) => id === 'clear-and-arm.keep-clear');
    expect(item?.measured).toEqual({ unit: 'm', example: '4 m' });
    expect(item?.source).toMatch(/rule of the site/);
  });

  it('every card arms last and ends by making safe', () => {
    for (const card of builtinCards) {
      const made = revision(whole);
      const items = generateChecklist(checklistsOf(card), prototype, made, assess(prototype, made));
      expect(items.filter(({ phase }) => phase === 'before').at(-1)?.id).toBe('clear-and-arm.arm');
      expect(items.at(-1)?.phase).toBe('after');
    }
  });
});
