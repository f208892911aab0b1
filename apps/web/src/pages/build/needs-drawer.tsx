import { useState, type ReactNode } from 'react';
import { needs, type PlannedModule } from '@rotorwright/build';
import type { ReadableMachine } from '../../data/index.ts';
import { Drawer, Segmented } from '../../sheet/index.ts';
import { timeLeft } from '../bench/cure-clock.ts';
import { FastenerTable, NeedTable } from './need-tables.tsx';

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
      <FastenerTable wanted={wanted.fasteners} />
    </Drawer>
  );
}
