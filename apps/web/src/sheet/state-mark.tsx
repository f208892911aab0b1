import type { ReactNode } from 'react';
import './state-mark.css';

/** A square is a figure, a circle is a signature. */
export type MarkState = 'holds' | 'tight' | 'exceeded' | 'unknown' | 'signed' | 'open' | 'undone' | 'curing';

export interface StateMarkProps {
  readonly state: MarkState;
  /** px; 16 in text, 14 in the register, 18 to 30 on the bench. */
  readonly size?: number;
  /** Curing: the part that has passed, 0 to 1. */
  readonly passed?: number;
  /** Said to readers when no word stands beside the mark. */
  readonly label?: string;
}

/** Shape and colour of a state; its word stands beside it. */
export function StateMark({ state, size = 16, passed = 0.25, label }: StateMarkProps): ReactNode {
  return (
    <svg className={`mark ${state}`} width={size} height={size} viewBox="0 0 16 16" {...(label === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}>
      {shape(state, passed)}
    </svg>
  );
}

function shape(state: MarkState, passed: number): ReactNode {
  switch (state) {
    case 'holds': return <path className="solid" d="M2 2H14V14H2Z" />;
    case 'tight': return <path className="solid" d="M1.5 2H14.5L10.4 8L14.5 14H1.5L5.6 8Z" />;
    case 'exceeded': return <path className="solid" d="M1 4.4H6.9L5.4 8.2L8.3 8.8L5.7 15H1ZM15 1V11.6H9.3L10.8 7.9L7.9 7.3L10.4 1Z" />;
    case 'unknown': return <path className="stroke" d="M2.5 2.5H13.5V13.5H2.5Z" strokeDasharray="2.75" strokeDashoffset="1.4" />;
    case 'signed': return <><circle className="stroke" cx="8" cy="8" r="6.4" /><circle className="solid" cx="8" cy="8" r="3.6" /></>;
    case 'open': return <circle className="stroke" cx="8" cy="8" r="6.2" />;
    case 'undone': return <path className="stroke" d="M5.4 3.4A5.8 5.8 0 0 0 6.1 14.6L7.5 10.9L4.9 9.4ZM10.6 12.6A5.8 5.8 0 0 0 9.9 1.4L8.5 5.1L11.1 6.6Z" />;
    case 'curing': return <><circle className="stroke" cx="8" cy="8" r="6.4" /><path className="solid" d={wedge(passed)} /></>;
  }
}

/** Fills clockwise from the top as time passes. */
function wedge(passed: number): string {
  const part = Math.min(Math.max(passed, 0.02), 0.98);
  const angle = part * 2 * Math.PI;
  return `M8 8V2.6A5.4 5.4 0 ${part > 0.5 ? 1 : 0} 1 ${(8 + 5.4 * Math.sin(angle)).toFixed(2)} ${(8 - 5.4 * Math.cos(angle)).toFixed(2)}Z`;
}

/** Mark and word together, in the state's colour: `<StateWord state="open">3 open</StateWord>`. */
export function StateWord({ children, ...mark }: StateMarkProps & { readonly children: ReactNode }): ReactNode {
  return <span className={`state-word ${mark.state}`}><StateMark {...mark} /><span>{children}</span></span>;
}
