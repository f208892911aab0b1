import { missing, thingTitle } from '@rotorwright/build';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { Drawer, keptAt, LinkButton, machineAt, stepAt } from '../../sheet/index.ts';
import { signatureWords } from './chain-row.tsx';

export interface MissedDrawerProps {
  readonly open: ReadableMachine;
  readonly step: string;
  readonly onClose: () => void;
}

/** What if this is missed: which hazards are then there, and what comes off. */
export function MissedDrawer({ open, step, onClose }: MissedDrawerProps): ReactNode {
  const { held, machine } = open;
  const { comesOff, hazards } = missing(held, [step]);
  return (
    <Drawer title="What if this is missed?" onClose={onClose}>
      <p><strong>{thingTitle(machine, step)}</strong><br /><span className="soft small">{signatureWords(open, step)}</span></p>
      <h3>Hazards</h3>
      {hazards.length === 0
        ? <p>None by itself, while everything else holds.</p>
        : <ul className="missed-list">{hazards.map((id) => <li key={id}><Link href={machineAt(open.id, 'holds', `?hazard=${encodeURIComponent(id)}`)}>{machine.hazards.get(id)?.title}</Link> <span className="soft">ends in {machine.hazards.get(id)?.endsIn}</span></li>)}</ul>}
      <h3>{comesOff.length === 0 ? 'Nothing comes off' : `What comes off: ${comesOff.length}`}</h3>
      {comesOff.length > 0 && <ul className="missed-list">{comesOff.map((body) => <li key={body}><Link href={keptAt(open.id, body)}>{thingTitle(machine, body)}</Link></li>)}</ul>}
      <p className="small soft">Everything else is taken to hold. Parts that break are left out.</p>
      <p className="missed-acts"><LinkButton to={stepAt(open.id, step)} kind="ink">To its step at the bench</LinkButton> <LinkButton to={keptAt(open.id, step)}>What keeps it</LinkButton></p>
    </Drawer>
  );
}
