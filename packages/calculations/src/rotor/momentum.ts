import { STANDARD_GRAVITY, axialInducedSpeed, groundEffectPowerShare, smallAngleHover, thrustUnderDownload } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { degrees, lengthInput, numberOutput } from '../specs.ts';
import { airspeedOutput, density, forceOutput, liftSlope, positive, powerOutput } from './rotor-specs.ts';

export const axialFlight = defineCalculation({
  id: 'axial-flight',
  title: 'Induced speed along the axis',
  section: 'Rotor',
  summary: 'Induced speed and least power of a rotor in hover, climb and fast descent.',
  inputs: {
    thrust: positive('Thrust', 'T', 'N', 'N', 51),
    radius: lengthInput('Radius of the rotor', 'R', 775),
    density,
    climbRate: { kind: 'number', title: 'Rate of climb, negative in descent', symbol: 'V', unit: 'm/s', shown: 'm/s', default: 0, example: 2 },
  },
  outputs: {
    discLoading: { title: 'Disc loading', symbol: 'T/A', unit: 'Pa', shown: 'Pa' },
    hoverInducedSpeed: airspeedOutput('Induced speed of hover', 'v_h'),
    inducedSpeed: airspeedOutput('Induced speed', 'v'),
    power: powerOutput('Least power: thrust times the flow through the disc', 'P'),
  },
  formulas: [
    { output: 'discLoading', tex: String.raw`\frac{T}{A} = \frac{T}{\pi R^2}` },
    { output: 'hoverInducedSpeed', tex: String.raw`v_h = \sqrt{\frac{T}{2\,\rho\,\pi R^2}}` },
    { output: 'inducedSpeed', tex: String.raw`v = -\frac{V}{2} + \sqrt{\frac{V^2}{4} + v_h^2}\ (V \ge 0),\quad v = -\frac{V}{2} - \sqrt{\frac{V^2}{4} - v_h^2}\ (V \le -2 v_h)` },
    { output: 'power', tex: String.raw`P = T\,(V + v)` },
  ],
  source: 'Momentum theory of the actuator disc: W. J. M. Rankine (1865), R. E. Froude (1889) (from memory).',
  validity: [
    'An even inflow without losses: real rotors need 15 % and more beyond it, and the drag of their blades.',
    'Between hover and a descent at twice the induced speed there is no steady wake: the rotor sinks into its own air. Do not descend straight down at such rates.',
  ],
  compute: ({ thrust, radius, density: rho, climbRate }) => {
    const discLoading = thrust / (Math.PI * radius ** 2);
    const hoverInducedSpeed = Math.sqrt(discLoading / (2 * rho));
    const inducedSpeed = axialInducedSpeed(climbRate, hoverInducedSpeed);
    return {
      outputs: { discLoading, hoverInducedSpeed, ...(inducedSpeed === undefined ? {} : { inducedSpeed, power: thrust * (climbRate + inducedSpeed) }) },
      warnings: inducedSpeed === undefined ? ['inducedSpeed and power are left out: at this rate of descent the rotor sinks into its own wake, and no steady flow exists.'] : [],
    };
  },
});

export const groundEffect = defineCalculation({
  id: 'ground-effect',
  title: 'Ground effect',
  section: 'Rotor',
  summary: 'What a rotor gains as it hovers close to the ground.',
  inputs: {
    height: lengthInput('Rotor above the ground', 'z', 1000),
    radius: lengthInput('Radius of the rotor', 'R', 775),
    inducedPower: { ...positive('Power of the lift in the open', 'P_{i\\infty}', 'W', 'W', 190), optional: true },
    profilePower: { ...positive('Power of the drag of the blades', 'P_0', 'W', 'W', 330), optional: true },
  },
  outputs: {
    thrustRatio: numberOutput('Thrust over that in the open, at the same power', 'T/T_\\infty'),
    inducedPowerRatio: numberOutput('Induced power over that in the open, at the same thrust', 'P_i/P_{i\\infty}'),
    power: powerOutput('Power that close to the ground, at the same thrust', 'P'),
  },
  formulas: [
    { output: 'thrustRatio', tex: String.raw`\frac{T}{T_\infty} = \frac{1}{1 - (R/4z)^2}` },
    { output: 'inducedPowerRatio', tex: String.raw`\frac{P_i}{P_{i\infty}} = 1 - \left(\frac{R}{4z}\right)^2` },
    { output: 'power', tex: String.raw`P = P_0 + P_{i\infty}\left(1 - \left(\frac{R}{4z}\right)^2\right)` },
  ],
  source: 'I. C. Cheeseman, W. E. Bennett, R&M 3021 (1955) (from memory).',
  validity: ['Hover over flat, hard ground, from a height of half a radius. Tall grass, slopes and wind take most of it away.'],
  compute: ({ height, radius, inducedPower, profilePower }) => {
    if (!(height >= radius / 2)) return { outputs: {}, warnings: ['thrustRatio, inducedPowerRatio and power are left out: the rule begins at a height of half a radius.'] };
    const share = groundEffectPowerShare(height / radius);
    const power = inducedPower === undefined || profilePower === undefined ? undefined : profilePower + share * inducedPower;
    return {
      outputs: { thrustRatio: 1 / share, inducedPowerRatio: share, ...(power === undefined ? {} : { power }) },
      warnings: power === undefined ? ['power is left out: it needs inducedPower and profilePower.'] : [],
    };
  },
});

export const hoverThrust = defineCalculation({
  id: 'hover-thrust',
  title: 'Thrust in hover',
  section: 'Rotor',
  summary: 'What a rotor must lift beside the weight, for its own wake pushes the fuselage down.',
  inputs: {
    mass: positive('Mass of the machine', 'm', 'kg', 'kg', 5.2),
    radius: lengthInput('Radius of the rotor', 'R', 775),
    dragArea: { kind: 'number', title: 'Drag area of the fuselage from above', symbol: 'f_v', unit: 'm²', shown: 'm²', min: 0, example: 0.05 },
  },
  outputs: {
    thrust: forceOutput('Thrust', 'T'),
    download: forceOutput('Vertical drag', 'D_v'),
  },
  formulas: [
    { output: 'thrust', tex: String.raw`T = \frac{m\,g}{1 - f_v/\pi R^2}` },
    { output: 'download', tex: String.raw`D_v = \tfrac{1}{2}\,\rho\,(2v)^2 f_v = T\,\frac{f_v}{\pi R^2}` },
  ],
  source: 'Momentum theory: v² = T/2ρA in the disc, 2v in the wake.',
  validity: ['Hover away from the ground. The wake is taken at its full speed: right under the rotor it is slower, and this asks rather too much.'],
  compute: ({ mass, radius, dragArea }) => {
    const disc = Math.PI * radius ** 2;
    if (!(dragArea < disc)) throw new CalculationError('dragArea', `${dragArea} m²`, `less than the disc of the rotor, ${Number(disc.toPrecision(4))} m²`);
    const weight = mass * STANDARD_GRAVITY;
    const thrust = thrustUnderDownload(weight, dragArea, disc);
    return { outputs: { thrust, download: thrust - weight }, warnings: [] };
  },
});

export const hoverEstimate = defineCalculation({
  id: 'hover-estimate',
  title: 'Hover, by hand',
  section: 'Rotor',
  summary: 'Thrust and induced power of plain blades at small angles without losses, in closed form: to see what hover adds to it.',
  inputs: {
    solidity: positive('Solidity', '\\sigma', '-', '-', 0.05),
    liftSlope,
    pitch: { kind: 'number', title: 'Pitch', symbol: '\\theta', unit: 'rad', shown: '°', above: 0, max: 1, example: degrees(8) },
  },
  outputs: {
    thrustCoefficient: numberOutput('Thrust coefficient', 'C_T'),
    inducedPowerCoefficient: numberOutput('Coefficient of the induced power', 'C_{P_i}'),
    inducedFactor: numberOutput('Induced power over that of an even inflow', '\\kappa'),
  },
  formulas: [
    { output: 'thrustCoefficient', tex: String.raw`C_T = \int_0^1 4\lambda^2 x\,\mathrm{d}x,\quad \lambda = \frac{\sigma a}{16}\left(\sqrt{1 + \frac{32\,\theta x}{\sigma a}} - 1\right)` },
    { output: 'inducedPowerCoefficient', tex: String.raw`C_{P_i} = \int_0^1 4\lambda^3 x\,\mathrm{d}x` },
    { output: 'inducedFactor', tex: String.raw`\kappa = \frac{C_{P_i}}{C_T\sqrt{C_T/2}}` },
  ],
  source: 'A. Gessow, NACA TN 1542 (1948) (from memory).',
  validity: ['No twist, constant chord from the axis, no tip loss, no stall. Coefficients on the tip speed: T/ρA(ΩR)², P/ρA(ΩR)³.'],
  compute: ({ solidity, liftSlope: slope, pitch }) => {
    const { thrustCoefficient, powerCoefficient, inducedFactor } = smallAngleHover(solidity, slope, pitch);
    return { outputs: { thrustCoefficient, inducedPowerCoefficient: powerCoefficient, inducedFactor }, warnings: [] };
  },
});
