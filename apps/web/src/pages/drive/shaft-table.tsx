import { turning, type DriveState, type FigureSet } from '@rotorwright/figures';
import { inUnit, showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { LiveText } from './live-text.tsx';
import type { Live } from './live.ts';

export interface ShaftTableProps {
  readonly set: FigureSet;
  readonly state: DriveState;
  readonly speed: Live;
  readonly factorOf: (shaft: string) => number | undefined;
  readonly onOpen: (figure: string) => void;
}

/** Every shaft: speed, frequency, sense, exact ratio to what turns it. Also what the picture says, for those who do not see it. */
export function ShaftTable({ set, state, speed, factorOf, onOpen }: ShaftTableProps): ReactNode {
  const { machine, drive } = set;
  const motions = drive.states.get(state)?.motions;
  const turns = new Map(turning(machine, drive, state).map((each) => [each.shaft, each.words]));
  return (
    <section className="area">
      <div className="area-head"><h2>Shafts</h2><span className="small soft">ratio: exact turns for one of {machine.shafts.get(drive.states.get(state)?.source ?? '')?.title.toLowerCase() ?? 'the source'}</span></div>
      <div className="shafts" tabIndex={0} role="region" aria-label="Shafts">
        <table>
          <thead><tr><th scope="col">Shaft</th><th scope="col" className="number">rpm</th><th scope="col" className="number">Hz</th><th scope="col">turns</th><th scope="col" className="number">ratio</th></tr></thead>
          <tbody>
            {[...machine.shafts.values()].map((shaft) => {
              const motion = motions?.get(shaft.id);
              const factor = factorOf(shaft.id);
              return (
                <tr key={shaft.id}>
                  <th scope="row">{shaft.title}</th>
                  <td className="number">{factor === undefined ? <button type="button" className="figure-link" onClick={() => onOpen(`speed ${shaft.id}`)}>not known</button> : <button type="button" className="figure-link" onClick={() => onOpen(`speed ${shaft.id}`)}><LiveText live={speed} text={(value) => showNumber(inUnit(value * factor, 'rpm'), { decimals: 0 })} /><span className="unseen"> rpm, working of the speed of {shaft.title}</span></button>}</td>
                  <td className="number">{factor === undefined ? '' : <LiveText live={speed} text={(value) => showNumber((value * factor) / (2 * Math.PI), { decimals: 1 })} />}</td>
                  <td>{turns.get(shaft.id) ?? 'not known'}</td>
                  <td className="number">{motion?.exact ?? ''}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
