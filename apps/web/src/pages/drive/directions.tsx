import { carriersOf } from '@rotorwright/build';
import { driveDirections, threadSense, type FigureSet, type ThreadSense } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { lineAt, StateMark } from '../../sheet/index.ts';

/** What the sense of rotation means at the bench: which way clutches face, where gears push, which threads the torque loosens. */
export function Directions({ set, machine: id }: { readonly set: FigureSet; readonly machine: string }): ReactNode {
  const { machine, drive } = set;
  const directions = driveDirections(machine, drive);
  const { pushes, oneWays: facings } = directions;
  const takenBy = (coupling: string, shaft: string): string => {
    const bearings = carriersOf(machine, directions, coupling, shaft);
    return bearings.length === 0 ? '' : ` Taken by ${bearings.map((bearing) => partTitle(machine, bearing)).join(', ')}.`;
  };
  const { threads } = threadSense(machine, drive);
  if (facings.length + pushes.length + threads.length === 0) return null;
  return (
    <section className="area" id="directions" tabIndex={-1}>
      <div className="area-head"><h2>Which way round</h2><span className="small soft">while driven, as drawn</span></div>
      <div className="directions">
        {facings.length > 0 && <div><h3>One-way clutches</h3><ul>{facings.map((facing) => <li key={facing.coupling}><b>{titleOf(machine, facing.coupling)}</b> {facing.words}. {facing.test && <span className="soft">To prove it: {facing.test}</span>}</li>)}</ul></div>}
        {pushes.length > 0 && <div><h3>Pushes along the shaft</h3><ul>{pushes.map((push) => <li key={`${push.coupling} ${push.shaft}`}><b>{titleOf(machine, push.coupling)}, on {machine.shafts.get(push.shaft)?.title.toLowerCase()}</b> {push.words}. <span className="soft">{push.reason}{takenBy(push.coupling, push.shaft)}</span></li>)}</ul></div>}
        {threads.length > 0 && <div><h3>Threads that turn with a shaft</h3><ul>{threads.map((thread) => <Thread key={thread.joint} thread={thread} machine={machine} id={id} />)}</ul></div>}
      </div>
    </section>
  );
}

const titleOf = (machine: Machine, coupling: string): string => machine.couplings.get(coupling)?.title ?? coupling;
const partTitle = (machine: Machine, instance: string): string => machine.parts.get(machine.thingOf.get(instance) ?? instance)?.title ?? instance;

function Thread({ thread, machine, id }: { readonly thread: ThreadSense; readonly machine: Machine; readonly id: string }): ReactNode {
  const joint = machine.joints.get(machine.thingOf.get(thread.joint) ?? thread.joint);
  const line = joint && machine.places.get(joint.path)?.line;
  const title = joint?.title ?? thread.joint;
  const loosens = [thread.driven === 'loosens' && 'driven', thread.braking === 'loosens' && 'braked', thread.starting === 'loosens' && 'started by hand'].filter((word) => word !== false);
  return (
    <li>
      <b>{line === undefined ? title : <Link href={lineAt(id, line)}>{title}</Link>}</b>{' '}
      {loosens.length > 0 && <StateMark state="tight" size={13} label="Wants attention:" />} driven: {thread.driven}; braked: {thread.braking}; started: {thread.starting}. <span className="soft">{thread.reason}</span>
    </li>
  );
}
