/**
 * ISO 286 tables for nominal sizes up to 120 mm, in micrometres.
 *
 * @source ISO 286-1:2010, tables 1 to 3 (standard tolerances and fundamental deviations); typed from memory and held against the
 *         appendix tables 9 to 11 of a public bearing catalogue in the checks
 */

/** Upper ends of the main steps of nominal size, mm; each step is over the one before, up to and including this. */
export const mainSteps = [3, 6, 10, 18, 30, 50, 80, 120] as const;

/** Upper ends of the finer steps that the tighter letters need. */
export const fineSteps = [3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120] as const;

/** Standard tolerance by grade, per main step. Grade 3 serves the difference Δ of grade 4. */
export const standardTolerances: Readonly<Record<number, readonly number[]>> = {
  3: [2, 2.5, 2.5, 3, 4, 4, 5, 6],
  4: [3, 4, 4, 5, 6, 7, 8, 10],
  5: [4, 5, 6, 8, 9, 11, 13, 15],
  6: [6, 8, 9, 11, 13, 16, 19, 22],
  7: [10, 12, 15, 18, 21, 25, 30, 35],
  8: [14, 18, 22, 27, 33, 39, 46, 54],
  9: [25, 30, 36, 43, 52, 62, 74, 87],
  10: [40, 48, 58, 70, 84, 100, 120, 140],
  11: [60, 75, 90, 110, 130, 160, 190, 220],
};

const none = undefined;

/** Amount by which the shaft's upper limit lies below nominal (and the hole's lower limit above), per main step. */
export const clearanceLetters: Readonly<Record<string, readonly (number | undefined)[]>> = {
  d: [20, 30, 40, 50, 65, 80, 100, 120],
  e: [14, 20, 25, 32, 40, 50, 60, 72],
  ef: [10, 14, 18, none, none, none, none, none],
  f: [6, 10, 13, 16, 20, 25, 30, 36],
  fg: [4, 6, 8, none, none, none, none, none],
  g: [2, 4, 5, 6, 7, 9, 10, 12],
  h: [0, 0, 0, 0, 0, 0, 0, 0],
};

/** Amount by which the shaft's lower limit lies above nominal, per main step. */
export const transitionLetters: Readonly<Record<string, readonly number[]>> = {
  k: [0, 1, 1, 1, 2, 2, 2, 3],
  m: [2, 4, 6, 7, 8, 9, 11, 13],
  n: [4, 8, 10, 12, 15, 17, 20, 23],
  p: [6, 12, 15, 18, 22, 26, 32, 37],
};

/** The same for the interference letters, per fine step. */
export const interferenceLetters: Readonly<Record<string, readonly (number | undefined)[]>> = {
  r: [10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54],
  s: [14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79],
  t: [none, none, none, none, none, none, 41, 48, 54, 66, 75, 91, 104],
  u: [18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144],
  v: [none, none, none, none, 39, 47, 55, 68, 81, 102, 120, 146, 172],
  x: [20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210],
  y: [none, none, none, none, none, 63, 75, 94, 114, 144, 174, 214, 254],
  z: [26, 35, 42, 50, 60, 73, 88, 112, 136, 172, 210, 258, 310],
  za: [32, 42, 52, 64, 77, 98, 118, 148, 180, 226, 274, 335, 400],
  zb: [40, 50, 67, 90, 108, 136, 160, 200, 242, 300, 360, 445, 525],
  zc: [60, 80, 97, 130, 150, 188, 218, 274, 325, 405, 480, 585, 690],
};

/** Shaft j: lower limit by grade, per main step. */
export const shaftJ: Readonly<Record<number, readonly (number | undefined)[]>> = {
  5: [-2, -2, -2, -3, -4, -5, -7, -9],
  6: [-2, -2, -2, -3, -4, -5, -7, -9],
  7: [-4, -4, -5, -6, -8, -10, -12, -15],
  8: [-6, none, none, none, none, none, none, none],
};

/** Hole J: upper limit by grade, per main step. */
export const holeJ: Readonly<Record<number, readonly number[]>> = {
  6: [2, 5, 5, 6, 8, 10, 13, 16],
  7: [4, 6, 8, 10, 12, 14, 18, 22],
  8: [6, 10, 12, 15, 20, 24, 28, 34],
};
