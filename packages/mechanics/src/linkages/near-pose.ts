import { solveThree } from '../numeric/solve-three.ts';
import { cross, dot, unit, type Vector3 } from '../numeric/vector.ts';
import { attitudeOf } from './plate-attitude.ts';
import { closed } from './plate-pose.ts';
import type { PlatePose, SwashplateGeometry } from './swashplate-types.ts';

const mostSteps = 12;
/** Rod error at which a position is found, m, and the step of the differences. */
const found = 1e-14;
const lean = 1e-6;

/** A ball's circle: centre, and the two directions that cosine and sine go along. */
interface Circle {
  readonly centre: Vector3;
  readonly ahead: Vector3;
  readonly aside: Vector3;
}

/**
 * Finds the pose at some angles of the servos [rad] from one that lies near; buffers of its own make it quick in a sweep.
 *
 * @returns a function that answers undefined where the rods do not close nearby: three close exactly, more may fight each other
 * @source Gauss and Newton's method on the rod errors, slopes by differences (from memory)
 */
export function nearPoseSolver({ servos, guide, plateSide }: SwashplateGeometry): (angles: ArrayLike<number>, near: PlatePose) => PlatePose | undefined {
  const circles = servos.map(({ pivot, axis, arm }): Circle => {
    const direction = unit(axis);
    const along = dot(direction, arm);
    const ahead: Vector3 = [arm[0] - along * direction[0], arm[1] - along * direction[1], arm[2] - along * direction[2]];
    return { centre: [pivot[0] + along * direction[0], pivot[1] + along * direction[1], pivot[2] + along * direction[2]], ahead, aside: cross(direction, ahead) };
  });
  const side = plateSide === 'above' ? 1 : -1;
  const [level, leaningP, leaningQ] = [new Float64Array(9), new Float64Array(9), new Float64Array(9)];
  const attitude = (p: number, q: number, into: Float64Array): boolean => {
    const size = Math.sqrt(1 + p * p + q * q);
    return attitudeOf(p / size, q / size, 1 / size, guide[0], guide[1], guide[2], into);
  };
  return (angles, { height, p, q }) => {
    for (let step = 0; step < mostSteps; step += 1) {
      if (!attitude(p, q, level) || !attitude(p + lean, q, leaningP) || !attitude(p, q + lean, leaningQ)) return undefined;
      let [aa, ab, ac, bb, bc, cc, ae, be, ce, worst] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
      for (let index = 0; index < servos.length; index += 1) {
        // 1. The rod from the servo's ball to that of the plate.
        const { ball: [x, y, z], rodLength } = servos[index]!;
        const { centre, ahead, aside } = circles[index]!;
        const cosine = Math.cos(angles[index]!);
        const sine = Math.sin(angles[index]!);
        const dx = level[0]! * x + level[1]! * y + level[2]! * z - centre[0] - cosine * ahead[0] - sine * aside[0];
        const dy = level[3]! * x + level[4]! * y + level[5]! * z - centre[1] - cosine * ahead[1] - sine * aside[1];
        const dz = level[6]! * x + level[7]! * y + level[8]! * z + height - centre[2] - cosine * ahead[2] - sine * aside[2];
        if (dz * side <= 0) return undefined;
        const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        const error = length - rodLength;
        worst = Math.max(worst, Math.abs(error));
        // 2. How the error answers to height and leaning.
        const a = dz / length;
        const b = (dx * rise(leaningP, level, 0, x, y, z) + dy * rise(leaningP, level, 3, x, y, z) + dz * rise(leaningP, level, 6, x, y, z)) / length;
        const c = (dx * rise(leaningQ, level, 0, x, y, z) + dy * rise(leaningQ, level, 3, x, y, z) + dz * rise(leaningQ, level, 6, x, y, z)) / length;
        aa += a * a;
        ab += a * b;
        ac += a * c;
        bb += b * b;
        bc += b * c;
        cc += c * c;
        ae -= a * error;
        be -= b * error;
        ce -= c * error;
      }
      if (worst <= found) return { height, p, q };
      // 3. The step that would end it if everything were straight.
      const move = solveThree([aa, ab, ac], [ab, bb, bc], [ac, bc, cc], [ae, be, ce]);
      if (move === undefined) return undefined;
      height += move[0];
      p += move[1];
      q += move[2];
      // Rounding is all that is left, or all that more than three rods leave to one another.
      if (Math.abs(move[0]) <= found && Math.abs(move[1]) <= 1e-13 && Math.abs(move[2]) <= 1e-13) return servos.length > 3 || worst <= closed ? { height, p, q } : undefined;
    }
    return undefined;
  };
}

/** How one coordinate of a point of the plate answers to the leaning between two attitudes. */
function rise(leaning: Float64Array, level: Float64Array, row: number, x: number, y: number, z: number): number {
  return ((leaning[row]! - level[row]!) * x + (leaning[row + 1]! - level[row + 1]!) * y + (leaning[row + 2]! - level[row + 2]!) * z) / lean;
}
