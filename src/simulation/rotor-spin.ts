/** How the rotor loses its speed once nothing drives it any more, while the vehicle still balances on it. */
import { requireNotNegative, requirePositive } from '../mechanics/index.ts';

export interface CoastDown {
  /** s; from the loss of power on where left out. */
  readonly from?: number;
  /** I_s, kg·m², of the rotor about its own axis. */
  readonly rotorInertia: number;
  /** Drag of bearings and air: a, N·m; b, N·m·s/rad; c, N·m·s²/rad². */
  readonly steadyDrag?: number;
  readonly linearDrag?: number;
  readonly squareDrag?: number;
}

export interface RotorSpin {
  /** I_s, a, b, c. */
  readonly inertia: number;
  readonly steady: number;
  readonly linear: number;
  readonly square: number;
  coasting: boolean;
  /** H, N·m·s: now, in the middle and at the end of the step looked at. */
  readonly momentum: Float64Array;
}

export function rotorSpin(spinMomentum: number, coastDown: CoastDown | undefined): RotorSpin {
  if (coastDown) {
    requirePositive('rotor inertia', coastDown.rotorInertia, 'kg·m²');
    requireNotNegative('steady drag of the rotor', coastDown.steadyDrag ?? 0, 'N·m');
    requireNotNegative('linear drag of the rotor', coastDown.linearDrag ?? 0, 'N·m·s/rad');
    requireNotNegative('square drag of the rotor', coastDown.squareDrag ?? 0, 'N·m·s²/rad²');
  }
  return {
    inertia: coastDown?.rotorInertia ?? 1,
    steady: coastDown?.steadyDrag ?? 0,
    linear: coastDown?.linearDrag ?? 0,
    square: coastDown?.squareDrag ?? 0,
    coasting: false,
    momentum: Float64Array.of(spinMomentum, spinMomentum, spinMomentum),
  };
}

/**
 * Looks a step ahead.
 *
 *   Ḣ = −(a + b Ω + c Ω²),  Ω = H / I_s,  until it stands
 *
 * Two Runge–Kutta steps of fourth order for each step of the motion: the speed changes over minutes.
 */
export function lookAtSpin(spin: RotorSpin, step: number): void {
  const { momentum } = spin;
  momentum[1] = after(spin, momentum[0] ?? 0, step / 2);
  momentum[2] = after(spin, momentum[1] ?? 0, step / 2);
}

function after(spin: RotorSpin, momentum: number, step: number): number {
  const k1 = drag(spin, momentum);
  const k2 = drag(spin, momentum + 0.5 * step * k1);
  const k3 = drag(spin, momentum + 0.5 * step * k2);
  const k4 = drag(spin, momentum + step * k3);
  return Math.max(0, momentum + (step / 6) * (k1 + 2 * (k2 + k3) + k4));
}

function drag({ inertia, steady, linear, square }: RotorSpin, momentum: number): number {
  if (momentum <= 0) return 0;
  const speed = momentum / inertia;
  return -(steady + speed * (linear + speed * square));
}
