import { useState, type ReactNode } from 'react';
import { isSingle, type AnsweredSingle, type AnsweredValue, type CalcAnswer, type Calculation, type OutputSpec } from '@rotorwright/calculations';
import { inUnit, isUnit, listedUnits, sameDimension, showNumber, showQuantity, unit } from '@rotorwright/units';
import { Formula } from '../../sheet/index.ts';

export interface ResultsProps {
  readonly calculation: Calculation;
  readonly answered: CalcAnswer;
}

/** Units in which a result may be read: the usual one, SI, and the others of its kind. */
function unitsOf(spec: OutputSpec): readonly string[] {
  const own = unit(spec.unit);
  if (spec.unit === '-' || !isUnit(own)) return [spec.shown];
  const alike = listedUnits.flatMap((one) => {
    const read = unit(one.symbol);
    return isUnit(read) && sameDimension(read.dimension, own.dimension) ? [one.symbol] : [];
  });
  return [...new Set([spec.shown, spec.unit, ...alike])];
}

/** A value in the unit that the reader chose, at most six figures; lists one after the other, lists in a list each in brackets. */
export function showAnswer(value: AnsweredValue, shown: string): string {
  return show(value, (number) => showQuantity(number, shown, { significant: 6 }));
}

/** The figure alone: its unit stands in the list beside it. */
function bare(value: AnsweredValue, shown: string): string {
  return show(value, (number) => showNumber(inUnit(number, shown), { significant: 6 }));
}

function show(value: AnsweredValue, number: (value: number) => string): string {
  if (isSingle(value)) return typeof value.value === 'number' ? number(value.value) : value.value;
  if (!Array.isArray(value)) return Object.entries(value as Readonly<Record<string, AnsweredSingle>>).map(([name, one]) => `${name}: ${show(one, number)}`).join('; ') || 'none';
  const list = value as readonly AnsweredValue[];
  return list.map((one) => (Array.isArray(one) ? `(${show(one, number)})` : show(one, number))).join('; ') || 'none';
}

export function Results({ calculation, answered }: ResultsProps): ReactNode {
  const [units, setUnits] = useState<Readonly<Record<string, string>>>({});
  return (
    <table className="results">
      <caption className="unseen">Results of {calculation.title}</caption>
      <thead><tr><th scope="col">Result</th><th scope="col" className="number">Value</th><th scope="col">Unit</th></tr></thead>
      <tbody>
        {Object.entries(calculation.outputs).map(([name, spec]) => {
          const value = answered.outputs[name];
          const shown = units[name] ?? spec.shown;
          const offered = unitsOf(spec);
          return (
            <tr key={name}>
              <th scope="row">{spec.title} <Formula tex={spec.symbol} /></th>
              <td className="number">{value === undefined ? <span className="soft">left out</span> : <b>{offered.length > 1 ? bare(value, shown) : showAnswer(value, shown)}</b>}</td>
              <td>{offered.length > 1 ? (
                <select aria-label={`Unit of ${spec.title}`} value={shown} onChange={(event) => setUnits({ ...units, [name]: event.target.value })}>
                  {offered.map((one) => <option key={one}>{one}</option>)}
                </select>
              ) : <span className="soft">{spec.text ? 'text' : spec.unit === '-' ? 'number' : shown}</span>}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** The whole worksheet as text for a letter or a log: inputs as typed, results, source. */
export function asText(calculation: Calculation, inputs: Readonly<Record<string, unknown>>, answered: CalcAnswer): string {
  return [
    calculation.title,
    ...Object.entries(inputs).map(([name, value]) => `  ${calculation.inputs[name]?.title ?? name}: ${typeof value === 'object' ? JSON.stringify(value) : String(value)}${typeof value === 'number' && calculation.inputs[name]?.kind === 'number' && calculation.inputs[name].unit !== '-' ? ` ${calculation.inputs[name].unit}` : ''}`),
    ...Object.entries(calculation.outputs).flatMap(([name, spec]) => {
      const value = answered.outputs[name];
      return value === undefined ? [] : [`  ${spec.title} = ${showAnswer(value, spec.shown)}`];
    }),
    ...answered.warnings.map((warning) => `  Warning: ${warning}`),
    `Source: ${calculation.source}`,
    '',
  ].join('\n');
}
