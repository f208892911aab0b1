import { pitchForThrustCoefficient, tailThrustNeeded, thrustCoefficientAtPitch } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { angleOutput, countInput, degrees, lengthInput, numberOutput, speedInput } from '../specs.ts';
import { density, dragCoefficient, forceOutput, liftSlope, positive, powerOutput } from './rotor-specs.ts';

export const tailAuthority = defineCalculation({
  id: 'tail-authority',
  title: 'Tail authority',
  section: 'Rotor',
  summary: 'Thrust that the tail rotor must give, what it can give before its stop or its stall, and how fast the machine can be turned.',
  inputs: {
    mainTorque: { kind: 'number', title: 'Torque of the main rotor', symbol: 'Q', unit: 'N·m', shown: 'N·m', min: 0, example: 4.2 },
    arm: lengthInput('Tail rotor, from the main mast', 'l', 950),
    yawInertia: { kind: 'number', title: 'Moment of inertia of the machine in yaw', symbol: 'J', unit: 'kg·m²', shown: 'kg·m²', min: 0, default: 0, example: 0.19 },
    yawAcceleration: { kind: 'number', title: 'Yaw acceleration, positive asks for more tail thrust', symbol: '\\ddot\\psi', unit: 'rad/s²', shown: 'rad/s²', default: 0, example: 15 },
    blades: countInput('Blades', 'b', 2),
    radius: lengthInput('Radius of the tail rotor', 'R', 140),
    chord: lengthInput('Chord of its blades', 'c', 29),
    speed: { ...speedInput('Speed of the tail rotor', 'n', 8600), above: 0 },
    maximumPitch: { kind: 'number', title: 'Pitch at the stop', symbol: '\\theta_\\mathrm{max}', unit: 'rad', shown: '°', above: 0, max: Math.PI / 2, example: degrees(26) },
    density,
    liftSlope,
    cd0: dragCoefficient,
    inducedFactor: { ...positive('Induced power factor', '\\kappa', '-', '-', 1.2), default: 1.2 },
    maximumBladeLoading: { ...positive('Blade loading at stall, thrust coefficient over solidity', '(C_T/\\sigma)_\\mathrm{max}', '-', '-', 0.14), default: 0.14 },
    blockage: { kind: 'number', title: 'Share of the thrust lost on the fin', symbol: 's', unit: '-', shown: '%', min: 0, max: 0.9, default: 0, example: 0.05 },
  },
  outputs: {
    thrustNeeded: forceOutput('Thrust needed of the tail rotor', 'T'),
    thrustAtPitchLimit: forceOutput('Thrust at the stop', 'T_\\theta'),
    thrustAtStall: forceOutput('Thrust at stall', 'T_s'),
    thrustAvailable: forceOutput('Thrust available', 'T_a'),
    collective: angleOutput('Pitch for the thrust needed', '\\theta'),
    margin: numberOutput('Thrust available over thrust needed', 'S'),
    power: powerOutput('Power at the thrust needed', 'P'),
    yawAccelerationAvailable: { title: 'Yaw acceleration available against the main torque', symbol: '\\ddot\\psi_a', unit: 'rad/s²', shown: 'rad/s²' },
  },
  formulas: [
    { output: 'thrustNeeded', tex: String.raw`T = \frac{Q + J\,\ddot\psi}{l\,(1 - s)}` },
    { output: 'thrustAtPitchLimit', tex: String.raw`C_T = \frac{\sigma a}{2}\left(\frac{\theta_\mathrm{max}}{3} - \frac{\lambda}{2}\right),\quad \lambda = \sqrt{C_T/2},\quad T_\theta = C_T\,\rho\,\pi R^2\,(\Omega R)^2` },
    { output: 'thrustAtStall', tex: String.raw`T_s = (C_T/\sigma)_\mathrm{max}\,\sigma\,\rho\,\pi R^2\,(\Omega R)^2` },
    { output: 'thrustAvailable', tex: String.raw`T_a = \min(T_\theta,\,T_s)` },
    { output: 'collective', tex: String.raw`\theta = \frac{6\,C_T}{\sigma a} + \frac{3}{2}\sqrt{\frac{C_T}{2}}` },
    { output: 'margin', tex: String.raw`S = \frac{T_a}{T}` },
    { output: 'power', tex: String.raw`P = \kappa\,T\sqrt{\frac{T}{2\,\rho\,\pi R^2}} + \frac{\sigma\,c_{d0}}{8}\,\rho\,\pi R^2\,(\Omega R)^3` },
    { output: 'yawAccelerationAvailable', tex: String.raw`\ddot\psi_a = \frac{T_a\,(1 - s)\,l - Q}{J}` },
  ],
  source: 'Blade elements and momentum with uniform inflow: A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952) (from memory). Default blade loading at stall: common practice.',
  validity: [
    'Hover in still air; constant chord from the axis, no twist, no tip loss; σ = b·c/(πR).',
    'Wind, sideways flight and the wake of the main rotor are left out: they can take more than all of a small margin.',
    'Negative thrust mirrors; the stop towards that side is not asked for, so a negative margin says only that the rotor must push the other way.',
  ],
  compute: (inputs) => {
    const { mainTorque, arm, yawInertia, yawAcceleration, blades, radius, chord, speed, maximumPitch, cd0, inducedFactor, maximumBladeLoading, blockage } = inputs;
    const solidity = (blades * chord) / (Math.PI * radius);
    const area = Math.PI * radius ** 2;
    const tip = speed * radius;
    const thrustScale = inputs.density * area * tip ** 2;
    const rotor = { solidity, liftSlope: inputs.liftSlope };
    const thrustNeeded = tailThrustNeeded(mainTorque, yawInertia * yawAcceleration, arm, blockage);
    const thrustAtPitchLimit = thrustCoefficientAtPitch(rotor, maximumPitch) * thrustScale;
    const thrustAtStall = maximumBladeLoading * solidity * thrustScale;
    const thrustAvailable = Math.min(thrustAtPitchLimit, thrustAtStall);
    const size = Math.abs(thrustNeeded);
    return {
      outputs: {
        thrustNeeded,
        thrustAtPitchLimit,
        thrustAtStall,
        thrustAvailable,
        collective: pitchForThrustCoefficient(rotor, thrustNeeded / thrustScale),
        ...(thrustNeeded === 0 ? {} : { margin: thrustAvailable / thrustNeeded }),
        power: inducedFactor * size * Math.sqrt(size / (2 * inputs.density * area)) + ((solidity * cd0) / 8) * thrustScale * tip,
        ...(yawInertia > 0 ? { yawAccelerationAvailable: (thrustAvailable * (1 - blockage) * arm - mainTorque) / yawInertia } : {}),
      },
      warnings: [
        ...(thrustNeeded === 0 ? ['margin is left out: no thrust is needed.'] : []),
        ...(thrustNeeded < 0 ? ['The rotor must push the other way; its stop towards that side is not asked for.'] : []),
        ...(yawInertia > 0 ? [] : ['yawAccelerationAvailable is left out: it needs yawInertia.']),
        ...(thrustNeeded > thrustAvailable ? [`The tail cannot hold: ${thrustAtStall < thrustAtPitchLimit ? 'its blades stall first' : 'its stop comes first'}.`] : []),
      ],
    };
  },
});
