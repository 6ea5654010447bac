/** Numbers as lettered on a drawing: digits follow the uncertainty, with a real minus sign. */

/** An exact figure is lettered with at most this many significant digits. */
const EXACT_DIGITS = 4;
const LARGEST_PLAIN = 1e6;
const SMALLEST_PLAIN = 1e-4;

/**
 * A label shows the value alone, to the last digit that means something: one digit of the uncertainty, two where that
 * begins with a 1. The full statement, `0.0742(12)`, is left to tables.
 */
export function roundedText(value: number, u = 0): string {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : value < 0 ? '−∞' : '–';
  const magnitude = Math.abs(value);
  if (magnitude >= LARGEST_PLAIN || (magnitude > 0 && magnitude < SMALLEST_PLAIN)) return powerText(value);
  return fixedText(value, decimalsFor(value, u));
}

/** A fixed number of decimals; minus nought is nought. */
export function fixedText(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

function decimalsFor(value: number, u: number): number {
  const leading = (x: number): number => Math.floor(Math.log10(Math.abs(x)));
  const byUncertainty =
    u > 0 ? digitsOf(u) - 1 - leading(u) : EXACT_DIGITS - 1 - (value === 0 ? 0 : leading(value));
  const byValue = value === 0 ? 3 : EXACT_DIGITS - 1 - leading(value);
  const decimals = Math.max(0, Math.min(byUncertainty, byValue, 6));
  return u > 0 ? decimals : trimmed(value, decimals);
}

function digitsOf(u: number): number {
  return u / 10 ** Math.floor(Math.log10(u)) < 2 ? 2 : 1;
}

/** An exact figure loses its trailing noughts. */
function trimmed(value: number, decimals: number): number {
  const text = Math.abs(value).toFixed(decimals);
  if (!text.includes('.')) return 0;
  return text.replace(/\.?0+$/, '').split('.')[1]?.length ?? 0;
}

const RAISED = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];

function powerText(value: number): string {
  const exponent = Math.floor(Math.log10(Math.abs(value)));
  const mantissa = fixedText(value / 10 ** exponent, 2);
  return `${mantissa} × ${powerOfTen(exponent)}`;
}

/** `10⁻⁶`. */
export function powerOfTen(exponent: number): string {
  const raised = [...String(Math.abs(exponent))].map((digit) => RAISED[Number(digit)] ?? '').join('');
  return `10${exponent < 0 ? '⁻' : ''}${raised}`;
}

/** Steps of 1, 2 or 5 times a power of ten, at most `count` of them over the span. */
export function niceStep(span: number, count: number): number {
  const raw = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(raw));
  const mantissa = raw / power;
  return power * (mantissa <= 1 ? 1 : mantissa <= 2 ? 2 : mantissa <= 5 ? 5 : 10);
}

export function decimalsOfStep(step: number): number {
  return Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9)));
}
