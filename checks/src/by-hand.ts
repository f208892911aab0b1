import type { Check, CheckValue } from './check.ts';

/** Title with the working, calculation, inputs, output, expected value in SI. */
type Row = readonly [title: string, calculation: string, inputs: Readonly<Record<string, unknown>>, output: string, expected: CheckValue];

const linearBlade = { blades: 2, bladeMass: '200 g', boltRadius: '100 mm', bladeCentre: '250 mm', radius: '700 mm', gripMass: '100 g', gripCentre: '50 mm' };
const needed = { loads: [{ power: '588 W', stages: [{ efficiency: 0.98 }] }, { power: '38 W', stages: [{ efficiency: 0.95 }] }], fan: '100 W', fanSpeed: '12000 rpm', speed: '6000 rpm', density: 1.225 };
const stand = { curve: [{ speed: '1000 rad/s', power: '1000 W' }, { speed: '1400 rad/s', power: '2000 W' }], speed: '1200 rad/s', displacement: '25 cm³', reserve: 0.2 };
const motor = { speedConstant: 50, resistance: 0.02, noLoadCurrent: 2, cells: 10, cellVoltage: 4, packResistance: 0, torque: 0.5, wantedSpeed: '1500 rad/s' };
// Tail: σ = 2·0.03/(π·0.15), stalls at 0.14 before its stop; thrust 0.14·σ·ρ·πR²·(i·Ω·R)² = 0.14·0.06·1.225·0.15·(0.75 Ω)² = 0.00086822 Ω².
const tail = { blades: 2, radius: 0.8, rootCutout: 0.1, chord: 0.06, airfoil: 'NACA 0012', speed: '180 rad/s', lowSpeed: '150 rad/s', highSpeed: '200 rad/s', thrust: '60 N', power: '1800 W', tailRatio: 5, arm: '1 m', tailBlades: 2, tailRadius: '150 mm', tailChord: '30 mm', maximumPitch: '40 °' };
const tailThrust = 0.14 * 0.06 * 1.225 * 0.15 * 0.75 ** 2;
const tailBand = Array.from({ length: 33 }, (_, j) => 150 + (50 * j) / 32);
const smallBearing = { rollingElements: 8, elementDiameter: '2 mm', pitchDiameter: '8 mm', shaftSpeed: '6000 rpm' };

const rows: readonly Row[] = [
  ['5/1 of 1,760 rpm backwards is −8,800 rpm', 'shaft-speed', { ratioNumerator: -5, ratioDenominator: 1, sourceSpeed: '1760 rpm' }, 'speed', (-8800 * Math.PI) / 30],
  ['17 and 85: common factor 17', 'tooth-hunting', { teeth1: 17, teeth2: 85 }, 'commonFactor', 17],
  ['18 and 84: lcm 252, 252/18 = 14 turns of the pinion', 'tooth-hunting', { teeth1: 18, teeth2: 84 }, 'pinionTurnsToRepeat', 14],
  ['18 and 84: one pair of teeth meets once in 252 meshes', 'tooth-hunting', { teeth1: 18, teeth2: 84 }, 'huntingFrequencyRatio', 1 / 252],
  ['20 teeth at 3,000 rpm = 50 turns a second: 1,000 Hz', 'mesh-frequency', { teeth: 20, shaftSpeed: '3000 rpm' }, 'frequency', 1000],
  ['20 and 50 teeth: lcm 100, 1,000 Hz/100 = 10 Hz', 'mesh-frequency', { teeth: 20, shaftSpeed: '3000 rpm', mateTeeth: 50 }, 'huntingFrequency', 10],
  ['25 teeth at 6,000 rpm: 2,500 Hz', 'belt-tooth-frequency', { pulleyTeeth: 25, shaftSpeed: '6000 rpm' }, 'frequency', 2500],
  ['2,500 teeth a second on a belt of 500: 5 Hz', 'belt-tooth-frequency', { pulleyTeeth: 25, shaftSpeed: '6000 rpm', beltTeeth: 500 }, 'beltFrequency', 5],
  ['two blades at 1,800 rpm: 60 Hz', 'blade-passing', { blades: 2, speed: '1800 rpm' }, 'frequency', 60],
  ['two magnets at 15,000 rpm = 250 turns a second: 500 Hz', 'sensor-pulses', { magnets: 2, shaftSpeed: '15000 rpm' }, 'frequency', 500],
  ['two magnets: two pulses a turn', 'sensor-pulses', { magnets: 2, shaftSpeed: '15000 rpm' }, 'pulsesPerTurn', 2],
  ['two magnets: two pulses a turn of the sensor shaft', 'governor-ratio', { sensorTurns: 17, rotorTurns: 2, magnets: 2, rotorSpeed: '1800 rpm' }, 'pulsesPerTurn', 2],
  ['a sensor shaft that makes 17 turns to 2 of the rotor, two magnets: 17 pulses a turn', 'governor-ratio', { sensorTurns: 17, rotorTurns: 2, magnets: 2, rotorSpeed: '1800 rpm' }, 'pulsesPerRotorTurn', 17],
  ['17 pulses a turn at 30 turns a second: 510 Hz', 'governor-ratio', { sensorTurns: 17, rotorTurns: 2, magnets: 2, rotorSpeed: '1800 rpm' }, 'frequency', 510],
  ['170 m/s in air with 340 m/s: 0.5', 'tip-mach', { tipSpeed: '170 m/s', speedOfSound: '340 m/s' }, 'tipMach', 0.5],
  ['588/0.98 + 38/0.95 + 100/2³ = 600 + 40 + 12.5 W', 'power-needed', needed, 'power', 652.5],
  ['a fan at half its speed takes an eighth', 'power-needed', needed, 'fanPower', 12.5],
  ['640 W go in, 626 W come out', 'power-needed', needed, 'losses', 14],
  ['652.5 W at 100 turns a second: 652.5/200π', 'power-needed', needed, 'torque', 652.5 / (200 * Math.PI)],
  ['half way between 1,000 and 2,000 W', 'engine-power', stand, 'standardPower', 1500],
  ['1,500 W less a fifth', 'engine-power', stand, 'available', 1200],
  ['1,500 W at 1,200 rad/s', 'engine-power', stand, 'torque', 1.25],
  ['1,500 W · 2π/(25 cm³ · 1,200 rad/s)', 'engine-power', stand, 'meanPressure', (1500 * 2 * Math.PI) / 0.03],
  ['0.8^1.2 at four fifths of the pressure', 'engine-power', { ...stand, dryPressure: 0.8 * 101_325 }, 'airFactor', 0.8 ** 1.2],
  ['(288.15/303.15)^0.6 at 30 °C', 'engine-power', { ...stand, temperature: '30 °C' }, 'airFactor', (288.15 / 303.15) ** 0.6],
  ['at the speed of the peak the peak', 'engine-power', { peakPower: '2 kW', peakSpeed: '14000 rpm', speed: '14000 rpm' }, 'power', 2000],
  ['half the speed: 2 kW · (1/2 + 1/4 − 1/8)', 'engine-power', { peakPower: '2 kW', peakSpeed: '14000 rpm', speed: '7000 rpm' }, 'power', 1250],
  ['(40 V − 1,500/50 V)/20 mΩ − 2 A = 498 A, over 50, times 1,500 rad/s', 'electric-drive', motor, 'powerAvailable', 14_940],
  ['0.5 N·m · 50 + 2 A = 27 A: 27² · 20 mΩ + 2 A · 30 V', 'electric-drive', motor, 'losses', 74.58],
  ['824.58 W from 40 V are 20.6145 A, which tell of the 750 W that they make', 'electric-drive', { ...motor, measuredCurrent: 20.6145 }, 'measuredPower', 750],
  ['0.5 l of 0.72 kg/l at 0.1 g/s: one hour', 'endurance', { profile: [{ power: '500 W' }], fuel: { volume: '500 ml', density: '0.72 kg/l', specificConsumption: 2e-7 } }, 'time', 3600],
  ['1,305 W for 652.5 W', 'power-needed', { ...needed, available: '1305 W' }, 'inHand', 2],
  ['588 W of (640 + 12.5) W; of 652.5 W at hand twice over 640: 588 · (1,292.5 − 12.5)/640', 'power-needed', { ...needed, available: '1292.5 W' }, 'firstAvailable', 1176],
  ['0.7 · 340.294 m/s at 5 · 0.15 m: 317.6 rad/s', 'tail-speeds', tail, 'fastSpeed', (0.7 * 340.294) / 0.75],
  ['1,800 W/180 rad/s on 1 m are 10 N: √(10 N/0.00086822)', 'tail-speeds', tail, 'leastSpeedFull', Math.sqrt(10 / tailThrust)],
  ['33 speeds from 150 to 200 rad/s', 'tail-speeds', tail, 'mainSpeed', tailBand],
  ['10 N at every speed', 'tail-speeds', tail, 'neededFull', tailBand.map(() => 10)],
  ['0.00086822 Ω²', 'tail-speeds', tail, 'available', tailBand.map((main) => tailThrust * main ** 2)],
  ['0.00086822 · 180² N over 10 N', 'tail-speeds', tail, 'fullMargin', (tailThrust * 180 ** 2) / 10],
  ['600 W, of which 240 W for the lift: one radius up 15/16 of these', 'ground-effect', { height: '0.8 m', radius: '0.8 m', inducedPower: '240 W', profilePower: '360 W' }, 'power', 585],
  ['5 kg · 9.80665 m/s² under a disc of π m², a hundredth of which is fuselage', 'hover-thrust', { mass: '5 kg', radius: '1 m', dragArea: Math.PI / 100 }, 'thrust', (5 * 9.80665) / 0.99],
  ['a hundredth of that thrust', 'hover-thrust', { mass: '5 kg', radius: '1 m', dragArea: Math.PI / 100 }, 'download', (0.01 * 5 * 9.80665) / 0.99],
  ['200 rad/s at 0.75 m: 150 m/s', 'tip-speed', { speed: '200 rad/s', radius: '0.75 m' }, 'tipSpeed', 150],
  ['½ · 0.1 kg·m² · (200 rad/s)² = 2,000 J', 'stored-energy', { rotorInertia: 0.1, speed: '200 rad/s' }, 'storedEnergy', 2000],
  ['0.3 kg from 0 to 1 m: I = 0.3/3 = 0.1 kg·m²', 'uniform-blade', { blades: 2, bladeMass: '300 g', radius: '1 m', speed: 0 }, 'inertia', 0.1],
  ['0.3 kg from 0 to 1 m: centre of mass in the middle', 'uniform-blade', { blades: 2, bladeMass: '300 g', radius: '1 m', speed: 0 }, 'centreOfMass', 0.5],
  ['0.3 kg with its centre at 0.5 m: 0.15 kg·m', 'uniform-blade', { blades: 2, bladeMass: '300 g', radius: '1 m', speed: 0 }, 'staticMoment', 0.15],
  ['two blades of 0.1 kg·m²', 'uniform-blade', { blades: 2, bladeMass: '300 g', radius: '1 m', speed: 0 }, 'rotorInertia', 0.2],
  ['0.1 m to the bolt and 0.25 m on', 'linear-blade', linearBlade, 'centreOfMass', 0.35],
  ['0.5 kg/m at the bolt falling to 1/6 at the tip: ∫(0.5 − 5s/9)(0.1 + s)² ds from 0 to 0.6 = 0.03 kg·m²', 'linear-blade', linearBlade, 'inertia', 0.03],
  ['two blades of 0.03 kg·m² and two grips of 0.1 kg at 0.05 m: 0.0605 kg·m²', 'linear-blade', linearBlade, 'rotorInertia', 0.0605],
  ['14,600 rpm through 17/85 and 54/11: ratio 85/17 · 11/54 = 55/54', 'drive-ratio', { stages: [{ driver: 17, driven: 85 }, { driver: 54, driven: 11 }], inputSpeed: '14600 rpm' }, 'ratio', 55 / 54],
  ['1,800 rpm are 30 turns a second', 'blade-passing', { blades: 2, speed: '1800 rpm' }, 'rotationFrequency', 30],
  ['17 turns to 2: ratio 8.5', 'governor-ratio', { sensorTurns: 17, rotorTurns: 2, magnets: 2, rotorSpeed: '1800 rpm' }, 'ratio', 8.5],
  ['8.5 times 1,800 rpm = 15,300 rpm', 'governor-ratio', { sensorTurns: 17, rotorTurns: 2, magnets: 2, rotorSpeed: '1800 rpm' }, 'sensorSpeed', (15_300 * Math.PI) / 30],
  ['17 and 85 teeth of module 1: (17 + 85)/2 = 51 mm', 'centre-distance', { normalModule: '1 mm', teeth1: 17, teeth2: 85 }, 'zeroBacklashCentreDistance', 0.051],
  ['17 teeth in a ring of 85, module 1: (85 − 17)/2 = 34 mm', 'centre-distance', { normalModule: '1 mm', teeth1: 17, teeth2: 85, kind: 'internal' }, 'referenceCentreDistance', 0.034],
  ['8/2 · (1 − 2/8) = 3', 'bearing-frequencies', smallBearing, 'outerRaceRatio', 3],
  ['8/2 · (1 + 2/8) = 5', 'bearing-frequencies', smallBearing, 'innerRaceRatio', 5],
  ['8/(2 · 2) · (1 − (2/8)²) = 1.875', 'bearing-frequencies', smallBearing, 'elementRatio', 1.875],
  ['½ · (1 − 2/8) = 0.375', 'bearing-frequencies', smallBearing, 'cageRatio', 0.375],
  ['3 times 100 turns a second', 'bearing-frequencies', smallBearing, 'outerRace', 300],
  ['5 times 100 turns a second', 'bearing-frequencies', smallBearing, 'innerRace', 500],
  ['1.875 times 100 turns a second', 'bearing-frequencies', smallBearing, 'element', 187.5],
  ['0.375 times 100 turns a second', 'bearing-frequencies', smallBearing, 'cage', 37.5],
];

export const byHand: readonly Check[] = rows.map(([title, calculation, inputs, output, expected]) => ({
  calculation,
  title,
  source: { document: 'Worked by hand in the title', kind: 'by hand' },
  inputs,
  output,
  expected,
  tolerance: 1e-12,
  mode: 'relative',
}));
