import type { Machine, Point } from '@rotorwright/machine';
import { cross, dot, type Vector3 } from '@rotorwright/mechanics';

/** Where controls are seen from. */
export interface Frame {
  /** In the axes of the file, m. */
  readonly origin: Point;
  /** Forward, left and up as seen from there, in the axes of the file; those of the file when left out. */
  readonly axes?: readonly [forward: Vector3, left: Vector3, up: Vector3];
}

export const less = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const scaled = (a: Vector3, by: number): Vector3 => [a[0] * by, a[1] * by, a[2] * by];

/** A direction of the file as it is seen in a frame. */
export const directionIn = ({ axes }: Frame, direction: Vector3): Vector3 => (axes === undefined ? direction : [dot(direction, axes[0]), dot(direction, axes[1]), dot(direction, axes[2])]);

/** A point of the file as it is seen in a frame, m. */
export const pointIn = (frame: Frame, point: Point): Vector3 => directionIn(frame, less(point, frame.origin));

/** A mast with less than this between it and the way forward has no forward of its own, rad. */
const alongTheMachine = 0.1;
/** A hub farther than this from the line of the mast through the plate is a mistake in the file, m. Our own choice. */
const besideTheMast = 1e-3;

/**
 * The frame of a mast, however it leans: up along it, from the plate to the hub; forward as near to the machine's
 * forward as stands square to it.
 *
 * @param shaft  id of the mast
 * @returns      or why there is none, in words
 */
export function mastFrame({ shafts }: Machine, shaft: string, plate: Point, hub: Point): Frame | { readonly stuck: string } {
  const axis = shafts.get(shaft)?.axis ?? [0, 0, 1];
  const rise = dot(less(hub, plate), axis);
  const up: Vector3 = rise < 0 ? scaled(axis, -1) : axis;
  const beside = less(less(hub, plate), scaled(up, Math.abs(rise)));
  const off = Math.sqrt(dot(beside, beside));
  if (off > besideTheMast) return { stuck: `the hub of the rotor lies ${(off * 1000).toPrecision(2)} mm beside the line of the shaft ${shaft} through controls.swashplate.at; both must lie on it` };
  const ahead = less([1, 0, 0], scaled(up, up[0]));
  const size = Math.sqrt(dot(ahead, ahead));
  if (size < Math.sin(alongTheMachine)) return { stuck: `the shaft ${shaft} lies along the machine, and the plate on it has no forward; write its axis nearer to upright` };
  const forward = scaled(ahead, 1 / size);
  return up[0] === 0 && up[1] === 0 ? { origin: plate } : { origin: plate, axes: [forward, cross(up, forward), up] };
}
