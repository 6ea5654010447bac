/**
 * The equations of the balance vehicle, coefficient by coefficient: each a sum of terms, each term a product of powers
 * of the vehicle's figures. Kept as lists, so that a coefficient and its exact derivative by any figure come from
 * the same line. What is absent (rotor, sensor lag, a signal that nothing reads) makes no states.
 */
import { standardGravity } from '../mechanics/index.ts';
import type {
  BalanceHardware,
  HardwareFigure,
  NeutralMode,
  PlantOptions,
  PlantState,
  Signal,
} from './linear-plant.ts';

/** factor × Π figureⁿ, times the state or command named. */
export interface Term {
  readonly of: PlantState | 'command';
  readonly factor: number;
  readonly powers: readonly (readonly [HardwareFigure, number])[];
}

export interface PlantTerms {
  readonly states: readonly PlantState[];
  /** Rate of change of each state. */
  readonly rates: ReadonlyMap<PlantState, readonly Term[]>;
  readonly signals: Readonly<Record<Signal, readonly Term[]>>;
  readonly neutralModes: readonly NeutralMode[];
}

function term(of: Term['of'], factor: number, powers: Partial<Record<HardwareFigure, number>> = {}): Term {
  return { of, factor, powers: Object.entries(powers) as [HardwareFigure, number][] };
}

/** The terms of the model that a vehicle and the signals read from it call for. */
export function plantTerms(
  hardware: BalanceHardware,
  { reads, keepNeutralModes = false }: PlantOptions,
): PlantTerms {
  const readsGimbal = reads.includes('gimbal tilt') || reads.includes('gimbal rate');
  // A rotor that does not turn lets the gimbal alone. Only one that topples by itself and is read still matters.
  const gimbal =
    hardware.spinMomentum > 0 || (hardware.gimbalCentring < 0 && readsGimbal && hardware.gimbalInertia > 0);
  const free = gimbal && hardware.gimbalCentring === 0 && !keepNeutralModes;
  const tiltMatters = !free || hardware.gimbalFriction > 0 || reads.includes('gimbal tilt');

  const leanAcceleration: Term[] = [
    term('lean', standardGravity, { firstMoment: 1, rollInertia: -1 }),
    term('ballast offset', -standardGravity, { ballastMass: 1, rollInertia: -1 }),
    term('ballast offset', -1, { ballastMass: 1, ballastHeight: 1, naturalFrequency: 2, rollInertia: -1 }),
    term('ballast rate', -2, {
      ballastMass: 1,
      ballastHeight: 1,
      dampingRatio: 1,
      naturalFrequency: 1,
      rollInertia: -1,
    }),
    term('command', 1, {
      ballastMass: 1,
      ballastHeight: 1,
      naturalFrequency: 2,
      commandToOffset: 1,
      rollInertia: -1,
    }),
  ];
  const rates = new Map<PlantState, readonly Term[]>([
    ['lean', [term('lean rate', 1)]],
    ['lean rate', leanAcceleration],
  ]);
  let gimbalRate: readonly Term[] = [];

  if (free) {
    // I_g α̇ = H φ − c α: one integration of the gimbal's equation, its constant being the neutral mode
    gimbalRate = [term('lean', 1, { spinMomentum: 1, gimbalInertia: -1 })];
    leanAcceleration.push(term('lean', -1, { spinMomentum: 2, gimbalInertia: -1, rollInertia: -1 }));
    if (tiltMatters) {
      gimbalRate = [...gimbalRate, term('gimbal tilt', -1, { gimbalFriction: 1, gimbalInertia: -1 })];
      leanAcceleration.push(
        term('gimbal tilt', 1, { spinMomentum: 1, gimbalFriction: 1, gimbalInertia: -1, rollInertia: -1 }),
      );
      rates.set('gimbal tilt', gimbalRate);
    }
  } else if (gimbal) {
    leanAcceleration.push(term('gimbal rate', -1, { spinMomentum: 1, rollInertia: -1 }));
    gimbalRate = [term('gimbal rate', 1)];
    rates.set('gimbal tilt', gimbalRate);
    rates.set('gimbal rate', [
      term('lean rate', 1, { spinMomentum: 1, gimbalInertia: -1 }),
      term('gimbal tilt', -1, { gimbalCentring: 1, gimbalInertia: -1 }),
      term('gimbal rate', -1, { gimbalFriction: 1, gimbalInertia: -1 }),
    ]);
  }

  rates.set('ballast offset', [term('ballast rate', 1)]);
  rates.set('ballast rate', [
    term('ballast offset', -1, { naturalFrequency: 2 }),
    term('ballast rate', -2, { dampingRatio: 1, naturalFrequency: 1 }),
    term('command', 1, { naturalFrequency: 2, commandToOffset: 1 }),
  ]);

  const lagged = hardware.sensorLag > 0;
  const lag = (input: PlantState, output: PlantState): Term[] => [
    term(input, 1, { sensorLag: -1 }),
    term(output, -1, { sensorLag: -1 }),
  ];
  if (lagged) {
    rates.set('lagged lean', lag('lean', 'lagged lean'));
    if (reads.includes('measured rate')) rates.set('lagged rate', lag('lean rate', 'lagged rate'));
  }
  // a lag that is only beginning: y = x − τ_s ẋ
  const beginning = (t: Term): Term => ({ ...t, factor: -t.factor, powers: [...t.powers, ['sensorLag', 1]] });
  return {
    states: [...rates.keys()],
    rates,
    signals: {
      'measured lean': lagged ? [term('lagged lean', 1)] : [term('lean', 1), beginning(term('lean rate', 1))],
      'measured rate': !reads.includes('measured rate')
        ? []
        : lagged
          ? [term('lagged rate', 1)]
          : [term('lean rate', 1), ...leanAcceleration.map(beginning)],
      'gimbal tilt': gimbal && tiltMatters ? [term('gimbal tilt', 1)] : [],
      'gimbal rate': gimbalRate,
    },
    neutralModes: free ? (tiltMatters ? ['gimbal offset'] : ['gimbal offset', 'gimbal tilt']) : [],
  };
}

/** What a term comes to. */
export function termValue({ factor, powers }: Term, figures: BalanceHardware): number {
  let value = factor;
  for (const [figure, power] of powers) value *= figures[figure] ** power;
  return value;
}

/** Its derivative by one figure; 0 where that is not among its powers. */
export function termSlope({ factor, powers }: Term, figures: BalanceHardware, by: HardwareFigure): number {
  let slope = 0;
  let rest = factor;
  for (const [figure, power] of powers) {
    if (figure === by) slope = power * figures[figure] ** (power - 1);
    else rest *= figures[figure] ** power;
  }
  return slope * rest;
}
