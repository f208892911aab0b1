/** Coefficients over a full turn of the angle of attack and a range of Reynolds numbers. */
export interface SectionTable {
  readonly kind: 'table';
  /** Thickness over chord: decides where shocks begin. */
  readonly thickness: number;
  /** Evenly spaced angles from −π to π, both ends among them. */
  readonly angles: number;
  /** Ascending; below the first and above the last the end row holds. */
  readonly reynolds: Float64Array;
  /** cl and cd in turn: for each Reynolds number all angles. */
  readonly coefficients: Float64Array;
}

/**
 * cl = liftSlope·α, cd = cd0 + cd2·α² at any Reynolds number. Past 45° α counts back to nothing at 90°, and beyond that the blade
 * meets the air with its other edge: there α counts from 180°. So lift has no step anywhere, as it would have in reversed flow.
 */
export interface SectionPolar {
  readonly kind: 'polar';
  readonly thickness: number;
  /** 1/rad */
  readonly liftSlope: number;
  readonly cd0: number;
  /** 1/rad² */
  readonly cd2: number;
}

export type Section = SectionTable | SectionPolar;

/** A row of blade elements, one entry for each: what goes into a section and what comes out of it. */
export interface SectionRow {
  /** α [rad], −π to π */
  readonly angle: Float64Array;
  readonly reynolds: Float64Array;
  readonly lift: Float64Array;
  readonly drag: Float64Array;
  /** d/dα [1/rad]; the slope with the Reynolds number is left out */
  readonly liftSlope: Float64Array;
  readonly dragSlope: Float64Array;
}

export function sectionRow(count: number): SectionRow {
  const column = (): Float64Array => new Float64Array(count);
  return { angle: column(), reynolds: column(), lift: column(), drag: column(), liftSlope: column(), dragSlope: column() };
}

/**
 * Fills lift and drag and their slopes from angle and Reynolds number, a whole row at a time: one call for many
 * elements keeps the loop over them free of other calls.
 *
 * Between the entries of a table both coefficients go linearly with α and with the Reynolds number.
 *
 * @param row  read in angle and reynolds, written in the rest
 */
export function evaluateSection(section: Section, row: SectionRow): void {
  if (section.kind === 'polar') evaluatePolar(section, row);
  else evaluateTable(section, row);
}

/** 45° [rad] */
const HALF_SQUARE = Math.PI / 4;

function evaluatePolar({ liftSlope, cd0, cd2 }: SectionPolar, row: SectionRow): void {
  for (let i = 0; i < row.angle.length; i++) {
    const given = row.angle[i]!;
    const straight = given < HALF_SQUARE && given > -HALF_SQUARE;
    const reversed = given > 3 * HALF_SQUARE || given < -3 * HALF_SQUARE;
    const turn = given < 0 ? -1 : 1;
    const angle = straight ? given : reversed ? given - turn * Math.PI : (turn * Math.PI) / 2 - given;
    const way = straight || reversed ? 1 : -1;
    row.lift[i] = liftSlope * angle;
    row.liftSlope[i] = way * liftSlope;
    row.drag[i] = cd0 + cd2 * angle * angle;
    row.dragSlope[i] = way * 2 * cd2 * angle;
  }
}

function evaluateTable({ angles, reynolds, coefficients }: SectionTable, row: SectionRow): void {
  const { angle, reynolds: given, lift, drag, liftSlope, dragSlope } = row;
  const perRadian = (angles - 1) / (2 * Math.PI);
  const last = angles - 2;
  const top = reynolds.length - 1;
  const count = angle.length;
  let j = 0;
  let lower = reynolds[0]!;
  let perSpan = top === 0 ? 0 : 1 / (reynolds[1]! - lower);
  for (let i = 0; i < count; i++) {
    const place = (angle[i]! + Math.PI) * perRadian;
    let column = place | 0;
    if (column < 0) column = 0;
    else if (column > last) column = last;
    const t = place - column;
    // Neighbours along a blade have neighbouring Reynolds numbers: the search goes on from the last one.
    const number = given[i]!;
    const before = j;
    while (j < top - 1 && number >= reynolds[j + 1]!) j++;
    while (j > 0 && number < reynolds[j]!) j--;
    if (j !== before) {
      lower = reynolds[j]!;
      perSpan = 1 / (reynolds[j + 1]! - lower);
    }
    let u = (number - lower) * perSpan;
    if (u < 0) u = 0;
    else if (u > 1) u = 1;
    const below = 2 * (j * angles + column);
    const above = top === 0 ? below : below + 2 * angles;
    const lift0 = coefficients[below]! + u * (coefficients[above]! - coefficients[below]!);
    const drag0 = coefficients[below + 1]! + u * (coefficients[above + 1]! - coefficients[below + 1]!);
    const liftStep = coefficients[below + 2]! + u * (coefficients[above + 2]! - coefficients[below + 2]!) - lift0;
    const dragStep = coefficients[below + 3]! + u * (coefficients[above + 3]! - coefficients[below + 3]!) - drag0;
    lift[i] = lift0 + t * liftStep;
    drag[i] = drag0 + t * dragStep;
    liftSlope[i] = liftStep * perRadian;
    dragSlope[i] = dragStep * perRadian;
  }
}
