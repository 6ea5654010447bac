/**
 * What a step of a given length does to everything that is linear and driven by what is already known: the ballast
 * drive at the half and at the whole step, and the lag of the sensors. Exact, computed once for each length of step.
 */

/** [x, ẋ] after a time: x₁ = xx x₀ + xv v₀, v₁ = vx x₀ + vv v₀; and how far a coasting drive gets. */
export interface DriveMotion {
  time: number;
  xx: number;
  xv: number;
  vx: number;
  vv: number;
  /** e^{−2ζω_n t}: what is left of the speed where the drive sees no error. */
  coasting: number;
}

/** y₁ = kept y₀ + before x₀ + after x₁ + slopeBefore ẋ₀ + slopeAfter ẋ₁. */
export interface LagMotion {
  kept: number;
  before: number;
  after: number;
  slopeBefore: number;
  slopeAfter: number;
}

export interface StepCoefficients {
  step: number;
  readonly half: DriveMotion;
  readonly whole: DriveMotion;
  readonly lag: LagMotion;
}

export interface LinearParts {
  readonly naturalFrequency: number;
  readonly dampingRatio: number;
  readonly lag: number;
}

export function stepCoefficients(parts: LinearParts, step: number): StepCoefficients {
  const motion = (): DriveMotion => ({ time: 0.5, xx: 0.5, xv: 0.5, vx: 0.5, vv: 0.5, coasting: 0.5 });
  const coefficients: StepCoefficients = {
    step: 0.5,
    half: motion(),
    whole: motion(),
    lag: { kept: 0.5, before: 0.5, after: 0.5, slopeBefore: 0.5, slopeAfter: 0.5 },
  };
  setStep(coefficients, parts, step);
  return coefficients;
}

/** The same for another length of step, in place. */
export function setStep(coefficients: StepCoefficients, parts: LinearParts, step: number): void {
  setDriveStep(coefficients, parts, step);
  setLagStep(coefficients, parts);
}

/** All but the lag, for a step that is only tried. */
export function setDriveStep(coefficients: StepCoefficients, parts: LinearParts, step: number): void {
  coefficients.step = step;
  setDriveMotion(coefficients.half, parts, step / 2);
  setDriveMotion(coefficients.whole, parts, step);
}

export function setLagStep(coefficients: StepCoefficients, parts: LinearParts): void {
  setLagMotion(coefficients.lag, parts.lag, coefficients.step);
}

/**
 * Free motion of the drive about its target: ẍ = −ω_n² x − 2ζω_n ẋ.
 *
 *   e^{At} = e^{−ζω_n t} [C + ζω_n S, S; −ω_n² S, C − ζω_n S],  C = cos ω_d t,  S = sin(ω_d t)/ω_d,  ω_d = ω_n √(1 − ζ²)
 *
 * with cosh and sinh above ζ = 1.
 */
export function setDriveMotion(
  motion: DriveMotion,
  { naturalFrequency: w, dampingRatio }: Omit<LinearParts, 'lag'>,
  time: number,
): void {
  const decay = dampingRatio * w;
  const square = w * w * (1 - dampingRatio * dampingRatio);
  let c: number;
  let s: number;
  if (square > 1e-12 * w * w) {
    const turn = Math.sqrt(square);
    const left = Math.exp(-decay * time);
    c = left * Math.cos(turn * time);
    s = (left * Math.sin(turn * time)) / turn;
  } else if (square < -1e-12 * w * w) {
    const spread = Math.sqrt(-square);
    const slow = Math.exp((spread - decay) * time);
    const fast = Math.exp((-spread - decay) * time);
    c = (slow + fast) / 2;
    s = (slow - fast) / (2 * spread);
  } else {
    c = Math.exp(-decay * time);
    s = c * time;
  }
  motion.time = time;
  motion.xx = c + decay * s;
  motion.xv = s;
  motion.vx = -w * w * s;
  motion.vv = c - decay * s;
  motion.coasting = Math.exp(-2 * decay * time);
}

/**
 * First-order lag τ ẏ = x − y over a step, with x the cubic that has the values and slopes of both ends:
 *
 *   y₁ = e^{−r} y₀ + ∫₀¹ r e^{−r(1−s)} x(s) ds,  r = h/τ
 *
 * No lag so short that it would need shorter steps. Where r is small the integrals are summed as series, in which no
 * digits cancel.
 */
function setLagMotion(motion: LagMotion, lag: number, step: number): void {
  if (lag === 0) {
    motion.kept = 0;
    motion.before = 0;
    motion.after = 1;
    motion.slopeBefore = 0;
    motion.slopeAfter = 0;
    return;
  }
  const r = step / lag;
  // moments of s^n, n = 0 … 3: m_n = 1 − n m_{n−1} / r, with m_0 = 1 − e^{−r}
  const m0 = -Math.expm1(-r);
  const m1 = moment(1, r, m0);
  const m2 = moment(2, r, m1);
  const m3 = moment(3, r, m2);
  motion.kept = Math.exp(-r);
  motion.before = m0 - 3 * m2 + 2 * m3;
  motion.after = 3 * m2 - 2 * m3;
  motion.slopeBefore = step * (m1 - 2 * m2 + m3);
  motion.slopeAfter = step * (m3 - m2);
}

/** ∫₀¹ r e^{−r(1−s)} sⁿ ds. */
function moment(n: number, r: number, before: number): number {
  if (r > 2) return 1 - (n * before) / r;
  // r Σ_j (−r)^j n! / (n + j + 1)!
  let term = r / (n + 1);
  let sum = term;
  for (let j = 1; Math.abs(term) > 1e-18 * Math.abs(sum); j++) {
    term *= -r / (n + j + 1);
    sum += term;
  }
  return sum;
}
