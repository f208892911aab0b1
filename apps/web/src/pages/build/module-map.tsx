import { useId, useMemo, type ReactNode } from 'react';
import type { PlannedModule } from '@rotorwright/build';
import type { SignatureState, StepCounts } from '@rotorwright/logbook';
import { StateMark } from '../../sheet/index.ts';
import { layModules } from './module-graph.ts';

export interface ModuleMapProps {
  readonly modules: readonly PlannedModule[];
  readonly states: ReadonlyMap<string, StepCounts>;
  readonly chosen: string;
  readonly onChoose: (module: string) => void;
}

const metrics = { boxWidth: 144, boxHeight: 52, gapX: 28, gapY: 8 };

/** The worst of what is not merely open, so that a broken seal is never hidden by good ones. */
function stateOf(counts: StepCounts | undefined): SignatureState {
  if (!counts || counts.total === 0) return 'open';
  if (counts.undone > 0) return 'undone';
  if (counts.open > 0) return 'open';
  return counts.curing > 0 ? 'curing' : 'signed';
}

/** Modules as boxes in layers, with arrows from what comes first; on a phone as a list in the same order. */
export function ModuleMap({ modules, states, chosen, onChoose }: ModuleMapProps): ReactNode {
  const graph = useMemo(() => layModules(modules, metrics), [modules]);
  const tip = useId().replaceAll(':', '');
  const byId = new Map(modules.map((module) => [module.id, module]));
  return (
    <div className="module-map" tabIndex={0} role="region" aria-label="Order of modules">
      <ul style={{ width: graph.width, height: graph.height }}>
        {graph.boxes.map((box) => {
          const module = byId.get(box.id);
          if (!module) return undefined;
          const counts = states.get(box.id);
          const state = stateOf(counts);
          const signed = (counts?.signed ?? 0) + (counts?.curing ?? 0);
          const total = counts?.total ?? module.steps.length;
          const first = module.after.flatMap((id) => byId.get(id)?.title ?? []);
          return (
            <li key={box.id} style={{ left: box.x, top: box.y, width: metrics.boxWidth, height: metrics.boxHeight }}>
              <button type="button" className={`module-box ${signed === 0 ? 'untouched' : ''} ${box.id === chosen ? 'chosen' : ''}`} aria-pressed={box.id === chosen} onClick={() => onChoose(box.id)}>
                <span className="module-name"><StateMark state={state} size={16} label={state} /><span>{module.title}</span></span>
                <span className="module-bar"><span className="bar" aria-hidden="true"><span style={{ width: `${total === 0 ? 0 : (signed / total) * 100}%` }} /></span><span className="count" aria-label={`${signed} of ${total} signed`}>{signed}/{total}</span></span>
                {first.length > 0 && <span className="module-after">after {first.join(', ')}</span>}
              </button>
            </li>
          );
        })}
      </ul>
      <svg width={graph.width} height={graph.height} viewBox={`0 0 ${graph.width} ${graph.height}`} aria-hidden="true">
        <defs><marker id={tip} viewBox="0 0 10 6" refX="9.5" refY="3" markerWidth="10" markerHeight="6" markerUnits="userSpaceOnUse" orient="auto"><path d="M0 0.5L10 3L0 5.5Z" /></marker></defs>
        {graph.arrows.map((arrow) => (
          <polyline key={`${arrow.from} ${arrow.to}`} className={arrow.from === chosen || arrow.to === chosen ? 'near' : undefined} points={arrow.points.map((point) => point.join(',')).join(' ')} markerEnd={`url(#${tip})`} />
        ))}
      </svg>
    </div>
  );
}
