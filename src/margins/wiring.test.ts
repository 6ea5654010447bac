/** The wiring as a whole: every row fits the calculation that it names, in every situation that a revision can be in. */
import { describe, expect, it } from 'vitest';
import { parseUnit, sameDimension, type Unit } from '../quantity/index.ts';
import { constantSpecs } from './constants.ts';
import { factApplies, factSpecs, resolveFact } from './facts.ts';
import type { FieldSpec } from './field.ts';
import { marginSpecs } from './margin.ts';
import { bodyFields, partFields, sectionFields } from './part-fields.ts';
import { bodyCalculation } from './part-figures.ts';
import { registry } from './registry.ts';
import { roleFacts } from './role-facts.ts';
import { figureNames } from './scope.ts';
import { everySituation, type Situation } from './situation.ts';
import { waiting, wiring } from './wiring.ts';
import type { Feed, Row } from './wiring-row.ts';

const ARM = { kind: 'upright arm' } as const;
const SLIDE = { kind: 'slide' } as const;

function unit(text: string): Unit {
  const parsed = parseUnit(text);
  if (!parsed.ok) throw new Error(`unit ${text}`);
  return parsed.value;
}

/** Both in SI, and of one dimension; an angle counts as a number, so N·m and N·m/rad are the same. */
function fits(a: string, b: string): boolean {
  return unit(a).factor === 1 && unit(b).factor === 1 && sameDimension(unit(a).dimension, unit(b).dimension);
}

/** SI unit of each name that a row can be fed from, in a situation. */
function unitsIn(situation: Situation): ReadonlyMap<string, string> {
  const revision = situation.drive === undefined ? {} : { ballast: situation.drive === 'arm' ? ARM : SLIDE };
  const units = new Map<string, string>();
  for (const spec of factSpecs) {
    if (factApplies(spec, revision)) units.set(spec.name, resolveFact(spec, revision).unit);
  }
  for (const spec of [...constantSpecs, ...roleFacts]) units.set(spec.name, spec.unit);
  for (const { figures, choice } of waiting) {
    if (choice(situation) !== undefined) for (const spec of figures) units.set(spec.name, spec.unit);
  }
  for (const row of applying(situation))
    for (const spec of Object.values(row.gives)) units.set(spec.name, spec.unit);
  return units;
}

function applying(situation: Situation): readonly Row[] {
  return wiring.filter((row) => row.when?.(situation) ?? true);
}

const COLUMN_UNITS: Readonly<Record<string, string>> = {
  mass: 'kg',
  forward: 'm',
  left: 'm',
  height: 'm',
  own_inertia: 'kg·m²',
  outer_diameter: 'm',
  bore_diameter: 'm',
  thickness: 'm',
};

function unitOfFeed(feed: Feed, units: ReadonlyMap<string, string>): string | undefined {
  if (typeof feed === 'string') return units.get(feed);
  return 'ifKnown' in feed ? units.get(feed.ifKnown) : COLUMN_UNITS[feed.of];
}

/** Gains on a slide move it by metres for each radian; the loop has them as numbers beside `commandToOffset`, 1 m. */
const GAINS_ON_SLIDE = new Set(['leanGain', 'rateGain', 'gimbalGain']);

describe('the wiring', () => {
  it.each(
    wiring.map(
      (row) =>
        [
          Object.values(row.gives)
            .map(({ name }) => name)
            .join(', '),
          row,
        ] as const,
    ),
  )('of %s names a calculation, its inputs and its outputs', (_, row) => {
    const calculation = registry.get(row.calculation);
    expect(calculation, row.calculation).toBeDefined();
    for (const input of Object.keys(row.inputs))
      expect(Object.keys(calculation?.inputs ?? {})).toContain(input);
    for (const output of Object.keys(row.gives))
      expect(Object.keys(calculation?.outputs ?? {})).toContain(output);
    for (const [input, symbol] of Object.entries(calculation?.inputs ?? {})) {
      const fed = row.inputs[input] !== undefined;
      expect(fed || symbol.default !== undefined, `${row.calculation} is given its ${input}`).toBe(true);
      const feed = row.inputs[input];
      if (feed !== undefined && typeof feed === 'object') {
        expect('ifKnown' in feed ? symbol.default !== undefined : symbol.list, input).toBe(true);
      }
    }
  });

  it('feeds every input from a figure that exists, in its unit', () => {
    for (const situation of everySituation()) {
      const units = unitsIn(situation);
      for (const row of applying(situation)) {
        const calculation = registry.get(row.calculation);
        for (const [input, feed] of Object.entries(row.inputs)) {
          const symbol = calculation?.inputs[input];
          const fed = unitOfFeed(feed, units);
          const what = `${row.calculation}, ${input} from ${JSON.stringify(feed)} in ${JSON.stringify(situation)}`;
          if (fed === undefined) {
            expect(situation.drive, what).toBeUndefined();
            continue;
          }
          if (situation.drive === 'slide' && GAINS_ON_SLIDE.has(input)) continue;
          const onSlide = situation.drive === 'slide' ? symbol?.slideUnit : undefined;
          expect(
            fits(fed, onSlide ?? symbol?.unit ?? ''),
            `${what}: ${fed} for ${onSlide ?? symbol?.unit}`,
          ).toBe(true);
        }
      }
    }
  });

  it('keeps every output in the unit in which it is computed', () => {
    for (const row of wiring) {
      for (const [output, spec] of Object.entries(row.gives)) {
        const symbol = registry.get(row.calculation)?.outputs[output];
        expect(fits(spec.unit, symbol?.unit ?? ''), `${spec.name}: ${spec.unit} from ${symbol?.unit}`).toBe(
          true,
        );
      }
    }
  });

  it('gives each figure once, whatever the revision is made of', () => {
    for (const situation of everySituation()) {
      const names = applying(situation).flatMap((row) => Object.values(row.gives).map(({ name }) => name));
      expect(names.toSorted(), JSON.stringify(situation)).toEqual([...new Set(names)].toSorted());
    }
  });

  it('gives a figure as soon as the choice that it waits for has been made', () => {
    for (const situation of everySituation()) {
      const given = new Set(
        applying(situation).flatMap((row) => Object.values(row.gives).map(({ name }) => name)),
      );
      for (const { figures, choice } of waiting) {
        const waits = choice(situation) !== undefined;
        for (const { name } of figures) expect(given.has(name), name).toBe(!waits);
      }
    }
  });

  it('never turns in a circle', () => {
    for (const situation of everySituation()) {
      const made = new Map(
        applying(situation).flatMap((row) =>
          Object.values(row.gives).map(({ name }) => [name, row] as const),
        ),
      );
      const visit = (name: string, above: readonly string[]): void => {
        expect(above, `${[...above, name].join(' ← ')}`).not.toContain(name);
        for (const feed of Object.values(made.get(name)?.inputs ?? {})) {
          if (typeof feed === 'string') visit(feed, [...above, name]);
          else if ('ifKnown' in feed) visit(feed.ifKnown, [...above, name]);
        }
      };
      for (const name of made.keys()) visit(name, []);
    }
  });

  it('gives the bodies of parts what their calculations ask for', () => {
    for (const [shape, fields] of Object.entries(bodyFields)) {
      for (const axis of ['x', 'y', 'z'] as const) {
        const found = bodyCalculation({ shape, axis } as Parameters<typeof bodyCalculation>[0]);
        if (!found) continue;
        const calculation = registry.get(found.calculation);
        expect(Object.keys(calculation?.inputs ?? {}).toSorted()).toEqual([...found.inputs].toSorted());
        expect(Object.keys(calculation?.outputs ?? {})).toEqual(['inertia']);
        for (const input of found.inputs) {
          if (input !== 'mass') expect(fields.map(({ key }) => key)).toContain(`body/${input}`);
        }
      }
    }
  });
});

describe('the names', () => {
  const specs = [...factSpecs, ...roleFacts, ...figureNames];

  it('stand for one thing each', () => {
    const names = figureNames.map(({ name }) => name);
    expect(names.toSorted()).toEqual([...new Set(names)].toSorted());
    for (const name of names) expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
  });

  it('have a title, an SI unit that is one, and a display unit of the same dimension', () => {
    const fields: FieldSpec[] = [...partFields, ...Object.values(bodyFields).flat(), ...sectionFields];
    for (const spec of [...specs, ...fields, ...marginSpecs]) {
      expect(spec.title, JSON.stringify(spec)).not.toBe('');
      expect(unit(spec.unit).factor, spec.title).toBe(1);
      expect(sameDimension(unit(spec.unit).dimension, unit(spec.display).dimension), spec.title).toBe(true);
    }
  });

  it('of a figure that several equations give keep one unit, one title and one group', () => {
    const seen = new Map<string, string>();
    for (const row of wiring) {
      for (const spec of Object.values(row.gives)) {
        const text = JSON.stringify(spec);
        expect(seen.get(spec.name) ?? text).toBe(text);
        seen.set(spec.name, text);
      }
    }
  });

  it('of capability and demand exist, in the unit of the margin', () => {
    const units = new Map(figureNames.map(({ name, unit: si }) => [name, si]));
    for (const { id, capability, demand, unit: si } of marginSpecs) {
      for (const side of [capability, demand]) {
        const found = units.get(side);
        expect(found, `${id}: ${side}`).toBeDefined();
        expect(fits(found ?? '', si), `${id}: ${side} in ${found}, not ${si}`).toBe(true);
      }
    }
  });
});
