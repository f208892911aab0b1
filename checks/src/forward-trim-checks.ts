import type { Check, Source } from './check.ts';

const law = (place: string): Source => ({ document: 'Momentum theory and rate of work', place, kind: 'law' });

/** Blades without twist or cutout, with a drag that asks for nothing. */
const rotor = { blades: 2, radius: 0.8, rootCutout: 0, chord: 0.06, airfoil: { liftSlope: 5.73, cd0: 0.012, cd2: 0 }, speed: 160, mass: 5, flapInertia: 0.05, inducedFactor: 1, density: 1.225 };
const AREA = Math.PI * 0.8 ** 2;
const WEIGHT = 5 * 9.80665;
const TIP = 160 * 0.8;
const HOVER = Math.sqrt(WEIGHT / (2 * 1.225 * AREA));
/** σ·cd0/8·ρA(ΩR)³, σ = b·c/πR */
const PROFILE = (((2 * 0.06) / (Math.PI * 0.8)) * 0.012 * 1.225 * AREA * TIP ** 3) / 8;
const MU = 0.2;

type Row = readonly [title: string, inputs: Readonly<Record<string, unknown>>, output: string, expected: number, tolerance: number, place: string];

const rows: readonly Row[] = [
  ['at rest the induced speed is that of hover, √(T/2ρA)', { airspeed: 0, dragArea: 0.02 }, 'inducedSpeed', HOVER, 1e-6, 'T = W'],
  ['climbing at twice that speed it is v_h·(√2 − 1): −V/2 + √(V²/4 + v_h²)', { airspeed: 0, dragArea: 0, climbRate: 2 * HOVER }, 'inducedSpeed', HOVER * (Math.SQRT2 - 1), 1e-6, 'normal working state'],
  // A limit: the disc leans some 4° against the drag of the rotor, and what passes through it adds 1 in 400 to the speed. A drag law knows no stall, so that faster flight leans on a retreating blade that no rotor has.
  ['in fast flight it falls to T/2ρAV, as that of a wing of the same span', { airspeed: 30, dragArea: 0 }, 'inducedSpeed', WEIGHT / (2 * 1.225 * AREA * 30), 5e-3, 'H. Glauert, R&M 1111 (1926): high-speed limit (from memory)'],
  ['the fuselage takes ½ρV³f', { airspeed: 20, dragArea: 0.02 }, 'parasitePower', 0.5 * 1.225 * 20 ** 3 * 0.02, 1e-12, 'D·V'],
  ['a climb of 3 m/s takes W·3 m/s', { airspeed: 10, dragArea: 0.02, climbRate: 3 }, 'climbPower', WEIGHT * 3, 1e-12, 'W·V_c'],
  // The inflow adds less than 1 in 1,000 to the speed past the blade; lift is cut at the tip, drag is not.
  ['the drag of the blades takes σ·cd0/8·ρA(ΩR)³ at rest', { airspeed: 0, dragArea: 0 }, 'profilePower', PROFILE, 5e-3, '∫r³dr'],
  ['and 1 + 3μ² times that at μ = 0.2, without the radial flow', { airspeed: MU * TIP, dragArea: 0 }, 'profilePower', PROFILE * (1 + 3 * MU ** 2), 1e-2, 'mean of (x + μ sin ψ)³ around and along the blade'],
];

/** Forward flight where a closed form has the answer. */
export const forwardTrimChecks: readonly Check[] = rows.map(([title, inputs, output, expected, tolerance, place]) => ({
  calculation: 'forward-trim', title, source: law(place), inputs: { ...rotor, ...inputs }, output, expected, tolerance, mode: 'relative',
}));
