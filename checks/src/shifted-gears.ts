import type { Check } from './check.ts';
import { gearCase, gearCheck, si } from './gear-cases.ts';

/**
 * Worked examples of gears with profile shift. The tables shorten the tips so that the clearance stays: the tip heights
 * (1 + y − x₂) and (1 + y − x₁) are those of a rack with the tip height 1 + y − x₁ − x₂, which is given here as `addendum`.
 */
const spur = gearCase('gear-spur-shift-1');
const spurTeeth = { normalModule: si(spur.inputs, 'm'), pressureAngle: si(spur.inputs, 'alpha'), teeth1: si(spur.inputs, 'z1'), teeth2: si(spur.inputs, 'z2'), shift1: si(spur.inputs, 'x1'), shift2: si(spur.inputs, 'x2') };
const spurPair = {
  ...spurTeeth,
  centreDistance: si(spur.inputs, 'a'),
  faceWidth: '20 mm',
  addendum: 1 + si(spur.outputs, 'y') - si(spur.outputs, 'sum_x'),
  dedendum: 1 + si(spur.inputs, 'c'),
};

const helical = gearCase('gear-helical-normal-1');
const helicalPair = {
  normalModule: si(helical.inputs, 'mn'),
  pressureAngle: si(helical.inputs, 'alpha_n'),
  helixAngle: si(helical.inputs, 'beta'),
  teeth1: si(helical.inputs, 'z1'),
  teeth2: si(helical.inputs, 'z2'),
  shift1: si(helical.outputs, 'xn1'),
  shift2: si(helical.inputs, 'xn2'),
  faceWidth: si(helical.inputs, 'b'),
  centreDistance: si(helical.inputs, 'a'),
  addendum: 1 + si(helical.outputs, 'y') - si(helical.outputs, 'xn1'),
  dedendum: 1 + si(helical.inputs, 'c'),
};

const printedOfBoth = {
  a_ref: 'referenceCentreDistance',
  d1: 'referenceDiameter1',
  d2: 'referenceDiameter2',
  db1: 'baseDiameter1',
  db2: 'baseDiameter2',
  dw1: 'workingDiameter1',
  dw2: 'workingDiameter2',
  da1: 'tipDiameter1',
  da2: 'tipDiameter2',
  df1: 'rootDiameter1',
  df2: 'rootDiameter2',
  eps_alpha: 'transverseContactRatio',
};

const column = (id: string, printed: Readonly<Record<string, string>>, inputs: Readonly<Record<string, unknown>>): Check[] =>
  Object.entries(printed).map(([name, output]) => gearCheck(id, 'gear-pair', name, output, inputs));

export const shiftedGears: readonly Check[] = [
  ...column('gear-spur-shift-1', { ...printedOfBoth, alpha_w: 'workingPressureAngle' }, spurPair),
  ...column('gear-helical-normal-1', { ...printedOfBoth, alpha_t: 'transversePressureAngle', alpha_wt: 'workingPressureAngle', eps_beta: 'overlapRatio' }, helicalPair),
  {
    ...gearCheck('gear-helical-normal-1', 'gear-pair', 'a_ref', 'zeroBacklashCentreDistance', helicalPair),
    title: 'Helical pair: the shift found for a centre distance gives that distance',
    expected: si(helical.inputs, 'a'),
  },
  {
    ...gearCheck('gear-helical-normal-1', 'gear-pair', 'd1', 'transverseModule', helicalPair),
    source: { document: 'sdp-si.com, Elements of Metric Gear Technology (D785), pages T-108 and T-109', place: 'table 11-1, printed as 3.46410 mm', kind: 'published' },
    title: 'Helical pair: transverse module',
    expected: 3.4641e-3,
    tolerance: 6e-9,
  },
  {
    ...gearCheck('gear-helical-normal-1', 'gear-pair', 'eps_alpha', 'totalContactRatio', helicalPair),
    title: 'Helical pair: the printed contact and overlap ratios add up',
    expected: si(helical.outputs, 'eps_alpha') + si(helical.outputs, 'eps_beta'),
    tolerance: 0.0012,
  },
  gearCheck('gear-spur-shift-1b', 'gear-pair', 'a', 'zeroBacklashCentreDistance', { ...spurTeeth, faceWidth: '20 mm' }),
  gearCheck('gear-spur-shift-1b', 'gear-pair', 'alpha_w', 'workingPressureAngle', { ...spurTeeth, faceWidth: '20 mm' }),
  gearCheck('gear-spur-shift-1b', 'centre-distance', 'a', 'zeroBacklashCentreDistance', spurTeeth),
  gearCheck('gear-spur-shift-1', 'centre-distance', 'a_ref', 'referenceCentreDistance', spurTeeth),
];
