/** Guards at the door of every physical function: the message names the quantity, its value and what is allowed. */

/** The value of a quantity for which an equation is not defined. Carries the figures for the sentence. */
export class DomainError extends RangeError {
  /** In the trade's words, as a person would look for it. */
  readonly quantity: string;
  /** SI; not a number where the value is missing. */
  readonly value: number;
  /** What is allowed, to be read after “but”. */
  readonly requirement: string;
  /** The value as the message writes it: six digits, angles in degrees. */
  readonly written: string;

  constructor(quantity: string, value: number, requirement: string, unit = '') {
    const written = write(value, unit);
    super(`${quantity} is ${written}, but ${requirement}`);
    this.name = 'DomainError';
    this.quantity = quantity;
    this.value = value;
    this.requirement = requirement;
    this.written = written;
  }
}

export function requireFinite(quantity: string, value: number, unit = ''): void {
  if (!Number.isFinite(value)) throw new DomainError(quantity, value, 'a finite number is needed', unit);
}

export function requirePositive(quantity: string, value: number, unit: string): void {
  requireFinite(quantity, value, unit);
  if (value <= 0) {
    throw new DomainError(quantity, value, `it has to be more than ${write(0, unit)}`, unit);
  }
}

export function requireNotNegative(quantity: string, value: number, unit: string): void {
  requireFinite(quantity, value, unit);
  if (value < 0) {
    throw new DomainError(quantity, value, `it cannot be less than ${write(0, unit)}`, unit);
  }
}

/** Both limits belong to the range. */
export function requireBetween(
  quantity: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): void {
  requireFinite(quantity, value, unit);
  if (value < low || value > high) {
    const range = `${write(low, unit)} and ${write(high, unit)}`;
    throw new DomainError(quantity, value, `it has to lie between ${range}`, unit);
  }
}

/** A count: of cells, of turns. */
export function requireWholeNumber(quantity: string, value: number, least: number): void {
  if (!Number.isInteger(value) || value < least) {
    throw new DomainError(quantity, value, `it has to be a whole number of at least ${least}`);
  }
}

/** A list with every member finite and, where `least` is given, not below it. The message counts from one. */
export function requireEach(quantity: string, values: readonly number[], unit: string, least?: number): void {
  if (!Array.isArray(values)) throw new DomainError(quantity, Number.NaN, 'a list of numbers is needed');
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (value === undefined || !Number.isFinite(value) || (least !== undefined && value < least)) {
      const requirement =
        least === undefined || !Number.isFinite(value)
          ? 'a finite number is needed'
          : `it cannot be less than ${write(least, unit)}`;
      throw new DomainError(`${quantity} ${i + 1}`, value ?? Number.NaN, requirement, unit);
    }
  }
}

/** Two lists that describe the same parts. */
export function requireSameLength(
  quantity: string,
  values: readonly number[],
  ofWhat: string,
  others: readonly number[],
): void {
  if (values.length !== others.length) {
    const requirement = `there has to be one for each ${ofWhat} (${others.length})`;
    throw new DomainError(`number of figures for ${quantity}`, values.length, requirement);
  }
}

function write(value: number, unit: string): string {
  if (value === undefined || Number.isNaN(value)) return 'missing or not a number';
  if (unit === 'rad') return `${rounded((value * 180) / Math.PI)}°`;
  return unit === '' || unit === '1' ? rounded(value) : `${rounded(value)} ${unit}`;
}

function rounded(value: number): string {
  return String(Number(value.toPrecision(6))).replace('-', '−');
}
