import { inSentence } from '../drive/in-sentence.ts';
import { rotorsOf } from '../drive/solve.ts';
import { entry } from '../set/builder.ts';
import { reactions } from './bearing-margins.ts';
import type { MarginBench } from './bench.ts';
import type { LoadCase } from './load-cases.ts';
import { supportsOf } from './supports.ts';

/** Largest bending moment of a shaft on its two bearings: by its meshes, or, of the mast, by its head where that is larger. */
export function bearingsMoment(bench: MarginBench, shaft: string, loadCase: LoadCase): string | undefined {
  const { builder, machine } = bench;
  const own = supportsOf(bench.machine).filter((each) => each.shaft === shaft && each.bearings.length === 2);
  const moments = own.flatMap((support) => {
    const name = reactions(bench, support, loadCase);
    return name === undefined ? [] : [`${name} moment`];
  });
  const meshes = bench.choose((get) => moments.toSorted((a, b) => (get(b)?.value ?? 0) - (get(a)?.value ?? 0))[0]);
  const { main } = rotorsOf(machine);
  const head = entry('loads.head-moment', machine.loads.headMoment, 'N·m');
  if (main?.on !== shaft || !head) return meshes;
  builder.given('head-moment', `Moment of the head on ${inSentence(machine.shafts.get(shaft)!.title)}`, 'N·m', 'N·m', head, []);
  return bench.choose((get) => ((get(meshes ?? '')?.value ?? 0) > machine.loads.headMoment! ? meshes : 'head-moment'));
}
