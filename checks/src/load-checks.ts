import type { Check } from './check.ts';
import { sourced } from './rows.ts';

const overhung = { first: 0, second: 0.2, loads: [{ at: 0.3, force: 100 }] };
const between = { first: 0, second: 1, loads: [{ at: 0.25, force: 80 }] };
const couple = { first: 0, second: 0.1, loads: [{ at: 0.05, axial: 200, arm: 0.02 }] };
const across = { first: 0, second: 1, loads: [{ at: 0.5, force: 30 }, { at: 0.5, force: 40, angle: '90 °' }] };

/** What parts of a machine see, against closed forms of statics and numbers worked in the titles. */
export const loadChecks: readonly Check[] = [
  ...sourced({ document: 'Shigley, Mechanical Engineering Design', place: 'table A-9, simple supports, intermediate load: R = F·b/l, M = F·a·b/l (from memory)', kind: 'published' }, [
    ['80 N at a quarter of 1 m: 60 N on the near bearing', 'bearing-reactions', between, 'first', 60, 1e-12, 'relative'],
    ['… 20 N on the far one', 'bearing-reactions', between, 'second', 20, 1e-12, 'relative'],
    ['… M = 80·0.25·0.75 = 15 N·m', 'bearing-reactions', between, 'moment', 15, 1e-12, 'relative'],
  ]),
  ...sourced({ document: 'Shigley, Mechanical Engineering Design', place: 'table A-9, simple supports, overhanging load: R₁ = F·a/l, R₂ = F(l + a)/l, M = F·a (from memory)', kind: 'published' }, [
    ['100 N half a span beyond the second bearing: 50 N on the first', 'bearing-reactions', overhung, 'first', 50, 1e-12, 'relative'],
    ['… 150 N on the second', 'bearing-reactions', overhung, 'second', 150, 1e-12, 'relative'],
    ['… M = 100·0.1 = 10 N·m', 'bearing-reactions', overhung, 'moment', 10, 1e-12, 'relative'],
  ]),
  ...sourced({ document: 'Shigley, Mechanical Engineering Design', place: 'table A-9, simple supports, moment load: R = M/l (from memory)', kind: 'published' }, [
    ['200 N along the shaft at 20 mm: 4 N·m over 0.1 m, 40 N', 'bearing-reactions', couple, 'second', 40, 1e-12, 'relative'],
    ['… in the middle it bends by half of it each way', 'bearing-reactions', couple, 'moment', 2, 1e-12, 'relative'],
  ]),
  ...sourced({ document: 'Pythagoras', kind: 'law' }, [
    ['30 N and 40 N at a right angle are 50 N, half on each bearing', 'bearing-reactions', across, 'first', 25, 1e-12, 'relative'],
    ['… M = 50·1/4 = 12.5 N·m', 'bearing-reactions', across, 'moment', 12.5, 1e-12, 'relative'],
    ['… both bearings together carry 50 N', 'bearing-reactions', across, 'across', 50, 1e-12, 'relative'],
    ['bevel: tangential, radial and axial are the parts of one force square to the flank: F_r² + F_a² = (F_t·tan 20°)²', 'bevel-forces', { torque: 1, module: '1 mm', teeth1: 12, teeth2: 16, faceWidth: '2 mm', pressureAngle: '20 °' }, 'radial', (2 / 0.0108) * Math.tan(Math.PI / 9) * 0.8, 1e-12, 'relative'],
    ['12 and 16 teeth: a cone of 3-4-5', 'bevel-forces', { torque: 1, module: '1 mm', teeth1: 12, teeth2: 16, faceWidth: '2 mm' }, 'meanDiameter', 0.0108, 1e-12, 'relative'],
    ['… tan δ = 12/16', 'bevel-forces', { torque: 1, module: '1 mm', teeth1: 12, teeth2: 16, faceWidth: '2 mm' }, 'coneAngle', Math.asin(0.6), 1e-12, 'relative'],
    ['… 1 N·m on 10.8 mm', 'bevel-forces', { torque: 1, module: '1 mm', teeth1: 12, teeth2: 16, faceWidth: '2 mm' }, 'tangential', 2 / 0.0108, 1e-12, 'relative'],
    ['the mate’s axial force is this gear’s radial one', 'bevel-forces', { torque: 16 / 12, module: '1 mm', teeth1: 16, teeth2: 12, faceWidth: '2 mm' }, 'axial', (2 / 0.0108) * Math.tan(Math.PI / 9) * 0.8, 1e-12, 'relative'],
  ]),
  ...sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
    ['7,780 N over 3,470 N', 'margin', { capacity: 7780, demand: 3470 }, 'margin', 7780 / 3470, 1e-12, 'relative'],
    ['10 N·m, thrust doubled, to the power 3/2, 10 % faster: 10·2.828427·1.21', 'load-in-case', { load: 10, factor: 2, exponent: 1.5, speedRatio: 1.1 }, 'load', 34.223_968_5, 1e-8, 'relative'],
    ['8 N·m at 100 rad/s through 80 % at 800 rad/s: 8·100/(0.8·800) = 1.25 N·m', 'shaft-torque', { branches: [{ torque: 8, speed: 100, efficiency: 0.8 }], speed: 800 }, 'torque', 1.25, 1e-12, 'relative'],
    ['… times 1.5', 'shaft-torque', { branches: [{ torque: 8, speed: 100, efficiency: 0.8 }], speed: 800, applicationFactor: 1.5 }, 'torque', 1.875, 1e-12, 'relative'],
    ['… of which the engine gives 1 N·m only', 'shaft-torque', { branches: [{ torque: 8, speed: 100, efficiency: 0.8 }], speed: 800, limit: 1 }, 'steadyTorque', 1, 1e-12, 'relative'],
    ['5 mm bolt in 10 mm of a wall that yields at 500 MPa: 25 kN', 'hole-pressure', { diameter: '5 mm', length: '10 mm', yieldStrength: '500 MPa' }, 'capacity', 25_000, 1e-12, 'relative'],
    ['… 10 kN on 50 mm²: 200 MPa', 'hole-pressure', { diameter: '5 mm', length: '10 mm', yieldStrength: '500 MPa', force: '10 kN' }, 'pressure', 200e6, 1e-12, 'relative'],
    ['… 25 kN over 10 kN', 'hole-pressure', { diameter: '5 mm', length: '10 mm', yieldStrength: '500 MPa', force: '10 kN' }, 'margin', 2.5, 1e-12, 'relative'],
    ['200 N one way and 50 N the other leave 150 N', 'bearing-reactions', { first: 0, second: 0.1, loads: [{ at: 0.05, axial: 200 }, { at: 0.02, axial: 50, sense: -1 }] }, 'thrust', 150, 1e-12, 'relative'],
    ['5 N·m at 300 rad/s, gripping from 100: at 200 rad/s 5·(40000 − 10000)/(90000 − 10000) = 1.875 N·m', 'clutch-torque', { ratedTorque: 5, ratedSpeed: 300, engagingSpeed: 100, speed: 200 }, 'torque', 1.875, 1e-12, 'relative'],
    ['below the speed at which it grips it holds nothing', 'clutch-torque', { ratedTorque: 5, ratedSpeed: 300, engagingSpeed: 100, speed: 50 }, 'torque', 0, 0, 'absolute'],
    ['36 Hz between 30 and 40 Hz: nearest 40', 'frequency-separation', { frequency: 36, orders: [{ speed: 60 * Math.PI }, { speed: 40 * Math.PI, order: 2 }] }, 'nearest', 40, 1e-12, 'relative'],
    ['… a ninth away', 'frequency-separation', { frequency: 36, orders: [{ speed: 60 * Math.PI }, { speed: 40 * Math.PI, order: 2 }] }, 'separation', 1 / 9, 1e-12, 'relative'],
    ['30 N across and 40 N along', 'resultant', { across: 30, along: 40 }, 'force', 50, 1e-12, 'relative'],
    ['6.5 N·m on bearings 13 mm apart: 500 N each', 'bearing-couple', { moment: 6.5, distance: '13 mm' }, 'force', 500, 1e-12, 'relative'],
    ['62 °C in air of 35 °C: 27 K', 'warmth-left', { around: '35 °C', temperature: '62 °C', highest: '100 °C' }, 'rise', 27, 1e-9, 'relative'],
    ['… of the 65 K up to 100 °C', 'warmth-left', { around: '35 °C', temperature: '62 °C', highest: '100 °C' }, 'allowedRise', 65, 1e-9, 'relative'],
    ['in air that is too warm by itself it may not warm at all', 'warmth-left', { around: '110 °C', temperature: '110 °C', highest: '100 °C' }, 'allowedRise', 0, 0, 'absolute'],
    ['4 screws of 2 kN at 0.12: 960 N', 'clamp-grip', { screws: [{ preload: '2 kN', count: 4 }], friction: 0.12 }, 'force', 960, 1e-12, 'relative'],
    ['… and 2 of 1 kN: 1,200 N', 'clamp-grip', { screws: [{ preload: '2 kN', count: 4 }, { preload: '1 kN', count: 2 }], friction: 0.12 }, 'force', 1200, 1e-12, 'relative'],
    ['… on a circle of 30 mm 14.4 N·m', 'clamp-grip', { screws: [{ preload: '2 kN', count: 4 }], friction: 0.12, circle: '30 mm' }, 'torque', 14.4, 1e-12, 'relative'],
    ['M5, 12.9, stress area 14.2 mm²: 0.6·1220 MPa·14.183 mm² = 10.38 kN a plane', 'bolt-shear', { size: 'M5', propertyClass: '12.9', planes: 1 }, 'capacity', 10_382, 1e-4, 'relative'],
  ]),
  ...sourced({ document: 'Shigley, Mechanical Engineering Design', place: 'σ = 32M/πd³, τ = 16T/πd³ of a solid shaft (from memory)', kind: 'published' }, [
    ['10 mm, 10 N·m of bending: 101.859 MPa', 'shaft-strength', { outer: '10 mm', bendingMoment: 10 }, 'bending', 320 / (Math.PI * 1e-6), 1e-12, 'relative'],
    ['10 mm, 10 N·m of torque: 50.930 MPa', 'shaft-strength', { outer: '10 mm', torque: 10 }, 'shear', 160 / (Math.PI * 1e-6), 1e-12, 'relative'],
    ['both: √(101.859² + 3·50.930²) = 134.747 MPa', 'shaft-strength', { outer: '10 mm', bendingMoment: 10, torque: 10 }, 'equivalent', 134.747e6, 1e-5, 'relative'],
    ['a tube of 20 and 10 mm under 1 kN: 1000/(π·75 mm²)', 'shaft-strength', { outer: '20 mm', inner: '10 mm', pull: 1000 }, 'pull', 1000 / (Math.PI * 75e-6), 1e-12, 'relative'],
  ]),
];
