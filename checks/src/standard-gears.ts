import type { Check } from './check.ts';
import { gearCase, gearCheck, si } from './gear-cases.ts';

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
export const standardGears: readonly Check[] = [...contact, ...undercut, ...backlash, ...span, ...pins];
