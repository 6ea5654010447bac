/**
 * Exact fractions for conversion factors, so that `73.2 g` becomes the very double that `0.0732` is. Every unit
 * in the table has a factor that is exact by definition; only π is rounded, once, at the end.
 */

export interface Rational {
  readonly numerator: bigint;
  /** Always more than 0. */
  readonly denominator: bigint;
}

export const ONE: Rational = { numerator: 1n, denominator: 1n };

/**
 * @param text  a plain decimal (`25.4`, `-0.5`) or a fraction of two (`1000/3600`); the caller has checked its form
 */
export function rational(text: string): Rational {
  const [above = '', below = '1'] = text.split('/');
  return divide(decimal(above), decimal(below));
}

function decimal(text: string): Rational {
  const [whole = '0', decimals = ''] = text.split('.');
  return { numerator: BigInt(whole + decimals), denominator: 10n ** BigInt(decimals.length) };
}

export function multiply(a: Rational, b: Rational): Rational {
  return { numerator: a.numerator * b.numerator, denominator: a.denominator * b.denominator };
}

/** @throws RangeError when b is nought: the caller refuses that before */
export function divide(a: Rational, b: Rational): Rational {
  const sign = b.numerator < 0n ? -1n : 1n;
  if (b.numerator === 0n) throw new RangeError('a fraction cannot have nought below the line');
  return {
    numerator: sign * a.numerator * b.denominator,
    denominator: sign * a.denominator * b.numerator,
  };
}

export function add(a: Rational, b: Rational): Rational {
  return {
    numerator: a.numerator * b.denominator + b.numerator * a.denominator,
    denominator: a.denominator * b.denominator,
  };
}

/** @param exponent  a whole number, of either sign */
export function power(base: Rational, exponent: number): Rational {
  const raised = {
    numerator: base.numerator ** BigInt(Math.abs(exponent)),
    denominator: base.denominator ** BigInt(Math.abs(exponent)),
  };
  return exponent < 0 ? divide(ONE, raised) : raised;
}

/** a × 10^exponent, exactly. */
export function shift(a: Rational, exponent: number): Rational {
  return multiply(a, power({ numerator: 10n, denominator: 1n }, exponent));
}

export function magnitude(a: Rational): Rational {
  return a.numerator < 0n ? { ...a, numerator: -a.numerator } : a;
}

/** Bits of the quotient that are kept before the one rounding: more than a double has, and a sticky last bit. */
const QUOTIENT_BITS = 70;

/** The double nearest to the fraction (ties to even); ±Infinity beyond the largest double. */
export function nearest(a: Rational): number {
  const negative = a.numerator < 0n;
  const above = magnitude(a).numerator;
  if (above === 0n) return 0;
  const scale = QUOTIENT_BITS - (bitLength(above) - bitLength(a.denominator));
  const numerator = scale > 0 ? above << BigInt(scale) : above;
  const denominator = scale > 0 ? a.denominator : a.denominator << BigInt(-scale);
  const quotient = numerator / denominator;
  const sticky = numerator % denominator === 0n ? quotient : quotient | 1n;
  const half = Math.trunc(scale / 2); // in two steps: 2 ** 1100 is not a double, the product may be
  const size = Number(sticky) * 2 ** -half * 2 ** -(scale - half);
  return negative ? -size : size;
}

/** Length in binary of the longer of its two numbers, to within three bits. */
export function bits(a: Rational): number {
  return Math.max(bitLength(magnitude(a).numerator), bitLength(a.denominator));
}

/** To within three bits, which is all that `nearest` needs. */
function bitLength(n: bigint): number {
  return n.toString(16).length * 4;
}
