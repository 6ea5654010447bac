/**
 * How likely a vehicle is to stay up when its figures are not known exactly: the same scenario for many vehicles drawn
 * from what is known, and a proportion with its own uncertainty.
 */
import { randomNumbers } from '../control/index.ts';
import { DomainError, requireFinite, requireNotNegative, requireWholeNumber } from '../mechanics/index.ts';
import type { Scenario } from './scenario.ts';
import { type SimulationOptions, simulate } from './simulate.ts';
import {
  type CompleteModel,
  completeModel,
  type SensorFigures,
  type SimulationModel,
  type VehicleFigures,
} from './vehicle.ts';

/** Standard uncertainties of the figures that are not taken as exact; normal distributions, independent. */
export interface Spread {
  readonly vehicle?: Partial<Record<keyof VehicleFigures, number>>;
  readonly sensors?: Partial<Record<keyof SensorFigures, number>>;
  readonly controller?: Partial<
    Record<'sampleTime' | 'delay' | 'leanGain' | 'rateGain' | 'gimbalGain', number>
  >;
  readonly start?: Partial<Record<'lean' | 'leanRate' | 'gimbalTilt' | 'gimbalRate', number>>;
}

export interface StayingUp extends Proportion {
  /** Drawn vehicles that cannot exist (a negative inertia) and were drawn again. */
  readonly redrawn: number;
}

/** k of n, as an estimate of a probability. */
export interface Proportion {
  readonly runs: number;
  readonly stayed: number;
  /** p = k/n. */
  readonly probability: number;
  /** √(p (1 − p)/n). */
  readonly standardUncertainty: number;
  /** Interval of 95 % coverage, after Wilson. */
  readonly low: number;
  readonly high: number;
}

/** Redraws for each run before the spread is taken to be senseless. */
const MOST_REDRAWS = 100;

/**
 * The probability that the vehicle stays below its lean limit through the scenario.
 *
 * Every run has its own stream of random numbers, for its figures and for its noise: run 17 is the same run, whether
 * 20 or 2,000 are made.
 *
 * @param runs  how many, at least 1
 * @throws DomainError  for a negative uncertainty, and where the spread hardly ever gives a vehicle that can exist
 * Source: Monte Carlo method, JCGM 101:2008, clauses 5 and 7.
 */
export function probabilityOfStayingUp(
  model: SimulationModel,
  scenario: Scenario,
  spread: Spread,
  runs: number,
  options: SimulationOptions = {},
): StayingUp {
  requireWholeNumber('number of runs', runs, 1);
  requireSpread(spread);
  const complete = completeModel(model);
  const seed = options.seed ?? 0;
  let stayed = 0;
  let redrawn = 0;
  for (let run = 0; run < runs; run++) {
    const random = randomNumbers(seed, 2 * run);
    for (let attempt = 0; ; attempt++) {
      const outcome = outcomeOf(draw(complete, scenario, spread, random.normal), {
        ...options,
        seed,
        stream: 2 * run + 1,
        rowEvery: 0,
      });
      if (outcome instanceof DomainError) {
        if (attempt >= MOST_REDRAWS) throw outcome;
        redrawn++;
        continue;
      }
      if (outcome) stayed++;
      break;
    }
  }
  return { ...proportion(stayed, runs), redrawn };
}

/**
 * k of n.
 *
 *   (p + z²/2n ± z √(p (1 − p)/n + z²/4n²)) / (1 + z²/n),  z = 1.95996
 *
 * @throws DomainError  where they are not such numbers
 * Source: E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209; R. G. Newcombe, Statistics in Medicine 17 (1998) 857, method 3.
 */
export function proportion(stayed: number, runs: number): Proportion {
  requireWholeNumber('number of runs', runs, 1);
  requireWholeNumber('number of runs that stayed up', stayed, 0);
  if (stayed > runs)
    throw new DomainError('number of runs that stayed up', stayed, `there were ${runs} in all`);
  const p = stayed / runs;
  const z2 = 1.959963984540054 ** 2;
  const centre = p + z2 / (2 * runs);
  const half = Math.sqrt(z2 * ((p * (1 - p)) / runs + z2 / (4 * runs ** 2)));
  const scale = 1 + z2 / runs;
  return {
    runs,
    stayed,
    probability: p,
    standardUncertainty: Math.sqrt((p * (1 - p)) / runs),
    low: stayed === 0 ? 0 : (centre - half) / scale,
    high: stayed === runs ? 1 : (centre + half) / scale,
  };
}

function outcomeOf(
  [model, scenario]: readonly [SimulationModel, Scenario],
  options: SimulationOptions,
): boolean | DomainError {
  try {
    const { outcome } = simulate(model, scenario, options);
    return outcome === 'settled' || outcome === 'stayed up';
  } catch (error) {
    if (error instanceof DomainError) return error;
    throw error;
  }
}

function draw(
  model: CompleteModel,
  scenario: Scenario,
  spread: Spread,
  normal: () => number,
): readonly [SimulationModel, Scenario] {
  return [
    {
      drive: model.drive,
      vehicle: drawn(model.vehicle, spread.vehicle, normal),
      sensors: drawn(model.sensors, spread.sensors, normal),
      controller: drawn(model.controller, spread.controller, normal),
    },
    { ...scenario, start: drawn(scenario.start ?? {}, spread.start, normal) },
  ];
}

/** What of the start is left out varies about 0. */
function drawn<T extends object>(
  figures: T,
  spread: Readonly<Record<string, number>> | undefined,
  normal: () => number,
): T {
  const values = Object.entries(spread ?? {}).map(([name, uncertainty]) => {
    const value = (figures as Readonly<Record<string, number>>)[name] ?? 0;
    return [name, value + uncertainty * normal()] as const;
  });
  return { ...figures, ...Object.fromEntries(values) };
}

function requireSpread(spread: Spread): void {
  for (const figures of Object.values(spread)) {
    for (const [name, uncertainty] of Object.entries<number>(figures)) {
      requireFinite(`uncertainty of ${name}`, uncertainty);
      requireNotNegative(`uncertainty of ${name}`, uncertainty, '');
    }
  }
}
