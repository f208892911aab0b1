import type { Direction, Machine, Shaft } from '@rotorwright/machine';

/** From where the train is seen: unit vectors in the machine's axes. Forward is always left on the paper, or away from the reader. */
export interface View {
  readonly words: 'seen from above' | 'seen from the left' | 'seen from behind';
  readonly right: Direction;
  readonly up: Direction;
  readonly towards: Direction;
}

const views: readonly View[] = [
  { words: 'seen from above', right: [-1, 0, 0], up: [0, -1, 0], towards: [0, 0, 1] },
  { words: 'seen from the left', right: [-1, 0, 0], up: [0, 0, 1], towards: [0, 1, 0] },
  { words: 'seen from behind', right: [0, -1, 0], up: [0, 0, 1], towards: [-1, 0, 0] },
];

const dot = (a: Direction, b: Direction): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** An axis within 45° of the line of sight is drawn end-on. */
const endOn = Math.SQRT1_2;

/** How a shaft lies in a view. One whose axis the file does not give is drawn end-on. */
export type Lie =
  | { readonly kind: 'end'; /** 1 when right-handed turning is anticlockwise on the paper; undefined when the axis is not known. */ readonly sign?: 1 | -1 }
  | { readonly kind: 'side'; /** Of the axis, on the paper, y up, one of the four ways. */ readonly along: readonly [number, number] };

export function lieOf(shaft: Shaft, view: View): Lie {
  if (!shaft.axis) return { kind: 'end' };
  const towards = dot(shaft.axis, view.towards);
  if (Math.abs(towards) >= endOn) return { kind: 'end', sign: towards > 0 ? 1 : -1 };
  return { kind: 'side', along: onPaper(shaft.axis, view) };
}

/** A direction on the paper, as the nearest of right, left, up, down. */
export function onPaper(direction: Direction, view: View): readonly [number, number] {
  const x = dot(direction, view.right);
  const y = dot(direction, view.up);
  return Math.abs(x) >= Math.abs(y) ? [Math.sign(x) || 1, 0] : [0, Math.sign(y)];
}

/** The view that shows most gear meshes end-on; from above where several do. */
export function viewOf(machine: Machine): View {
  const meshes = [...machine.couplings.values()].filter(({ kind }) => kind === 'external' || kind === 'internal');
  const shown = (view: View): number => meshes.filter(({ driver }) => {
    const shaft = machine.shafts.get(driver.on);
    return shaft?.axis !== undefined && Math.abs(dot(shaft.axis, view.towards)) >= endOn;
  }).length;
  return views.reduce((best, view) => (shown(view) > shown(best) ? view : best));
}
