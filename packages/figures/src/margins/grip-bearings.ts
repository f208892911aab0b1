import type { EntryPath, Part, Rotor, Stack } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from '../set/builder.ts';
import type { MarginBench } from './bench.ts';
import { bearingsOf, isRadial } from './supports.ts';

const newton = { unit: 'N', shown: 'N' } as const;

/** A radial bearing of a blade grip: with the other one it takes the moment that flap and drag put across the grip. */
export function addGripBearing(bench: MarginBench, rotor: Rotor, stack: Stack, part: Part, instance: string): void {
  const title = inSentence(part.title);
  const load = `grip-load ${stack.id}`;
  if (!bench.builder.get(load)) {
    const { inputs, missing } = gather([['moment', entry(`${rotor.path}.grip-moment`, rotor.gripMoment, 'N·m'), `${rotor.path}.grip-moment`], ['distance', ...spacing(bench, stack)]]);
    bench.builder.add({ name: load, title: `Load across each bearing of ${inSentence(stack.title)}`, ...newton, calculation: 'bearing-couple', output: 'force', inputs, missing });
  }
  const rating = entry(`${part.path}.static`, part.static, 'N');
  bench.add({
    kind: 'bearing-static', of: instance, module: part.module, title: `${part.title}, static`, demand: load,
    capacity: { title: `Static rating of ${title}`, ...newton, inputs: rating ? { value: rating } : {}, missing: rating ? [] : [`${part.path}.static`] },
    leavesOut: ['The lift of the blade, which comes on top at the outer one; it turns to and fro by a few degrees: life is not reckoned for that.'],
  });
}

/** Distance of the middles of the two radial bearings: half of each, and what stands between them in the order of the stack. */
function spacing(bench: MarginBench, stack: Stack): readonly [FigureInput | undefined, EntryPath] {
  const radial = bearingsOf(bench, stack).filter(({ part }) => isRadial(part)).map(({ instance }) => stack.order.findIndex((item) => 'part' in item && item.part === instance));
  const [first, last] = [radial[0]!, radial.at(-1)!];
  const order = `${stack.path}.order`;
  if (radial.length !== 2) return [undefined, order];
  let sum = 0;
  for (let at = first; at <= last; at += 1) {
    const item = stack.order[at]!;
    if ('joint' in item) return [undefined, order];
    if ('shoulder' in item) {
      const member = item.shoulder === stack.spindle ? 'spindle' : 'housing';
      const room = stack.room?.[member];
      if (!room) return [undefined, `${stack.path}.room`];
      sum += room.nominal;
      continue;
    }
    const part = bench.partAt(item.part);
    // Shims are thin beside the rest, and how many there are the bench decides.
    if (part === undefined || part.kind === 'shim') continue;
    const width = part.sizes['width'] ?? part.sizes['thickness'];
    if (width === undefined) return [undefined, `${part.path}.width`];
    sum += at === first || at === last ? width / 2 : width;
  }
  return [{ entry: order, value: sum, unit: 'm', as: 'by what stands between them in' }, ''];
}
