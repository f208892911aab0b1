import { meshGeometry, minimumTeethWithoutUndercut, type GearGeometry, type MeshGeometry } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput, degrees, lengthOutput, numberOutput } from '../specs.ts';
import { checkCentreDistance, gearStandard, pairInputs } from './gear-specs.ts';

/** A tip this thin breaks or burrs; in normal modules. Common practice, no source. */
const THIN_TIP = 0.2;

export const gearPair = defineCalculation({
  id: 'gear-pair',
  title: 'Gear pair',
  section: 'Gears',
  summary: 'Geometry of a spur or helical pair: diameters, centre distance, contact ratios, backlash, undercut.',
  inputs: {
    ...pairInputs,
    helixAngle: { ...pairInputs.helixAngle, example: degrees(15) },
  },
  outputs: {
    transverseModule: lengthOutput('Transverse module', 'm_t'),
    transversePressureAngle: angleOutput('Transverse pressure angle', '\\alpha_t'),
    workingPressureAngle: angleOutput('Working pressure angle, transverse', '\\alpha_{wt}'),
    referenceCentreDistance: lengthOutput('Centre distance with the reference circles touching', 'a_d'),
    zeroBacklashCentreDistance: lengthOutput('Centre distance without backlash', 'a_0'),
    referenceDiameter1: lengthOutput('Reference diameter of gear 1', 'd_1'),
    referenceDiameter2: lengthOutput('Reference diameter of gear 2', 'd_2'),
    baseDiameter1: lengthOutput('Base diameter of gear 1', 'd_{b1}'),
    baseDiameter2: lengthOutput('Base diameter of gear 2', 'd_{b2}'),
    tipDiameter1: lengthOutput('Tip diameter of gear 1', 'd_{a1}'),
    tipDiameter2: lengthOutput('Tip diameter of gear 2', 'd_{a2}'),
    rootDiameter1: lengthOutput('Root diameter of gear 1', 'd_{f1}'),
    rootDiameter2: lengthOutput('Root diameter of gear 2', 'd_{f2}'),
    workingDiameter1: lengthOutput('Working diameter of gear 1', 'd_{w1}'),
    workingDiameter2: lengthOutput('Working diameter of gear 2', 'd_{w2}'),
    transverseContactRatio: numberOutput('Transverse contact ratio', '\\varepsilon_\\alpha'),
    overlapRatio: numberOutput('Overlap ratio', '\\varepsilon_\\beta'),
    totalContactRatio: numberOutput('Total contact ratio', '\\varepsilon_\\gamma'),
    backlash: lengthOutput('Circumferential backlash on the working circles', 'j_{wt}'),
    normalBacklash: lengthOutput('Normal backlash', 'j_{bn}'),
    minimumTeethWithoutUndercut: numberOutput('Least tooth count without undercut or shift, not rounded', 'z_\\mathrm{min}'),
    undercut1: numberOutput('Gear 1 is undercut: 1, or not: 0', 'u_1'),
    undercut2: numberOutput('Gear 2 is undercut: 1, or not: 0', 'u_2'),
    tipThickness1: lengthOutput('Tooth thickness of gear 1 at the tip, transverse', 's_{at1}'),
    tipThickness2: lengthOutput('Tooth thickness of gear 2 at the tip, transverse', 's_{at2}'),
    normalTipThickness1: lengthOutput('Tooth thickness of gear 1 at the tip, normal', 's_{an1}'),
    normalTipThickness2: lengthOutput('Tooth thickness of gear 2 at the tip, normal', 's_{an2}'),
  },
  formulas: [
    { output: 'transverseModule', tex: String.raw`m_t = \frac{m_n}{\cos\beta}` },
    { output: 'transversePressureAngle', tex: String.raw`\tan\alpha_t = \frac{\tan\alpha_n}{\cos\beta}` },
    { output: 'referenceDiameter1', tex: String.raw`d = z\,m_t` },
    { output: 'baseDiameter1', tex: String.raw`d_b = d\cos\alpha_t` },
    { output: 'tipDiameter1', tex: String.raw`d_a = d + 2m_n\,(x + h_{aP}^*)` },
    { output: 'rootDiameter1', tex: String.raw`d_f = d + 2m_n\,(x - h_{fP}^*)` },
    { output: 'referenceCentreDistance', tex: String.raw`a_d = \frac{d_1 + d_2}{2}` },
    { output: 'zeroBacklashCentreDistance', tex: String.raw`a_0 = a_d\,\frac{\cos\alpha_t}{\cos\alpha_0},\quad \mathrm{inv}\,\alpha_0 = \mathrm{inv}\,\alpha_t + 2\tan\alpha_n\,\frac{x_1 + x_2}{z_1 + z_2}` },
    { output: 'workingPressureAngle', tex: String.raw`\cos\alpha_{wt} = \frac{d_{b1} + d_{b2}}{2a}` },
    { output: 'workingDiameter1', tex: String.raw`d_{w} = \frac{2a\,z}{z_1 + z_2}` },
    { output: 'transverseContactRatio', tex: String.raw`\varepsilon_\alpha = \frac{\sqrt{d_{a1}^2 - d_{b1}^2} + \sqrt{d_{a2}^2 - d_{b2}^2} - 2a\sin\alpha_{wt}}{2\pi m_t\cos\alpha_t}` },
    { output: 'overlapRatio', tex: String.raw`\varepsilon_\beta = \frac{b\sin\beta}{\pi m_n}` },
    { output: 'totalContactRatio', tex: String.raw`\varepsilon_\gamma = \varepsilon_\alpha + \varepsilon_\beta` },
    { output: 'backlash', tex: String.raw`j_{wt} = 2a\,(\mathrm{inv}\,\alpha_{wt} - \mathrm{inv}\,\alpha_0)` },
    { output: 'normalBacklash', tex: String.raw`j_{bn} = j_{wt}\cos\alpha_{wt}\cos\beta_b` },
    { output: 'minimumTeethWithoutUndercut', tex: String.raw`z_\mathrm{min} = \frac{2h_{aP}^*\cos\beta}{\sin^2\alpha_t}` },
    { output: 'undercut1', tex: String.raw`u = 1 \text{ when } z < \frac{2(h_{aP}^* - x)\cos\beta}{\sin^2\alpha_t}` },
    { output: 'tipThickness1', tex: String.raw`s_{at} = d_a\left(\frac{m_t(\pi/2 + 2x\tan\alpha_n)}{d} + \mathrm{inv}\,\alpha_t - \mathrm{inv}\,\alpha_a\right)` },
    { output: 'normalTipThickness1', tex: String.raw`s_{an} = s_{at}\cos\beta_a,\quad \tan\beta_a = \frac{d_a}{d}\tan\beta` },
  ],
  source: `${gearStandard} (from memory), checked against published worked examples.`,
  validity: [
    'External involute gears on parallel axes, cut by a basic rack whose straight flank reaches as deep as the mate’s tip. No tip shortening.',
    'Backlash comes from the centre distance alone: allowances of the tooth thickness, swelling and heat are left out.',
    'The contact ratio takes the whole height of both flanks: undercut and interference shorten it.',
  ],
  compute: (inputs) => {
    checkCentreDistance(inputs);
    const mesh = meshGeometry(inputs);
    const { gear1, gear2 } = mesh;
    return {
      outputs: {
        transverseModule: gear1.transverseModule,
        transversePressureAngle: gear1.transversePressureAngle,
        workingPressureAngle: mesh.workingPressureAngle,
        referenceCentreDistance: mesh.referenceCentreDistance,
        zeroBacklashCentreDistance: mesh.zeroBacklashCentreDistance,
        referenceDiameter1: gear1.referenceDiameter,
        referenceDiameter2: gear2.referenceDiameter,
        baseDiameter1: gear1.baseDiameter,
        baseDiameter2: gear2.baseDiameter,
        tipDiameter1: gear1.tipDiameter,
        tipDiameter2: gear2.tipDiameter,
        rootDiameter1: gear1.rootDiameter,
        rootDiameter2: gear2.rootDiameter,
        workingDiameter1: mesh.workingDiameter1,
        workingDiameter2: mesh.workingDiameter2,
        transverseContactRatio: mesh.transverseContactRatio,
        overlapRatio: mesh.overlapRatio,
        totalContactRatio: mesh.transverseContactRatio + mesh.overlapRatio,
        backlash: mesh.backlash,
        normalBacklash: mesh.normalBacklash,
        minimumTeethWithoutUndercut: minimumTeethWithoutUndercut(inputs, inputs.addendum),
        undercut1: Number(gear1.undercut),
        undercut2: Number(gear2.undercut),
        tipThickness1: gear1.tipThickness,
        tipThickness2: gear2.tipThickness,
        normalTipThickness1: gear1.normalTipThickness,
        normalTipThickness2: gear2.normalTipThickness,
      },
      warnings: warningsOf(mesh, inputs.normalModule),
    };
  },
});

function warningsOf(mesh: MeshGeometry, normalModule: number): string[] {
  const ofGear = (gear: GearGeometry, name: string, reachesTooFar: boolean): string[] => [
    ...(gear.undercut ? [`${name} is undercut: its involute begins above the base circle and the contact ratio is less than given.`] : []),
    ...(gear.normalTipThickness < 0 ? [`${name} would be pointed below its tip circle.`] : gear.normalTipThickness < THIN_TIP * normalModule ? [`${name} has tips thinner than ${THIN_TIP} modules.`] : []),
    ...(reachesTooFar ? [`The tips of ${name.toLowerCase()} reach beyond the involute of the mate and touch its fillet.`] : []),
  ];
  return [
    ...ofGear(mesh.gear1, 'Gear 1', mesh.tipInterference1),
    ...ofGear(mesh.gear2, 'Gear 2', mesh.tipInterference2),
    ...(mesh.transverseContactRatio < 1 && mesh.overlapRatio < 1 ? ['The transverse contact ratio is below 1: the teeth lose touch before the next pair meets.'] : []),
    ...(mesh.backlash < 0 ? ['The backlash is negative: at this centre distance the teeth bind.'] : []),
  ];
}
