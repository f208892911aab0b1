import { plasticMesh } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { degrees, numberOutput, speedInput } from '../specs.ts';
import { checkCentreDistance, filletInput, pairInputs, torqueInput } from './gear-specs.ts';
import { meshWarnings } from './gear-strength-metal.ts';
import { curveWarnings } from './plastic-fatigue.ts';
import { ambientInput, dutyInput, mateInput } from './plastic-gear-temperature.ts';

const stress = (title: string, symbol: string) => ({ title, symbol, unit: 'Pa', shown: 'MPa' }) as const;
const warmth = (title: string, symbol: string) => ({ title, symbol, unit: 'K', shown: '°C' }) as const;

/** POM and steel as the built-in table has them; plastic on plastic has both alike. */
const pom = { youngsModulus: 2.8e9, poissonsRatio: 0.35 };
const steel = { youngsModulus: 207e9, poissonsRatio: 0.3 };

export const gearStrengthPlastic = defineCalculation({
  id: 'gear-strength-plastic',
  title: 'Strength of a plastic gear',
  section: 'Gears',
  summary: 'Root and flank of a POM gear at the warmth that its own losses give it, against what it stands for the hours wanted.',
  inputs: {
    ...pairInputs,
    helixAngle: { ...pairInputs.helixAngle, example: degrees(15) },
    filletRadius: filletInput,
    torque: torqueInput,
    speed: { ...speedInput('Speed of gear 1', '\\omega_1', 14_000), above: 0, max: 1e6 },
    hours: { kind: 'number', title: 'Time under load', symbol: 't', unit: 's', shown: 'h', above: 0, max: 1e10, example: 360_000 },
    ambient: ambientInput,
    friction: { kind: 'number', title: 'Friction between the flanks: POM on steel 0.2 dry, 0.09 greased, 0.04 oiled', symbol: '\\mu', unit: '-', shown: '-', min: 0, max: 2, default: 0.2, example: 0.09 },
    applicationFactor: { kind: 'number', title: 'Application factor', symbol: 'K_A', unit: '-', shown: '-', min: 0.5, max: 10, default: 1.25, example: 1.25 },
    plasticGear: { kind: 'choice', title: 'The plastic gear that is looked at', choices: ['1', '2'], default: '2', example: '2' },
    mate: { ...mateInput, default: 'steel', example: 'steel' },
    youngsModulus: { kind: 'number', title: 'Young’s modulus of the plastic', symbol: 'E', unit: 'Pa', shown: 'GPa', above: 0, max: 1e11, default: pom.youngsModulus, example: pom.youngsModulus },
    dutyCycle: dutyInput,
  },
  outputs: {
    rootStress: stress('Stress at the root', '\\sigma_F'),
    rootSafety: numberOutput('Safety of the root', 'S_F'),
    rootStrength: stress('What the root stands, warm and for that long', '2\\sigma_{F\\mathrm{lim}N}'),
    flankPressure: stress('Pressure of the flank', '\\sigma_H'),
    flankStrength: stress('What the flank stands, warm and for that long', '\\sigma_{H\\mathrm{lim}N}'),
    flankSafety: numberOutput('Safety of the flank', 'S_H'),
    rootTemperature: warmth('Temperature of the root', '\\vartheta_F'),
    flankTemperature: warmth('Temperature of the flank', '\\vartheta_H'),
    lossPower: { title: 'Power lost in the mesh', symbol: 'P_V', unit: 'W', shown: 'W' },
    lossFactor: numberOutput('Tooth loss factor', 'H_V'),
    cycles: numberOutput('Load cycles of one tooth', 'N'),
    formFactor: numberOutput('Form factor, load at the tip', 'Y_{Fa}'),
    stressCorrectionFactor: numberOutput('Stress-correction factor, load at the tip', 'Y_{Sa}'),
  },
  formulas: [
    { output: 'lossFactor', tex: String.raw`H_V = \frac{\pi(u+1)}{z_1 u\cos\beta_b}\,(1 - \varepsilon_\alpha + \varepsilon_1^2 + \varepsilon_2^2)` },
    { output: 'lossPower', tex: String.raw`P_V = T_1\,\omega_1\,\mu\,H_V` },
    { output: 'rootTemperature', tex: String.raw`\vartheta = \vartheta_0 + P_V\,\frac{k_\vartheta}{b\,z\,(v_t m_n)^{0.75}}\,ED^{0.64}` },
    { output: 'flankTemperature', tex: String.raw`k_\vartheta \text{ of the flank}` },
    { output: 'cycles', tex: String.raw`N = \frac{\omega\,t}{2\pi}` },
    { output: 'formFactor', tex: String.raw`Y_{Fa} = \frac{6\,\frac{h_{Fa}}{m_n}\cos\alpha_{Fan}}{\left(\frac{s_{Fn}}{m_n}\right)^2\cos\alpha_n}` },
    { output: 'stressCorrectionFactor', tex: String.raw`Y_{Sa} = (1.2 + 0.13L_a)\,q_s^{\frac{1}{1.21 + 2.3/L_a}}` },
    { output: 'rootStress', tex: String.raw`\sigma_F = K_A\,Y_{Fa}Y_{Sa}Y_\varepsilon Y_\beta\frac{F_t}{b\,m_n},\quad Y_\varepsilon = 0.25 + \frac{0.75\cos^2\beta_b}{\varepsilon_\alpha}` },
    { output: 'rootStrength', tex: String.raw`2\,\sigma_{F\mathrm{lim}N}` },
    { output: 'flankStrength', tex: String.raw`\sigma_{H\mathrm{lim}N}` },
    { output: 'rootSafety', tex: String.raw`S_F = \frac{2\,\sigma_{F\mathrm{lim}N}}{\sigma_F}` },
    { output: 'flankPressure', tex: String.raw`\sigma_H = Z_E Z_H Z_\varepsilon Z_\beta\sqrt{\frac{K_A F_t}{b\,d_1}\,\frac{u+1}{u}}` },
    { output: 'flankSafety', tex: String.raw`S_H = \frac{\sigma_{H\mathrm{lim}N}}{\sigma_H}` },
  ],
  source: 'VDI 2736-2:2014 (from memory, curves and coefficients as public code quotes them); factors after ISO 6336-2 and -3.',
  validity: [
    'POM, open drive, 10⁵ to 10⁸ cycles, teeth up to 120 °C. The other factors of the load are taken as 1.',
    'The elastic constants are those at 23 °C: a warm flank is softer and presses less. Wear is left out; dry flanks wear before they pit.',
    'Usual safeties: root 1.5 to 2, flank 1 to 1.4 (VDI 2736-2, from memory).',
  ],
  compute: (inputs) => {
    checkCentreDistance(inputs);
    const { plasticGear, mate, youngsModulus, applicationFactor, hours } = inputs;
    const gear = plasticGear === '1' ? 1 : 2;
    const own = { youngsModulus, poissonsRatio: pom.poissonsRatio };
    const other = mate === 'steel' ? steel : own;
    const mesh = plasticMesh({ ...inputs, gear, flank1: gear === 1 ? own : other, flank2: gear === 1 ? other : own, loadFactor: applicationFactor, duration: hours });
    const root = gear === 1 ? mesh.stresses.root1 : mesh.stresses.root2;
    const flankPressure = mesh.stresses.contactStress;
    const rootSafety = safety(mesh.rootStrength, mesh.rootStress);
    const flankSafety = safety(mesh.flankStrength, flankPressure);
    const strengths = { rootStrength: mesh.rootStrength > 0 ? mesh.rootStrength : undefined, flankStrength: mesh.flankStrength > 0 ? mesh.flankStrength : undefined };
    const left = Object.entries({ rootSafety, flankSafety, ...strengths }).filter(([, value]) => value === undefined).map(([name]) => name);
    return {
      outputs: {
        rootStress: mesh.rootStress,
        ...(rootSafety === undefined ? {} : { rootSafety }),
        flankPressure,
        ...Object.fromEntries(Object.entries(strengths).filter(([, value]) => value !== undefined)),
        ...(flankSafety === undefined ? {} : { flankSafety }),
        rootTemperature: mesh.rootTemperature,
        flankTemperature: mesh.flankTemperature,
        lossPower: mesh.lossPower,
        lossFactor: mesh.lossFactor,
        cycles: mesh.cycles,
        formFactor: root.form,
        stressCorrectionFactor: root.stressCorrection,
      },
      warnings: [
        ...(left.length > 0 ? [`${left.join(' and ')} left out: ${inputs.torque === 0 ? 'nothing is loaded' : 'at this warmth the plastic stands nothing'}.`] : []),
        ...curveWarnings([mesh.rootTemperature, mesh.flankTemperature], mesh.cycles),
        ...meshWarnings(mesh.stresses, inputs.helixAngle),
      ],
    };
  },
});

const safety = (strength: number, stressed: number): number | undefined => (strength > 0 && stressed > 0 ? strength / stressed : undefined);
