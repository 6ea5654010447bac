/**
 * The shape of a registered calculation: a pure function of plain SI numbers together with everything that the
 * page, the tooltip, the report, the command line and the handbook say about it.
 *
 * A calculation lives in the file of its equation and is listed in that part's `index.ts`.
 */

export interface SymbolSpec {
  /** As typeset, TeX: `m_b`, `\\varphi`. */
  readonly symbol: string;
  /** SI unit: `kg`, `N·m`, `1` for a pure number, `rad` for an angle. */
  readonly unit: string;
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

type LoosePartials = (
  inputs: never,
) => Readonly<Record<string, Readonly<Record<string, number | readonly number[]>>>>;

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
  /** SI in, SI out. Throws a RangeError that names the quantity where the equation is not defined. */
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
  readonly compute: (
    inputs: Readonly<Record<string, number | readonly number[]>>,
  ) => Readonly<Record<string, number>>;
  readonly partials?: (
    inputs: Readonly<Record<string, number | readonly number[]>>,
  ) => Readonly<Record<string, Readonly<Record<string, number | readonly number[]>>>>;
  readonly example: Readonly<Record<string, number | readonly number[]>>;
  readonly related: readonly string[];
}

/** Checks the names at compile time and returns the calculation in its registered form. */
export function calculation<const I extends SymbolSpecs, const O extends SymbolSpecs>(
  spec: CalculationSpec<I, O>,
): Calculation {
  return {
    related: [],
    ...spec,
    compute: spec.compute as unknown as Calculation['compute'],
    ...(spec.partials
      ? { partials: spec.partials as LoosePartials as unknown as NonNullable<Calculation['partials']> }
      : {}),
  } as Calculation;
}
