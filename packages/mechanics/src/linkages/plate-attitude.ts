import { touch } from './crossing-angles.ts';

/** Rotation matrix, row by row: nine numbers. */
export type Attitude = Float64Array;

/**
 * Attitude of a plate whose normal leans and whose guide keeps it from turning: one point of the plate stays in the
 * upright plane through the centre that holds it at zero tilt. Of the attitudes that do so, the one nearest no turn.
 *
 * @param normalX   leaning of the normal n
 * @param normalY
 * @param normalZ   above 0; n has length 1
 * @param guideX    the guided point in plate coordinates, m; it stands off the axis
 * @param guideY
 * @param guideZ
 * @param into      nine numbers, row by row, that are overwritten
 * @returns         false where no attitude keeps the guide
 * @source R = Rₙ·R_z(ψ), Rₙ the least turn that takes z to n; (z × a)·(R·a) = 0 solved for ψ
 */
export function attitudeOf(normalX: number, normalY: number, normalZ: number, guideX: number, guideY: number, guideZ: number, into: Attitude): boolean {
  // 1. Columns x and y of the least turn that takes the upright to the normal; its column z is the normal.
  const share = 1 / (1 + normalZ);
  const xx = 1 - normalX * normalX * share;
  const xy = -normalX * normalY * share;
  const yy = 1 - normalY * normalY * share;
  // 2. The guide: e towards it, m square to the plane that holds it.
  const radius = Math.sqrt(guideX * guideX + guideY * guideY);
  const ex = guideX / radius;
  const ey = guideY / radius;
  const along = -ey * (xx * ex + xy * ey) + ex * (xy * ex + yy * ey);
  const across = -ey * (-xx * ey + xy * ex) + ex * (-xy * ey + yy * ex);
  const rest = (-guideZ / radius) * (-ey * normalX + ex * normalY);
  // along·cos ψ + across·sin ψ = rest, solved for the cosine and sine of the turn themselves: of two turns the smaller has the larger cosine.
  const square = along * along + across * across;
  const left = square - rest * rest;
  if (!(left >= -2 * touch * square) || square === 0) return false;
  const side = (across < 0 ? -1 : 1) * Math.sqrt(Math.max(0, left));
  // 3. Both together.
  const cosine = (along * rest + across * side) / square;
  const sine = (across * rest - along * side) / square;
  into[0] = cosine * xx + sine * xy;
  into[1] = cosine * xy - sine * xx;
  into[2] = normalX;
  into[3] = cosine * xy + sine * yy;
  into[4] = cosine * yy - sine * xy;
  into[5] = normalY;
  into[6] = -cosine * normalX - sine * normalY;
  into[7] = sine * normalX - cosine * normalY;
  into[8] = normalZ;
  return true;
}
