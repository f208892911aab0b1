import { useState, type ReactNode } from 'react';
import { opensOffline, useBoard } from '../data/index.ts';
import { Button } from './button.tsx';
import { RefusedDrawer } from './refused-drawer.tsx';
import { StateMark } from './state-mark.tsx';
import { dayOf } from './title-block.tsx';
import './strips.css';

/** Above every sheet, also those without a register: what stands between this device and the book. */
export function Strips(): ReactNode {
  const { reachable, asOf, refused, takeOver } = useBoard();
  const [open, setOpen] = useState(false);
  return (
    <>
      {!reachable && (
        <p className="strip" role="status">
          <StateMark state="unknown" size={14} />
          <span>Network gone. What you sign is kept on this device until it is back.{asOf !== undefined && ` Shown as the book was on ${dayOf(new Date(asOf).toISOString())}.`}{!opensOffline() && ' At this address the browser keeps no pages: leave the tab open.'}</span>
        </p>
      )}
      {refused.length > 0 && (
        <p className="strip bad" role="status">
          <StateMark state="exceeded" size={14} />
          <span>The book refuses {refused.length === 1 ? 'an entry that was' : `${refused.length} entries that were`} made on this device.</span>
          <Button onClick={() => setOpen(true)}>Put it right</Button>
        </p>
      )}
      {takeOver && (
        <p className="strip" role="status">
          <StateMark state="holds" size={14} /> <span>A new version of these pages is here.</span> <Button onClick={takeOver}>Reload</Button>
        </p>
      )}
      {open && <RefusedDrawer onClose={() => setOpen(false)} />}
    </>
  );
}
