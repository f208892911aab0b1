import { useState, type ReactNode } from 'react';
import { exampleInputs, isCalcProblem, type CalcAnswer, type Calculation } from '@rotorwright/calculations';
import { Button, Formula } from '../../sheet/index.ts';
import { CalculationFields, CalculationResults } from './calculation-parts.tsx';
import { CheckList } from './check-list.tsx';
import { Plot } from './plot.tsx';
import { asText } from './results.tsx';
import { useCalculation } from './use-calculation.ts';

/** Inputs at the left, what follows from them at the right. */
export function CalculationSheet({ calculation }: { readonly calculation: Calculation }): ReactNode {
  const open = useCalculation(calculation);
  const { inputs, answered, fill } = open;
  return (
    <>
      <section className="area worksheet-inputs" aria-label="Inputs">
        <h2>{calculation.title}</h2>
        <p>{calculation.summary}</p>
        <CalculationFields open={open} />
        <Button onClick={() => fill(exampleInputs(calculation))}>Fill in the example</Button>
      </section>
      <section className="area worksheet-results" aria-label="Results">
        <CalculationResults open={open} more={(found) => <Carry calculation={calculation} inputs={inputs} answered={found} />} />
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
