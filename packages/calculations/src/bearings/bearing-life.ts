import { basicLife, highestReliability, lifeExponent, relativeLoadRange, reliabilityFactor, speedFactor } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { degrees, forceInput, forceOutput, numberOutput, speedInput, timeOutput } from '../specs.ts';
import { bearingLoads, bearingTypes } from './bearing-loads.ts';

const ratingInput = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'N', shown: 'N', above: 0, example }) as const;
const factorInput = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, max: 100, optional: true }) as const;

export const bearingLife = defineCalculation({
  id: 'bearing-life',
  title: 'Life of a rolling bearing',
  section: 'Bearings',
  summary: 'How long a bearing lasts under radial and axial load, and whether the load at rest dents it.',
  inputs: {
    type: { kind: 'choice', title: 'Type', choices: bearingTypes, example: 'deep-groove' },
    dynamicRating: ratingInput('Dynamic load rating', 'C', 3300),
    staticRating: ratingInput('Static load rating', 'C_0', 1370),
    f0: { kind: 'number', title: 'Factor f0 of the bearing, from its table', symbol: 'f_0', unit: '-', shown: '-', min: 1, max: 20, default: 13.5, example: 12.4 },
    radial: { ...forceInput('Radial load', 'F_r', 60), optional: true },
    axial: { ...forceInput('Axial load', 'F_a', 40), optional: true },
    speed: speedInput('Speed', 'n', 1800),
    reliability: { kind: 'number', title: 'Share of such bearings that must last so long', symbol: 'S', unit: '-', shown: '%', min: 0.9, max: highestReliability[2007], default: 0.9, example: 0.9 },
    a: { kind: 'number', title: 'Life modification for lubrication and dirt, as bearing-modified-life gives it', symbol: 'a', unit: '-', shown: '-', above: 0, max: 50, default: 1, example: 1 },
    contactAngle: { kind: 'number', title: 'Contact angle; 40° of an angular-contact bearing and 90° of a thrust bearing when not given', symbol: '\\alpha', unit: 'rad', shown: '°', min: 0, max: degrees(90), optional: true },
    radialFactor: factorInput('Factor X as the maker prints it, in place of the standard’s', 'X'),
    axialFactor: factorInput('Factor Y as the maker prints it', 'Y'),
    reliabilityEdition: { kind: 'choice', title: 'Edition of ISO 281 whose factor for reliability is used', choices: ['2007', '1990'], default: '2007' },
  },
  outputs: {
    equivalentLoad: forceOutput('Equivalent dynamic load', 'P'),
    loadRatio: numberOutput('Rating over load', 'C/P'),
    life: numberOutput('Life in revolutions', 'L'),
    lifeHours: timeOutput('Life as running time', 'L_h'),
    staticEquivalentLoad: forceOutput('Equivalent static load', 'P_0'),
    staticSafety: numberOutput('Static safety', 's_0'),
    reliabilityFactor: numberOutput('Factor for reliability', 'a_1'),
    relativeAxialLoad: numberOutput('Relative axial load', '\\zeta'),
    axialLimit: numberOutput('Axial over radial load up to which the axial one does not count', 'e'),
    usedRadialFactor: numberOutput('X as it counts here', 'X'),
    usedAxialFactor: numberOutput('Y as it counts here', 'Y'),
    speedFactor: numberOutput('Speed factor of catalogues, 1 at 33⅓ rpm', 'f_n'),
    lifeFactor: numberOutput('Life factor of catalogues, 1 at 500 h', 'f_h'),
  },
  formulas: [
    { output: 'relativeAxialLoad', tex: String.raw`\zeta = \frac{f_0 F_a}{C_0}` },
    { output: 'axialLimit', tex: String.raw`e = e(\alpha, \zeta)` },
    { output: 'usedRadialFactor', tex: String.raw`X = 1 \text{ while } F_a \le e F_r, \text{ else } X(\alpha)` },
    { output: 'usedAxialFactor', tex: String.raw`Y = 0 \text{ while } F_a \le e F_r, \text{ else } Y(\alpha, \zeta)` },
    { output: 'equivalentLoad', tex: String.raw`P = X F_r + Y F_a` },
    { output: 'loadRatio', tex: String.raw`\frac{C}{P}` },
    { output: 'reliabilityFactor', tex: String.raw`a_1 = a_1(S)` },
    { output: 'life', tex: String.raw`L = a_1\,a\,10^6 \left(\frac{C}{P}\right)^p,\quad p = 3 \text{ for balls}, \tfrac{10}{3} \text{ for needles}` },
    { output: 'lifeHours', tex: String.raw`L_h = \frac{2\pi L}{|n|}` },
    { output: 'staticEquivalentLoad', tex: String.raw`P_0 = \max(F_r,\ X_0 F_r + Y_0 F_a)` },
    { output: 'staticSafety', tex: String.raw`s_0 = \frac{C_0}{P_0}` },
    { output: 'speedFactor', tex: String.raw`f_n = \left(\frac{33.3\ \mathrm{rpm}}{|n|}\right)^{1/p}` },
    { output: 'lifeFactor', tex: String.raw`f_h = f_n\,\frac{C}{P}` },
  ],
  source: 'ISO 281:2007 and ISO 76:2006 (from memory), checked against worked examples of bearing catalogues.',
  validity: [
    'Single-row bearings of usual make; deep grooves with normal clearance. Steady load and speed, sound lubrication, no misfit.',
    'Loads up to half the rating. Life is that of fatigue alone: grease, dirt and dents end most small bearings earlier.',
    'An angular-contact bearing takes its axial load one way and makes one of its own under radial load, which axial must include.',
    'X0 = 0.6 and Y0 = 0.5 for deep grooves, 0.5 and 0.46 to 0.22 for 15° to 45°. A thrust bearing at 90° takes no radial load, a needle bearing no axial one.',
    'Of the two editions of ISO 281 that of 1990 gave less for high reliability: 0.21 at 99 %, where that of 2007 gives 0.25, for it holds that none fails within 5 % of the basic life.',
  ],
  compute: (given) => {
    const { type, dynamicRating, staticRating, speed, reliability, reliabilityEdition, a } = given;
    const highest = highestReliability[reliabilityEdition];
    if (reliability > highest) throw new CalculationError('reliability', String(reliability), `at most ${highest}, the highest of the edition of ${reliabilityEdition}`);
    const { equivalent, still, radialFactor, axialFactor, limit, relativeLoad } = bearingLoads(given);
    const exponent = type === 'needle' ? lifeExponent.roller : lifeExponent.ball;
    const a1 = reliabilityFactor(reliability, reliabilityEdition);
    const life = equivalent > 0 ? a1 * a * basicLife(dynamicRating, equivalent, exponent) : undefined;
    const fn = speed === 0 ? undefined : speedFactor(speed, exponent);
    const turning = life !== undefined && fn !== undefined;
    const beyond = relativeLoad !== undefined && relativeLoad > relativeLoadRange.most;
    return {
      outputs: {
        equivalentLoad: equivalent,
        staticEquivalentLoad: still,
        reliabilityFactor: a1,
        usedRadialFactor: radialFactor,
        usedAxialFactor: axialFactor,
        ...(limit === undefined ? {} : { axialLimit: limit }),
        ...(relativeLoad === undefined ? {} : { relativeAxialLoad: relativeLoad }),
        ...(life === undefined ? {} : { loadRatio: dynamicRating / equivalent, life }),
        ...(still > 0 ? { staticSafety: staticRating / still } : {}),
        ...(fn === undefined ? {} : { speedFactor: fn }),
        ...(turning ? { lifeHours: (2 * Math.PI * life) / Math.abs(speed), lifeFactor: (fn * dynamicRating) / equivalent } : {}),
      },
      warnings: [
        ...(limit === undefined ? ['axialLimit is left out: this bearing takes one kind of load only.'] : []),
        ...(relativeLoad === undefined ? ['relativeAxialLoad is left out: the factors of this bearing do not depend on it.'] : []),
        ...(life === undefined ? ['loadRatio, life, lifeHours, lifeFactor and staticSafety are left out: there is no load.'] : []),
        ...(fn === undefined ? ['lifeHours, speedFactor and lifeFactor are left out: the bearing stands still.'] : []),
        ...(equivalent > dynamicRating / 2 ? [`The equivalent load is more than half the rating of ${dynamicRating} N: ISO 281 does not hold there, and the life is shorter.`] : []),
        ...(still > staticRating ? ['The static safety is below 1: the balls dent the races.'] : []),
        ...(beyond ? [`The relative axial load of ${relativeLoad} lies beyond the table, which ends at ${relativeLoadRange.most}: its last line is used, and the bearing is overloaded along its axis.`] : []),
      ],
    };
  },
});
