import { stalledPlate } from './beyond-stall.ts';
import { naca0012Computed } from './naca-0012.ts';
import { naca0015Measured } from './naca-0015-measured.ts';
import { naca0015Computed } from './naca-0015.ts';
import type { MeasuredRow } from './measured-row.ts';
import type { SectionTable } from './section.ts';

/** A section as its user gives it; rows in the order of the Reynolds numbers, columns in that of the angles. */
export interface GivenTable {
  /** Ascending */
  readonly reynolds: readonly number[];
  /** Ascending [rad] */
  readonly angles: readonly number[];
  readonly lift: readonly (readonly number[])[];
  readonly drag: readonly (readonly number[])[];
}

/**
 * Blades fly in the air that they have stirred. There a boundary layer behaves as one in still air does at this multiple of
 * the Reynolds number: that of the variable-density tunnel, whose air was stirred as well. A table that somebody gives is
 * taken as made for still air; the project’s own sections are computed for disturbed air.
 *
 * @source turbulence factor 2.64, NACA TR 586 (1937) (from memory)
 */
const TURBULENCE_FACTOR = 2.64;
/** Angle over which a section goes over into a stalled plate, past the last angle that is known [rad]; chosen with the constants of the hover model. */
const GIVING_WAY = (6 * Math.PI) / 180;
/** Angles of a table lie half a degree apart. */
const ANGLES = 721;
/** Thickness that a table is taken to have when nobody says: it matters only where shocks form. */
const COMMON_THICKNESS = 0.12;

/** NACA 0012, from slow model to fast full-size blades. Past its stall the measured NACA 0015 stands in. */
export function naca0012(): SectionTable {
  return symmetricSection(0.12, naca0012Computed, naca0015Measured);
}

/** NACA 0015. */
export function naca0015(): SectionTable {
  return symmetricSection(0.15, naca0015Computed, naca0015Measured);
}

/**
 * A symmetric section from computed and measured rows. A section code stalls too late, so lift is the lesser of the two
 * and drag the greater; what was measured leads past the end of what was computed.
 */
function symmetricSection(thickness: number, computed: readonly MeasuredRow[], measured: readonly MeasuredRow[]): SectionTable {
  const last = Math.min(...measured.map(({ points }) => points.at(-1)![0]));
  return fillTable(thickness, computed.map(({ reynolds }) => reynolds), (row, angle) => {
    const { reynolds, points } = computed[row]!;
    const degrees = (Math.abs(angle) * 180) / Math.PI;
    const seen = atReynolds(measured, reynolds, Math.min(degrees, last));
    const beyond = degrees > points.at(-1)![0];
    const thought = at(points, degrees);
    const lift = beyond ? seen[0] : Math.min(thought[0], seen[0]);
    const drag = beyond ? seen[1] : Math.max(thought[1], seen[1]);
    return giveWay(Math.sign(angle) * lift, drag, angle, ((degrees - last) * Math.PI) / 180);
  });
}

/**
 * A section that its user gives, for still air, carried on past its ends as a stalled plate.
 *
 * @throws RangeError when a list is not ascending, a row has not one value for each angle, or a value is not finite
 */
export function givenSection(table: GivenTable): SectionTable {
  const { reynolds, angles, lift, drag } = table;
  if (!ascending(reynolds) || !(reynolds[0]! > 0)) throw new RangeError('givenSection: reynolds must be positive and ascend');
  if (!ascending(angles) || angles.length < 2) throw new RangeError('givenSection: at least two angles [rad] must ascend');
  for (const rows of [lift, drag]) {
    if (rows.length !== reynolds.length || rows.some((row) => row.length !== angles.length || !row.every(Number.isFinite))) {
      throw new RangeError('givenSection: lift and drag must have one row for each Reynolds number, with one finite value for each angle');
    }
  }
  const [first, last] = [angles[0]!, angles.at(-1)!];
  const columns = (row: number): MeasuredRow['points'] => angles.map((angle, i) => [angle, lift[row]![i]!, drag[row]![i]!]);
  const points = reynolds.map((_, row) => columns(row));
  return fillTable(COMMON_THICKNESS, reynolds.map((number) => number / TURBULENCE_FACTOR), (row, angle) => giveWay(...at(points[row]!, angle), angle, Math.max(first - angle, angle - last)));
}

function fillTable(thickness: number, reynolds: readonly number[], of: (row: number, angle: number) => readonly [number, number]): SectionTable {
  const coefficients = new Float64Array(reynolds.length * ANGLES * 2);
  for (let row = 0; row < reynolds.length; row++) {
    for (let i = 0; i < ANGLES; i++) coefficients.set(of(row, -Math.PI + (i * 2 * Math.PI) / (ANGLES - 1)), 2 * (row * ANGLES + i));
  }
  return { kind: 'table', thickness, angles: ANGLES, reynolds: Float64Array.from(reynolds), coefficients };
}

/** @param past  how far the angle lies past the last known one [rad]; not positive where it is known */
function giveWay(lift: number, drag: number, angle: number, past: number): readonly [number, number] {
  const share = Math.min(1, Math.max(0, past / GIVING_WAY));
  const [plateLift, plateDrag] = stalledPlate(angle);
  return [lift + share * (plateLift - lift), drag + share * (plateDrag - drag)];
}

/** Lift and drag at a place, straight between the points, held beyond the ends. */
function at(points: MeasuredRow['points'], place: number): [lift: number, drag: number] {
  const after = points.findIndex(([here]) => here >= place);
  if (after <= 0) return points[after === 0 ? 0 : points.length - 1]!.slice(1) as [number, number];
  const [from, to] = [points[after - 1]!, points[after]!];
  const share = (place - from[0]) / (to[0] - from[0]);
  return [from[1] + share * (to[1] - from[1]), from[2] + share * (to[2] - from[2])];
}

function atReynolds(rows: readonly MeasuredRow[], reynolds: number, degrees: number): readonly [lift: number, drag: number] {
  return at(rows.map((row) => [row.reynolds, ...at(row.points, degrees)]), reynolds);
}

function ascending(values: readonly number[]): boolean {
  return values.length > 0 && values.every((value, index) => Number.isFinite(value) && (index === 0 || value > values[index - 1]!));
}
