import { centreOf, hasTeeth } from '@rotorwright/figures';
import type { CouplingSide, Machine } from '@rotorwright/machine';
import { inUnit, showNumber } from '@rotorwright/units';
import { useState, type ReactNode } from 'react';
import { Button } from '../../sheet/index.ts';
import { LiveText } from './live-text.tsx';
import type { Live } from './live.ts';
import './mesh-strip.css';

export interface MeshStripProps {
  /** With what is tried out. */
  readonly machine: Machine;
  /** As the file says. */
  readonly filed: Machine;
  /** Speed of the source, rad/s, and of each shaft over it, without sign. */
  readonly speed: Live;
  readonly factorOf: (shaft: string) => number | undefined;
  readonly onTeeth: (path: string, teeth: number) => void;
  readonly onOpen: (figure: string) => void;
}

/** Fewest teeth that can mesh, and more than any machine has. */
const fewest = 4;
const most = 400;

/** One cell for each mesh and belt: tooth counts to change, frequency, centre distance. */
export function MeshStrip({ machine, filed, speed, factorOf, onTeeth, onOpen }: MeshStripProps): ReactNode {
  const couplings = [...machine.couplings.values()].filter(hasTeeth);
  return (
    <ul className="meshes" aria-label="Meshes and belts">
      {couplings.map((coupling) => {
        const { driver, driven, kind, id } = coupling;
        const factor = factorOf(driver.on);
        const frequency = kind === 'belt' ? `belt-tooth-frequency ${id}` : `mesh-frequency ${id}`;
        const centre = driver.teeth === undefined || driven.teeth === undefined || kind === 'bevel' ? undefined : centreOf(coupling, driver.teeth, driven.teeth);
        const before = filed.couplings.get(id)!;
        const was = before.driver.teeth === undefined || before.driven.teeth === undefined || kind === 'bevel' ? undefined : centreOf(before, before.driver.teeth, before.driven.teeth);
        const move = typeof centre === 'number' && typeof was === 'number' ? centre - was : 0;
        const outside = typeof centre === 'number' && coupling.centre !== undefined && (centre < (coupling.centre.min ?? 0) - 1e-7 || centre > (coupling.centre.max ?? Infinity) + 1e-7);
        return (
          <li key={id}>
            <h2>{coupling.title}</h2>
            <div className="mesh-teeth">
              <Teeth side={driver} filed={before.driver.teeth} title={`${coupling.title}, driving teeth`} onTeeth={onTeeth} />
              <span aria-hidden="true">:</span>
              <Teeth side={driven} filed={before.driven.teeth} title={`${coupling.title}, driven teeth`} onTeeth={onTeeth} />
            </div>
            <p>
              {factor !== undefined && driver.teeth !== undefined && <button type="button" className="figure-link" onClick={() => onOpen(frequency)}><LiveText live={speed} text={(value) => showNumber((value * factor * driver.teeth!) / (2 * Math.PI), { significant: 4 })} /> Hz</button>}
              {kind === 'external' && typeof centre === 'number' && <button type="button" className="figure-link" onClick={() => onOpen(`centre-distance ${id}`)}>centre {inUnit(centre, 'mm').toFixed(2)} mm</button>}
              {kind !== 'external' && typeof centre === 'number' && <span>centre {inUnit(centre, 'mm').toFixed(2)} mm</span>}
              {Math.abs(move) > 1e-7 && <span className={outside ? 'mesh-bad' : 'mesh-move'}>{outside ? 'outside the slot, ' : ''}{move > 0 ? 'apart' : 'together'} by {Math.abs(inUnit(move, 'mm')).toFixed(2)} mm</span>}
            </p>
          </li>
        );
      })}
    </ul>
  );
}

/** A tooth count with buttons and, where the file offers some, those that can be bought. */
function Teeth({ side, filed, title, onTeeth }: { readonly side: CouplingSide; readonly filed: number | undefined; readonly title: string; readonly onTeeth: (path: string, teeth: number) => void }): ReactNode {
  const [typed, setTyped] = useState<string>();
  const path = `${side.path}.teeth`;
  const changed = side.teeth !== filed;
  const valid = (text: string): boolean => /^\d{1,3}$/.test(text.trim()) && Number(text) >= fewest && Number(text) <= most;
  const take = (): void => {
    if (typed !== undefined && valid(typed)) onTeeth(path, Number(typed));
    setTyped(undefined);
  };
  const wrong = typed !== undefined && typed !== '' && !valid(typed);
  return (
    <div className="teeth">
      <Button className="teeth-step" aria-label={`${title}: one less`} disabled={side.teeth === undefined || side.teeth <= fewest} onClick={() => onTeeth(path, side.teeth! - 1)}>−</Button>
      <input
        type="text" inputMode="numeric" aria-label={title} aria-invalid={wrong} className={changed ? 'tried' : undefined} value={typed ?? side.teeth ?? ''} placeholder="?"
        onChange={(event) => setTyped(event.target.value)} onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
        }}
      />
      <Button className="teeth-step" aria-label={`${title}: one more`} disabled={side.teeth === undefined || side.teeth >= most} onClick={() => onTeeth(path, side.teeth! + 1)}>+</Button>
      {side.choices.length > 0 && (
          <div className="teeth-choices">
            {side.choices.map(({ teeth }) => <button key={teeth} type="button" aria-pressed={teeth === side.teeth} aria-label={`${title}: ${teeth}`} onClick={() => onTeeth(path, teeth)}>{teeth}</button>)}
          </div>
      )}
      {wrong && <span className="rule-wrong" role="alert">{fewest} to {most} whole teeth</span>}
    </div>
  );
}
