import { HoverSolver, PITCH_SCATTER, combined, powerBand, realRotor, type HoverSolution } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, degrees, numberOutput, speedInput } from '../specs.ts';
import { readRotorShape, rotorShapeInputs } from './rotor-shape.ts';
import { positive, powerOutput } from './rotor-specs.ts';

/** Shares by which the drag and the induced factor are moved to see what the power answers. */
const STEP = 0.02;
/** Drag and induced factor stay within these times what they were. */
const LEAST = 0.4;
const MOST = 2.5;
const ROUNDS = 6;

export const hoverCalibration = defineCalculation({
  id: 'hover-calibration',
  title: 'Blades as they were measured in hover',
  section: 'Rotor',
  summary: 'What a measured power, or a measured collective, says of these very blades, and by how much it narrows the band.',
  inputs: {
    ...rotorShapeInputs,
    speed: { ...speedInput('Speed of the rotor', 'n', 1760), above: 0 },
    thrust: positive('Thrust in hover: the weight', 'W', 'N', 'N', 51),
    measuredPower: { ...positive('Power of the rotor that was measured', 'P_m', 'W', 'W', 480), optional: true },
    powerAccuracy: { ...positive('How far that may be off, as a share', 'a_P', '-', '%', 0.08), max: 1, default: 0.08 },
    measuredCollective: { kind: 'number', title: 'Collective that was measured', symbol: '\\theta_m', unit: 'rad', shown: '°', min: -degrees(40), max: degrees(40), optional: true },
    pitchAccuracy: { ...positive('How far that may be off', 'a_\\theta', 'rad', '°', degrees(0.5)), default: degrees(0.5) },
  },
  outputs: {
    roughness: numberOutput('Drag of these blades over that of their section', 'k'),
    inducedFactor: numberOutput('Their induced speed over that of momentum theory', '\\kappa'),
    dragScatter: { title: 'Share by which their drag may still differ', symbol: "s_0'", unit: '-', shown: '%' },
    inducedScatter: { title: 'Share by which their induced power may still differ', symbol: "s_i'", unit: '-', shown: '%' },
    powerBefore: powerOutput('Power before', 'P'),
    power: powerOutput('Power after', "P'"),
    powerLow: powerOutput('Power after, low', "P'_\\mathrm{low}"),
    powerHigh: powerOutput('Power after, high', "P'_\\mathrm{high}"),
    narrowing: { title: 'Share of its width that the band has lost', symbol: 'n', unit: '-', shown: '%' },
    pitchDeviation: angleOutput('Collective measured less collective computed', '\\Delta\\theta'),
  },
  formulas: [
    { output: 'inducedFactor', tex: String.raw`\kappa' = \kappa\left(1 + \frac{\Delta\theta}{\partial\theta/\partial\ln\kappa}\,\frac{s_i^2}{s_i^2 + a^2}\right),\quad a = \frac{\sqrt{a_\theta^2 + (0.5^\circ)^2}}{\partial\theta/\partial\ln\kappa}` },
    { output: 'pitchDeviation', tex: String.raw`\Delta\theta = \theta_m - \theta` },
    { output: 'powerBefore', tex: String.raw`P = \Omega\,Q(k_0, \kappa)` },
    { output: 'power', tex: String.raw`P' = \frac{P/h^2 + P_m/m^2}{1/h^2 + 1/m^2},\quad h = s_0 P_0 + s_i |P_i|,\quad m = a_P P_m` },
    { output: 'roughness', tex: String.raw`P(k) = P'` },
    { output: 'dragScatter', tex: String.raw`s_0' = s_0\,\frac{h'}{h},\quad h' = \left(\frac{1}{h^2} + \frac{1}{m^2}\right)^{-1/2}` },
    { output: 'inducedScatter', tex: String.raw`s_i' = s_i\,\frac{a}{\sqrt{s_i^2 + a^2}}\,\frac{h'}{h}` },
    { output: 'powerLow', tex: String.raw`P'_\mathrm{low} = P' - s_0' P_0' - s_i' |P_i'|` },
    { output: 'powerHigh', tex: String.raw`P'_\mathrm{high} = P' + s_0' P_0' + s_i' |P_i'|` },
    { output: 'narrowing', tex: String.raw`n = 1 - \frac{P'_\mathrm{high} - P'_\mathrm{low}}{P_\mathrm{high} - P_\mathrm{low}}` },
  ],
  source: 'Hover by blade elements, as in hover; independent estimates combined by least squares.',
  validity: [
    'Steady hover in still air, away from the ground, at the mass and in the air that were entered.',
    'What the power says is laid to the drag of the blades, what the collective says to the induced speed: other causes, such as a wrong weight or a worn engine, look the same.',
    'A collective says little of the power: it narrows the induced part alone.',
  ],
  compute: (inputs) => {
    const { speed, thrust, measuredPower, powerAccuracy, measuredCollective, pitchAccuracy } = inputs;
    if (measuredPower === undefined && measuredCollective === undefined) throw new CalculationError('measuredPower', 'nothing', 'the power or the collective that was measured, or both');
    const { elements, flow, roughness, inducedFactor, scatter } = readRotorShape(inputs, 0);
    const at = (drag: number, induced: number): HoverSolution => {
      const found = new HoverSolver(elements, flow, { ...realRotor, roughness: drag, inducedFactor: induced }).forThrust(speed, thrust);
      if (found === undefined) throw new CalculationError('thrust', `${thrust} N`, 'a thrust that this rotor can give at this speed');
      return found;
    };
    const powerOf = ({ torque }: HoverSolution): number => speed * torque;
    const before = at(roughness, inducedFactor);
    const bandBefore = powerBand(before, 0, scatter);
    // 1. The collective moves the induced factor.
    const deviation = measuredCollective === undefined ? undefined : measuredCollective - before.collective;
    const perInduced = (at(roughness, inducedFactor * (1 + STEP)).collective - before.collective) / STEP;
    const induced = deviation === undefined
      ? { value: 0, half: scatter.induced }
      : combined({ value: 0, half: scatter.induced }, { value: deviation / perInduced, half: Math.hypot(pitchAccuracy, PITCH_SCATTER) / perInduced });
    const inducedAfter = inducedFactor * Math.min(MOST, Math.max(LEAST, 1 + induced.value));
    const turned = at(roughness, inducedAfter);
    const narrowed = { drag: scatter.drag, induced: induced.half };
    // 2. The power moves the drag.
    const band = powerBand(turned, 0, narrowed);
    const half = (band.high - band.low) / 2;
    const wanted = measuredPower === undefined ? { value: powerOf(turned), half } : combined({ value: powerOf(turned), half }, { value: measuredPower, half: powerAccuracy * measuredPower });
    let drag = roughness;
    const rounds = measuredPower === undefined ? 0 : ROUNDS;
    for (let round = 0; round < rounds; round++) {
      const here = powerOf(at(drag, inducedAfter));
      const slope = (powerOf(at(drag * (1 + STEP), inducedAfter)) - here) / (drag * STEP);
      drag = Math.min(MOST * roughness, Math.max(LEAST * roughness, drag + (wanted.value - here) / slope));
    }
    const after = at(drag, inducedAfter);
    const left = wanted.half / half;
    const scatterAfter = { drag: narrowed.drag * left, induced: narrowed.induced * left };
    const bandAfter = powerBand(after, 0, scatterAfter);
    const missed = Math.abs(powerOf(after) - wanted.value) > 1e-3 * wanted.value;
    return {
      outputs: {
        roughness: drag,
        inducedFactor: inducedAfter,
        dragScatter: scatterAfter.drag,
        inducedScatter: scatterAfter.induced,
        powerBefore: powerOf(before),
        power: powerOf(after),
        powerLow: bandAfter.low,
        powerHigh: bandAfter.high,
        narrowing: 1 - (bandAfter.high - bandAfter.low) / (bandBefore.high - bandBefore.low),
        ...(deviation === undefined ? {} : { pitchDeviation: deviation }),
      },
      warnings: [
        ...(deviation === undefined ? ['pitchDeviation is left out: it needs measuredCollective.'] : []),
        ...(missed ? ['The measured power lies so far off that no drag explains it: look at weight, rotor speed, fuel or current again.'] : []),
        ...(measuredPower !== undefined && (measuredPower < bandBefore.low || measuredPower > bandBefore.high) ? [`The measured power lies outside the band that was expected, ${Math.round(bandBefore.low)} to ${Math.round(bandBefore.high)} W: nine rotors in ten lie within.`] : []),
        ...(deviation !== undefined && Math.abs(deviation) > 2 * Math.hypot(pitchAccuracy, PITCH_SCATTER) ? ['The measured collective is off by more than a pitch gauge and blades explain: look at weight, rotor speed and the zero of the gauge.'] : []),
      ],
    };
  },
});
