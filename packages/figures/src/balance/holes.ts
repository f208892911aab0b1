import { showNumber } from '@rotorwright/units';

const turn = 2 * Math.PI;
const degrees = (angle: number): string => `${showNumber(((((angle * 180) / Math.PI) % 360) + 360) % 360, { decimals: 0 })}°`;
/** Angles nearer to one another than this are one: two holes so near to opposite share nothing between them, rad. */
const opposite = 1e-9;

/** What holes at fixed angles can do against a mass that belongs between them, for somebody who has never shared one. */
export function holesWords(places: readonly number[]): readonly string[] {
  const angles = [...new Set(places.map((angle) => ((angle % turn) + turn) % turn))].toSorted((a, b) => a - b);
  if (angles.length < 2) return ['One hole takes a correction that points at it, and no other.'];
  const gaps = angles.map((from, index) => ({ from, to: angles[(index + 1) % angles.length]!, wide: ((angles[(index + 1) % angles.length]! - from + turn) % turn) || turn }));
  const shared = gaps.filter(({ wide }) => wide < Math.PI - opposite);
  if (shared.length === 0) return [`These holes take corrections that point at ${angles.map(degrees).join(' or ')}, and nothing across: put a mass at right angles to them some other way.`];
  const widest = shared.reduce((most, gap) => (gap.wide > most.wide + opposite ? gap : most));
  const cost = `A mass that belongs between two holes becomes two, one in each; together they weigh more than it, at most ${showNumber(1 / Math.cos(widest.wide / 2), { significant: 3 })} times as much, in the middle between ${degrees(widest.from)} and ${degrees(widest.to)}.`;
  if (shared.length === gaps.length) return ['These holes can take any correction.', cost];
  return [`These holes take corrections ${shared.map(({ from, to }) => `from ${degrees(from)} to ${degrees(to)}`).join(', and ')}; elsewhere none can be made of them.`, cost];
}
