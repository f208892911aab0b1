import { useEffect, useState, type ReactNode } from 'react';
import type { CalculationReport } from '@rotorwright/checks';
import { catalogue } from '@rotorwright/calculations';
import { Link } from 'wouter';
import { worksheetAt } from '../../sheet/index.ts';
import { Report } from './check-list.tsx';

/** Every calculation with its checks, run here and now, one after the other; what is unchecked stands on top. */
export function ValidationReport({ machine }: { readonly machine: string | undefined }): ReactNode {
  const reports = useReports();
  const done = reports.length === catalogue.size;
  const checks = reports.flatMap((report) => report.checks);
  const failing = checks.filter(({ holds }) => !holds);
  const unchecked = reports.filter((report) => report.checks.length === 0);
  const partly = reports.filter((report) => report.checks.length > 0 && report.uncheckedOutputs.length > 0);
  const link = ({ id, title }: CalculationReport): ReactNode => <Link href={worksheetAt(machine, id)}>{title}</Link>;
  return (
    <section className="area worksheet-validation" aria-label="Validation report">
      <h2>Validation report</h2>
      <p role="status">{done ? `${catalogue.size} calculations, ${checks.length} checks run here: ${failing.length === 0 ? 'all hold' : `${failing.length} do not hold`}.` : `Running the checks of ${catalogue.size} calculations: ${reports.length} done.`}</p>
      <p className="soft">Published: a printed value with its document. Independent route: worked another way. Law: symmetry, scaling, a limit. By hand: worked in the claim. Common practice: a figure of the trade without source.</p>
      <h3>Not checked</h3>
      <ul>
        {unchecked.map((report) => <li key={report.id}>{link(report)}: no check at all</li>)}
        {failing.map((check, index) => <li key={`${check.calculation} ${check.title} ${index}`}><b>Does not hold:</b> {check.calculation}, {check.output}: {check.title}</li>)}
        {partly.map((report) => <li key={report.id}>{link(report)}, single results: {report.uncheckedOutputs.join(', ')}</li>)}
        {done && unchecked.length + failing.length + partly.length === 0 && <li>Nothing: every result of every calculation has a check.</li>}
      </ul>
      <h3>Checked</h3>
      {reports.filter((report) => report.checks.length > 0).map((report) => <section key={report.id} aria-label={report.title}><h4>{link(report)}</h4><Report report={report} /></section>)}
    </section>
  );
}

/** Reports as they come in, a few at a time, so that the page stays awake. */
function useReports(): readonly CalculationReport[] {
  const [reports, setReports] = useState<readonly CalculationReport[]>([]);
  useEffect(() => {
    let stopped = false;
    const run = async (): Promise<void> => {
      const { calculationReport } = await import('@rotorwright/checks');
      for (const id of catalogue.keys()) {
        if (stopped) return;
        const report = calculationReport(id)!;
        setReports((now) => [...now, report]);
        await new Promise((resolve) => setTimeout(resolve));
      }
    };
    void run();
    return () => {
      stopped = true;
      setReports([]);
    };
  }, []);
  return reports;
}
