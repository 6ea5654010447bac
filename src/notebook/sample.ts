/** Records for this folder's tests: the least that each kind can be, and a revision with something of everything. */
import { type Change, create, type JournalEntry } from './change.ts';
import type { RecordKind } from './kinds.ts';
import type { KnownQuantity } from './quantity-field.ts';
import { apply, emptyState, type NotebookState } from './state.ts';

export const AT = '2026-03-01T09:00:00+01:00';

export function quantity(si: number, unit = ''): KnownQuantity {
  return { typed: `${si} ${unit}`.trim(), si, u: 0.001, basis: 'measured' };
}

/** One record of each kind; the revision has parts, a rotor, a gimbal and a slide. */
export const creations: Readonly<Record<RecordKind, Change>> = {
  notebook: create('notebook', 'n', { name: 'Rig', createdAt: AT }),
  prototype: create('prototype', 'p', { name: 'Rig', kind: 'pendulum rig', createdAt: AT }),
  revision: create('revision', 'r', {
    prototype: 'p',
    letter: 'A',
    createdAt: AT,
    weighedMass: quantity(2.3, 'kg'),
    parts: {
      frame: { name: 'Frame', order: 1, mass: quantity(0.6, 'kg'), z: quantity(0.1, 'm') },
      disc: {
        name: 'Disc',
        order: 2,
        role: 'rotor',
        mass: quantity(0.4, 'kg'),
        body: { shape: 'cylinder', axis: 'z', diameter: quantity(0.08, 'm') },
      },
    },
    rotor: { density: quantity(7850, 'kg/m³'), sections: {} },
    gimbal: { centring: quantity(0, 'N·m/rad') },
    ballast: { kind: 'slide', travel: quantity(0.05, 'm') },
  }),
  entry: create('entry', 'e', {
    prototype: 'p',
    revision: 'r',
    number: 1,
    title: 'First',
    at: AT,
    author: 'B',
    text: 'Weighed.',
  }),
  card: create('card', 'c', {
    prototype: 'p',
    revision: 'r',
    number: 1,
    template: 'bench-spin',
    title: 'Spin',
    purpose: '',
    setUp: '',
    prerequisites: '',
    steps: ['Spin.', 'Stop.', 'Wait.'],
    createdAt: AT,
  }),
  run: create('run', 'x', {
    prototype: 'p',
    revision: 'r',
    card: 'c',
    number: 1,
    startedAt: AT,
    startedBy: 'B',
    fingerprint: '0123456789abcdef',
    items: [
      {
        id: 'list.plug',
        pause: 'Before',
        kind: 'tick',
        hold: false,
        text: 'Plug out.',
        source: 'project choice',
        figures: [],
      },
    ],
  }),
  failure: create('failure', 'f', {
    prototype: 'p',
    revision: 'r',
    number: 1,
    at: AT,
    author: 'B',
    title: 'Bearing walks',
    severity: 'III',
    probability: 'B',
    causes: ['It moved', 'The seat is wide'],
  }),
};

export function entriesOf(changes: readonly Change[]): JournalEntry[] {
  return changes.map((change, index) => ({ seq: index + 1, at: AT, by: 'B', change }));
}

/** The state with the given changes made, one after the other. @throws where one of them cannot be made */
export function stateOf(changes: readonly Change[], from = emptyState): NotebookState {
  return changes.reduce((state, change) => {
    const next = apply(state, change);
    if (!next.ok) throw new Error(`${next.problem.code}: ${JSON.stringify(next.problem.figures)}`);
    return next.value;
  }, from);
}

export const sample: NotebookState = stateOf(Object.values(creations));
