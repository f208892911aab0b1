/**
 * The catalogue's own description of a calculation: everything that the command line, the worksheet,
 * the figures and the validation report need to know, as data.
 */
export type InputSpec =
  | {
      readonly kind: 'number';
      readonly title: string;
      readonly symbol: string;
      /** SI unit; '-' for a pure number. */
      readonly unit: string;
      /** Unit in which people of the trade type it. */
      readonly shown: string;
      readonly default?: number;
      readonly optional?: boolean;
      readonly whole?: boolean;
      /** Inclusive bounds outside which the input is refused, SI. */
      readonly min?: number;
      readonly max?: number;
      /** The bound itself is refused as well. */
      readonly above?: number;
      /** A difference of temperatures: °C, which has its zero elsewhere, is refused. */
      readonly difference?: true;
      /** A worked example for the worksheet, SI. */
      readonly example?: number;
    }
  | { readonly kind: 'choice'; readonly title: string; readonly choices: readonly string[]; readonly default?: string; readonly optional?: boolean; readonly example?: string }
  | {
      readonly kind: 'text';
      readonly title: string;
      readonly default?: string;
      readonly optional?: boolean;
      readonly example?: string;
    }
  | {
      readonly kind: 'list';
      readonly title: string;
      readonly of: InputSpec;
      readonly optional?: boolean;
      readonly atLeast?: number;
      readonly example?: readonly unknown[];
      /** For a list of records: the field that a bare value stands for, the rest at their defaults: `"60 mm"` for `[{"chord": "60 mm"}]`. */
      readonly single?: string;
    }
  | {
      readonly kind: 'record';
      readonly title: string;
      readonly fields: Readonly<Record<string, InputSpec>>;
      readonly optional?: boolean;
      /** Name of the field that bare text stands for: `"steel"` for `{"name": "steel"}`. */
      readonly shorthand?: string;
    }
  | {
      /** Names of the user's choosing, each with a value. */
      readonly kind: 'map';
      readonly title: string;
      readonly of: InputSpec;
      readonly optional?: boolean;
      readonly atLeast?: number;
      readonly example?: Readonly<Record<string, unknown>>;
    };

export interface OutputSpec {
  readonly title: string;
  readonly symbol: string;
  readonly unit: string;
  readonly shown: string;
  /** A list, or a list of lists, rather than one. */
  readonly list?: boolean;
  /** A number for each of the names that the user gave, rather than one. */
  readonly map?: boolean;
  /** Text rather than a number; its unit is '-'. */
  readonly text?: boolean;
}

export type OutputValue = number | string | readonly OutputValue[] | { readonly [name: string]: number };

/** One line of working: what was formed, by which formula (TeX), from what, with which result. */
export interface WorkingLine {
  readonly output: string;
  readonly formula: string;
  readonly value: OutputValue;
  readonly unit: string;
}

export interface Outcome<Outputs extends string = string> {
  /** Finite numbers and text only; an output that cannot be formed is left out and a warning says why. */
  readonly outputs: Readonly<Partial<Record<Outputs, OutputValue>>>;
  readonly warnings: readonly string[];
}

export interface Calculation {
  readonly id: string;
  readonly title: string;
  /** Section of the catalogue: Drive, Gears, Bearings, Joints and fits, Shafts and beams, Rotor, … */
  readonly section: string;
  readonly summary: string;
  readonly inputs: Readonly<Record<string, InputSpec>>;
  readonly outputs: Readonly<Record<string, OutputSpec>>;
  /** TeX, one per output that has one, in the order of working. */
  readonly formulas: readonly { readonly output: string; readonly tex: string }[];
  readonly source: string;
  /** Sentences: where it holds, what it leaves out. */
  readonly validity: readonly string[];
  /** Inputs are checked and in SI when this is called. Throws CalculationError on a combination that no single bound excludes. */
  readonly compute: (inputs: never) => Outcome;
}
