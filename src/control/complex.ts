/** Complex numbers as the loop needs them: points of the unit circle, vectors in two real halves, angles. */

export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** A row or column of complex numbers. */
export interface ComplexVector {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export function complexVector(length: number): ComplexVector {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}

export function modulus({ re, im }: Complex): number {
  return Math.hypot(re, im);
}

/** The angle that turns `from` into the direction of `to`, in (−π, π]. */
export function angleBetween(from: Complex, to: Complex): number {
  return Math.atan2(to.im * from.re - to.re * from.im, to.re * from.re + to.im * from.im);
}

/** z^power at z = e^{jθ}; exactly real at θ = 0 and θ = π. */
export function onCircle(theta: number, power: number): [cos: number, sin: number] {
  if (theta === Math.PI) return [power % 2 === 0 ? 1 : -1, 0];
  return [Math.cos(power * theta), Math.sin(power * theta)];
}

/** Sum of products with a real vector; entries beyond the complex one are not used. */
export function timesReal(v: ComplexVector, real: Float64Array): [re: number, im: number] {
  let re = 0;
  let im = 0;
  for (let i = 0; i < v.re.length; i++) {
    const entry = real[i] ?? 0;
    re += (v.re[i] ?? 0) * entry;
    im += (v.im[i] ?? 0) * entry;
  }
  return [re, im];
}

/** Sum of products, without conjugation. */
export function dot(a: ComplexVector, b: ComplexVector): [re: number, im: number] {
  let re = 0;
  let im = 0;
  for (let i = 0; i < a.re.length; i++) {
    const aRe = a.re[i] ?? 0;
    const aIm = a.im[i] ?? 0;
    const bRe = b.re[i] ?? 0;
    const bIm = b.im[i] ?? 0;
    re += aRe * bRe - aIm * bIm;
    im += aRe * bIm + aIm * bRe;
  }
  return [re, im];
}
