import { fullTurn, type Phasor } from './single-plane.ts';

/**
 * A mass shared between the two places nearest to it, so that together they act like it.
 *
 * @param correction  kg and rad
 * @param places      angles at which a mass can be fixed [rad], at least two different ones
 * @returns           kg at each place, in the order given; undefined where no two places have the correction between them within less than half a turn
 * @throws RangeError when fewer than two places are given
 * @source law of sines
 * @example splitMass({ size: 1, angle: Math.PI / 4 }, [0, Math.PI / 2])[0] // Math.SQRT1_2
 */
export function splitMass(correction: Phasor, places: readonly number[]): readonly number[] | undefined {
  if (places.length < 2) throw new RangeError(`splitMass: at least two places are needed, got ${places.length}`);
  const shares = places.map(() => 0);
  if (correction.size === 0) return shares;
  const gap = (place: number): number => fullTurn(place - correction.angle);
  // The nearest place ahead of the mass, and the nearest behind it.
  const ahead = nearest(places.map((place) => gap(place)));
  const behind = nearest(places.map((place) => fullTurn(-gap(place))));
  const [before, after] = [fullTurn(-gap(places[behind]!)), gap(places[ahead]!)];
  if (after < TOUCHING || before < TOUCHING) {
    shares[after < TOUCHING ? ahead : behind] = correction.size;
    return shares;
  }
  if (!(before + after < Math.PI - TOUCHING)) return undefined;
  const whole = Math.sin(before + after);
  shares[behind] = (correction.size * Math.sin(after)) / whole;
  shares[ahead] = (correction.size * Math.sin(before)) / whole;
  return shares;
}

/** Angles nearer to each other than this are one, rad. */
const TOUCHING = 1e-12;

const nearest = (gaps: readonly number[]): number => gaps.reduce((best, value, index) => (value < gaps[best]! ? index : best), 0);

/** The mass that several at their places act like, kg and rad. */
export function joinMasses(masses: readonly number[], places: readonly number[]): Phasor {
  let x = 0;
  let y = 0;
  masses.forEach((mass, index) => {
    x += mass * Math.cos(places[index]!);
    y += mass * Math.sin(places[index]!);
  });
  return { size: Math.sqrt(x * x + y * y), angle: fullTurn(Math.atan2(y, x)) };
}
