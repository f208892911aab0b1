import { remembered, type Joint } from '@rotorwright/machine';
import { threadSense, type ThreadSense } from '../directions/thread-sense.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { solveDrive } from '../drive/solve.ts';
import { gather, type Draft } from '../set/builder.ts';
import { hardest, type MarginBench } from './bench.ts';
import { season } from './load-cases.ts';
import { shaftTorque } from './shaft-torques.ts';

const newtonMetre = { unit: 'N·m', shown: 'N·m' } as const;
const compounds: ReadonlySet<string> = new Set(['low', 'medium', 'high']);

/** Threads through which the drive torque passes, by joint. */
const threadsOf = remembered((machine: MarginBench['machine']): ReadonlyMap<string, ThreadSense> =>
  new Map(threadSense(machine, solveDrive(machine)).threads.filter(({ driven }) => driven === 'loosens' || driven === 'tightens').map((thread) => [machine.thingOf.get(thread.joint) ?? thread.joint, thread])));

/** The compound in a thread that the drive torque goes through, against the torque that would unscrew it. */
export function addLockMargins(bench: MarginBench): void {
  for (const [id, thread] of threadsOf(bench.machine)) {
    const joint = bench.machine.joints.get(id)!;
    const compound = joint.locks?.find(({ grade }) => compounds.has(grade));
    if (compound && bench.isFirst(joint)) addLock(bench, joint, compound.grade, thread);
  }
}

function addLock(bench: MarginBench, joint: Joint, grade: string, { shaft, driven }: ThreadSense): void {
  const load = hardest(bench, (each) => (each.drives === 'rotor' ? undefined : shaftTorque(bench, shaft, each)));
  if (!load) return;
  const { inputs, missing } = gather([
    ['class', { entry: `${joint.path}.lock`, value: grade, unit: '' }, ''],
    ['size', joint.thread === undefined ? undefined : { entry: `${joint.path}.thread`, value: joint.thread, unit: '' }, `${joint.path}.thread`],
    ['temperature', season(bench.machine, 'hottest'), ''],
  ]);
  const capacity: Omit<Draft, 'name'> = { title: `Torque that breaks the compound of ${inSentence(joint.title)}, warm, low end`, ...newtonMetre, calculation: 'threadlock', output: 'breakawayLow', inputs, missing };
  bench.add({
    kind: 'lock', of: joint.id, module: joint.module, title: `${joint.title}, lock`, loadCase: load.loadCase, capacity, demand: load.name,
    leavesOut: [
      driven === 'loosens' ? 'The drive unscrews it. The friction of its tightening helps only as long as the joint is tight.' : 'The drive tightens it. A jerk backwards is taken to be as hard as it is ever driven (common practice, no source); friction helps beyond the lock.',
      'The compound is taken as cured on clean metal. On a hot engine it is weaker.',
    ],
  });
}
