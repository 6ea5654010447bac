/**
 * The vehicle, its gimballed rotor, its ballast drive and its sensors as one linear system about upright.
 *
 *   I φ̈ = g M φ − g m_b e + m_b z_b ë − H α̇          lean φ, ballast offset e (positive rights a positive lean)
 *   I_g α̈ = H φ̇ − c α̇ − k α                          gimbal tilt α
 *   ë = ω_n² (L u − e) − 2 ζ ω_n ė                    u the command of the controller, L what one unit of it moves
 *   τ_s ẏ = x − y                                     each of lean and roll rate behind the sensors' lag
 *
 * Every coefficient is a sum of terms, each a product of powers of the vehicle's figures. They are kept as such
 * lists, so that a coefficient and its exact derivative by any figure come from the same line.
 *
 * Source: equations of moments about the ground line and about the tilt axis; actuator and sensor lag as they are
 * commonly modelled (second and first order).
 */
import {
  DomainError,
  requireFinite,
  requireNotNegative,
  requirePositive,
  standardGravity,
} from '../mechanics/index.ts';

export interface BalanceHardware {
  /** M, kg·m, of the whole vehicle, ballast included, about the ground line; more than 0. */
  readonly firstMoment: number;
  /** I, kg·m², of the whole vehicle, ballast centred, about the roll axis; more than 0. */
  readonly rollInertia: number;
  /** m_b, kg, more than 0. */
  readonly ballastMass: number;
  /** z_b, m above the ground line, ballast centred. */
  readonly ballastHeight: number;
  /** L, ballast offset by unit of command: the arm length, m/rad, where the command is an angle; 1 for a slide. */
  readonly commandToOffset: number;
  /** H, N·m·s; 0 where there is no rotor, or it stands still, or its gimbal is locked. */
  readonly spinMomentum: number;
  /** I_g, kg·m², gimbal with rotor about the tilt axis; more than 0 where H is. */
  readonly gimbalInertia: number;
  /** c, N·m·s/rad, viscous, not negative. */
  readonly gimbalFriction: number;
  /** k, N·m/rad; positive sprung or pendulous, negative top-heavy, 0 free. */
  readonly gimbalCentring: number;
  /** ω_n, rad/s, of the ballast actuator; more than 0. */
  readonly naturalFrequency: number;
  /** ζ of the ballast actuator; more than 0. */
  readonly dampingRatio: number;
  /** τ_s, s, of the lean and rate sensors, first order; 0 for none. */
  readonly sensorLag: number;
}
export type HardwareFigure = keyof BalanceHardware;

/** What the controller can read at a sampling instant. */
export type Signal = 'measured lean' | 'measured rate' | 'gimbal tilt' | 'gimbal rate';

export type PlantState =
  | 'lean'
  | 'lean rate'
  | 'gimbal tilt'
  | 'gimbal rate'
  | 'ballast offset'
  | 'ballast rate'
  | 'lagged lean'
  | 'lagged rate';

/**
 * A motion that the ballast cannot change and that neither grows nor dies out: taken out of the model, and told.
 *
 * - `gimbal offset`: with k = 0, I_g α̇ − H φ + c α never changes.
 * - `gimbal tilt`: with k = 0 and c = 0, and nothing reading the tilt, the tilt itself is free.
 */
export type NeutralMode = 'gimbal offset' | 'gimbal tilt';

export const neutralModeText: Readonly<Record<NeutralMode, string>> = {
  'gimbal offset':
    'The gimbal has no centring: an offset between gimbal tilt and lean, once there, stays, whatever the ballast does. ' +
    'This neutral mode is left out of the margins.',
  'gimbal tilt':
    'The gimbal has neither centring nor friction and nothing reads its tilt: the tilt adds up every lean and nothing ' +
    'brings it back. This neutral mode is left out of the margins.',
};

/** ẋ = a x + b u. */
export interface StateSpace {
  readonly order: number;
  /** Row after row. */
  readonly a: Float64Array;
  readonly b: Float64Array;
}

export interface LinearPlant extends StateSpace {
  readonly states: readonly PlantState[];
  /**
   * Row of each signal over the states and, as last entry, over the command that was held just before the
   * sampling instant (always 0 in the value; its slope counts where a sensor lag begins).
   */
  readonly signals: Readonly<Record<Signal, Float64Array>>;
  readonly neutralModes: readonly NeutralMode[];
}

/** Derivatives of a plant's matrices by one figure. */
export interface PlantSlope {
  readonly figure: HardwareFigure;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly signals: Readonly<Record<Signal, Float64Array>>;
}

/** factor × Π figureⁿ, times the state or command named. */
interface Term {
  readonly of: PlantState | 'command';
  readonly factor: number;
  readonly powers: readonly (readonly [HardwareFigure, number])[];
}

interface PlantTerms {
  readonly states: readonly PlantState[];
  readonly rates: ReadonlyMap<PlantState, readonly Term[]>;
  readonly signals: Readonly<Record<Signal, readonly Term[]>>;
  readonly neutralModes: readonly NeutralMode[];
}

export interface PlantOptions {
  /** What the controller reads: states that only serve another signal are left out. */
  readonly reads: readonly Signal[];
  /** Keep the neutral modes in the model, to see what happens as soon as they are not neutral any more. */
  readonly keepNeutralModes?: boolean;
}

/**
 * The linear plant of a vehicle.
 *
 * @throws DomainError  where a figure is outside its range above
 */
export function linearPlant(hardware: BalanceHardware, options: PlantOptions): LinearPlant {
  requireHardware(hardware);
  const terms = plantTerms(hardware, options);
  return { ...assemble(terms, (term) => termValue(term, hardware)), neutralModes: terms.neutralModes };
}

/** The derivatives of the plant's matrices by those of the figures that it depends on. */
export function linearPlantSlopes(hardware: BalanceHardware, options: PlantOptions): PlantSlope[] {
  const terms = plantTerms(hardware, options);
  const figures = new Set<HardwareFigure>();
  for (const list of [...terms.rates.values(), ...Object.values(terms.signals)]) {
    for (const term of list) for (const [figure] of term.powers) figures.add(figure);
  }
  return [...figures].map((figure) => ({
    figure,
    ...assemble(terms, (term) => termSlope(term, hardware, figure)),
  }));
}

function requireHardware(hardware: BalanceHardware): void {
  requirePositive('first moment about the ground line', hardware.firstMoment, 'kg·m');
  requirePositive('roll inertia', hardware.rollInertia, 'kg·m²');
  requirePositive('ballast mass', hardware.ballastMass, 'kg');
  requireFinite('ballast height', hardware.ballastHeight, 'm');
  requirePositive('ballast offset by unit of command', hardware.commandToOffset, 'm');
  requireNotNegative('spin momentum', hardware.spinMomentum, 'N·m·s');
  requireNotNegative('gimbal inertia', hardware.gimbalInertia, 'kg·m²');
  if (hardware.spinMomentum > 0 && hardware.gimbalInertia === 0) {
    throw new DomainError(
      'gimbal inertia',
      0,
      'a spinning rotor in its gimbal has some; it has to be more than 0 kg·m²',
      'kg·m²',
    );
  }
  requireNotNegative('gimbal friction', hardware.gimbalFriction, 'N·m·s/rad');
  requireFinite('gimbal centring', hardware.gimbalCentring, 'N·m/rad');
  requirePositive('natural frequency of the actuator', hardware.naturalFrequency, 'rad/s');
  requirePositive('damping ratio of the actuator', hardware.dampingRatio, '1');
  requireNotNegative('sensor lag', hardware.sensorLag, 's');
}

function term(of: Term['of'], factor: number, powers: Partial<Record<HardwareFigure, number>> = {}): Term {
  return { of, factor, powers: Object.entries(powers) as [HardwareFigure, number][] };
}

function plantTerms(
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

function assemble(
  { states, rates, signals }: PlantTerms,
  number: (term: Term) => number,
): Omit<LinearPlant, 'neutralModes'> {
  const order = states.length;
  const row = (terms: readonly Term[]): Float64Array => {
    const entries = new Float64Array(order + 1);
    for (const t of terms) {
      const column = t.of === 'command' ? order : states.indexOf(t.of);
      entries[column] = (entries[column] ?? 0) + number(t);
    }
    return entries;
  };
  const a = new Float64Array(order * order);
  const b = new Float64Array(order);
  states.forEach((state, i) => {
    const entries = row(rates.get(state) ?? []);
    a.set(entries.subarray(0, order), i * order);
    b[i] = entries[order] ?? 0;
  });
  return {
    states,
    order,
    a,
    b,
    signals: {
      'measured lean': row(signals['measured lean']),
      'measured rate': row(signals['measured rate']),
      'gimbal tilt': row(signals['gimbal tilt']),
      'gimbal rate': row(signals['gimbal rate']),
    },
  };
}

function termValue({ factor, powers }: Term, figures: BalanceHardware): number {
  let value = factor;
  for (const [figure, power] of powers) value *= figures[figure] ** power;
  return value;
}

function termSlope({ factor, powers }: Term, figures: BalanceHardware, by: HardwareFigure): number {
  let slope = 0;
  let rest = factor;
  for (const [figure, power] of powers) {
    if (figure === by) slope = power * figures[figure] ** (power - 1);
    else rest *= figures[figure] ** power;
  }
  return slope * rest;
}
