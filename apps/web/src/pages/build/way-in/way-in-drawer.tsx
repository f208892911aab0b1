import { moduleTitle, phraseOf, type Reach, type Way } from '@rotorwright/build';
import { durationWords } from '@rotorwright/units';
import { useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../../data/index.ts';
import { Drawer, keptAt, lineAt, Segmented } from '../../../sheet/index.ts';
import { BackSteps } from './back-steps.tsx';
import { Layers } from './layers.tsx';
import { OpenIt } from './open-it.tsx';
import { useWays } from './use-ways.ts';
import './way-in.css';

export interface WayInDrawerProps {
  readonly open: ReadableMachine;
  /** Part, joint, stack or module that is to be got at. */
  readonly thing: string;
  readonly onClose: () => void;
  /** When the opening stands in the book. */
  readonly onOpened: (way: Way) => void;
}

/** What must come apart to get at a thing, from outside to core, and every step of the way back. */
export function WayInDrawer({ open, thing, onClose, onOpened }: WayInDrawerProps): ReactNode {
  const { machine } = open;
  const known = machine.thingOf.has(thing) || machine.modules.has(thing);
  const found = useWays(machine, thing);
  const what = nameOf(open, thing);
  const line = machine.places.get((machine.parts.get(thing) ?? machine.joints.get(thing) ?? machine.stacks.get(thing))?.path ?? '')?.line;
  return (
    <Drawer title={`The way in to the ${what}`} onClose={onClose} wide>
      <p className="way-links">{known && <Link href={keptAt(open.id, thing)}>What keeps it</Link>}{line !== undefined && <Link href={lineAt(open.id, line)}>line {line} of the file</Link>}</p>
      {found === undefined ? <p role="status">Looking for the way …</p> : 'trouble' in found ? <p role="alert">{found.trouble}</p> : <Ways open={open} found={found} what={what} onOpened={onOpened} />}
    </Drawer>
  );
}

/** The ways in, of which one is looked at; and its way back. */
function Ways({ open, found: { ways, proven, lowerBound, cut }, what, onOpened }: Pick<WayInDrawerProps, 'open' | 'onOpened'> & { readonly found: Reach; readonly what: string }): ReactNode {
  const [chosen, setChosen] = useState('0');
  const way = ways[Number(chosen)] ?? ways[0];
  if (way === undefined) return <p>{noWay(lowerBound, cut)}</p>;
  return (
    <>
      {ways.length > 1 && <Segmented label="Which way" options={ways.map((each, at) => ({ value: String(at), title: `${at === 0 ? 'cheapest' : 'another'}, ${workOf(each)}` }))} value={chosen} onChange={setChosen} />}
      <p className="soft">{ways[0] === way ? (proven ? `No way takes less work than ${workOf(way)}, in and back; curing and measuring aside.` : `About ${workOf(way)} of work. That none takes less than ${durationWords(lowerBound)} is proven, no more.`) : `About ${workOf(way)} of work, in and back.`}</p>
      {cut && <p className="soft">Not every other way was looked at: there may be more of them.</p>}
      {way.bothSides.length > 0 && <p><b>Both sides come off.</b> No way leaves one in place: mark where everything stands first.</p>}
      <h3>From outside to core</h3>
      <Layers way={way} />
      <p className="soft">{outWords(open, way)}</p>
      <h3>The way back</h3>
      <BackSteps open={open} way={way} />
      <OpenIt open={open} way={way} what={what} onDone={() => onOpened(way)} />
    </>
  );
}

const workOf = ({ undoing, again }: Way): string => durationWords(undoing + again);

function nameOf({ machine }: ReadableMachine, thing: string): string {
  const module = machine.modules.get(thing);
  return module === undefined ? phraseOf(machine, thing, machine.parts.get(thing)?.module ?? '') : moduleTitle(module);
}

function noWay(lowerBound: number, cut: boolean): string {
  if (cut) return 'No way was found, but not all were looked at: ask for a part nearer the outside first.';
  return lowerBound === 0 ? 'Nothing has to come apart: nothing ties it.' : 'No way leads there: each thing that is in the way waits for another. The findings of the file may say where.';
}

function outWords({ machine }: ReadableMachine, { out, along }: Way): string {
  const names = (ids: readonly string[]) => ids.map((id) => phraseOf(machine, id, machine.parts.get(machine.thingOf.get(id) ?? id)?.module ?? '')).join(', ');
  return [out.length === 0 ? '' : `Comes out: ${names(out)}.`, along.length === 0 ? '' : `Rides along untouched: ${names(along)}.`].filter((words) => words !== '').join(' ');
}
