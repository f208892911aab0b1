import type { HazardHolds } from '@rotorwright/build';
import type { ReactNode } from 'react';

/** The hazard, and the gate through which its causes lead to it: any of them, or all. */
export function HazardGate({ hazard: { hazard, tree } }: { readonly hazard: HazardHolds }): ReactNode {
  const all = tree !== undefined && tree.gates[tree.top]?.type === 'and';
  return (
    <div className="hazard-gate">
      <p className="hazard-box"><strong>{hazard.title}</strong><span className="small">ends in {hazard.endsIn}</span></p>
      <svg width="84" height="64" viewBox="0 0 84 64" role="img" aria-label={all ? 'all of these together' : 'any of these'}>
        <path className="wire" d="M0 32H10M70 32H84" />
        {/* Shapes of gates: IEC 61025 in spirit (from memory); open to what causes, pointed at what is caused. */}
        <path className="gate" d={all ? 'M70 4V60H38A28 28 0 0 1 38 4Z' : 'M70 4Q58 32 70 60Q26 58 10 32Q26 6 70 4Z'} />
        <text x="44" y="36" textAnchor="middle">{all ? 'all' : 'any'}</text>
      </svg>
    </div>
  );
}
