import data from '../data/rotor-closed-forms.json' with { type: 'json' };
import type { Check, Source } from './check.ts';

const source: Source = { document: 'Closed forms of momentum and blade-element theory, evaluated apart', kind: 'independent route' };
const DENSITY = 1.225;
/** A thrust whose induced speed of hover is 1 m/s on a disc of 1 m. */
const UNIT_THRUST = 2 * DENSITY * Math.PI;

const check = (calculation: string, title: string, inputs: Check['inputs'], output: string, expected: number): Check => ({ calculation, title, source, inputs, output, expected, tolerance: 1e-6, mode: 'relative' });

const { v_h: hoverSpeed, P_ideal_W: hoverPower, disc_loading: discLoading } = data.hover5kg;
const fiveKilograms = { thrust: 5 * 9.80665, radius: 0.8, density: DENSITY };

/** Momentum theory and the small-angle hover, to a millionth. */
export const rotorClosedForms: readonly Check[] = [
  check('axial-flight', '5 kg on 1.6 m: induced speed of hover', fiveKilograms, 'hoverInducedSpeed', hoverSpeed),
  check('axial-flight', '5 kg on 1.6 m: least power', fiveKilograms, 'power', hoverPower),
  check('axial-flight', '5 kg on 1.6 m: disc loading', fiveKilograms, 'discLoading', discLoading),
  ...[...data.climb, ...data.descent].map((row) => check('axial-flight', `climb at ${row[0]} times the induced speed of hover`, { thrust: UNIT_THRUST, radius: 1, density: DENSITY, climbRate: row[0] }, 'inducedSpeed', row[1]!)),
  ...data.groundEffect.map((row) => check('ground-effect', `${row[0]} radii above the ground`, { height: row[0], radius: 1 }, 'thrustRatio', row[1]!)),
  check('ground-effect', 'half a radius above the ground: 1 − 1/4', { height: 0.5, radius: 1 }, 'inducedPowerRatio', 0.75),
  ...data.hoverEstimate.rows.flatMap((row) =>
    (['thrustCoefficient', 'inducedPowerCoefficient', 'inducedFactor'] as const).map((output, index) =>
      check('hover-estimate', `σ = ${row[0]}, a = ${row[1]}, ${row[2]}°: ${output}`, { solidity: row[0], liftSlope: row[1], pitch: `${row[2]} °` }, output, row[3 + index]!),
    ),
  ),
  ...data.glauert.rows.map((row) =>
    check('forward-flight', `5 kg on 1.6 m without fuselage drag, ${row[0]} m/s: induced speed`, { blades: 2, radius: 0.8, chord: 0.06, speed: 157, mass: 5, airspeed: row[0], dragArea: 0, density: DENSITY }, 'inducedSpeed', row[1]!),
  ),
];
