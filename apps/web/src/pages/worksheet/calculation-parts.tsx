import { isCalcProblem, type CalcAnswer } from '@rotorwright/calculations';
import type { ReactNode } from 'react';
import { InputField } from './input-field.tsx';
import { Results } from './results.tsx';
import type { OpenCalculation } from './use-calculation.ts';
import './worksheet.css';

/** The fields of a calculation, each with what is wrong with it in place. */
export function CalculationFields({ open: { calculation, fields, problems, change } }: { readonly open: OpenCalculation }): ReactNode {
  return (
    <form onSubmit={(event) => event.preventDefault()}>
      {Object.entries(calculation.inputs).map(([name, spec]) => <InputField key={name} spec={spec} path={[name]} value={fields[name]} problems={problems} onChange={change} />)}
    </form>
  );
}

/** What follows from the fields; `more` stands below a result. */
export function CalculationResults({ open: { calculation, answered, problems }, more }: { readonly open: OpenCalculation; readonly more?: (answered: CalcAnswer) => ReactNode }): ReactNode {
  return (
    <div aria-live="polite">
      {problems.has('') && <div className="field-problem">{problems.get('')!.map((problem) => <p key={problem.name + problem.wanted}><b>{problem.name}:</b> not {problem.given}. Wanted: {problem.wanted}.</p>)}</div>}
      {isCalcProblem(answered) ? <p className="worksheet-none">No result yet: {problems.size === 1 ? 'one input is' : `${problems.size} inputs are`} not right. {problems.size === 1 ? 'It says' : 'They say'} so in place.</p> : (
        <>
          <Results calculation={calculation} answered={answered} />
          {answered.warnings.length > 0 && <ul className="worksheet-warnings">{answered.warnings.map((warning) => <li key={warning}><b>Warning.</b> {warning}</li>)}</ul>}
          {more?.(answered)}
        </>
      )}
    </div>
  );
}
