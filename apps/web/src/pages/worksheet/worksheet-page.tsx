import { useState, type ReactNode } from 'react';
import { catalogue } from '@rotorwright/calculations';
import { Link, useParams } from 'wouter';
import { useOpenMachine } from '../../data/index.ts';
import { Empty, LinkButton, Sheet, worksheetAt } from '../../sheet/index.ts';
import { CalculationSheet } from './calculation-sheet.tsx';
import { ValidationReport } from './validation-report.tsx';
import './worksheet.css';

/** Stands in the place of a calculation’s id. */
const REPORT = 'validation-report';

/** Any calculation of the catalogue on its own: units, formula, source, validity. */
export function WorksheetPage(): ReactNode {
  const { calc } = useParams<{ calc?: string }>();
  const open = useOpenMachine();
  const calculation = calc === undefined ? undefined : catalogue.get(calc);
  return (
    <Sheet title="Worksheet" answer={calculation ? calculation.title : calc === REPORT ? 'Validation report' : `${catalogue.size} calculations`} block={{ machine: open?.title ?? 'no machine', caution: 'An estimate for an experienced builder. It says nothing about a part that is worn or bent.' }}>
      <div className="worksheet">
        <List chosen={calc} machine={open?.id} />
        {calculation ? <CalculationSheet key={calculation.id} calculation={calculation} /> : calc === REPORT ? <ValidationReport machine={open?.id} /> : calc === undefined ? (
          <Empty title="Choose a calculation">Each takes its inputs with units, and shows formula, source and where it holds. A link carries the inputs.</Empty>
        ) : (
          <Empty title={`No calculation “${calc}”`} next={<LinkButton to={open ? `/m/${encodeURIComponent(open.id)}/worksheet` : '/worksheet'}>See them all</LinkButton>}>The catalogue has none of this name. It may come with a later edition.</Empty>
        )}
      </div>
    </Sheet>
  );
}

function List({ chosen, machine }: { readonly chosen: string | undefined; readonly machine: string | undefined }): ReactNode {
  const [search, setSearch] = useState('');
  const words = search.toLowerCase().split(/\s+/).filter((word) => word !== '');
  const all = [...catalogue.values()];
  const found = all.filter((one) => words.every((word) => `${one.id} ${one.title} ${one.section} ${one.summary}`.toLowerCase().includes(word)));
  const sections = [...new Set(found.map((one) => one.section))];
  return (
    <nav className={chosen !== undefined && words.length === 0 ? 'worksheet-list idle' : 'worksheet-list'} aria-label="Calculations">
      <label htmlFor="worksheet-search">Find a calculation</label>
      <input id="worksheet-search" type="search" value={search} onChange={(event) => setSearch(event.target.value)} />
      <p className="soft small" role="status">{found.length === all.length ? `${all.length} in the catalogue` : `${found.length} of ${all.length}`}</p>
      <Link className="worksheet-all" href={worksheetAt(machine, '')}>All calculations</Link>
      <Link className="worksheet-report" href={worksheetAt(machine, REPORT)} aria-current={chosen === REPORT ? 'page' : undefined}>Validation report</Link>
      <div className="worksheet-sections">
        {sections.map((section) => (
          <section key={section}>
            <h2>{section}</h2>
            <ul>{found.filter((one) => one.section === section).map((one) => <li key={one.id}><Link href={worksheetAt(machine, one.id)} aria-current={one.id === chosen ? 'page' : undefined}>{one.title}</Link></li>)}</ul>
          </section>
        ))}
        {found.length === 0 && <p>None has all of these words.</p>}
      </div>
    </nav>
  );
}
