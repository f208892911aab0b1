import { HoverSolver, PITCH_SCATTER, powerBand, realRotor, thrustSolidity, type HoverSolution } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, numberOutput, speedInput } from '../specs.ts';
import { collectiveInput, readRotorShape, rotorShapeInputs } from './rotor-shape.ts';
import { airspeedOutput, forceOutput, powerOutput } from './rotor-specs.ts';

export const hover = defineCalculation({
  id: 'hover',
  title: 'Hover and climb, by blade elements',
  section: 'Rotor',
  summary: 'Collective, thrust, torque and power of a rotor in hover or axial climb, with the band in which real rotors lie.',
  inputs: {
    ...rotorShapeInputs,
    speed: { ...speedInput('Speed of the rotor', 'n', 1760), above: 0 },
    climbRate: { kind: 'number', title: 'Rate of climb along the axis', symbol: 'V_c', unit: 'm/s', shown: 'm/s', min: 0, default: 0, example: 0 },
    thrust: { kind: 'number', title: 'Thrust; either it or the collective', symbol: 'T', unit: 'N', shown: 'N', optional: true, example: 51 },
    collective: collectiveInput,
  },
  outputs: {
    collective: angleOutput('Collective: pitch where the twist is 0', '\\theta'),
    thrust: forceOutput('Thrust', 'T'),
    torque: { title: 'Torque', symbol: 'Q', unit: 'N·m', shown: 'N·m' },
    power: powerOutput('Power', 'P'),
    inducedPower: powerOutput('Power of the lift', 'P_i'),
    profilePower: powerOutput('Power of the drag', 'P_0'),
    powerLow: powerOutput('Power, low', 'P_\\mathrm{low}'),
    powerHigh: powerOutput('Power, high', 'P_\\mathrm{high}'),
    torqueLow: { title: 'Torque, low', symbol: 'Q_\\mathrm{low}', unit: 'N·m', shown: 'N·m' },
    torqueHigh: { title: 'Torque, high', symbol: 'Q_\\mathrm{high}', unit: 'N·m', shown: 'N·m' },
    thrustCoefficient: numberOutput('Thrust coefficient', 'C_T'),
    torqueCoefficient: numberOutput('Torque coefficient', 'C_Q'),
    bladeLoading: numberOutput('Blade loading', 'C_T/\\sigma'),
    figureOfMerit: numberOutput('Figure of merit', 'M'),
    tipSpeed: airspeedOutput('Tip speed', 'v_\\mathrm{tip}'),
    tipMach: numberOutput('Mach number of the tip', 'M_\\mathrm{tip}'),
    stalledFraction: { title: 'Share of the blade on which stall has begun', symbol: 's', unit: '-', shown: '%' },
    r: { title: 'Radii of the elements', symbol: 'r', unit: 'm', shown: 'mm', list: true },
    angleOfAttack: { title: 'Angle of attack there', symbol: '\\alpha', unit: 'rad', shown: '°', list: true },
    reynolds: { title: 'Reynolds number there', symbol: 'Re', unit: '-', shown: '-', list: true },
    lift: { title: 'Axial force of one blade per length there', symbol: 'F\'', unit: 'N/m', shown: 'N/m', list: true },
  },
  formulas: [
    { output: 'collective', tex: String.raw`\frac{8\pi r}{b\,c\,\kappa^2}\,F\,\sin\varphi\left(\sin\varphi - \frac{V_c}{U}\right) = c_l(\theta + \theta_t - \varphi)\cos\varphi,\quad U = \Omega r\cos\varphi + V_c\sin\varphi` },
    { output: 'thrust', tex: String.raw`T = \frac{\rho b}{2}\int U^2 c\,(c_l\cos\varphi - c_d\sin\varphi)\,\mathrm{d}r` },
    { output: 'torque', tex: String.raw`Q = \frac{\rho b}{2}\int U^2 c\,(c_l\sin\varphi + c_d\cos\varphi)\,r\,\mathrm{d}r` },
    { output: 'power', tex: String.raw`P = \Omega\,Q` },
    { output: 'inducedPower', tex: String.raw`P_i = P - P_0` },
    { output: 'profilePower', tex: String.raw`P_0 = \Omega\,\frac{\rho b}{2}\int U^2 c\,c_d\cos\varphi\;r\,\mathrm{d}r` },
    { output: 'powerLow', tex: String.raw`P_\mathrm{low} = P - s_0\,P_0 - s_i\,|P_i| - 0.5^\circ\left|\frac{\partial P}{\partial\theta}\right|_{\theta\ \mathrm{given}}` },
    { output: 'powerHigh', tex: String.raw`P_\mathrm{high} = P + s_0\,P_0 + s_i\,|P_i| + 0.5^\circ\left|\frac{\partial P}{\partial\theta}\right|_{\theta\ \mathrm{given}}` },
    { output: 'torqueLow', tex: String.raw`Q_\mathrm{low} = \frac{P_\mathrm{low}}{\Omega}` },
    { output: 'torqueHigh', tex: String.raw`Q_\mathrm{high} = \frac{P_\mathrm{high}}{\Omega}` },
    { output: 'thrustCoefficient', tex: String.raw`C_T = \frac{T}{\rho\,\pi R^2\,(\Omega R)^2}` },
    { output: 'torqueCoefficient', tex: String.raw`C_Q = \frac{Q}{\rho\,\pi R^3\,(\Omega R)^2}` },
    { output: 'bladeLoading', tex: String.raw`\frac{C_T}{\sigma},\quad \sigma = \frac{3 b}{\pi R}\int_0^1 c\,x^2\,\mathrm{d}x` },
    { output: 'figureOfMerit', tex: String.raw`M = \frac{T\sqrt{T/(2\,\rho\,\pi R^2)}}{P}` },
    { output: 'tipSpeed', tex: String.raw`v_\mathrm{tip} = \Omega\,R` },
    { output: 'tipMach', tex: String.raw`M_\mathrm{tip} = \frac{\Omega\,R}{a}` },
    { output: 'stalledFraction', tex: String.raw`s = \frac{1}{R - r_0}\int_{\partial c_l/\partial\alpha < \pi}\mathrm{d}r` },
    { output: 'r', tex: String.raw`r_j = r_0 + \left(j - \tfrac{1}{2}\right)\frac{R - r_0}{60}` },
    { output: 'angleOfAttack', tex: String.raw`\alpha = \theta + \theta_t - \varphi` },
    { output: 'reynolds', tex: String.raw`Re = \frac{\rho\,U\,c}{\mu}` },
    { output: 'lift', tex: String.raw`F' = \tfrac{1}{2}\,\rho\,U^2 c\,(c_l\cos\varphi - c_d\sin\varphi)` },
  ],
  source:
    'H. Glauert, Airplane Propellers, in Durand, Aerodynamic Theory IV (1935); F: L. Prandtl (1919), tip and root (both from memory). Sections: computed with XFOIL 6.99, capped by SAND80-2114 (1981). κ = 1.08 and drag × 1.1 chosen once against NACA TN-626, NACA TN 2474 and the UIUC static tests.',
  validity: [
    'Hover in still air, far from the ground, or climb along the axis. Descent is not computed: near the induced speed of hover the rotor sinks into its own wake.',
    'Wake contraction, stall delay of turning blades, bending and twisting of the blades are left out. Past the onset of stall expect 10 % and more.',
    'A table is taken as made for still air and read at 2.64 times the Reynolds number, for blades fly in air that they have stirred; past its ends the section goes over into a stalled plate.',
    'The power is that of the rotor: tail, gears and cooling come on top.',
    'Broad blades: at a chord of a sixth of the radius the thrust at a given pitch came out 14 to 19 % above that measured in NASA TM-81232.',
  ],
  compute: (inputs) => {
    const { speed, climbRate, thrust, collective, radius, speedOfSound } = inputs;
    if ((thrust === undefined) === (collective === undefined)) {
      throw new CalculationError('thrust', thrust === undefined ? 'neither it nor collective' : 'as well as collective', 'one of the two');
    }
    const { elements, flow, roughness, inducedFactor, scatter } = readRotorShape(inputs, climbRate);
    const solver = new HoverSolver(elements, flow, { ...realRotor, roughness, inducedFactor });
    const found = thrust === undefined ? solver.atCollective(speed, collective!) : solver.forThrust(speed, thrust);
    if (found === undefined || !Number.isFinite(found.torque)) throw noSolution(solver, speed, thrust);
    const { angleOfAttack, reynolds, lift, stalledFraction } = solver.stations();
    const band = powerBand(found, thrust === undefined ? powerPerPitch(solver, speed, found) : 0, scatter);
    const area = Math.PI * radius ** 2;
    const tip = speed * radius;
    const power = speed * found.torque;
    const thrustCoefficient = found.thrust / (flow.density * area * tip ** 2);
    const solidity = thrustSolidity({ blades: elements.blades, radius, chord: inputs.chord.map(({ r, chord }) => ({ r, value: chord })) });
    const tipMach = tip / speedOfSound;
    const merit = power > 0 && found.thrust > 0 ? (found.thrust * Math.sqrt(found.thrust / (2 * flow.density * area))) / power : undefined;
    return {
      outputs: {
        collective: found.collective,
        thrust: found.thrust,
        torque: found.torque,
        power,
        inducedPower: found.inducedPower,
        profilePower: found.profilePower,
        powerLow: band.low,
        powerHigh: band.high,
        torqueLow: band.low / speed,
        torqueHigh: band.high / speed,
        thrustCoefficient,
        torqueCoefficient: found.torque / (flow.density * area * radius * tip ** 2),
        bladeLoading: thrustCoefficient / solidity,
        ...(merit === undefined ? {} : { figureOfMerit: merit }),
        tipSpeed: tip,
        tipMach,
        stalledFraction,
        r: [...elements.stations],
        angleOfAttack: [...angleOfAttack],
        reynolds: [...reynolds],
        lift: [...lift],
      },
      warnings: [
        ...(merit === undefined ? ['figureOfMerit is left out: it needs a thrust and a power above 0.'] : []),
        ...(stalledFraction > 0 ? [`Stall has begun on ${Math.ceil(stalledFraction * 100)} % of the blade: expect 10 % and more between this and the real rotor.`] : []),
        ...(tipMach > 0.75 && elements.section.kind === 'table' ? ['The tips are fast enough for shocks: their drag is only estimated.'] : []),
      ],
    };
  },
});

/** Change of the power with the pitch, from half the scatter of the pitch to either side [W/rad]. */
function powerPerPitch(solver: HoverSolver, speed: number, { collective, torque }: HoverSolution): number {
  const step = PITCH_SCATTER / 2;
  const [less, more] = [collective - step, collective + step].map((pitch) => solver.atCollective(speed, pitch)?.torque ?? torque);
  return (speed * (more! - less!)) / (2 * step);
}

function noSolution(solver: HoverSolver, speed: number, thrust: number | undefined): CalculationError {
  if (thrust === undefined) return new CalculationError('collective', 'this collective', 'another one: some part of the blade finds no balance between its lift and the air that it moves');
  const most = thrust > 0 ? solver.highestThrust(speed) : undefined;
  const wanted = most === undefined ? 'a thrust that this rotor can give within 40° of pitch' : `at most ${Number(most.thrust.toPrecision(4))} N: this rotor at this speed gives no more, near ${Math.round((most.collective * 180) / Math.PI)}° of pitch`;
  return new CalculationError('thrust', `${thrust} N`, wanted);
}
