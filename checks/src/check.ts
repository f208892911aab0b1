/** Where an expected value comes from. */
export interface Source {
  readonly document: string;
  /** Table, page, equation. */
  readonly place?: string;
  readonly kind: 'published' | 'common practice' | 'law' | 'by hand' | 'independent route';
}

/** A number in SI, text, a list of these or of lists, or numbers by name. */
export type CheckValue = number | string | readonly CheckValue[] | { readonly [name: string]: number };

/** One value of the outside world against one output of a calculation. */
export interface Check {
  /** Id in the catalogue. */
  readonly calculation: string;
  /** What is claimed. */
  readonly title: string;
  readonly source: Source;
  /** As a user would give them. */
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly output: string;
  /** SI. A list must have as many entries, names must be the same, text must agree letter for letter. */
  readonly expected: CheckValue;
  /** Of each number: share of the expected value, or SI. Half the last printed digit where a value was printed. */
  readonly tolerance: number;
  readonly mode: 'relative' | 'absolute';
}
