import type { ReactNode } from 'react';
import { useQuery } from '@tanstack/react-query';
import type { CalculationReport, CheckResult } from '@rotorwright/checks';
import { showNumber, showQuantity } from '@rotorwright/units';

/** What the checks of one calculation give, run here and now. */
export function CheckList({ id }: { readonly id: string }): ReactNode {
  const { data } = useQuery({ queryKey: ['checks', id], queryFn: async () => (await import('@rotorwright/checks')).calculationReport(id) ?? null, staleTime: Infinity });
  return (
    <section aria-label="Checks" className="worksheet-checks">
      <h3>Checks</h3>
      {data ? <Report report={data} /> : <p className="soft">The checks are being run …</p>}
    </section>
  );
}

/** A calculation's checks in words and, opened, as a table. */
export function Report({ report }: { readonly report: CalculationReport }): ReactNode {
  const { checks, uncheckedOutputs } = report;
  const holding = checks.filter(({ holds }) => holds).length;
  if (checks.length === 0) return <p><b>Not checked.</b> Nothing outside has been found yet to hold this calculation against.</p>;
  return (
    <>
      <p>{holding === checks.length ? `Passes ${checks.length === 1 ? 'its one check' : `all its ${checks.length} checks`} against the outside world.` : <b>{checks.length - holding} of {checks.length} checks do not hold.</b>}{uncheckedOutputs.length > 0 && ` No check covers: ${uncheckedOutputs.join(', ')}.`}</p>
      <details>
        <summary>Show {checks.length === 1 ? 'it' : 'them'}</summary>
        <div className="worksheet-checks-table" tabIndex={0} role="region" aria-label={`Checks of ${report.title}`}>
          <table>
            <thead><tr><th scope="col">What is claimed</th><th scope="col">Source</th><th scope="col">Expected</th><th scope="col">Computed</th><th scope="col">Deviation</th><th scope="col">Holds</th></tr></thead>
            <tbody>{checks.map((check, index) => <Row key={`${check.title} ${check.output} ${index}`} check={check} />)}</tbody>
          </table>
        </div>
      </details>
    </>
  );
}

function Row({ check }: { readonly check: CheckResult }): ReactNode {
  const { title, output, source, expected, computed, unit, holds, reason } = check;
  return (
    <tr>
      <th scope="row">{title} <span className="soft">({output})</span></th>
      <td>{source.kind}: {source.document}{source.place !== undefined && `, ${source.place}`}</td>
      <td>{valueText(expected, unit)}</td>
      <td>{computed === undefined ? reason : valueText(computed, unit)}</td>
      <td>{deviationText(check)}</td>
      <td>{holds ? 'yes' : <b>no</b>}</td>
    </tr>
  );
}

function valueText(value: NonNullable<CheckResult['computed']>, unit: string): string {
  if (typeof value === 'number') return showQuantity(value, unit, { significant: 6 });
  if (typeof value === 'string') return value;
  if (!Array.isArray(value)) return Object.entries(value as Readonly<Record<string, number>>).map(([name, one]) => `${name}: ${valueText(one, unit)}`).join('; ');
  const list = value as readonly NonNullable<CheckResult['computed']>[];
  const shown = list.slice(0, 4).map((one) => valueText(one, unit)).join('; ');
  return list.length > 4 ? `${shown}; … ${list.length} in all` : shown;
}

/** Deviations of this size are rounding. */
const ROUNDING = 1e-9;

function deviationText({ deviation, mode, unit }: CheckResult): string {
  if (deviation === undefined || !Number.isFinite(deviation)) return '–';
  if (Math.abs(deviation) < ROUNDING) return 'rounding';
  return mode === 'relative' ? `${showNumber(deviation * 100, { significant: 3 })} %` : differenceText(deviation, unit);
}

/** A difference of temperatures is in kelvin, as all are in SI. */
const differenceText = (deviation: number, unit: string): string => showQuantity(deviation, unit, { significant: 3 });
