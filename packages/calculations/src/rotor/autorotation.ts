import { STANDARD_GRAVITY, autorotationDescentRatio, minimumRotorSpeed, rotorDecayTime, storedEnergy } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { lengthInput, numberOutput, speedInput, speedOutput } from '../specs.ts';
import { density, positive } from './rotor-specs.ts';

export const autorotation = defineCalculation({
  id: 'autorotation',
  title: 'Autorotation',
  section: 'Rotor',
  summary: 'How long and how far the energy in the rotor lasts when the engine stops, and how fast the machine comes down.',
  inputs: {
    rotorInertia: positive('Moment of inertia of the whole rotor', 'J', 'kg·m²', 'kg·m²', 0.09),
    speed: { ...speedInput('Speed of the rotor', 'n', 1760), above: 0 },
    hoverPower: positive('Power in hover', 'P', 'W', 'W', 450),
    mass: positive('Mass of the machine', 'm', 'kg', 'kg', 5.2),
    radius: lengthInput('Radius of the rotor', 'R', 775),
    density,
    minimumSpeed: { ...speedInput('Least speed at which the rotor still carries', 'n_\\mathrm{min}', 1250), above: 0, optional: true },
    bladeLoading: { ...positive('Blade loading in hover, thrust coefficient over solidity', 'C_T/\\sigma', '-', '-', 0.06), optional: true },
    maximumBladeLoading: { ...positive('Blade loading at stall', '(C_T/\\sigma)_\\mathrm{max}', '-', '-', 0.13), optional: true },
    loadingReserve: { ...positive('Share of that loading that is used', 'k', '-', '-', 0.8), max: 1, default: 0.8 },
    profilePower: { kind: 'number', title: 'Power in the descent, all but the induced: blades, tail, drive', symbol: 'P_0', unit: 'W', shown: 'W', min: 0, optional: true, example: 110 },
    inducedFactor: { ...positive('Induced power factor', '\\kappa', '-', '-', 1.15), default: 1.15 },
  },
  outputs: {
    storedEnergy: { title: 'Stored energy', symbol: 'E', unit: 'J', shown: 'J' },
    equivalentHoverTime: { title: 'Hover time that this energy equals', symbol: 't_E', unit: 's', shown: 's' },
    minimumSpeed: speedOutput('Least speed at which the rotor still carries', 'n_\\mathrm{min}'),
    usableEnergy: { title: 'Energy down to the least speed', symbol: 'E_u', unit: 'J', shown: 'J' },
    usableHoverTime: { title: 'Hover time that this energy equals', symbol: 't_u', unit: 's', shown: 's' },
    decayTime: { title: 'Time until the least speed, collective held', symbol: 't_d', unit: 's', shown: 's' },
    energyHeight: { title: 'Height that this energy would lift the machine', symbol: 'h_E', unit: 'm', shown: 'm' },
    index: { title: 'Autorotation index: energy over weight and disc loading', symbol: 'I_a', unit: 'm³/N', shown: 'm³/N' },
    hoverInducedSpeed: { title: 'Induced speed of hover', symbol: 'v_h', unit: 'm/s', shown: 'm/s' },
    descentRate: { title: 'Rate of a steady vertical descent', symbol: 'v_d', unit: 'm/s', shown: 'm/s' },
    descentRatio: numberOutput('Rate of descent over induced speed of hover', 'v_d/v_h'),
  },
  formulas: [
    { output: 'storedEnergy', tex: String.raw`E = \tfrac{1}{2}\,J\,\Omega^2` },
    { output: 'equivalentHoverTime', tex: String.raw`t_E = \frac{E}{P}` },
    { output: 'minimumSpeed', tex: String.raw`\Omega_\mathrm{min} = \Omega\sqrt{\frac{C_T/\sigma}{k\,(C_T/\sigma)_\mathrm{max}}}` },
    { output: 'usableEnergy', tex: String.raw`E_u = \tfrac{1}{2}\,J\left(\Omega^2 - \Omega_\mathrm{min}^2\right)` },
    { output: 'usableHoverTime', tex: String.raw`t_u = \frac{E_u}{P}` },
    { output: 'decayTime', tex: String.raw`t_d = \frac{J\,\Omega^2}{P}\left(\frac{\Omega}{\Omega_\mathrm{min}} - 1\right)` },
    { output: 'energyHeight', tex: String.raw`h_E = \frac{E}{m\,g}` },
    { output: 'index', tex: String.raw`I_a = \frac{E\,\pi R^2}{(m\,g)^2}` },
    { output: 'hoverInducedSpeed', tex: String.raw`v_h = \sqrt{\frac{m\,g}{2\,\rho\,\pi R^2}}` },
    { output: 'descentRatio', tex: String.raw`x + \nu(x) + \frac{P_0}{m\,g\,v_h} = 0,\quad \frac{v_d}{v_h} = -x` },
    { output: 'descentRate', tex: String.raw`v_d = -x\,v_h` },
  ],
  source:
    'Energy and momentum theory. Induced speed in descent: measured curve after J. G. Leishman, Principles of Helicopter Aerodynamics, axial descent (from memory). Index after T. L. Fradenburgh, J. American Helicopter Society, 1984 (from memory).',
  validity: [
    'Vertical descent, thrust equal to weight, standard gravity. A descent with forward speed is slower.',
    'The measured curve for descent rates up to twice the induced speed of hover, the windmill brake state beyond; between the two lies a step of 0.026, in which the ratio is 2.',
    'Decay with the collective held: torque goes with the square of the speed.',
  ],
  compute: (inputs) => {
    const { rotorInertia, speed, hoverPower, mass, radius, density, profilePower, inducedFactor } = inputs;
    const weight = mass * STANDARD_GRAVITY;
    const area = Math.PI * radius ** 2;
    const energy = storedEnergy(rotorInertia, speed);
    const hoverInducedSpeed = Math.sqrt(weight / (2 * density * area));
    const reserve = energyDownTo(inputs);
    const descentRatio = profilePower === undefined ? undefined : autorotationDescentRatio(profilePower / (weight * hoverInducedSpeed), inducedFactor);
    return {
      outputs: {
        storedEnergy: energy,
        equivalentHoverTime: energy / hoverPower,
        ...reserve.outputs,
        energyHeight: energy / weight,
        index: (energy * area) / weight ** 2,
        hoverInducedSpeed,
        ...(descentRatio === undefined ? {} : { descentRatio, descentRate: descentRatio * hoverInducedSpeed }),
      },
      warnings: [...reserve.warnings, ...(descentRatio === undefined ? ['descentRate and descentRatio are left out: they need profilePower.'] : [])],
    };
  },
});

interface ReserveInputs {
  readonly rotorInertia: number;
  readonly speed: number;
  readonly hoverPower: number;
  readonly minimumSpeed?: number;
  readonly bladeLoading?: number;
  readonly maximumBladeLoading?: number;
  readonly loadingReserve: number;
}

function energyDownTo({ rotorInertia, speed, hoverPower, minimumSpeed, bladeLoading, maximumBladeLoading, loadingReserve }: ReserveInputs) {
  const byLoading = bladeLoading === undefined || maximumBladeLoading === undefined ? undefined : minimumRotorSpeed(speed, bladeLoading, maximumBladeLoading, loadingReserve);
  const minimum = minimumSpeed ?? byLoading;
  if (minimum === undefined) {
    return { outputs: {}, warnings: ['minimumSpeed, usableEnergy, usableHoverTime and decayTime are left out: they need minimumSpeed, or bladeLoading and maximumBladeLoading.'] };
  }
  if (minimum >= speed) {
    return { outputs: { minimumSpeed: minimum }, warnings: ['usableEnergy, usableHoverTime and decayTime are left out: minimumSpeed is not below the speed, so the rotor has nothing to give.'] };
  }
  const usableEnergy = storedEnergy(rotorInertia, speed) - storedEnergy(rotorInertia, minimum);
  return {
    outputs: { minimumSpeed: minimum, usableEnergy, usableHoverTime: usableEnergy / hoverPower, decayTime: rotorDecayTime(rotorInertia, speed, hoverPower, minimum) },
    warnings: [],
  };
}
