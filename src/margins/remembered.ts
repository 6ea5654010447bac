/** How a calculation is carried out and differentiated inside an assessment. */
import type { Calculation } from '../mechanics/index.ts';
import type { UncertainValues } from '../quantity/index.ts';

export interface Carrier {
  readonly compute: Calculation['compute'];
  readonly partials?: NonNullable<Calculation['partials']>;
}

export function remembered(calculation: Calculation, _inputs: UncertainValues): Carrier {
  return calculation;
}
