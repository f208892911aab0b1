import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather } from '../set/builder.ts';
import { hardest, materialOf, section, sizeOf, type MarginBench } from './bench.ts';
import { shaftTorque } from './shaft-torques.ts';

const angle = { unit: 'rad', shown: '°' } as const;

/** How far each drive tube twists from end to end. */
export function addTwists(bench: MarginBench): void {
  const { machine } = bench;
  for (const shaft of machine.shafts.values()) {
    const part = bench.partAt(shaft.part);
    const load = part?.kind === 'tube' ? hardest(bench, (each) => shaftTorque(bench, shaft.id, each)) : undefined;
    if (!part || !load) continue;
    const round = section(part);
    const title = inSentence(part.title);
    const { inputs, missing } = gather([['torque', { figure: load.name }, ''], ['length', ...sizeOf(part, 'length')], ['G', ...materialOf(machine, part, 'shear-modulus')]]);
    const most = entry('loads.twist', machine.loads.twist, 'rad');
    bench.add({
      kind: 'twist', of: part.id, module: part.module, title: `${part.title}, twist`, loadCase: load.loadCase,
      capacity: { title: `Twist that ${title} may have`, ...angle, inputs: most ? { value: most } : {}, missing: most ? [] : ['loads.twist'] },
      demand: { title: `Twist of ${title} from end to end, ${load.loadCase.title}`, ...angle, calculation: 'tube-torsion', output: 'twist', inputs: { ...round.inputs, ...inputs }, missing: [...round.missing, ...missing] },
      leavesOut: ['Pins and glued ends, which give as well; swings of the torque, which twist it further where they meet its own frequency.'],
      improve: part.material === undefined || machine.materials.get(part.material)?.properties['shear-modulus'] !== undefined ? [] : [`materials.${part.material}.shear-modulus`],
    });
  }
}
