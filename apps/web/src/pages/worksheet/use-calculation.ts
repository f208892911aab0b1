import { answer, exampleInputs, isCalcProblem, type CalcAnswer, type CalcProblem, type Calculation, type InputProblem } from '@rotorwright/calculations';
import { useEffect, useMemo, useState } from 'react';
import { useSearch } from 'wouter';
import { fieldNames, fieldsFor, fromQuery, problemsByField, toInputs, toQuery, withField, type FieldPath, type FieldRecord, type FieldValue } from './form.ts';

export interface OpenCalculation {
  readonly calculation: Calculation;
  readonly fields: FieldRecord;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly answered: CalcAnswer | CalcProblem;
  /** By field; those that fit no field come under ''. */
  readonly problems: ReadonlyMap<string, readonly InputProblem[]>;
  /** The fields stand as they were filled in here, and not as a person or a link has it. */
  readonly untouched: boolean;
  readonly change: (path: FieldPath, value: FieldValue) => void;
  readonly fill: (json: Readonly<Record<string, unknown>>) => void;
  /** Puts into the fields what a person has typed before. */
  readonly take: (json: Readonly<Record<string, unknown>>) => void;
}

/**
 * A calculation with its fields, which the address always carries, without a step of history for each key pressed.
 *
 * @param filled  what stands in the fields before anything is typed; its example when not given
 * @param keep    what else the address says, such as `view=blades`
 */
export function useCalculation(calculation: Calculation, filled: Readonly<Record<string, unknown>> = exampleInputs(calculation), keep = ''): OpenCalculation {
  const search = useSearch();
  const [linked] = useState(() => fromQuery(calculation, search));
  const [fields, setFields] = useState(() => fieldsFor(calculation, linked ?? filled));
  const [untouched, setUntouched] = useState(linked === undefined);
  const inputs = useMemo(() => toInputs(calculation, fields), [calculation, fields]);
  const answered = useMemo(() => answer(calculation.id, inputs), [calculation, inputs]);
  const query = [keep, ...(untouched && keep !== '' ? [] : [toQuery(calculation, fields)])].filter((part) => part !== '').join('&');
  useEffect(() => history.replaceState(history.state, '', `${location.pathname}?${query}`), [query]);
  const problems = useMemo(() => (isCalcProblem(answered) ? problemsByField(answered.problems, new Set(fieldNames(calculation.inputs, fields))) : new Map<string, readonly InputProblem[]>()), [answered, calculation, fields]);
  return {
    calculation, fields, inputs, answered, problems, untouched,
    change: (path, value) => {
      setUntouched(false);
      setFields((now) => withField(now, path, value));
    },
    fill: (json) => {
      setUntouched(true);
      setFields(fieldsFor(calculation, json));
    },
    take: (json) => {
      setUntouched(false);
      setFields(fieldsFor(calculation, json));
    },
  };
}
