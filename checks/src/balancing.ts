import type { Check, Source } from './check.ts';
import { sourced, type Row } from './rows.ts';

const degrees = Math.PI / 180;
const inch = 0.0254;

const meter: Source = { document: 'Application note of a maker of vibration meters on field balancing (17-227), table 2, example 6', place: 'masses and coefficients as public code prints them, measured from the trial mass', kind: 'published' };
const twoPlanes = {
  initial: { amplitude1: 170, phase1: '112 °', amplitude2: 53, phase2: '78 °' },
  trial1: { mass: '1.15 g' },
  withTrial1: { amplitude1: 235, phase1: '94 °', amplitude2: 58, phase2: '68 °' },
  trial2: { mass: '1.15 g' },
  withTrial2: { amplitude1: 185, phase1: '115 °', amplitude2: 77, phase2: '104 °' },
};
const influences = [['11', 78.433, 58.4], ['12', 15.34, 145.3], ['21', 9.462, 10.2], ['22', 32.56, 142.4]] as const;
const corrections = [[1, 1.979, 236.2], [2, 1.071, 121.8]] as const;
const twoPlane = sourced(meter, [
  ...influences.flatMap(([pair, size, phase]): readonly Row[] => [
    ['two planes, two sensors', 'balance-two-plane', twoPlanes, `influenceAmplitude${pair}`, size * 1e3, 1, 'absolute'],
    ['two planes, two sensors', 'balance-two-plane', twoPlanes, `influencePhase${pair}`, phase * degrees, 0.06 * degrees, 'absolute'],
  ]),
  ...corrections.flatMap(([plane, mass, angle]): readonly Row[] => [
    ['two planes, two sensors', 'balance-two-plane', twoPlanes, `correctionMass${plane}`, mass * 1e-3, 1e-6, 'absolute'],
    ['two planes, two sensors', 'balance-two-plane', twoPlanes, `correctionAngle${plane}`, angle * degrees, 0.06 * degrees, 'absolute'],
  ]),
]);

/** One unbalance met twice: with phases by the influence coefficient, without them by four runs; both must agree. */
const bothWays: Source = { document: 'One invented head, solved by influence coefficients and by four runs without phase', kind: 'independent route' };
const head = { initialAmplitude: 0.42, initialPhase: '125 °', trialMass: '8 g', trialAngle: 0, withTrialAmplitude: 0.31, withTrialPhase: '200 °' };
const runs = { initialAmplitude: 0.42, trialMass: '8 g', amplitude0: 0.31, amplitude120: 0.553_512_814_205_443_5, amplitude240: 0.861_414_027_327_324_4 };
const wanted = { mass: 7.419_125_538_078_735e-3, angle: 41.389_836_207_155_57 * degrees };
const hole = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => (index * 2 * Math.PI) / count);
const four = { ...wanted, places: hole(4), step: '0.5 g' };
const heads = sourced(bothWays, [
  ['0.42 at 125°, with 8 g 0.31 at 200°', 'balance-single-plane', head, 'influenceAmplitude', 56.610_445_239_718_06, 1e-9, 'relative'],
  ['0.42 at 125°, with 8 g 0.31 at 200°', 'balance-single-plane', head, 'influencePhase', 263.610_163_792_844_4 * degrees, 1e-9, 'relative'],
  ['0.42 at 125°, with 8 g 0.31 at 200°', 'balance-single-plane', head, 'correctionMass', wanted.mass, 1e-9, 'relative'],
  ['0.42 at 125°, with 8 g 0.31 at 200°', 'balance-single-plane', head, 'correctionAngle', wanted.angle, 1e-9, 'relative'],
  ['the same with the trial mass left on', 'balance-single-plane', { ...head, trialRemoved: 0 }, 'correctionMass', 5.476_021_230_486_686e-3, 1e-9, 'relative'],
  ['the same with the trial mass left on', 'balance-single-plane', { ...head, trialRemoved: 0 }, 'correctionAngle', 116.389_836_207_155_5 * degrees, 1e-9, 'relative'],
  ['the same from amplitudes alone', 'balance-four-run', runs, 'trialEffect', 0.452_883_561_917_744_4, 1e-9, 'relative'],
  ['the same from amplitudes alone', 'balance-four-run', runs, 'correctionMass', wanted.mass, 1e-9, 'relative'],
  ['the same from amplitudes alone', 'balance-four-run', runs, 'correctionAngle', wanted.angle, 1e-9, 'relative'],
  ['perfect readings close', 'balance-four-run', runs, 'closure', 1, 1e-9, 'absolute'],
  ['three holes', 'balance-split', { ...wanted, places: hole(3) }, 'masses', [8.398_154_251_245_458e-3, 5.664_231_598_362_021e-3, 0], 1e-12, 'absolute'],
  ['four holes', 'balance-split', four, 'masses', [5.566_038_452_064_448e-3, 4.905_368_457_100_046e-3, 0, 0], 1e-12, 'absolute'],
  ['four holes, half a gram at a time', 'balance-split', four, 'rounded', [5.5e-3, 5e-3, 0, 0], 1e-12, 'absolute'],
  ['what the rounding leaves makes 0.00653', 'balance-split', four, 'leftMass', 0.006_532_611_395_469_717 / 56.610_445_239_718_06, 1e-9, 'relative'],
  ['what the rounding leaves makes it at 28.5°', 'balance-split', four, 'leftAngle', (28.519_356_059_434_23 - 263.610_163_792_844_4 + 360) * degrees, 1e-9, 'relative'],
]);

const iso: Source = { document: 'ISO 1940-1 and ISO 21940-11, U = 9549·G·m/n as public files quote it; computed with 30,000/π', kind: 'published' };
const grades = [['truck engine crank drives', 40], ['agricultural parts', 16], ['fans, pump impellers, armatures, process machinery', 6.3], ['machine-tool drives, turbo compressors, small armatures', 2.5], ['grinding drives, turbochargers', 1], ['gyros, precision spindles', 0.4]] as const;
const rotor = { grade: '6.3 mm/s', mass: '1.2 kg', speed: '1500 rpm' };
const grade = [
  ...sourced(iso, [
    ['G 6.3, 0.8 kg, 2,000 rpm', 'balance-grade', { grade: '6.3 mm/s', mass: '0.8 kg', speed: '2000 rpm' }, 'specificUnbalance', 30.080_284_244_368_22e-6, 1e-9, 'relative'],
    ['G 6.3, 0.8 kg, 2,000 rpm', 'balance-grade', { grade: '6.3 mm/s', mass: '0.8 kg', speed: '2000 rpm' }, 'permissibleUnbalance', 24.064_227_395_494_57e-6, 1e-9, 'relative'],
    ['G 2.5, 5 kg, 9,000 rpm', 'balance-grade', { grade: '2.5 mm/s', mass: '5 kg', speed: '9000 rpm' }, 'specificUnbalance', 2.652_582_384_864_922e-6, 1e-9, 'relative'],
    ['G 2.5, 5 kg, 9,000 rpm', 'balance-grade', { grade: '2.5 mm/s', mass: '5 kg', speed: '9000 rpm' }, 'permissibleUnbalance', 13.262_911_924_324_61e-6, 1e-9, 'relative'],
    ['G 6.3, 1.2 kg, 1,500 rpm', 'balance-grade', rotor, 'permissibleUnbalance', 48.128_454_790_988_15e-6, 1e-9, 'relative'],
    ['G 6.3, 1.2 kg, 1,500 rpm: U·ω²', 'balance-grade', rotor, 'force', 1.187_522_023_056_941, 1e-9, 'relative'],
  ]),
  ...sourced({ document: 'Public article on balance grades', place: 'U = 6.015·G·W/N in ounce inches, pounds and rpm', kind: 'published' }, [
    ['G 1, 1 lb, 1 rpm', 'balance-grade', { grade: '1 mm/s', mass: 0.453_592_37, speed: '1 rpm' }, 'permissibleUnbalance', ((6.015 * 0.453_592_37) / 16) * inch, 1e-3, 'relative'],
  ]),
  ...sourced({ document: 'Table of balance quality grades on a public page', kind: 'published' }, grades.map(([kind, value]): Row => [kind, 'balance-grade', { kind, mass: '1 kg', speed: '1500 rpm' }, 'grade', value * 1e-3, 0, 'absolute'])),
];

const pair = { mass1: '252 g', centre1: '431 mm', mass2: '249.5 g', centre2: '434 mm', tapeRadius: '760 mm', speed: '1500 rpm' };
const even = { mass1: '200 g', centre1: '400 mm', mass2: '100 g', centre2: '400 mm', tapeRadius: '500 mm', speed: 100 };
const ahead = { ...even, mass2: '200 g', tipLead: '3.5 mm', boltRadius: '100 mm', tipRadius: '800 mm' };
/** γ = 1.2·6·0.05·0.8⁴/0.06 = 2.4576 */
const track = { pathDifference: '10 mm', radius: '0.8 m', chord: '50 mm', inertia: 0.06, arm: '20 mm', threadPitch: '0.5 mm', density: 1.2, liftSlope: 6 };
const perPitch = (0.8 * 2.4576) / 8;
const hand = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['252 · 431 − 249.5 · 434 = 329 g·mm', 'blade-match', pair, 'momentDifference', 329e-6, 1e-9, 'relative'],
  ['252 g less 249.5 g', 'blade-match', pair, 'massDifference', 2.5e-3, 1e-9, 'relative'],
  ['the second is the lighter', 'blade-match', pair, 'lighterBlade', 2, 0, 'absolute'],
  ['329/760 = 0.433 g of tape', 'blade-match', pair, 'tapeMass', 329e-6 / 0.76, 1e-9, 'relative'],
  ['329 g·mm at 157.08 rad/s: 8.12 N', 'blade-match', pair, 'forceDifference', 8.117_749_619_895_996, 1e-9, 'relative'],
  ['2.5 g missing: 329 g·mm over them at 131.6 mm from the axis', 'blade-match', pair, 'onePlace', 329e-6 / 2.5e-3, 1e-9, 'relative'],
  ['equal blades, one tip 3.5 mm ahead, centre at three sevenths of the way from bolt to tip: 200 g · 1.5 mm', 'blade-match', ahead, 'chordDifference', 300e-6, 1e-9, 'relative'],
  ['… a quarter turn ahead of blade 1', 'blade-match', ahead, 'angle', Math.PI / 2, 1e-12, 'relative'],
  ['… 300 g·mm at 100 rad/s: 3 N', 'blade-match', ahead, 'force', 3, 1e-9, 'relative'],
  ['40 g·mm along and 30 across are 50 at tan α = 3/4', 'blade-match', { ...even, mass1: '100.1 g', chordwise1: 30e-6 / 0.1001 }, 'unbalance', 50e-6, 1e-9, 'relative'],
  ['40 g·mm along and 30 across are 50 at tan α = 3/4', 'blade-match', { ...even, mass1: '100.1 g', chordwise1: 30e-6 / 0.1001 }, 'angle', Math.atan2(3, 4), 1e-9, 'relative'],
  ['… 50 g·mm at 500 mm: 0.1 g', 'blade-match', { ...even, mass1: '100.1 g', chordwise1: 30e-6 / 0.1001 }, 'tipMass', 1e-4, 1e-9, 'relative'],
  ['48.13 g·mm at 40.107 mm: 1.2 g', 'balance-grade', { ...rotor, radius: 40.107_045_659_157_63e-3 }, 'permissibleMass', 1.2e-3, 1e-9, 'relative'],
  ['6 kg, 4 mm tail-heavy: 200 g go 120 mm forward', 'centre-shift', { mass: 6, centre: '-4 mm', wanted: '0 mm', movedMass: 0.2 }, 'shift', 0.12, 1e-12, 'relative'],
  ['… or 80 g at 300 mm', 'centre-shift', { mass: 6, centre: '-4 mm', wanted: '0 mm', place: '300 mm' }, 'ballast', 0.08, 1e-12, 'relative'],
  ['as far ahead as below, free to teeter: 45°', 'hanging-tilt', { mass: 6, ahead: '100 mm', height: '-100 mm' }, 'tilt', Math.PI / 4, 1e-12, 'relative'],
  ['a head as stiff as the pendulum halves a small tilt: x/(2h)', 'hanging-tilt', { mass: 1, ahead: 1e-6, height: '-1 m', stiffness: 9.806_65 }, 'tilt', 5e-7, 1e-9, 'relative'],
  ['10 kg, 10 mm ahead: 0.981 N·m', 'hanging-tilt', { mass: 10, ahead: '10 mm', height: '-200 mm' }, 'moment', 0.980_665, 1e-12, 'relative'],
  ['1.2 · 6 · 0.05 · 0.8⁴/0.06', 'blade-tracking', track, 'lockNumber', 2.4576, 1e-9, 'relative'],
  ['0.8 m · 2.4576/8 a radian', 'blade-tracking', track, 'risePerPitch', perPitch, 1e-9, 'relative'],
  ['10 mm/245.76 mm = 2.33°', 'blade-tracking', track, 'pitchChange', 0.01 / perPitch, 1e-9, 'relative'],
  ['20 mm of arm: 0.814 mm of link', 'blade-tracking', track, 'linkChange', (0.02 * 0.01) / perPitch, 1e-9, 'relative'],
  ['of half a millimetre a turn: 1.63 turns', 'blade-tracking', track, 'turns', (0.02 * 0.01) / perPitch / 0.0005, 1e-9, 'relative'],
  ['a blade that flaps at 1.1 a turn rises 1/1.21 as far', 'blade-tracking', { ...track, flappingFrequencyRatio: 1.1 }, 'risePerPitch', perPitch / 1.21, 1e-9, 'relative'],
  ['0.2 inch a second are 5.08 mm/s: at 25 Hz 0.0814 g', 'vibration-level', { velocity: 0.2 * inch, frequency: '25 Hz' }, 'gravities', 0.081_369_733_620_464_14, 1e-6, 'relative'],
  ['0.2 inch a second at 25 Hz: 2.546 thousandths of an inch from peak to peak', 'vibration-level', { velocity: 0.2 * inch, frequency: '25 Hz' }, 'displacement', 2.546_479_089_470_325e-3 * inch, 1e-9, 'relative'],
  ['2π · 25 Hz · 5.08 mm/s = 0.798 m/s²', 'vibration-level', { velocity: 0.2 * inch, frequency: '25 Hz' }, 'acceleration', 50 * Math.PI * 0.00508, 1e-12, 'relative'],
  ['5.08 mm/s over √2', 'vibration-level', { velocity: 0.2 * inch, frequency: '25 Hz' }, 'effectiveVelocity', 0.00508 / Math.sqrt(2), 1e-12, 'relative'],
]);

/** Balance, tracking and what vibrations are said in. */
export const balancing: readonly Check[] = [...twoPlane, ...heads, ...grade, ...hand];
