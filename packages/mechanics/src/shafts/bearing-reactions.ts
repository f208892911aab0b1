/** What acts on a straight shaft at one place. Directions are angles about the axis, counted in one sense from any one line. */
export interface ShaftLoad {
  /** Along the axis, m; negative is allowed. */
  readonly at: number;
  /** Direction in which the cross force acts, and on whose side the axial one acts, rad. */
  readonly angle: number;
  /** Across the axis, N. */
  readonly force: number;
  /** Along the axis, towards larger `at`, N: it tilts the shaft by its arm. */
  readonly axial: number;
  /** Distance of the axial force from the axis, m. */
  readonly arm: number;
}

export interface BearingReactions {
  /** Load on each bearing across the axis, N. */
  readonly first: number;
  readonly second: number;
  /** Of both together, as vectors, N. */
  readonly across: number;
  /** Largest bending moment in the shaft, N·m. */
  readonly moment: number;
}

/**
 * Cross loads of the two bearings that carry a straight shaft, and the largest bending moment in it.
 *
 *   B = Σ (F·(x − a) − F_a·r)/(b − a),   A = Σ F − B,   as vectors across the axis
 *
 * @param first   a [m], place of one bearing
 * @param second  b [m], place of the other
 * @throws RangeError unless everything is finite and the bearings stand apart
 * @neglects bending of the shaft, play and tilt of the bearings, the weight of the shaft
 * @source balance of forces and moments of a beam on two supports
 * @example bearingReactions(0, 0.2, [{ at: 0.3, angle: 0, force: 100, axial: 0, arm: 0 }]) // { first: 50, second: 150, across: 100, moment: 10 }
 */
export function bearingReactions(first: number, second: number, loads: readonly ShaftLoad[]): BearingReactions {
  const span = second - first;
  const sums = loads.reduce((sum, { at, angle, force, axial, arm }) => sum + at + angle + force + axial * arm, 0);
  if (!(Number.isFinite(span) && Number.isFinite(sums) && span !== 0)) throw new RangeError(`bearingReactions: everything must be finite and the bearings apart, got ${first} and ${second} m`);
  const planes = [Math.cos, Math.sin].map((part) => planeOf(first, second, loads.map(({ at, angle, force, axial, arm }) => ({ at, force: force * part(angle), couple: -axial * arm * part(angle) }))));
  const [one, other] = planes as [Plane, Plane];
  const moments = one.moments.map((moment, index) => Math.hypot(moment, other.moments[index]!));
  return { first: Math.hypot(one.first, other.first), second: Math.hypot(one.second, other.second), across: Math.hypot(one.first + one.second, other.first + other.second), moment: Math.max(...moments) };
}

interface Plane {
  readonly first: number;
  readonly second: number;
  /** Bending moment just below and just above each place where something acts, in the order of the places. */
  readonly moments: readonly number[];
}

interface PlaneLoad {
  readonly at: number;
  readonly force: number;
  /** Counted like force times place. */
  readonly couple: number;
}

function planeOf(a: number, b: number, loads: readonly PlaneLoad[]): Plane {
  const total = loads.reduce((sum, { force }) => sum + force, 0);
  const second = loads.reduce((sum, { at, force, couple }) => sum + force * (at - a) + couple, 0) / (b - a);
  const first = total - second;
  const acting = [...loads, { at: a, force: -first, couple: 0 }, { at: b, force: -second, couple: 0 }];
  const places = acting.map(({ at }) => at);
  const below = (place: number, inclusive: boolean): number =>
    acting.reduce((sum, { at, force, couple }) => (at < place || (inclusive && at === place) ? sum + force * (place - at) - couple : sum), 0);
  return { first, second, moments: places.flatMap((place) => [below(place, false), below(place, true)]) };
}
