import type { Way } from '@rotorwright/build';
import type { ReactNode } from 'react';
import { Warning } from '../../../sheet/index.ts';
import './way-in.css';

/** What comes undone on the way in, from outside to core: caution first, then what to do and why. */
export function Layers({ way }: { readonly way: Way }): ReactNode {
  return (
    <ol className="layers">
      {way.undo.map((each) => (
        <li key={each.id}>
          {each.caution !== undefined && <p className="step-caution"><Warning /><span><b>Warning.</b> {each.caution}</span></p>}
          <p><b>{each.action}</b></p>
          <p className="soft">{each.because}</p>
          <p className="small">{[each.heat ? 'heat' : '', each.locks.map(({ grade }) => grade).join(' and '), each.tools.join(', ')].filter((words) => words !== '').join(' · ')}</p>
        </li>
      ))}
    </ol>
  );
}
