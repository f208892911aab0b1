import { STANDARD_GRAVITY, TrimSolver, inflowUnevenness, powerBand, realRotor } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, numberOutput, speedInput } from '../specs.ts';
import { readRotorShape, rotorShapeInputs } from './rotor-shape.ts';
import { airspeedOutput, forceOutput, positive, powerOutput } from './rotor-specs.ts';

/** Of the blade, and around the azimuth: twice as many of both change the power by 0.05 %. */
const ELEMENTS = 20;
const AZIMUTHS = 36;

const tilt = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'rad', shown: '°', min: -0.5, max: 0.5, default: 0, example: 0 }) as const;

export const forwardTrim = defineCalculation({
  id: 'forward-trim',
  title: 'Forward flight, by blade elements',
  section: 'Rotor',
  summary: 'Power, collective and cyclic of a rotor in forward flight, with coning, stall over the disc, and the band in which real rotors lie.',
  inputs: {
    ...rotorShapeInputs,
    speed: { ...speedInput('Speed of the rotor', 'n', 1760), above: 0 },
    mass: positive('Mass of the machine', 'm', 'kg', 'kg', 5.2),
    airspeed: { kind: 'number', title: 'Airspeed along the ground', symbol: 'V', unit: 'm/s', shown: 'm/s', min: 0, example: 18 },
    dragArea: { kind: 'number', title: 'Drag area of the fuselage', symbol: 'f', unit: 'm²', shown: 'm²', min: 0, example: 0.018 },
    climbRate: { kind: 'number', title: 'Rate of climb', symbol: 'V_c', unit: 'm/s', shown: 'm/s', min: 0, default: 0, example: 0 },
    flapInertia: positive('Moment of inertia of one blade about its flapping hinge', 'I_\\beta', 'kg·m²', 'kg·m²', 0.043),
    flapFrequencyRatio: { kind: 'number', title: 'Flapping frequency over rotor speed', symbol: '\\nu_\\beta', unit: '-', shown: '-', min: 1, max: 3, default: 1, example: 1.03 },
    flapCos: tilt('Tilt of the tip path against the shaft, up over the tail', '\\beta_{1c}'),
    flapSin: tilt('Tilt of the tip path against the shaft, up on the advancing side', '\\beta_{1s}'),
  },
  outputs: {
    thrust: forceOutput('Thrust', 'T'),
    discTilt: angleOutput('Tilt of the shaft, forward', '\\alpha'),
    backwardForce: forceOutput('Drag of the rotor along the disc', 'H'),
    advanceRatio: numberOutput('Advance ratio', '\\mu'),
    inducedSpeed: airspeedOutput('Induced speed of momentum theory', 'v'),
    unevenness: numberOutput('Power of the lift in hover over thrust times induced speed', 'e'),
    collective: angleOutput('Collective: pitch where the twist is 0', '\\theta_0'),
    cyclicCos: angleOutput('Cyclic, more pitch over the tail', '\\theta_{1c}'),
    cyclicSin: angleOutput('Cyclic, more pitch on the advancing side', '\\theta_{1s}'),
    coning: angleOutput('Coning angle', '\\beta_0'),
    flapCos: angleOutput('Tilt of the tip path, up over the tail', '\\beta_{1c}'),
    flapSin: angleOutput('Tilt of the tip path, up on the advancing side', '\\beta_{1s}'),
    power: powerOutput('Power', 'P'),
    inducedPower: powerOutput('Power of the lift', 'P_i'),
    profilePower: powerOutput('Power of the drag of the blades', 'P_0'),
    parasitePower: powerOutput('Power of the drag of the fuselage', 'P_p'),
    climbPower: powerOutput('Power of the climb', 'P_c'),
    powerLow: powerOutput('Power, low', 'P_\\mathrm{low}'),
    powerHigh: powerOutput('Power, high', 'P_\\mathrm{high}'),
    thrustCoefficient: numberOutput('Thrust coefficient', 'C_T'),
    stalledFraction: { title: 'Share of the disc on which stall has begun', symbol: 's', unit: '-', shown: '%' },
    advancingTipMach: numberOutput('Mach number of the advancing tip', 'M'),
  },
  formulas: [
    { output: 'thrust', tex: String.raw`T = m\,g\cos\alpha + D\sin\alpha,\quad D = \tfrac{1}{2}\,\rho\,V^2 f` },
    { output: 'discTilt', tex: String.raw`m\,g\sin\alpha = D\cos\alpha + H` },
    { output: 'backwardForce', tex: String.raw`H = \frac{b}{2\pi}\int_0^{2\pi}\!\!\int \tfrac{1}{2}\,\rho\,U c\left[(c_l U_P + c_d U_T)\sin\psi - (c_l U_T - c_d U_P)\,\beta\cos\psi\right]\mathrm{d}r\,\mathrm{d}\psi` },
    { output: 'advanceRatio', tex: String.raw`\mu = \frac{V\cos\alpha - V_c\sin\alpha}{\Omega R}` },
    { output: 'inducedSpeed', tex: String.raw`v = \frac{T}{2\rho\,\pi R^2\sqrt{(\mu\,\Omega R)^2 + (V\sin\alpha + V_c\cos\alpha + v)^2}}` },
    { output: 'unevenness', tex: String.raw`e = \frac{P_{i,\mathrm{hover}}}{m\,g\,\kappa\sqrt{m\,g/(2\rho\,\pi R^2)}}` },
    { output: 'collective', tex: String.raw`T = \frac{b}{2\pi}\int_0^{2\pi}\!\!\int \tfrac{1}{2}\,\rho\,U c\,(c_l U_T - c_d U_P)\,\mathrm{d}r\,\mathrm{d}\psi` },
    { output: 'cyclicCos', tex: String.raw`(\nu_\beta^2 - 1)\,\beta_{1c} = \frac{1}{\pi I_\beta\Omega^2}\int M_\beta\cos\psi\,\mathrm{d}\psi` },
    { output: 'cyclicSin', tex: String.raw`(\nu_\beta^2 - 1)\,\beta_{1s} = \frac{1}{\pi I_\beta\Omega^2}\int M_\beta\sin\psi\,\mathrm{d}\psi` },
    { output: 'coning', tex: String.raw`\nu_\beta^2\,\beta_0 = \frac{1}{2\pi I_\beta\Omega^2}\int M_\beta\,\mathrm{d}\psi` },
    { output: 'flapCos', tex: String.raw`\beta = \beta_0 + \beta_{1c}\cos\psi + \beta_{1s}\sin\psi` },
    { output: 'flapSin', tex: String.raw`\beta = \beta_0 + \beta_{1c}\cos\psi + \beta_{1s}\sin\psi` },
    { output: 'power', tex: String.raw`P = \Omega\,\frac{b}{2\pi}\int_0^{2\pi}\!\!\int \tfrac{1}{2}\,\rho\,U c\,(c_l U_P + c_d U_T)\,r\,\mathrm{d}r\,\mathrm{d}\psi + (e - 1)\,T\,\kappa\,v` },
    { output: 'inducedPower', tex: String.raw`P_i = P - P_0 - P_p - P_c` },
    { output: 'profilePower', tex: String.raw`P_0 = \frac{b}{2\pi}\int_0^{2\pi}\!\!\int \tfrac{1}{2}\,\rho\,U^3 c\,c_d\,\mathrm{d}r\,\mathrm{d}\psi` },
    { output: 'parasitePower', tex: String.raw`P_p = D\,V` },
    { output: 'climbPower', tex: String.raw`P_c = m\,g\,V_c` },
    { output: 'powerLow', tex: String.raw`P_\mathrm{low} = P - s_0\,P_0 - s_i\,|P_i|` },
    { output: 'powerHigh', tex: String.raw`P_\mathrm{high} = P + s_0\,P_0 + s_i\,|P_i|` },
    { output: 'thrustCoefficient', tex: String.raw`C_T = \frac{T}{\rho\,\pi R^2\,(\Omega R)^2}` },
    { output: 'stalledFraction', tex: String.raw`s = \frac{\int_{\partial c_l/\partial\alpha < \pi} r\,\mathrm{d}r\,\mathrm{d}\psi}{\int r\,\mathrm{d}r\,\mathrm{d}\psi}` },
    { output: 'advancingTipMach', tex: String.raw`M = \frac{\Omega R\,(1 + \mu)}{a}` },
  ],
  source:
    'Inflow over the disc: J. M. Drees (1949); flap equation of a rigid blade: A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952); end of the lifting blade: L. Prandtl, B = 1 − √(2C_T)/b (all from memory). Sections and constants as in hover, whose power it meets at rest.',
  validity: [
    'Steady flight, level or climbing. Descent is not computed: between the induced speed of hover and twice that, straight down, the rotor sinks into its own wake.',
    'What hover pays for inflow that is uneven along the blade, that turns, and for the ends of the blade is carried over in proportion to thrust and induced speed.',
    'Against a model of 0.86 m in NASA TM 100541 to 100543 the longitudinal cyclic came out within 0.7°; the collective 2.6° low at 28.5 m/s, 1.3° low at 43.9 and 0.2° high at 66.8.',
    'Rigid blades that flap about the axis of the rotor, to the first harmonic; no unsteady lift, no stall delay. Past an advance ratio of 0.3, or with stall on more than a tenth of the disc, take it for an estimate.',
    'The power is that of the rotor: tail, gears and cooling come on top. The band leaves out the uncertainty of the drag area.',
    'ψ = 0 over the tail, in the sense of rotation. Without hub moments the tilt of the tip path against the shaft is 0.',
  ],
  compute: (inputs) => {
    const { speed, mass, airspeed, dragArea, climbRate, radius, speedOfSound, flapInertia, flapFrequencyRatio, flapCos, flapSin } = inputs;
    const { elements, flow, roughness, inducedFactor, scatter } = readRotorShape(inputs, climbRate, ELEMENTS);
    const weight = mass * STANDARD_GRAVITY;
    const drag = 0.5 * flow.density * airspeed ** 2 * dragArea;
    const tip = speed * radius;
    const unevenness = inflowUnevenness(readRotorShape(inputs, 0).elements, flow, { ...realRotor, inducedFactor, roughness }, speed, weight);
    if (unevenness === undefined) throw new CalculationError('mass', `${mass} kg`, 'a lighter machine, or faster or broader blades: these stall before they lift it in hover');
    const solver = new TrimSolver(elements, flow, { inertia: flapInertia, frequencyRatio: flapFrequencyRatio, cosine: flapCos, sine: flapSin }, { azimuths: AZIMUTHS, inducedFactor, unevenness, roughness, tipLoss: true });
    const found = solver.solveFlight({ speed, weight, drag, airspeed, climbRate });
    if (found === undefined || !Number.isFinite(found.power)) {
      throw new CalculationError('airspeed', `${airspeed} m/s with ${mass} kg`, 'a slower or lighter machine, or one with less drag, faster or broader blades: at this thrust and speed no trim was found, for too much of the disc stalls');
    }
    const { thrust, discTilt, advanceRatio } = found;
    const parasitePower = drag * airspeed;
    const climbPower = weight * climbRate;
    const inducedPower = found.power - found.profilePower - parasitePower - climbPower;
    const band = powerBand({ inducedPower, profilePower: found.profilePower }, 0, scatter);
    const fixed = parasitePower + climbPower;
    const advancingTipMach = (tip * (1 + advanceRatio)) / speedOfSound;
    return {
      outputs: {
        thrust,
        discTilt,
        backwardForce: found.backwardForce,
        advanceRatio,
        inducedSpeed: (found.inducedRatio * tip) / inducedFactor,
        unevenness,
        collective: found.collective,
        cyclicCos: found.cyclicCos,
        cyclicSin: found.cyclicSin,
        coning: found.coning,
        flapCos,
        flapSin,
        power: found.power,
        inducedPower,
        profilePower: found.profilePower,
        parasitePower,
        climbPower,
        powerLow: band.low + fixed,
        powerHigh: band.high + fixed,
        thrustCoefficient: thrust / (flow.density * Math.PI * radius ** 2 * tip ** 2),
        stalledFraction: found.stalledFraction,
        advancingTipMach,
      },
      warnings: [
        ...(found.stalledFraction > 0.1 ? [`Stall has begun on ${Math.round(found.stalledFraction * 100)} % of the disc: the rotor shakes, needs more power than this, and may answer late.`] : []),
        ...(advanceRatio > 0.3 ? ['The advance ratio is above 0.3: take this for an estimate.'] : []),
        ...(advancingTipMach > 0.8 ? ['The advancing tip is fast enough for shocks: their drag is only estimated.'] : []),
      ],
    };
  },
});
