import { meshStresses, stressCorrectionOfTestGear, type MeshStresses } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { degrees, numberOutput } from '../specs.ts';
import { checkCentreDistance, filletInput, pairInputs, torqueInput } from './gear-specs.ts';
import { flankOf, gearMaterialInput } from './strength-specs.ts';

const stress = (title: string, symbol: string) => ({ title, symbol, unit: 'Pa', shown: 'MPa' }) as const;

/** K_A, K_v, K_β, K_α when not given. */
const usualFactors = [1.25, 1, 1, 1] as const;

/** Notch parameters for which the stress correction is stated. */
const notches = { from: 1, to: 8 };

export const gearStrengthMetal = defineCalculation({
  id: 'gear-strength-metal',
  title: 'Strength of metal gears',
  section: 'Gears',
  summary: 'Stress at root and flank of a spur or helical pair, with form factors from the real tooth, against what the materials stand.',
  inputs: {
    ...pairInputs,
    helixAngle: { ...pairInputs.helixAngle, example: degrees(15) },
    filletRadius: filletInput,
    torque: torqueInput,
    speed: { kind: 'number', title: 'Speed of gear 1, for the power; the strength is that of endless life', symbol: '\\omega_1', unit: 'rad/s', shown: 'rpm', min: 0, max: 1e6, optional: true, example: 1466 },
    material1: gearMaterialInput('Material of gear 1', 'hardened steel'),
    material2: gearMaterialInput('Material of gear 2', 'aluminium 7075'),
    K: {
      kind: 'list',
      title: 'Factors of the load: application K_A, dynamic K_v, along the face K_β, between teeth K_α; 1.25, 1, 1, 1 when not given',
      of: { kind: 'number', title: 'Factor', symbol: 'K', unit: '-', shown: '-', min: 0.5, max: 20 },
      atLeast: 4,
      optional: true,
      example: [1.25, 1, 1, 1],
    },
    loadFactor: { kind: 'number', title: 'All factors of the load in one, in place of K', symbol: 'K', unit: '-', shown: '-', min: 0.5, max: 100, optional: true },
  },
  outputs: {
    elasticityFactor: { title: 'Elasticity factor', symbol: 'Z_E', unit: '√Pa', shown: '√MPa' },
    zoneFactor: numberOutput('Zone factor', 'Z_H'),
    contactRatioFactor: numberOutput('Contact-ratio factor of the flank', 'Z_\\varepsilon'),
    helixFactor: numberOutput('Helix factor of the flank', 'Z_\\beta'),
    singlePairFactor1: numberOutput('Single-pair factor of gear 1', 'Z_B'),
    singlePairFactor2: numberOutput('Single-pair factor of gear 2', 'Z_D'),
    contactStress: stress('Pressure of the flanks at the pitch point', '\\sigma_H'),
    contactSafety1: numberOutput('Safety of the flank of gear 1', 'S_{H1}'),
    contactSafety2: numberOutput('Safety of the flank of gear 2', 'S_{H2}'),
    formFactor1: numberOutput('Form factor of gear 1', 'Y_{F1}'),
    formFactor2: numberOutput('Form factor of gear 2', 'Y_{F2}'),
    stressCorrectionFactor1: numberOutput('Stress-correction factor of gear 1', 'Y_{S1}'),
    stressCorrectionFactor2: numberOutput('Stress-correction factor of gear 2', 'Y_{S2}'),
    rootHelixFactor: numberOutput('Helix factor of the root', 'Y_\\beta'),
    rootStress1: stress('Stress at the root of gear 1', '\\sigma_{F1}'),
    rootStress2: stress('Stress at the root of gear 2', '\\sigma_{F2}'),
    rootSafety1: numberOutput('Safety of the root of gear 1', 'S_{F1}'),
    rootSafety2: numberOutput('Safety of the root of gear 2', 'S_{F2}'),
    tangentialForce: { title: 'Tangential force at the reference circle', symbol: 'F_t', unit: 'N', shown: 'N' },
    power: { title: 'Power', symbol: 'P', unit: 'W', shown: 'W' },
  },
  formulas: [
    { output: 'tangentialForce', tex: String.raw`F_t = \frac{2T_1}{d_1}` },
    { output: 'elasticityFactor', tex: String.raw`Z_E = \sqrt{\frac{1}{\pi\left(\frac{1-\nu_1^2}{E_1} + \frac{1-\nu_2^2}{E_2}\right)}}` },
    { output: 'zoneFactor', tex: String.raw`Z_H = \sqrt{\frac{2\cos\beta_b\cos\alpha_{wt}}{\cos^2\alpha_t\sin\alpha_{wt}}}` },
    { output: 'contactRatioFactor', tex: String.raw`Z_\varepsilon = \sqrt{\frac{4-\varepsilon_\alpha}{3}(1-\varepsilon_\beta) + \frac{\varepsilon_\beta}{\varepsilon_\alpha}},\quad \varepsilon_\beta \le 1` },
    { output: 'helixFactor', tex: String.raw`Z_\beta = \frac{1}{\sqrt{\cos\beta}}` },
    { output: 'contactStress', tex: String.raw`\sigma_H = Z_H Z_E Z_\varepsilon Z_\beta\sqrt{\frac{F_t}{d_1 b}\,\frac{u+1}{u}\,K_A K_v K_\beta K_\alpha}` },
    { output: 'singlePairFactor1', tex: String.raw`Z_{B} = 1 + (1-\varepsilon_\beta)(M_1 - 1),\quad M_1 = \frac{\tan\alpha_{wt}}{\sqrt{\left(\sqrt{\tfrac{d_{a1}^2}{d_{b1}^2}-1} - \tfrac{2\pi}{z_1}\right)\left(\sqrt{\tfrac{d_{a2}^2}{d_{b2}^2}-1} - (\varepsilon_\alpha - 1)\tfrac{2\pi}{z_2}\right)}} \ge 1` },
    { output: 'contactSafety1', tex: String.raw`S_{H1} = \frac{\sigma_{H\mathrm{lim}1}}{Z_B\,\sigma_H},\quad S_{H2} = \frac{\sigma_{H\mathrm{lim}2}}{Z_D\,\sigma_H}` },
    { output: 'formFactor1', tex: String.raw`Y_F = \frac{6\,\frac{h_{Fe}}{m_n}\cos\alpha_{Fen}}{\left(\frac{s_{Fn}}{m_n}\right)^2\cos\alpha_n}` },
    { output: 'stressCorrectionFactor1', tex: String.raw`Y_S = (1.2 + 0.13L)\,q_s^{\frac{1}{1.21 + 2.3/L}},\quad L = \frac{s_{Fn}}{h_{Fe}},\quad q_s = \frac{s_{Fn}}{2\rho_F}` },
    { output: 'rootHelixFactor', tex: String.raw`Y_\beta = 1 - \varepsilon_\beta\frac{\beta}{120^\circ},\quad \varepsilon_\beta \le 1,\ \beta \le 30^\circ` },
    { output: 'rootStress1', tex: String.raw`\sigma_F = \frac{F_t}{b\,m_n}\,Y_F Y_S Y_\beta K_A K_v K_\beta K_\alpha` },
    { output: 'rootSafety1', tex: String.raw`S_F = \frac{2\,\sigma_{F\mathrm{lim}}}{\sigma_F}` },
    { output: 'power', tex: String.raw`P = T_1\,\omega_1` },
  ],
  source: 'ISO 6336-2:2006 with corrigendum 1:2008 and ISO 6336-3:2006, method B (from memory); factors checked against a published calculation and against the fillet that the rack generates.',
  validity: [
    'External gears with a transverse contact ratio from 1 to 2.5, helix up to 30°, solid rims, 30° tangent section.',
    'Simplified: factors of life, lubricant, roughness, speed, hardness and size are 1, and the factor of the test gear is 2. The strengths are those of endless life.',
    'The edition of 2019 takes some of the bending off helical gears (f_ε); this one does not.',
    'A hard gear against a soft one: read the safety of each. Safety above 1 is no proof, ask for 1.2 at the flank and 1.5 at the root or more (common practice, no source).',
  ],
  compute: (inputs) => {
    checkCentreDistance(inputs);
    const factors = inputs.K ?? usualFactors;
    if (inputs.K && inputs.loadFactor !== undefined) throw new CalculationError('loadFactor', String(inputs.loadFactor), 'K or loadFactor, not both');
    if (factors.length !== 4) throw new CalculationError('K', JSON.stringify(factors), 'four factors: K_A, K_v, K_β, K_α');
    const stresses = meshStresses({
      ...inputs,
      flank1: flankOf(inputs.material1, 'material1'),
      flank2: flankOf(inputs.material2, 'material2'),
      loadFactor: inputs.loadFactor ?? factors.reduce((product, factor) => product * factor, 1),
      place: 'outer-single-contact',
    });
    const { contact, root1, root2, contactStress, rootStress1, rootStress2 } = stresses;
    const { material1, material2, torque, speed } = inputs;
    const safeties = {
      contactSafety1: over(material1.contactStrength, contact.singlePair1 * contactStress),
      contactSafety2: over(material2.contactStrength, contact.singlePair2 * contactStress),
      rootSafety1: over(material1.rootStrength, rootStress1 / stressCorrectionOfTestGear),
      rootSafety2: over(material2.rootStrength, rootStress2 / stressCorrectionOfTestGear),
    };
    const power = speed === undefined ? undefined : torque * speed;
    const missing = Object.entries(safeties).filter(([, value]) => value === undefined).map(([name]) => name);
    return {
      outputs: {
        elasticityFactor: stresses.elasticity,
        zoneFactor: contact.zone,
        contactRatioFactor: contact.contactRatio,
        helixFactor: contact.helix,
        singlePairFactor1: contact.singlePair1,
        singlePairFactor2: contact.singlePair2,
        contactStress,
        formFactor1: root1.form,
        formFactor2: root2.form,
        stressCorrectionFactor1: root1.stressCorrection,
        stressCorrectionFactor2: root2.stressCorrection,
        rootHelixFactor: stresses.helixFactor,
        rootStress1,
        rootStress2,
        tangentialForce: stresses.tangential,
        ...given({ ...safeties, power }),
      },
      warnings: [
        ...(missing.length > 0 ? [`${missing.join(', ')}: left out, for ${torque === 0 ? 'nothing is loaded' : 'the strength of that material is not given (contactStrength, rootStrength)'}.`] : []),
        ...(power === undefined ? ['power is left out: no speed is given.'] : []),
        ...meshWarnings(stresses, inputs.helixAngle),
      ],
    };
  },
});

/** Safety; absent without a strength, or without any stress. */
const over = (strength: number | undefined, stressed: number): number | undefined => (strength === undefined || !(stressed > 0) ? undefined : strength / stressed);

const given = <Name extends string>(values: Readonly<Record<Name, number | undefined>>): Partial<Record<Name, number>> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Partial<Record<Name, number>>;

/** What a strength calculation tells of a mesh that its method does not cover. */
export function meshWarnings({ mesh, root1, root2 }: MeshStresses, helixAngle: number): string[] {
  return [
    ...(mesh.transverseContactRatio > 2.5 ? ['The transverse contact ratio is above 2.5, beyond the method.'] : []),
    ...(helixAngle > degrees(30) ? ['The helix is above 30°, beyond the method.'] : []),
    ...([root1, root2].some(({ notch }) => notch < notches.from || notch >= notches.to) ? [`The fillet is so sharp or so blunt (q_s outside ${notches.from} to ${notches.to}) that the stress correction is not stated for it.`] : []),
    ...(mesh.gear1.undercut || mesh.gear2.undercut ? ['A gear is undercut: its root is weaker than given.'] : []),
    ...(mesh.tipInterference1 || mesh.tipInterference2 ? ['Tips reach beyond the involute of the mate and touch its fillet.'] : []),
  ];
}
