import { playChain, type Machine, type Member, type Size, type Stack, type Window } from '@rotorwright/machine';
import type { Dimension } from './half-section.ts';
import type { Slot, StackLayout } from './stack-slots.ts';

/** What the file says of lengths in a stack: shims, the play that is wanted, the room of either column. Shortest first. */
export function stackDimensions(machine: Machine, { stack, slots, turned }: StackLayout): readonly Dimension[] {
  const drawn = (place: number): Slot | undefined => slots[turned ? slots.length - 1 - place : place];
  const shims = slots.flatMap(({ kind, part, left, right }): Dimension[] => {
    const given = part?.limits?.['thickness'] ?? part?.sizes['thickness'];
    const bag = [...new Set(part?.shims?.map(({ thickness }) => thickness))].map(number).join(' / ');
    const text = given === undefined ? bag : typeof given === 'number' ? number(given) : limits(given);
    return kind !== 'shim' || text === '' ? [] : [{ from: left, to: right, text }];
  });
  const { faces } = playChain(machine, stack);
  const between = (member: Member): readonly [number, number] | undefined => {
    const [one, other] = (faces?.[member] ?? []).map(drawn);
    if (!one || !other) return undefined;
    // One stop has two faces; of two stops those count that look at each other across what lies between.
    if (one === other) return [one.left, one.right];
    const [near, far] = one.left < other.left ? [one, other] : [other, one];
    return faces && faces[member][1] > faces[member][0] ? [near.right, far.left] : [near.left, far.right];
  };
  const rooms = (['spindle', 'housing'] as const).flatMap((member): Dimension[] => {
    const size = stack.room?.[member];
    const ends = between(member);
    return size && ends ? [{ from: ends[0], to: ends[1], text: limits(size) }] : [];
  });
  const wanted = wantedPlay(machine, stack);
  const outer = faces && between(faces.spindle[1] > faces.spindle[0] ? 'spindle' : 'housing');
  // Play is where the last ring would leave the stop: at one face, without a width of its own.
  const play = wanted === undefined || !outer ? [] : [{ from: outer[1], to: outer[1], text: wanted }];
  return [...shims, ...play, ...rooms.toSorted((a, b) => a.to - a.from - (b.to - b.from))];
}

const number = (metres: number): string => String(Number((metres * 1000).toPrecision(6)));
const limits = ({ nominal, least, most }: Size): string => (least === most ? number(nominal) : `${number(nominal)} to ${number(nominal === most ? least : most)}`);

function wantedPlay(machine: Machine, stack: Stack): string | undefined {
  const window = [...machine.measurements.values()].find(({ quantity, of }) => quantity === 'end-play' && of === stack.id)?.window;
  return stack.preload ? `preload ${range(stack.preload)}` : window && `play ${range(window)}`;
}

function range({ min, max }: Window): string {
  if (min === undefined || max === undefined) return min === undefined ? `at most ${number(max ?? 0)}` : `at least ${number(min)}`;
  return min === max ? number(min) : `${number(min)} to ${number(max)}`;
}
