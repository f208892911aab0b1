import type { Check } from './check.ts';
import { gearCase, gearCheck, si } from './gear-cases.ts';
import { sourced } from './rows.ts';

const spur = { normalModule: '1 mm', faceWidth: '10 mm' };

const contact = ['gear-eps-17-17', 'gear-eps-20-40'].map((id) => {
  const { inputs } = gearCase(id);
  return gearCheck(id, 'gear-pair', 'eps_alpha', 'transverseContactRatio', { ...spur, teeth1: si(inputs, 'z1'), teeth2: si(inputs, 'z2') });
});

const undercut = ['14p5', '20', '25'].map((angle, index) => {
  const pressureAngle = si(gearCase('gear-undercut-limit').inputs, `alpha_${index + 1}`);
  return gearCheck('gear-undercut-limit', 'gear-pair', `zmin_${angle}`, 'minimumTeethWithoutUndercut', { ...spur, pressureAngle, teeth1: 17, teeth2: 40 });
});

/** Handbook page: centre distance grows by 1.933 (14.5°) or 1.374 (20°) of the backlash that is wanted. */
const backlash = (['14p5', '20'] as const).map((angle, index): Check => {
  const { inputs, outputs, source } = gearCase('gear-backlash-factor');
  const factor = si(outputs, `da_per_j_${angle}`);
  const excess = 1e-6;
  return {
    calculation: 'gear-pair',
    title: `Backlash from a small excess of the centre distance, ${angle.replace('p', '.')}°`,
    source: { document: source, place: `printed as the factor ${factor}`, kind: 'published' },
    inputs: { ...spur, pressureAngle: si(inputs, `alpha_${index + 1}`), teeth1: 20, teeth2: 80, centreDistance: 0.05 + excess },
    output: 'backlash',
    expected: excess / factor,
    // Half the last printed digit of the factor, and the curvature over a micrometre.
    tolerance: 0.0006 / factor,
    mode: 'relative',
  };
});

/** The same page: normal backlash 2·Δa·sin α of a small excess Δa. */
const normalBacklash: Check = {
  calculation: 'gear-pair',
  title: 'Normal backlash from a small excess of the centre distance, 20°: 2·Δa·sin α',
  source: { document: gearCase('gear-backlash-factor').source, place: 'equation for the backlash along the line of action', kind: 'published' },
  inputs: { ...spur, teeth1: 20, teeth2: 80, centreDistance: 0.05 + 1e-6 },
  output: 'normalBacklash',
  expected: 2e-6 * Math.sin(Math.PI / 9),
  tolerance: 1e-4,
  mode: 'relative',
};

/** Handbooks give 17 teeth as the least at 20° that a rack does not undercut. */
const undercutCounts = ([[16, 1], [18, 1], [16, 2], [18, 2]] as const).map(
  ([teeth, gear]): Check => ({
    calculation: 'gear-pair',
    title: `${teeth} teeth without shift are ${teeth < 17 ? '' : 'not '}undercut: gear ${gear}`,
    source: { document: 'Gear handbooks: least tooth count 17 at 20° (read on several public pages)', kind: 'published' },
    inputs: { ...spur, teeth1: 40, teeth2: 40, [`teeth${gear}`]: teeth },
    output: `undercut${gear}`,
    expected: teeth < 17 ? 1 : 0,
    tolerance: 0,
    mode: 'absolute',
  }),
);

const twentyTeeth = '20 teeth, module 1: cos α_a = 18.7939/22, inv α_a = 0.061859, s_a = 22(π/40 + 0.014904 − 0.061859) = 0.69488 mm';
const slope = 'on its lead tan β_a = (d_a/d)·tan β';
/** 20 teeth of module 1 at 30°: its transverse section is a spur gear of module 1/cos 30°; β_a by the lead, which is the same on every cylinder. */
const leaning = ((): number => {
  const involute = (angle: number): number => Math.tan(angle) - angle;
  const angle = Math.atan(Math.tan(Math.PI / 9) / Math.cos(Math.PI / 6));
  const reference = 20 / Math.cos(Math.PI / 6);
  const tipAngle = Math.acos((reference * Math.cos(angle)) / (reference + 2));
  const across = (reference + 2) * (Math.PI / 40 + involute(angle) - involute(tipAngle));
  return (across * 1e-3) / Math.hypot(1, ((reference + 2) / reference) * Math.tan(Math.PI / 6));
})();
const helix = { ...spur, helixAngle: '30 °' };
const tips = [
  ...sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
    [twentyTeeth, 'gear-pair', { ...spur, teeth1: 20, teeth2: 40 }, 'tipThickness1', 0.69488e-3, 2e-8, 'absolute'],
    [`as gear 2, ${twentyTeeth}`, 'gear-pair', { ...spur, teeth1: 40, teeth2: 20 }, 'tipThickness2', 0.69488e-3, 2e-8, 'absolute'],
  ]),
  ...sourced({ document: 'Spur gear in the transverse section, seen square to the tooth', place: slope, kind: 'independent route' }, [
    ['20 teeth of module 1 at 30°', 'gear-pair', { ...helix, teeth1: 20, teeth2: 40 }, 'normalTipThickness1', leaning, 1e-9, 'relative'],
    ['20 teeth of module 1 at 30°, as gear 2', 'gear-pair', { ...helix, teeth1: 40, teeth2: 20 }, 'normalTipThickness2', leaning, 1e-9, 'relative'],
  ]),
];

const span = ['gear-span-m2-z20-k3', 'gear-span-m3-z24-k4', 'gear-span-m0p7-z20-k3'].flatMap((id) => {
  const { inputs } = gearCase(id);
  const gear = { normalModule: si(inputs, 'm'), teeth: si(inputs, 'z'), shift: si(inputs, 'x') };
  const proposed: Check = { ...gearCheck(id, 'gear-span', 'W', 'spannedTeeth', gear), title: `${gearCase(id).title}: the count of teeth that the example measures over`, expected: si(inputs, 'k'), tolerance: 0, mode: 'absolute' };
  return [gearCheck(id, 'gear-span', 'W', 'span', { ...gear, spannedTeeth: si(inputs, 'k') }), proposed];
});

const pins = ['gear-pins-z20-x0', 'gear-pins-z21-x0'].map((id) => {
  const { inputs } = gearCase(id);
  return gearCheck(id, 'gear-over-pins', 'M', 'overPins', { normalModule: si(inputs, 'm'), teeth: si(inputs, 'z'), shift: si(inputs, 'x'), pinDiameter: si(inputs, 'd_pin') });
});

/** Gears without tip shortening, and measures over teeth. */
export const standardGears: readonly Check[] = [...contact, ...undercut, ...backlash, normalBacklash, ...undercutCounts, ...tips, ...span, ...pins];
