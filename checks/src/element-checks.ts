import type { Check } from './check.ts';
import { sourced } from './rows.ts';

const steel = { youngsModulus: '200 GPa', poissonsRatio: 0.3 };
const pressed = { nominal: '50 mm', interference: '40 µm', hubOuter: '80 mm', length: '40 mm', friction: 0.15, shaftMaterial: steel, hubMaterial: steel };
const press = sourced({ document: 'Worked press fit on a public web page', kind: 'published' }, [
  ['solid shaft of 50 mm, 40 µm', 'press-fit', pressed, 'pressure', 48.75e6, 1e-3, 'relative'],
  ['solid shaft of 50 mm, 40 µm', 'press-fit', pressed, 'pressForce', 45_950, 1e-3, 'relative'],
  ['solid shaft of 50 mm, 40 µm', 'press-fit', pressed, 'torqueCapacity', 1149, 1e-3, 'relative'],
  ['solid shaft of 50 mm, 40 µm', 'press-fit', pressed, 'hubHoopStress', 111.3e6, 1e-3, 'relative'],
]);

const warm = { nominal: '22 mm', interference: '15 µm', clearanceWanted: '5 µm', housingMaterial: 'aluminium 7075' };
const g = { grade: '6.3 mm/s', speed: '2000 rpm', mass: '0.8 kg' };
const hand = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['(15 + 5) µm/(23.4·10⁻⁶/K · 22 mm) = 38.85 K', 'warm-to-fit', warm, 'temperatureRise', 20 / (23.4 * 0.022), 1e-9, 'relative'],
  ['6.3 mm/s over 209.44 rad/s', 'balance-grade', g, 'specificUnbalance', 0.0063 / ((2000 * Math.PI) / 30), 1e-9, 'relative'],
  ['0.8 kg of it', 'balance-grade', g, 'permissibleUnbalance', (0.8 * 0.0063) / ((2000 * Math.PI) / 30), 1e-9, 'relative'],
  ['π/4 (28² − 26²) mm² = 27π mm²', 'tube', { outer: '28 mm', inner: '26 mm' }, 'area', 27e-6 * Math.PI, 1e-12, 'relative'],
]);

const tubeInputs = { torque: 0.9, outer: 0.006, inner: 0.005, length: 0.95, G: 26e9 };
const twist = sourced({ document: 'Integral of r² over the annulus', kind: 'independent route' }, [
  ['aluminium tube', 'tube-torsion', tubeInputs, 'twist', 0.499195144215781, 1e-6, 'relative'],
  ['aluminium tube', 'tube-torsion', tubeInputs, 'shearStress', 40_986_548.68297992, 1e-6, 'relative'],
  ['aluminium tube', 'tube-torsion', tubeInputs, 'stiffness', 1.802902152451564, 1e-6, 'relative'],
]);

const rings = { length: 1.02, bendingStiffness: 12.4, massPerLength: 0.06, speed: 942.477796, supports: [[0.02, 6e4], [0.26, 8e3], [0.51, 8e3], [0.76, 8e3], [1, 6e4]].map(([at, stiffness]) => ({ at, kind: 'spring', stiffness })) };
const whirling = sourced({ document: 'Exact dynamic stiffness of each span with Wittrick–Williams counting', kind: 'independent route' }, [
  ['drive tube on five bearings in rubber rings', 'whirl', rings, 'firstCriticalRatio', 0.7853904455500306, 1e-5, 'relative'],
  ['drive tube on five bearings in rubber rings', 'whirl', rings, 'separation', 0.016651201770876867, 1e-5, 'absolute'],
]);

const vectors = { initialAmplitude: 7, initialPhase: '160 °', trialMass: '100 g', trialAngle: 0, withTrialAmplitude: 5, withTrialPhase: '70 °' };
const balancing = sourced({ document: 'Public article on balancing by vectors in one plane', place: 'its inputs; its drawing gives 77.8 g by ruler, vector arithmetic 81.4 g', kind: 'independent route' }, [
  ['7 at 160°, 5 at 70° with 100 g', 'balance-single-plane', vectors, 'correctionMass', 0.08137334712067, 1e-6, 'relative'],
  ['7 at 160°, 5 at 70° with 100 g', 'balance-single-plane', vectors, 'correctionAngle', (324.462322208026 * Math.PI) / 180, 1e-6, 'relative'],
]);

const points = { bodies: [{ mass: 0.5, position: [0.12, 0, 0.03] }, { mass: 0.8, position: [-0.05, 0.02, -0.04] }, { mass: 0.22, position: [-0.6, 0, 0.05] }] };
const masses = sourced({ document: 'Sum of the masses', kind: 'law' }, [['three point masses', 'mass-properties', points, 'mass', 1.52, 1e-12, 'relative']]);

/** Press fits, shafts and balance against tables, worked examples and other routes. */
export const elementChecks: readonly Check[] = [...press, ...hand, ...twist, ...whirling, ...balancing, ...masses];
