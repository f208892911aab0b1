import type { Check } from './check.ts';
import { gearCase, gearCheck, si } from './gear-cases.ts';
import { sourced } from './rows.ts';

const twenty = Math.PI / 9;
const tangent = Math.tan(twenty);

const slanted = { torque: '2 N·m', referenceDiameter: '40 mm', helixAngle: '30 °', hand1: 'right', turns: 'right-handed' };
const straight = { torque: '1.7 N·m', normalModule: '1 mm', teeth1: 17, teeth2: 83, centreDistance: '51 mm' };
/** cos α_w = 50 cos 20°/51 */
const workingAngle = Math.acos((50 * Math.cos(twenty)) / 51);
const forces = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['2 · 2 N·m/40 mm = 100 N', 'gear-forces', slanted, 'tangential', 100, 1e-12, 'relative'],
  ['100 N · tan 20°/cos 30° = 42.03 N', 'gear-forces', slanted, 'radial', (100 * tangent) / Math.cos(Math.PI / 6), 1e-12, 'relative'],
  ['100 N · tan 30° = 57.74 N, along the axis: right hand, drives, turns right-handed', 'gear-forces', slanted, 'axial', 100 * Math.tan(Math.PI / 6), 1e-12, 'relative'],
  ['the same with the left hand pushes the other way', 'gear-forces', { ...slanted, hand1: 'left' }, 'axial', -100 * Math.tan(Math.PI / 6), 1e-12, 'relative'],
  ['the same, driven, pushes the other way', 'gear-forces', { ...slanted, torque: '-2 N·m' }, 'axial', -100 * Math.tan(Math.PI / 6), 1e-12, 'relative'],
  ['100 N/(cos 20° · cos 30°) = 122.88 N', 'gear-forces', slanted, 'normal', 100 / (Math.cos(twenty) * Math.cos(Math.PI / 6)), 1e-12, 'relative'],
  ['17 and 83 teeth 1 mm too far apart: cos α_w = 50 cos 20°/51', 'gear-forces', straight, 'workingPressureAngle', workingAngle, 1e-12, 'relative'],
  ['200 N at 8.5 mm, square to the flank 200/cos 20°; sin α_w of it is radial', 'gear-forces', straight, 'radial', (200 / Math.cos(twenty)) * Math.sin(workingAngle), 1e-12, 'relative'],
]);

/** 20 and 80 teeth of module 1, reference centre distance 50 mm. */
const pair = { normalModule: '1 mm', teeth1: 20, teeth2: 80, faceWidth: '10 mm', centreDistance: '50.1 mm' };
const alike = { material1: 'steel', material2: 'steel', frameMaterial: 'steel' };
const seasons = { cold: '-10 °C', assembly: '20 °C', hot: '60 °C' };
/** inv α_w − inv 20° at 50.1 mm */
const opened = Math.acos((50 * Math.cos(twenty)) / 50.1);
const play = 2 * 0.0501 * (Math.tan(opened) - opened - (tangent - twenty));
const still = { expansion: 1e-12 };
const growing = { material1: { expansion: 1e-6 }, material2: { expansion: 1e-6 }, frameMaterial: still, cold: '20 °C', assembly: '20 °C', hot: '30 °C' };
const swelling = { material1: { ...still, swell: 1e-5 }, material2: { ...still, swell: 1e-5 }, frameMaterial: still, cold: '20 °C', assembly: '20 °C', hot: '20 °C' };
const tight = { ...pair, centreDistance: '50 mm' };
const laws = sourced({ document: 'Similar figures: where all grows alike, all lengths grow by the same share', kind: 'law' }, [
  ['steel gears in a steel frame at assembly: 2a(inv α_w − inv α)', 'mesh-window', { ...pair, ...alike, ...seasons }, 'backlashAssembly', play, 1e-9, 'relative'],
  ['steel gears in a steel frame, 30 K colder', 'mesh-window', { ...pair, ...alike, ...seasons }, 'backlashCold', play * (1 - 30 * 11.7e-6), 1e-9, 'relative'],
  ['steel gears in a steel frame, 40 K warmer', 'mesh-window', { ...pair, ...alike, ...seasons }, 'backlashHot', play * (1 + 40 * 11.7e-6), 1e-9, 'relative'],
  ['steel does not swell', 'mesh-window', { ...pair, ...alike, ...seasons }, 'backlashHotDry', play * (1 + 40 * 11.7e-6), 1e-9, 'relative'],
  ['where all grows alike, the distance without backlash stays the same', 'mesh-window', { ...pair, ...alike, ...seasons }, 'centreDistanceToSet', 0.05, 1e-12, 'relative'],
]);
const handWindow = sourced({ document: 'Worked by hand in the title: first order in the growth, j = 2 tan α · Δa', kind: 'by hand' }, [
  ['both gears 10⁻⁵ larger in a frame that does not grow: −2 tan 20° · 50 mm · 10⁻⁵', 'mesh-window', { ...tight, ...growing }, 'backlashHot', -2 * tangent * 0.05 * 1e-5, 1e-4, 'relative'],
  ['both gears swollen by 10⁻⁵: the same', 'mesh-window', { ...tight, ...swelling }, 'backlashHot', -2 * tangent * 0.05 * 1e-5, 1e-4, 'relative'],
  ['swollen, they want 50 mm · 10⁻⁵ more, and 20 µm for the tolerance', 'mesh-window', { ...tight, ...swelling, tolerance: '20 µm' }, 'centreDistanceToSet', 0.05 * (1 + 1e-5) + 20e-6, 1e-9, 'relative'],
  ['0.1 mm always left: the distance of 50.1 mm with just that backlash', 'mesh-window', { ...pair, ...alike, cold: '20 °C', assembly: '20 °C', hot: '20 °C', leastBacklash: play }, 'centreDistanceToSet', 0.0501, 1e-9, 'relative'],
  ['gears that swell shut when hot: nothing left then', 'mesh-window', { ...tight, ...growing }, 'backlashHotSet', 0, 1e-12, 'absolute'],
  ['and cold the play by which they grow: 2 tan 20° · 50 mm · 10⁻⁵', 'mesh-window', { ...tight, ...growing }, 'backlashColdSet', 2 * tangent * 0.05 * 1e-5, 1e-4, 'relative'],
  ['and at assembly it shows that backlash', 'mesh-window', { ...pair, ...alike, cold: '20 °C', assembly: '20 °C', hot: '20 °C', leastBacklash: play }, 'backlashToSet', play, 1e-7, 'relative'],
]);

const change = { normalModule: '1 mm', teeth1: 17, teeth2: 85, newTeeth1: 18, slotFrom: '50 mm', slotTo: '51.3 mm' };
const changes = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['17 and 85 teeth touch at 51 mm, 18 and 85 at 51.5 mm', 'pinion-change', change, 'newCentreDistance', 0.0515, 1e-12, 'relative'],
  ['one tooth more of module 1 moves half a millimetre', 'pinion-change', change, 'move', 0.0005, 1e-9, 'relative'],
  ['a slot up to 51.3 mm does not allow 51.5 mm', 'pinion-change', change, 'slotAllows', 0, 0, 'absolute'],
  ['the nearest is its end', 'pinion-change', change, 'setCentreDistance', 0.0513, 1e-12, 'relative'],
  ['a slot up to 52 mm does', 'pinion-change', { ...change, slotTo: '52 mm' }, 'slotAllows', 1, 0, 'absolute'],
  ['gear 2 turns 18/17 times as fast', 'pinion-change', change, 'speedRatio', 18 / 17, 1e-12, 'relative'],
  ['without backlash now', 'pinion-change', change, 'backlash', 0, 1e-15, 'absolute'],
]);

/** 18 and 85 teeth of module 1 at a distance in mm, without shift. */
const eighteen = (distance: number) => {
  const angle = Math.acos((51.5 * Math.cos(twenty)) / distance);
  const [base1, base2] = [9 * Math.cos(twenty), 42.5 * Math.cos(twenty)];
  const path = Math.sqrt(10 ** 2 - base1 ** 2) + Math.sqrt(43.5 ** 2 - base2 ** 2) - distance * Math.sin(angle);
  return { backlash: 2e-3 * distance * (Math.tan(angle) - angle - (tangent - twenty)), contactRatio: path / (Math.PI * Math.cos(twenty)) };
};
const changed = sourced({ document: 'Handbook formulas of involute gears, written out here: j = 2a(inv α_w − inv α), ε = g_α/(π m cos α)', kind: 'independent route' }, [
  ['18 and 85 teeth at 51.3 mm bind', 'pinion-change', change, 'newBacklash', eighteen(51.3).backlash, 1e-9, 'relative'],
  ['18 and 85 teeth left at 51 mm bind more', 'pinion-change', change, 'backlashUnmoved', eighteen(51).backlash, 1e-9, 'relative'],
  ['18 and 85 teeth at 51.5 mm', 'pinion-change', { ...change, slotTo: '52 mm' }, 'newContactRatio', eighteen(51.5).contactRatio, 1e-9, 'relative'],
]);

const chordal = gearCase('gear-chordal-1');
const calliper = { normalModule: si(chordal.inputs, 'm'), pressureAngle: si(chordal.inputs, 'alpha'), teeth: si(chordal.inputs, 'z'), shift: si(chordal.inputs, 'x'), tipHeight: si(chordal.inputs, 'ha') };
const chords = [gearCheck('gear-chordal-1', 'gear-chordal', 's_j', 'chord', calliper), gearCheck('gear-chordal-1', 'gear-chordal', 'h_j', 'height', calliper)];

const filled = { normalModule: si(gearCase('gear-spur-shift-1').inputs, 'm'), teeth1: 12, teeth2: 24, centreDistance: si(gearCase('gear-spur-shift-1').inputs, 'a'), faceWidth: '20 mm', leastContactRatio: 1.1 };
const shifts = [
  {
    ...gearCheck('gear-spur-shift-1', 'profile-shifts', 'sum_x', 'shiftSum', filled),
    title: '12 and 24 teeth of module 3 at 56.5 mm: the shifts together',
  },
  ...sourced({ document: 'The same table', place: 'y − Σx: 0.83333 − 0.96', kind: 'by hand' }, [['12 and 24 teeth of module 3 at 56.5 mm: tips shortened', 'profile-shifts', filled, 'addendum', 1 + 0.83333 - 0.96, 6e-4, 'absolute']]),
];

/** Two gears alike at their reference distance: tips as they are, the shifts cancel. */
const alikeTeeth = { normalModule: '1 mm', teeth1: 18, teeth2: 18, centreDistance: '18 mm', faceWidth: '10 mm' };
const notUndercut = 1 - 9 * Math.sin(twenty) ** 2;
const shared = [
  ...sourced({ document: 'Exchange of two gears that are alike', kind: 'law' }, [
    ['twice 18 teeth at 18 mm share nothing', 'profile-shifts', alikeTeeth, 'shift1', 0, 1e-12, 'absolute'],
    ['twice 18 teeth at 18 mm share nothing', 'profile-shifts', alikeTeeth, 'shift2', 0, 1e-12, 'absolute'],
  ]),
  ...sourced({ document: 'Undercut begins at x = 1 − z/2 · sin² α; tried in steps of 0.01', kind: 'independent route' }, [
    ['twice 18 teeth: gear 1 is undercut below −0.0528', 'profile-shifts', alikeTeeth, 'leastShift1', Math.ceil(notUndercut * 100) / 100, 1e-9, 'absolute'],
    ['twice 18 teeth: gear 2 is undercut above 0.0528', 'profile-shifts', alikeTeeth, 'greatestShift1', -Math.ceil(notUndercut * 100) / 100, 1e-9, 'absolute'],
  ]),
  ...sourced({ document: 'Handbook formula ε = g_α/(π m cos α), written out here', kind: 'independent route' }, [
    ['twice 18 teeth', 'profile-shifts', alikeTeeth, 'totalContactRatio', (2 * Math.sqrt(10 ** 2 - (9 * Math.cos(twenty)) ** 2) - 18 * Math.sin(twenty)) / (Math.PI * Math.cos(twenty)), 1e-9, 'relative'],
  ]),
];

/** Forces of a mesh, its play from cold to hot, and the change of a pinion. */
export const mesh: readonly Check[] = [...forces, ...laws, ...handWindow, ...changes, ...changed, ...shifts, ...shared, ...chords];
