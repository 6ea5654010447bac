/** Guards at the door of every physical function: the message names the quantity, its value and what is allowed. */

/** The value of a quantity for which an equation is not defined. Carries the figures for the sentence. */
export class DomainError extends RangeError {
  readonly quantity: string;
  readonly value: number;
  readonly requirement: string;

  constructor(quantity: string, value: number, requirement: string) {
    super(`${quantity} is ${value}, but ${requirement}`);
    this.name = 'DomainError';
    this.quantity = quantity;
    this.value = value;
    this.requirement = requirement;
  }
}

export function requireFinite(quantity: string, value: number): void {
  if (!Number.isFinite(value)) throw new DomainError(quantity, value, 'a finite number is needed');
}

export function requirePositive(quantity: string, value: number, unit: string): void {
  requireFinite(quantity, value);
  if (value <= 0) throw new DomainError(quantity, value, `it has to be more than 0 ${unit}`);
}

export function requireNotNegative(quantity: string, value: number, unit: string): void {
  requireFinite(quantity, value);
  if (value < 0) throw new DomainError(quantity, value, `it cannot be less than 0 ${unit}`);
}

export function requireBetween(
  quantity: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): void {
  requireFinite(quantity, value);
  if (value < low || value > high) {
    throw new DomainError(quantity, value, `it has to lie between ${low} and ${high} ${unit}`);
  }
}
