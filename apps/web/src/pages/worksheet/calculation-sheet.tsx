import { useEffect, useMemo, useState, type ReactNode } from 'react';
import { answer, exampleInputs, isCalcProblem, type CalcAnswer, type Calculation } from '@rotorwright/calculations';
import { useSearch } from 'wouter';
import { Button, Formula } from '../../sheet/index.ts';
import { CheckList } from './check-list.tsx';
import { fieldNames, fieldsFor, fromQuery, problemsByField, toInputs, toQuery, withField } from './form.ts';
import { InputField } from './input-field.tsx';
import { Plot } from './plot.tsx';
import { asText, Results } from './results.tsx';

/** Inputs at the left, what follows from them at the right. */
export function CalculationSheet({ calculation }: { readonly calculation: Calculation }): ReactNode {
  const search = useSearch();
  const [fields, setFields] = useState(() => fieldsFor(calculation, fromQuery(calculation, search) ?? exampleInputs(calculation)));
  const inputs = useMemo(() => toInputs(calculation, fields), [calculation, fields]);
  const answered = useMemo(() => answer(calculation.id, inputs), [calculation, inputs]);
  const query = toQuery(calculation, fields);
  // The address always carries what stands in the fields, without a step of history for each key pressed.
  useEffect(() => history.replaceState(history.state, '', `${location.pathname}?${query}`), [query]);
  const problems = useMemo(() => (isCalcProblem(answered) ? problemsByField(answered.problems, new Set(fieldNames(calculation.inputs, fields))) : new Map()), [answered, calculation, fields]);
  const general = problems.get('');
  return (
    <>
      <section className="area worksheet-inputs" aria-label="Inputs">
        <h2>{calculation.title}</h2>
        <p>{calculation.summary}</p>
        <form onSubmit={(event) => event.preventDefault()}>
          {Object.entries(calculation.inputs).map(([name, spec]) => (
            <InputField key={name} spec={spec} path={[name]} value={fields[name]} problems={problems} onChange={(path, value) => setFields((now) => withField(now, path, value))} />
          ))}
        </form>
        <Button onClick={() => setFields(fieldsFor(calculation, exampleInputs(calculation)))}>Fill in the example</Button>
      </section>
      <section className="area worksheet-results" aria-label="Results">
        <div aria-live="polite">
          {general && <div className="field-problem">{general.map((problem: { readonly name: string; readonly given: string; readonly wanted: string }) => <p key={problem.name + problem.wanted}><b>{problem.name}:</b> not {problem.given}. Wanted: {problem.wanted}.</p>)}</div>}
          {isCalcProblem(answered) ? <p className="worksheet-none">No result yet: {problems.size === 1 ? 'one input is' : `${problems.size} inputs are`} not right. {problems.size === 1 ? 'It says' : 'They say'} so in place.</p> : (
            <>
              <Results calculation={calculation} answered={answered} />
              {answered.warnings.length > 0 && <ul className="worksheet-warnings">{answered.warnings.map((warning) => <li key={warning}><b>Warning.</b> {warning}</li>)}</ul>}
              <Carry calculation={calculation} inputs={inputs} answered={answered} />
            </>
          )}
        </div>
        {!isCalcProblem(answered) && <Plot calculation={calculation} inputs={inputs} />}
        {calculation.formulas.length > 0 && (
          <section aria-label="Formulas" className="worksheet-formulas" tabIndex={0}>
            <h3>Formulas</h3>
            <ol>{calculation.formulas.map(({ output, tex }) => <li key={output + tex}><Formula tex={tex} display /><span className="soft small">{calculation.outputs[output]?.title ?? output}</span></li>)}</ol>
          </section>
        )}
        <section aria-label="Source and validity" className="worksheet-source">
          <h3>Source</h3><p>{calculation.source}</p>
          {calculation.validity.length > 0 && <><h3>Where it holds</h3><ul>{calculation.validity.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul></>}
        </section>
        <CheckList id={calculation.id} />
      </section>
    </>
  );
}

/** Ways to take the result along: a link, plain text, the same on the command line. */
function Carry({ calculation, inputs, answered }: { readonly calculation: Calculation; readonly inputs: Readonly<Record<string, unknown>>; readonly answered: CalcAnswer }): ReactNode {
  const [said, setSaid] = useState<string>();
  const copy = async (text: string, words: string): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid(words);
    } catch {
      setSaid('This browser does not let pages copy. Select the address or the table by hand.');
    }
  };
  return (
    <div className="worksheet-carry no-print">
      <Button onClick={() => void copy(location.href, 'Link copied. It carries these inputs.')}>Copy a link</Button>
      <Button onClick={() => void copy(asText(calculation, inputs, answered), 'Copied as text.')}>Copy as text</Button>
      <span role="status" className="soft small">{said}</span>
    </div>
  );
}
