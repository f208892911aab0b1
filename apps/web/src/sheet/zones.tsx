import { useEffect, useState, type ReactNode } from 'react';
import './zones.css';

const columns = ['1', '2', '3', '4', '5', '6', '7', '8'];
const rows = ['A', 'B', 'C', 'D', 'E', 'F'];

/** The addresses on the frame. `#C4` at the end of an address frames that zone. Readers find their way by headings instead. */
export function Zones(): ReactNode {
  const zone = useZone();
  return (
    <div className="zones" aria-hidden="true">
      {(['top', 'bottom'] as const).map((side) => <div key={side} className={`zone-row ${side}`}>{columns.map((name) => <span key={name}>{name}</span>)}</div>)}
      {(['left', 'right'] as const).map((side) => <div key={side} className={`zone-column ${side}`}>{rows.map((name) => <span key={name}>{name}</span>)}</div>)}
      {zone && <div className="zone-grid"><div className="zone-found" style={{ gridColumn: zone.column + 1, gridRow: zone.row + 1 }} /></div>}
    </div>
  );
}

function useZone(): { readonly column: number; readonly row: number } | undefined {
  const [hash, setHash] = useState(() => location.hash);
  useEffect(() => {
    const look = (): void => setHash(location.hash);
    addEventListener('hashchange', look);
    return () => removeEventListener('hashchange', look);
  }, []);
  const found = /^#([A-F])([1-8])$/.exec(hash);
  return found ? { row: rows.indexOf(found[1]!), column: Number(found[2]) - 1 } : undefined;
}
