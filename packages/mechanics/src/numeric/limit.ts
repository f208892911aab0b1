/**
 * How far one can go until there is no room left: the last known place with room, and the first without.
 *
 * Steps by the parabola through the last three places where it can be trusted; halves the way between else.
 *
 * @param room       not negative as long as there is some; NaN where nothing is known, which counts as none
 * @param tolerance  the two places are at most so far apart
 * @returns          `low` twice where there is no room even there
 * @throws RangeError when low is not below high, the tolerance is not positive, or there is room at high
 * @source T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145 (from memory)
 * @example findLimit((x) => 2 - x * x, 0, 2, 1e-12)[0] // Math.SQRT2
 */
export function findLimit(room: (x: number) => number, low: number, high: number, tolerance: number): readonly [within: number, past: number] {
  if (!(low < high)) throw new RangeError(`findLimit: low must lie below high, got ${low} and ${high}`);
  if (!(tolerance > 0)) throw new RangeError(`findLimit: the tolerance must be positive, got ${tolerance}`);
  let [within, left] = [low, room(low)];
  if (!(left >= 0)) return [low, low];
  let [past, lacking] = [high, room(high)];
  if (lacking >= 0) throw new RangeError(`findLimit: there must be no room at high, got ${lacking} at ${high}`);
  let share = 0.5;
  while (past - within > tolerance) {
    const at = within + share * (past - within);
    if (at <= within || at >= past) break;
    const found = room(at);
    const fits = found >= 0;
    // The newest place, that across from it, and the one that it takes the place of.
    const [far, atFar, old, atOld] = fits ? [past, lacking, within, left] : [within, left, past, lacking];
    if (fits) [within, left] = [at, found];
    else [past, lacking] = [at, found];
    const least = tolerance / 2 / (past - within);
    const part = (at - far) / (old - far);
    const drop = (found - atFar) / (atOld - atFar);
    const curved = drop ** 2 < part && (1 - drop) ** 2 < 1 - part;
    const onward = curved ? (found / (atFar - found)) * (atOld / (atFar - atOld)) + (((old - at) / (far - at)) * (found / (atOld - found)) * atFar) / (atOld - atFar) : 0.5;
    // A step that lands on an end goes past it, so that the two close in on the place from both sides.
    const away = Math.max(least, Math.min(1 - least, onward));
    share = fits ? away : 1 - away;
  }
  return [within, past];
}
