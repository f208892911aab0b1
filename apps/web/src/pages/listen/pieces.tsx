import { hearingWords, type Hearing } from '@rotorwright/signals';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';

/** What each piece of a long recording says, in the order of time. */
export function Pieces({ pieces }: { readonly pieces: readonly Hearing[] }): ReactNode {
  return (
    <section className="area">
      <div className="area-head"><h2>Piece after piece</h2><span className="small soft">each heard by itself</span></div>
      <div className="heard-lines" tabIndex={0} role="region" aria-label="Piece after piece">
        <table>
          <thead><tr><th scope="col" className="number">From</th><th scope="col" className="number">To</th><th scope="col">What was heard</th></tr></thead>
          <tbody>
            {pieces.map((piece) => (
              <tr key={piece.from}>
                <td className="number">{piece.from.toFixed(0)} s</td>
                <td className="number">{(piece.from + piece.seconds).toFixed(0)} s</td>
                <td>{hearingWords(piece, (speed, decimals) => showQuantity(speed, 'rpm', { decimals }))[0]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
