import { HoverSolver, powerBand, realRotor, tailThrustNeeded, thrustCoefficientAtPitch } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { countInput, degrees, lengthInput, numberOutput, speedInput, speedOutput } from '../specs.ts';
import { readRotorShape, rotorShapeInputs } from './rotor-shape.ts';
import { forceOutput, liftSlope, positive } from './rotor-specs.ts';

const ELEMENTS = 30;
/** Speeds at which the band is looked at, both ends among them. */
const SPEEDS = 33;
/** Tip Mach number from which the drag of usual tail sections rises. */
const FAST_TIP = 0.7;

const speeds = (title: string, symbol: string) => ({ ...speedOutput(title, symbol), list: true }) as const;
const forces = (title: string, symbol: string) => ({ ...forceOutput(title, symbol), list: true }) as const;

export const tailSpeeds = defineCalculation({
  id: 'tail-speeds',
  title: 'Tail over the speed band',
  section: 'Rotor',
  summary: 'From which rotor speed on the tail holds the machine, in hover and against full power, and from which on it turns too fast.',
  inputs: {
    ...rotorShapeInputs,
    speed: { ...speedInput('Speed of the main rotor at which the power is given', 'n', 1760), above: 0 },
    lowSpeed: { ...speedInput('Lowest speed of the band that is looked at', 'n_1', 1100), above: 0 },
    highSpeed: { ...speedInput('Highest speed of that band', 'n_2', 2200), above: 0 },
    thrust: positive('Thrust in hover: the weight', 'W', 'N', 'N', 51),
    power: { kind: 'number', title: 'Power that the main rotor can have', symbol: 'P_a', unit: 'W', shown: 'W', above: 0, optional: true, example: 1500 },
    tailRatio: positive('Turns of the tail rotor for each of the main rotor', 'i_t', '-', '-', 4.9),
    arm: lengthInput('Tail rotor, from the main mast', 'l', 950),
    tailBlades: countInput('Blades of the tail rotor', 'b_t', 2),
    tailRadius: lengthInput('Radius of the tail rotor', 'R_t', 140),
    tailChord: lengthInput('Chord of its blades', 'c_t', 28),
    maximumPitch: { kind: 'number', title: 'Pitch of the tail at its stop', symbol: '\\theta_\\mathrm{max}', unit: 'rad', shown: '°', above: 0, max: Math.PI / 2, example: degrees(26) },
    blockage: { kind: 'number', title: 'Share of the thrust lost on the fin', symbol: 's', unit: '-', shown: '%', min: 0, max: 0.9, default: 0, example: 0.05 },
    tailLiftSlope: liftSlope,
    maximumBladeLoading: { ...positive('Blade loading of the tail at stall', '(C_T/\\sigma)_\\mathrm{max}', '-', '-', 0.14), default: 0.14 },
  },
  outputs: {
    leastSpeedHover: speedOutput('Main rotor speed from which on the tail holds hover', 'n_h'),
    leastSpeedFull: speedOutput('Main rotor speed from which on it holds full power', 'n_f'),
    fastSpeed: speedOutput('Main rotor speed from which on the tail tips are too fast', 'n_M'),
    fullMargin: numberOutput('Thrust available over that needed against full power, at the speed given', 'S_f'),
    mainSpeed: speeds('Speeds of the main rotor looked at', 'n'),
    needed: forces('Thrust needed in hover there, high', 'T_h'),
    neededFull: forces('Thrust needed against full power there', 'T_f'),
    available: forces('Thrust available there', 'T_a'),
  },
  formulas: [
    { output: 'mainSpeed', tex: String.raw`n_j = n_\mathrm{low} + \frac{j}{32}\,(n_\mathrm{high} - n_\mathrm{low}),\quad j = 0 \ldots 32` },
    { output: 'needed', tex: String.raw`T_h = \frac{Q_\mathrm{high}(n)}{l\,(1 - s)}` },
    { output: 'neededFull', tex: String.raw`T_f = \frac{P_a/\Omega(n)}{l\,(1 - s)},\quad \text{the same torque at every speed}` },
    { output: 'available', tex: String.raw`T_a = \min\left(C_T(\theta_\mathrm{max}),\ (C_T/\sigma)_\mathrm{max}\,\sigma\right)\rho\,\pi R_t^2\,(i_t\,\Omega R_t)^2` },
    { output: 'leastSpeedHover', tex: String.raw`T_a(n_h) = T_h(n_h)` },
    { output: 'leastSpeedFull', tex: String.raw`T_a(n_f) = T_f` },
    { output: 'fastSpeed', tex: String.raw`i_t\,\Omega_M R_t = 0.7\,a` },
    { output: 'fullMargin', tex: String.raw`S_f = \frac{T_a}{T_f}` },
  ],
  source: 'Main rotor as in hover, tail rotor as in tail-authority. Tail tips faster than Mach 0.7: common practice, no source.',
  validity: [
    'Still air. Wind from the side, the wake of the main rotor and a quick turn take more than this.',
    'Full power asks for the same torque at every speed of the band: engines near their best torque, motors at a held current.',
    'The thrust of the tail falls with the square of the speed, the torque of full power does not: slow rotors are short of tail.',
  ],
  compute: (inputs) => {
    const { speed, lowSpeed, highSpeed, thrust, power, tailRatio, arm, tailBlades, tailRadius, tailChord, maximumPitch, blockage, speedOfSound } = inputs;
    const { elements, flow, roughness, inducedFactor, scatter } = readRotorShape(inputs, 0, ELEMENTS);
    const solver = new HoverSolver(elements, flow, { ...realRotor, roughness, inducedFactor });
    const solidity = (tailBlades * tailChord) / (Math.PI * tailRadius);
    const loading = Math.min(thrustCoefficientAtPitch({ solidity, liftSlope: inputs.tailLiftSlope }, maximumPitch), inputs.maximumBladeLoading * solidity);
    const give = (main: number): number => loading * flow.density * Math.PI * tailRadius ** 2 * (tailRatio * main * tailRadius) ** 2;
    const low = Math.min(lowSpeed, highSpeed);
    const step = (Math.max(lowSpeed, highSpeed) - low) / (SPEEDS - 1);
    // From fast to slow: where the blades stall for lack of speed the band ends.
    const rows: { readonly main: number; readonly needed: number; readonly available: number }[] = [];
    for (let i = SPEEDS - 1; i >= 0; i--) {
      const main = low + i * step;
      const found = solver.forThrust(main, thrust);
      if (found === undefined) break;
      rows.unshift({ main, needed: tailThrustNeeded(powerBand(found, 0, scatter).high / main, 0, arm, blockage), available: give(main) });
    }
    const full = power === undefined ? undefined : tailThrustNeeded(power / speed, 0, arm, blockage);
    const holding = leastHolding(rows);
    const first = rows[0]?.main ?? Infinity;
    return {
      outputs: {
        ...(holding === undefined ? {} : { leastSpeedHover: holding }),
        ...(full === undefined ? {} : { leastSpeedFull: speed * Math.sqrt(full / give(speed)), fullMargin: give(speed) / full, neededFull: rows.map(() => full) }),
        fastSpeed: (FAST_TIP * speedOfSound) / (tailRatio * tailRadius),
        mainSpeed: rows.map(({ main }) => main),
        needed: rows.map(({ needed }) => needed),
        available: rows.map(({ available }) => available),
      },
      warnings: [
        ...(holding === undefined ? ['leastSpeedHover is left out: the tail holds hover at no speed of the band.'] : []),
        ...(full === undefined ? ['leastSpeedFull, fullMargin and neededFull are left out: they need power.'] : []),
        ...(holding !== undefined && holding <= first ? ['The tail holds hover over the whole band: leastSpeedHover is its lower end.'] : []),
        ...(first > low ? ['Below the first speed that is listed the main rotor itself stalls in hover.'] : []),
      ],
    };
  },
});

/** Speed from which on the tail holds, straight between the speeds looked at. */
function leastHolding(rows: readonly { readonly main: number; readonly needed: number; readonly available: number }[]): number | undefined {
  for (let i = rows.length - 1; i >= 0; i--) {
    const { main, needed, available } = rows[i]!;
    if (available >= needed) continue;
    const above = rows[i + 1];
    if (above === undefined) return undefined;
    const [short, over] = [needed - available, above.available - above.needed];
    return main + ((above.main - main) * short) / (short + over);
  }
  return rows[0]?.main;
}
