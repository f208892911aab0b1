import { useState, type ReactNode } from 'react';
import { wordFinding, type Finding } from '@rotorwright/machine';
import { StateMark, type MarkState } from '../../sheet/index.ts';

export interface FindingListProps {
  readonly findings: readonly Finding[];
  readonly onGo: (line: number, column: number) => void;
}

const marks: Readonly<Record<Finding['severity'], MarkState>> = { error: 'exceeded', warning: 'tight', note: 'unknown' };
const rank: Readonly<Record<Finding['severity'], number>> = { error: 0, warning: 1, note: 2 };
const shown = 60;

/** All findings, worst first; each leads to its line. */
export function FindingList({ findings, onGo }: FindingListProps): ReactNode {
  const [all, setAll] = useState(false);
  const sorted = findings.toSorted((a, b) => rank[a.severity] - rank[b.severity] || (a.place?.line ?? 0) - (b.place?.line ?? 0));
  return (
    <section className="area finding-list" aria-label="Findings">
      <div className="area-head"><h2>Findings</h2><span className="soft small">{findings.length === 0 ? 'none' : findings.length}</span></div>
      <ul>
        {(all ? sorted : sorted.slice(0, shown)).map((finding, index) => {
          const { problem, remedy } = wordFinding(finding);
          const { place } = finding;
          return (
            <li key={`${finding.code} ${finding.path} ${index}`}>
              <StateMark state={marks[finding.severity]} label={finding.severity} />
              <div>
                <p>{problem}</p>
                <p className="soft">{remedy}</p>
                {place ? <button type="button" className="link" onClick={() => onGo(place.line, place.column)}>line {place.line}, {finding.path || 'the file'}</button> : <span className="soft">{finding.path}</span>}
              </div>
            </li>
          );
        })}
      </ul>
      {!all && sorted.length > shown && <button type="button" className="link" onClick={() => setAll(true)}>Show all {sorted.length}</button>}
    </section>
  );
}
