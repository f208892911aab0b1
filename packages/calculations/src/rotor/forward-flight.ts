import { enduranceSpeed, forwardFlightPower, pitchInTipPathPlane, rangeSpeed } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { angleOutput, countInput, lengthInput, numberOutput, speedInput } from '../specs.ts';
import { airspeedOutput, density, dragCoefficient, forceOutput, liftSlope, positive, powerOutput } from './rotor-specs.ts';

export const forwardFlight = defineCalculation({
  id: 'forward-flight',
  title: 'Forward flight, by energy',
  section: 'Rotor',
  summary: 'Power of level or climbing flight as a sum, pitch and cyclic, and the speeds of the longest and the farthest flight.',
  inputs: {
    blades: countInput('Blades', 'b', 2),
    radius: lengthInput('Radius of the rotor', 'R', 800),
    chord: lengthInput('Chord of the blades', 'c', 60),
    speed: { ...speedInput('Speed of the rotor', 'n', 1500), above: 0 },
    mass: positive('Mass of the machine', 'm', 'kg', 'kg', 5),
    airspeed: { kind: 'number', title: 'Airspeed', symbol: 'V', unit: 'm/s', shown: 'm/s', min: 0, example: 18 },
    dragArea: { kind: 'number', title: 'Drag area of the fuselage', symbol: 'f', unit: 'm²', shown: 'm²', min: 0, example: 0.018 },
    climbRate: { kind: 'number', title: 'Rate of climb', symbol: 'V_c', unit: 'm/s', shown: 'm/s', min: 0, default: 0, example: 0 },
    density,
    liftSlope,
    cd0: dragCoefficient,
    inducedFactor: { ...positive('Induced power factor', '\\kappa', '-', '-', 1.15), default: 1.15 },
    profileGrowth: { kind: 'number', title: 'Growth of the profile power with the advance ratio', symbol: 'K', unit: '-', shown: '-', min: 0, default: 4.65, example: 4.65 },
    coning: { kind: 'number', title: 'Coning angle', symbol: '\\beta_0', unit: 'rad', shown: '°', default: 0, example: 0 },
  },
  outputs: {
    thrust: forceOutput('Thrust of the rotor', 'T'),
    discTilt: angleOutput('Tilt of the disc, forward', '\\alpha'),
    inducedSpeed: airspeedOutput('Induced speed', 'v'),
    advanceRatio: numberOutput('Advance ratio', '\\mu'),
    inducedPower: powerOutput('Induced power', 'P_i'),
    profilePower: powerOutput('Profile power', 'P_0'),
    parasitePower: powerOutput('Parasite power', 'P_p'),
    climbPower: powerOutput('Climb power', 'P_c'),
    power: powerOutput('Power of the rotor', 'P'),
    collective: angleOutput('Collective', '\\theta_0'),
    cyclicCos: angleOutput('Cyclic, more pitch over the tail', '\\theta_{1c}'),
    cyclicSin: angleOutput('Cyclic, more pitch on the advancing side', '\\theta_{1s}'),
    enduranceSpeed: airspeedOutput('Airspeed of the longest flight', 'V_e'),
    endurancePower: powerOutput('Power there', 'P_e'),
    rangeSpeed: airspeedOutput('Airspeed of the farthest flight', 'V_r'),
    rangePower: powerOutput('Power there', 'P_r'),
  },
  formulas: [
    { output: 'thrust', tex: String.raw`T = \sqrt{W^2 + D^2},\quad W = m\,g,\quad D = \tfrac{1}{2}\,\rho\,V^2 f` },
    { output: 'discTilt', tex: String.raw`\alpha = \arctan\frac{D}{W}` },
    { output: 'inducedSpeed', tex: String.raw`v\,\sqrt{(V\cos\alpha)^2 + (V\sin\alpha + v)^2} = \frac{T}{2\,\rho\,\pi R^2}` },
    { output: 'advanceRatio', tex: String.raw`\mu = \frac{V\cos\alpha}{\Omega R}` },
    { output: 'inducedPower', tex: String.raw`P_i = \kappa\,T\,v` },
    { output: 'profilePower', tex: String.raw`P_0 = \frac{\sigma\,c_{d0}}{8}\left(1 + K\mu^2\right)\rho\,\pi R^2\,(\Omega R)^3,\quad \sigma = \frac{b\,c}{\pi R}` },
    { output: 'parasitePower', tex: String.raw`P_p = D\,V` },
    { output: 'climbPower', tex: String.raw`P_c = W\,V_c` },
    { output: 'power', tex: String.raw`P = P_i + P_0 + P_p + P_c` },
    { output: 'collective', tex: String.raw`C_T = \frac{\sigma a}{2}\left[\theta_0\left(\tfrac{1}{3} + \tfrac{\mu^2}{2}\right) + \theta_{1s}\,\tfrac{\mu}{2} - \tfrac{\lambda}{2}\right],\quad \lambda = \frac{V\sin\alpha + v}{\Omega R}` },
    { output: 'cyclicCos', tex: String.raw`\theta_{1c} = \frac{\tfrac{4}{3}\,\mu\,\beta_0}{1 + \mu^2/2}` },
    { output: 'cyclicSin', tex: String.raw`\theta_{1s} = -\frac{\tfrac{8}{3}\,\mu\left(\theta_0 - \tfrac{3}{4}\lambda\right)}{1 + \tfrac{3}{2}\mu^2}` },
    { output: 'enduranceSpeed', tex: String.raw`P(V_e) \to \min` },
    { output: 'endurancePower', tex: String.raw`P_e = P(V_e)` },
    { output: 'rangeSpeed', tex: String.raw`\frac{P(V_r)}{V_r} \to \min` },
    { output: 'rangePower', tex: String.raw`P_r = P(V_r)` },
  ],
  source: 'H. Glauert, R&M 1111 (1926), inflow; A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952), energy method and flapping coefficients (both from memory).',
  validity: [
    'Steady flight. Stall, compressibility, reversed flow, tail rotor, drive and cooling are left out; forward-trim has the first three.',
    'Pitch relative to the tip-path plane, flapping frequency one per turn; no twist, tip loss or root cutout.',
    'The two speeds are sought from 0 to half the tip speed. The climb enters the power sum only.',
  ],
  compute: (inputs) => {
    const { blades, radius, chord, speed, airspeed, coning } = inputs;
    const rotor = { ...inputs, dragCoefficient: inputs.cd0 };
    const flight = forwardFlightPower(rotor, airspeed);
    const tip = speed * radius;
    const pitch = pitchInTipPathPlane({
      solidity: (blades * chord) / (Math.PI * radius),
      liftSlope: inputs.liftSlope,
      thrustCoefficient: flight.thrust / (inputs.density * Math.PI * radius ** 2 * tip ** 2),
      advanceRatio: flight.advanceRatio,
      inflowRatio: (airspeed * Math.sin(flight.discTilt) + flight.inducedSpeed) / tip,
      coning,
    });
    const [longest, farthest] = [enduranceSpeed(rotor), rangeSpeed(rotor)];
    const end = 'it would lie at an end of the range from 0 to half the tip speed.';
    return {
      outputs: {
        ...flight,
        ...pitch,
        ...(longest === undefined ? {} : { enduranceSpeed: longest, endurancePower: forwardFlightPower(rotor, longest).power }),
        ...(farthest === undefined ? {} : { rangeSpeed: farthest, rangePower: forwardFlightPower(rotor, farthest).power }),
      },
      warnings: [
        ...(longest === undefined ? [`enduranceSpeed and endurancePower are left out: ${end}`] : []),
        ...(farthest === undefined ? [`rangeSpeed and rangePower are left out: ${end}`] : []),
      ],
    };
  },
});
