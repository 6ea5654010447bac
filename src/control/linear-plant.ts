/**
 * The vehicle, its gimballed rotor, its ballast drive and its sensors as one linear system about upright.
 *
 *   I φ̈ = g M φ − g m_b e + m_b z_b ë − H α̇          lean φ, ballast offset e (positive rights a positive lean)
 *   I_g α̈ = H φ̇ − c α̇ − k α                          gimbal tilt α
 *   ë = ω_n² (L u − e) − 2 ζ ω_n ė                    u the command of the controller, L what one unit of it moves
 *   τ_s ẏ = x − y                                     each of lean and roll rate behind the sensors' lag
 *
 * Source: equations of moments about the ground line and about the tilt axis; actuator and sensor lag as they are
 * commonly modelled (second and first order).
 */
import { DomainError, requireFinite, requireNotNegative, requirePositive } from '../mechanics/index.ts';
import { type PlantTerms, plantTerms, type Term, termSlope, termValue } from './plant-terms.ts';

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

/** Derivative of one coefficient: of a, or of b where the column is the order of the plant. */
export interface SlopeEntry {
  readonly row: number;
  readonly column: number;
  readonly value: number;
}

/** Derivatives of a plant by one figure: those of its coefficients, and of its signals where they change. */
export interface PlantSlope {
  readonly figure: HardwareFigure;
  readonly entries: readonly SlopeEntry[];
  readonly signals?: Readonly<Record<Signal, Float64Array>>;
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
  return assemble(plantTerms(hardware, options), hardware);
}

/** The derivatives of the plant's coefficients by each figure that it depends on. */
export function linearPlantSlopes(hardware: BalanceHardware, options: PlantOptions): PlantSlope[] {
  const { states, rates, signals } = plantTerms(hardware, options);
  const order = states.length;
  const slopes = new Map<
    HardwareFigure,
    { figure: HardwareFigure; entries: SlopeEntry[]; signals?: Record<Signal, Float64Array> }
  >();
  const slopeOf = (
    figure: HardwareFigure,
  ): { entries: SlopeEntry[]; signals?: Record<Signal, Float64Array> } => {
    const known = slopes.get(figure) ?? { figure, entries: [] };
    slopes.set(figure, known);
    return known;
  };
  states.forEach((state, row) => {
    for (const term of rates.get(state) ?? []) {
      for (const [figure] of term.powers) {
        const value = termSlope(term, hardware, figure);
        if (value !== 0) slopeOf(figure).entries.push({ row, column: columnOf(term, states), value });
      }
    }
  });
  everySignal((signal) => {
    for (const term of signals[signal]) {
      for (const [figure] of term.powers) {
        const slope = slopeOf(figure);
        slope.signals ??= everySignal(() => new Float64Array(order + 1));
        const entries = slope.signals[signal];
        const column = columnOf(term, states);
        entries[column] = (entries[column] ?? 0) + termSlope(term, hardware, figure);
      }
    }
  });
  return [...slopes.values()];
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

function assemble(
  { states, rates, signals, neutralModes }: PlantTerms,
  hardware: BalanceHardware,
): LinearPlant {
  const order = states.length;
  const row = (terms: readonly Term[]): Float64Array => {
    const entries = new Float64Array(order + 1);
    for (const term of terms) {
      const column = columnOf(term, states);
      entries[column] = (entries[column] ?? 0) + termValue(term, hardware);
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
  return { states, order, a, b, signals: everySignal((signal) => row(signals[signal])), neutralModes };
}

/** Column of what a term multiplies: a state, or the command, which comes last. */
function columnOf({ of }: Term, states: readonly PlantState[]): number {
  return of === 'command' ? states.length : states.indexOf(of);
}

function everySignal<T>(make: (signal: Signal) => T): Record<Signal, T> {
  return {
    'measured lean': make('measured lean'),
    'measured rate': make('measured rate'),
    'gimbal tilt': make('gimbal tilt'),
    'gimbal rate': make('gimbal rate'),
  };
}
