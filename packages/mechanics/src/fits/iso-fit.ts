import {
  clearanceLetters, fineSteps, holeJ, interferenceLetters, mainSteps, shaftJ, standardTolerances, transitionLetters,
} from './tolerance-tables.ts';

/** Limits of a toleranced size, as deviations from nominal, m. */
export interface Deviations {
  readonly lower: number;
  readonly upper: number;
}

const micrometre = 1e-6;

/**
 * Limit deviations of a shaft or a hole after ISO 286.
 *
 * @param nominal  m, over 0 up to 0.12
 * @param code     letters and grade: capitals for a hole (`H7`), small for a shaft (`g6`); D to ZC, grades 4 to 11
 * @returns        deviations from nominal, m
 * @throws RangeError when the size or grade lies outside the table, or the standard gives no such letter there
 * @source ISO 286-1:2010, 4.3.2 and tables 1 to 3 (from memory); ISO 286-2 holds the same limits worked out
 * @example limitDeviations(0.008, 'g6').upper // -0.000005
 */
export function limitDeviations(nominal: number, code: string): Deviations {
  const match = /^([A-Za-z]{1,2})(\d{1,2})$/.exec(code.trim());
  if (!match) throw new RangeError(`limitDeviations: code must be letters and a grade such as H7 or g6, got "${code}"`);
  if (!(nominal > 0 && nominal <= 0.12)) throw new RangeError(`limitDeviations: nominal must be over 0 up to 0.12 m, got ${nominal}`);
  const letters = match[1]!;
  const grade = Number(match[2]);
  if (!(grade >= 4 && grade <= 11)) throw new RangeError(`limitDeviations: the grade must be 4 to 11, got ${grade}`);
  const isHole = letters === letters.toUpperCase();
  if (!isHole && letters !== letters.toLowerCase()) throw new RangeError(`limitDeviations: write a hole in capitals and a shaft in small letters, got "${letters}"`);

  const millimetres = nominal * 1000;
  const tolerance = standardTolerances[grade]![step(mainSteps, millimetres)]!;
  const [lower, upper] = isHole ? hole(letters.toLowerCase(), grade, millimetres, tolerance) : shaft(letters, grade, millimetres, tolerance);
  return { lower: lower * micrometre, upper: upper * micrometre };
}

/** Index of the step that holds a size; a size on the border belongs to the lower step. */
const step = (ends: readonly number[], millimetres: number): number => ends.findIndex((end) => millimetres <= end * (1 + 1e-12));

type Limits = readonly [lower: number, upper: number];

function shaft(letter: string, grade: number, millimetres: number, tolerance: number): Limits {
  const main = step(mainSteps, millimetres);
  if (letter === 'js') return [-tolerance / 2, tolerance / 2];
  if (letter in clearanceLetters) {
    const upper = -known(clearanceLetters[letter]![main], letter, millimetres);
    return [upper - tolerance, upper];
  }
  let lower: number;
  if (letter === 'j') lower = known(shaftJ[grade]?.[main], `j${grade}`, millimetres);
  else if (letter === 'k') lower = grade <= 7 ? transitionLetters['k']![main]! : 0;
  else lower = aboveNominal(letter, millimetres);
  return [lower, lower + tolerance];
}

function hole(letter: string, grade: number, millimetres: number, tolerance: number): Limits {
  const main = step(mainSteps, millimetres);
  if (letter === 'js') return [-tolerance / 2, tolerance / 2];
  if (letter in clearanceLetters) {
    const lower = known(clearanceLetters[letter]![main], letter.toUpperCase(), millimetres);
    return [lower, lower + tolerance];
  }
  let upper: number;
  if (letter === 'j') upper = known(holeJ[grade]?.[main], `J${grade}`, millimetres);
  else if (letter === 'k') {
    if (grade > 8 && main > 0) throw new RangeError(`limitDeviations: the standard gives K above 3 mm only up to grade 8, got K${grade}`);
    upper = grade <= 8 ? -transitionLetters['k']![main]! + delta(grade, main) : 0;
  } else if (letter === 'n' && grade > 8) upper = main === 0 ? -4 : 0;
  else {
    // M and N keep the difference up to grade 8, P and beyond up to grade 7.
    const withDelta = grade <= (letter === 'm' || letter === 'n' ? 8 : 7);
    upper = -aboveNominal(letter, millimetres) + (withDelta ? delta(grade, main) : 0);
  }
  return [upper - tolerance, upper];
}

/** Δ = IT(n) − IT(n − 1): lets a hole of grade n and a shaft one grade finer fit as tightly as their mirror image does. Zero up to 3 mm. */
function delta(grade: number, main: number): number {
  return main === 0 ? 0 : standardTolerances[grade]![main]! - standardTolerances[grade - 1]![main]!;
}

function aboveNominal(letter: string, millimetres: number): number {
  const transition = transitionLetters[letter]?.[step(mainSteps, millimetres)];
  return transition ?? known(interferenceLetters[letter]?.[step(fineSteps, millimetres)], letter, millimetres);
}

function known(value: number | undefined, letter: string, millimetres: number): number {
  if (value === undefined) throw new RangeError(`limitDeviations: the table gives no ${letter} at ${millimetres} mm`);
  return value;
}

export interface Fit {
  /** Limits of size, m. */
  readonly holeMin: number;
  readonly holeMax: number;
  readonly shaftMin: number;
  readonly shaftMax: number;
  /** m; negative is interference */
  readonly clearanceMin: number;
  readonly clearanceMax: number;
}

/**
 * Limits of size and clearance of a hole and a shaft of one nominal size.
 *
 * @param nominal  m, over 0 up to 0.12
 * @param hole     such as `H7`
 * @param shaft    such as `g6`
 * @throws RangeError as `limitDeviations`, and when a code is not of its kind
 * @source ISO 286-1:2010, 3.3 (from memory)
 */
export function isoFit(nominal: number, hole: string, shaft: string): Fit {
  if (!/^[A-Z]/.test(hole.trim())) throw new RangeError(`isoFit: hole must be in capitals, such as H7, got "${hole}"`);
  if (!/^[a-z]/.test(shaft.trim())) throw new RangeError(`isoFit: shaft must be in small letters, such as g6, got "${shaft}"`);
  const inner = limitDeviations(nominal, hole);
  const outer = limitDeviations(nominal, shaft);
  return {
    holeMin: nominal + inner.lower,
    holeMax: nominal + inner.upper,
    shaftMin: nominal + outer.lower,
    shaftMax: nominal + outer.upper,
    clearanceMin: inner.lower - outer.upper,
    clearanceMax: inner.upper - outer.lower,
  };
}
