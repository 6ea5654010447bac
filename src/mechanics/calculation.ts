/**
 * The shape of a registered calculation: a pure function of plain SI numbers together with everything that the
 * page, the tooltip, the report, the command line and the handbook say about it.
 *
 * A calculation lives in the file of its equation and is listed in that part's `index.ts`.
 */
import { DomainError } from './domain.ts';

export interface SymbolSpec {
  /** As typeset, TeX: `m_b`, `\\varphi`. */
  readonly symbol: string;
  /** SI unit: `kg`, `N·m`, `1` for a pure number, `rad` for an angle. */
  readonly unit: string;
  /** The unit where the same equation serves a slide instead of an arm: `m` for `rad`, `m/s` for `rad/s`. */
  readonly slideUnit?: string;
  /** What it is, in the trade's words, without its unit. */
  readonly meaning: string;
  /** A list of numbers, one for each part (or section) of the same order as the other lists. */
  readonly list?: true;
  /** May be left out; the value then taken. */
  readonly default?: number;
}

export type SymbolSpecs = Readonly<Record<string, SymbolSpec>>;

export type InputsOf<S extends SymbolSpecs> = {
  readonly [K in keyof S]: S[K] extends { readonly list: true } ? readonly number[] : number;
};
export type OutputsOf<S extends SymbolSpecs> = { readonly [K in keyof S]: number };

type Inputs = Readonly<Record<string, number | readonly number[]>>;
type Outputs = Readonly<Record<string, number>>;
type Slopes = Readonly<Record<string, Inputs>>;

export interface CalculationSpec<I extends SymbolSpecs, O extends SymbolSpecs> {
  /** Stable, `family.name-in-words`; printed in reports and used on the command line. */
  readonly id: string;
  readonly title: string;
  /** TeX; outputs on the left. */
  readonly equation: string;
  readonly inputs: I;
  readonly outputs: O;
  /** Where the equation holds, in one sentence. */
  readonly validity: string;
  /** Work, edition and clause; or "Derived: …" with the principle. */
  readonly source: string;
  /** SI in, SI out. Throws a DomainError that names the quantity where the equation is not defined. */
  readonly compute: (inputs: InputsOf<I>) => OutputsOf<O>;
  /** Exact derivatives, output → input → slope(s), where lists make differences slow. */
  readonly partials?: (inputs: InputsOf<I>) => {
    readonly [K in keyof O]: { readonly [J in keyof I]?: number | readonly number[] };
  };
  /** One worked case, SI: printed in the handbook and computed by a test. */
  readonly example: InputsOf<I>;
  /** Ids of calculations worth looking at beside this one. */
  readonly related?: readonly string[];
}

/** A calculation with its input and output names forgotten, as the registry holds it. */
export interface Calculation {
  readonly id: string;
  readonly title: string;
  readonly equation: string;
  readonly inputs: SymbolSpecs;
  readonly outputs: SymbolSpecs;
  readonly validity: string;
  readonly source: string;
  /** Throws a DomainError where an input is missing or unfit, and where the result is beyond what numbers hold. */
  readonly compute: (inputs: Inputs) => Outputs;
  /** The same without that door, for millions of draws: all inputs are there and finite, and the caller looks at the results. */
  readonly bare: (inputs: Inputs) => Outputs;
  readonly partials?: (inputs: Inputs) => Slopes;
  readonly example: Inputs;
  readonly related: readonly string[];
}

/**
 * Checks the names at compile time and returns the calculation in its registered form. What is the same for every
 * calculation is done here, once: inputs left out take their default, missing ones are refused by name, and no
 * result that is not a number leaves.
 */
export function calculation<const I extends SymbolSpecs, const O extends SymbolSpecs>(
  spec: CalculationSpec<I, O>,
): Calculation {
  // The names are checked against I and O above; the registry forgets them, so the types are widened here.
  const compute = spec.compute as unknown as (inputs: Inputs) => Outputs;
  const partials = spec.partials as unknown as ((inputs: Inputs) => Slopes) | undefined;
  const inputs = Object.entries<SymbolSpec>(spec.inputs);
  const outputs = Object.entries<SymbolSpec>(spec.outputs);
  return {
    id: spec.id,
    title: spec.title,
    equation: spec.equation,
    inputs: spec.inputs,
    outputs: spec.outputs,
    validity: spec.validity,
    source: spec.source,
    example: spec.example as Inputs,
    related: spec.related ?? [],
    bare: compute,
    compute: (given) => finite(outputs, compute(complete(inputs, given))),
    ...(partials ? { partials: (given: Inputs) => partials(complete(inputs, given)) } : {}),
  };
}

/** Listed once, when the calculation is registered, and not at every use. */
type NamedSpec = readonly [name: string, spec: SymbolSpec];

function complete(specs: readonly NamedSpec[], given: Inputs): Inputs {
  const inputs: Record<string, number | readonly number[]> = {};
  for (const [name, spec] of specs) {
    const value = given[name] ?? spec.default;
    if (spec.list ? !Array.isArray(value) : typeof value !== 'number' || !Number.isFinite(value)) {
      const requirement = spec.list ? 'a list of numbers is needed' : 'a finite number is needed';
      throw new DomainError(
        spec.meaning,
        typeof value === 'number' ? value : Number.NaN,
        requirement,
        spec.unit,
      );
    }
    if (value !== undefined) inputs[name] = value;
  }
  return inputs;
}

function finite(specs: readonly NamedSpec[], outputs: Outputs): Outputs {
  for (const [name, spec] of specs) {
    const value = outputs[name] ?? Number.NaN;
    if (!Number.isFinite(value)) {
      throw new DomainError(spec.meaning, value, 'the inputs have to give a finite number', spec.unit);
    }
  }
  return outputs;
}
