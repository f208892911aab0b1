import type { Calculation, InputSpec, Outcome, OutputSpec } from './calculation.ts';

type ValueOf<Spec> = Spec extends { kind: 'number' }
  ? number
  : Spec extends { kind: 'choice'; choices: readonly (infer Choice)[] }
    ? Choice
    : Spec extends { kind: 'text' }
      ? string
      : Spec extends { kind: 'list'; of: infer Of }
        ? readonly ValueOf<Of>[]
        : Spec extends { kind: 'record'; fields: infer Fields }
          ? InputsOf<Fields>
          : Spec extends { kind: 'map'; of: infer Of }
            ? Readonly<Record<string, ValueOf<Of>>>
            : never;

/** What `compute` is given: one value for each spec. `optional` means that it may be missing; a spec with a default never is. */
export type InputsOf<Specs> = { readonly [Name in keyof Specs as Specs[Name] extends { optional: true } ? never : Name]: ValueOf<Specs[Name]> } & {
  readonly [Name in keyof Specs as Specs[Name] extends { optional: true } ? Name : never]?: ValueOf<Specs[Name]>;
};

interface Definition<Inputs, Outputs> extends Omit<Calculation, 'inputs' | 'outputs' | 'formulas' | 'compute'> {
  readonly inputs: Inputs;
  readonly outputs: Outputs;
  readonly formulas: readonly { readonly output: Extract<keyof Outputs, string>; readonly tex: string }[];
  readonly compute: (inputs: InputsOf<Inputs>) => Outcome<Extract<keyof Outputs, string>>;
}

/** A calculation of the catalogue; the types of its inputs and outputs follow from their specs. */
export function defineCalculation<const Inputs extends Readonly<Record<string, InputSpec>>, const Outputs extends Readonly<Record<string, OutputSpec>>>(
  definition: Definition<Inputs, Outputs>,
): Calculation {
  return definition;
}

/** Inputs that no single bound excludes, but their combination does. */
export class CalculationError extends Error {
  override readonly name = 'CalculationError';
  readonly input: string;
  readonly given: string;
  readonly wanted: string;

  /**
   * @param input   name of the input, `stages[1].driver`
   * @param given   what was given, as text
   * @param wanted  what would be right
   */
  constructor(input: string, given: string, wanted: string) {
    super(`${input}: given ${given}; wanted ${wanted}`);
    this.input = input;
    this.given = given;
    this.wanted = wanted;
  }
}
