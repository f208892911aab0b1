import { useState, type ReactNode } from 'react';
import { needs, type FastenerNeed, type Need, type PlannedModule } from '@rotorwright/build';
import type { ReadableMachine } from '../../data/index.ts';
import { Drawer, Segmented } from '../../sheet/index.ts';
import { timeLeft } from '../bench/cure-clock.ts';

export interface NeedsDrawerProps {
  readonly open: ReadableMachine;
  readonly module: PlannedModule;
  readonly onClose: () => void;
}

/** What must lie on the bench: for what is open in one module, or in the whole build. */
export function NeedsDrawer({ open, module, onClose }: NeedsDrawerProps): ReactNode {
  const [scope, setScope] = useState<'module' | 'all'>('module');
  const steps = scope === 'module' ? module.steps : [...open.plan.steps.values()];
  const toDo = steps.filter((step) => ['open', 'undone'].includes(open.state.steps.get(step.id)?.state ?? 'open'));
  const wanted = needs(toDo);
  return (
    <Drawer title="On the bench" onClose={onClose}>
      <Segmented label="For what" options={[{ value: 'module', title: module.title }, { value: 'all', title: 'Everything open' }]} value={scope} onChange={setScope} />
      <p className="soft">{toDo.length === 0 ? 'Nothing is open here.' : `For ${toDo.length} open ${toDo.length === 1 ? 'step' : 'steps'}, about ${timeLeft(wanted.takes * 1000)} of work without curing.`}</p>
      <NeedTable title="Tools" wanted={wanted.tools} />
      <NeedTable title="Compounds, greases, cleaners" wanted={wanted.consumables} />
      {wanted.fasteners.length > 0 && (
        <table>
          <caption><h3>Screws, nuts, pins</h3></caption>
          <thead><tr><th scope="col" className="number">Count</th><th scope="col">What</th><th scope="col">Steps</th></tr></thead>
          <tbody>{wanted.fasteners.map((one) => <tr key={fastenerWords(one)}><td className="number">{one.count}</td><th scope="row">{fastenerWords(one)}</th><td>{one.steps.length}</td></tr>)}</tbody>
        </table>
      )}
    </Drawer>
  );
}

function NeedTable({ title, wanted }: { readonly title: string; readonly wanted: readonly Need[] }): ReactNode {
  if (wanted.length === 0) return undefined;
  return (
    <table>
      <caption><h3>{title}</h3></caption>
      <thead><tr><th scope="col">What</th><th scope="col">Steps</th></tr></thead>
      <tbody>{wanted.map((one) => <tr key={one.name}><th scope="row">{one.name}</th><td>{one.steps.length}</td></tr>)}</tbody>
    </table>
  );
}

/** "screw M3 × 8, socket, 12.9" */
function fastenerWords({ kind, thread, length, head, class: grade }: FastenerNeed): string {
  const size = [thread, length === undefined ? undefined : Number((length * 1000).toPrecision(4))].filter((one) => one !== undefined).join(' × ');
  return [`${kind.replaceAll('-', ' ')} ${size}`.trim(), head, grade].filter((word) => word !== undefined).join(', ');
}
