import { byShape, count, direction, helix, list, number, quantity, record, reference, required, text, turns, window, word } from '../field.ts';
import { expectField } from './machine.ts';

const shaftRef = reference('Shaft.', ['shaft'], 'crank');
const partRef = reference('Part that has the teeth or the face.', ['part'], 'mast/main-gear');
const reserveField = quantity('Share of what it gives that is kept back for the governor; 10 % when left out.', '%', '10 %', { min: 0, max: 0.9 });
const rpm = (about: string, example: string) => quantity(about, 'rpm', example);

export const powerField = record('What drives the machine.', {
  engine: record('Combustion engine.', {
    kind: text('Kind of engine.', 'two-stroke'),
    on: required(shaftRef),
    displacement: quantity('Swept volume.', 'cm³', '23 cm³'),
    power: quantity('Best power.', 'kW', '2.4 kW'),
    curve: list('Points of its full-throttle curve, in ascending speed; with them the best power is of no use.', record('A point.', {
      speed: required(rpm('Speed.', '13000 rpm')),
      power: required(quantity('Power there.', 'kW', '2.1 kW')),
    }), { min: 2 }),
    consumption: quantity('Fuel for each unit of work, in hover.', 'g/(kW·h)', '560 g/(kW·h)'),
    fan: quantity('Taken by the cooling fan at the governed speed.', 'W', '90 W', { min: 0 }),
    reserve: reserveField,
    speed: rpm('Governed speed.', '14600 rpm'),
    best: window('Speeds at which it pulls well.', 'rpm', '13000 to 15500 rpm', { min: 0 }),
    idle: rpm('Idle speed.', '3800 rpm'),
    turns: turns('Sense of rotation and from where it is seen.'),
    cylinders: count('Number of cylinders.', '1', 1, 12),
  }),
  motor: record('Electric motor.', {
    on: required(shaftRef),
    constant: quantity('Speed by voltage.', 'rpm/V', '500 rpm/V'),
    resistance: quantity('Of the winding, between two leads.', 'mΩ', '14 mΩ'),
    'idle-current': quantity('Current without load.', 'A', '2.1 A'),
    'controller-resistance': quantity('Of the controller.', 'mΩ', '2 mΩ', { min: 0 }),
    power: quantity('Lasting power.', 'kW', '3 kW'),
    reserve: reserveField,
    speed: rpm('Governed speed.', '19500 rpm'),
    best: window('Speeds at which it pulls well.', 'rpm', '18000 to 21000 rpm', { min: 0 }),
    turns: turns('Sense of rotation and from where it is seen.'),
    poles: count('Number of magnet poles.', '10', 2, 100),
  }),
  battery: record('Flight battery.', {
    cells: count('Cells in series.', '12', 1, 100),
    capacity: quantity('Charge of the pack.', 'mAh', '5000 mAh'),
    resistance: quantity('Of the whole pack.', 'mΩ', '24 mΩ'),
    voltage: quantity('Of the whole pack.', 'V', '44.4 V'),
    mass: quantity('Of the whole pack.', 'kg', '1.4 kg'),
    usable: quantity('Share of the charge that is flown; 80 % when left out.', '%', '80 %', { above: 0, max: 1 }),
  }, { example: 'cells: 12, capacity: 5000 mAh' }),
  tank: record('Fuel tank.', {
    part: reference('Part that is the tank, weighed empty.', ['part'], 'body/tank'),
    volume: quantity('What it holds.', 'cm³', '680 cm³'),
    density: quantity('Mass of the fuel by volume.', 'kg/m³', '740 kg/m³'),
    filled: quantity('How full it is in the mass of the machine; full when left out.', '%', '50 %', { min: 0, max: 1 }),
    usable: quantity('Share of what is in it that is flown; 85 % when left out.', '%', '85 %', { above: 0, max: 1 }),
  }, { example: 'part: body/tank, volume: 680 cm³, density: 740 kg/m³' }),
}, { example: 'engine: {on: crank, speed: 14600 rpm}' });

export const shaftField = record('Something that turns as one.', {
  title: text('Name as a person says it.', 'Tail drive tube'),
  axis: direction('How it lies: up, down, fore, aft, left, right, or a vector.'),
  part: reference('Part that is its body.', ['part'], 'mast/tube'),
  expect: expectField,
}, { example: 'axis: up', derived: { speed: 'the engine speed and the tooth counts', ratio: 'the tooth counts', turns: "the engine's sense of rotation and the couplings", direction: "the engine's sense of rotation and the couplings" } });

const choiceField = byShape('Gears or pulleys that can be bought: tooth counts, or each with code and price.', '13', {
  scalar: count('Tooth count.', '13', 3, 2000),
  map: record('One that can be bought.', {
    teeth: required(count('Tooth count.', '13', 3, 2000)),
    code: text('Order code.', 'W-113'),
    price: text('Price with currency.', '18.50 EUR'),
  }),
});

const sideField = (about: string) => record(about, {
  on: required(shaftRef),
  part: partRef,
  teeth: count('Tooth count.', '14', 3, 2000),
  choices: list('What can be bought instead.', choiceField, {}, '[13, 14, 15]'),
  shift: number('Profile shift in modules.', '0.2', { min: -2, max: 2 }),
  lies: direction('Bevels: where the gear lies from the point in which the axes cross.'),
}, { example: 'on: crank, teeth: 14', derived: { speed: 'the engine speed and the tooth counts', ratio: 'the tooth counts', helix: "the coupling's helix: the mate has the other hand", turns: "the engine's sense of rotation and the couplings", diameter: 'module, teeth and helix' } });

export const couplingField = record('What makes one shaft turn another.', {
  title: text('Name as a person says it.', 'Main mesh'),
  kind: required(word('How it works.', {
    external: 'two gears side by side',
    internal: 'a pinion inside a ring',
    bevel: 'two gears whose axes cross',
    belt: 'toothed belt',
    'centrifugal-clutch': 'grips above a speed',
    'one-way': 'drives in one sense, runs free in the other',
    rigid: 'turns as one',
  }, 'external')),
  driver: required(sideField('The side that drives.')),
  driven: required(sideField('The side that is driven.')),
  module: quantity('Normal module of the teeth.', 'mm', '1.0 mm'),
  helix: helix('Angle and hand of the driver.'),
  'pressure-angle': quantity('Normal pressure angle; 20° when left out.', '°', '20 °', { above: 0, max: Math.PI / 4 }),
  width: quantity('Common face width.', 'mm', '14 mm'),
  centre: window('Centre distance that the frame allows: fixed, or the ends of its slot.', 'mm', '65 to 67 mm', { min: 0 }),
  backlash: window('Set at assembly, along the pitch circle.', 'mm', '0.08 to 0.14 mm', { min: 0 }),
  between: text('Material of what holds its axes apart, which grows with warmth; that of the fixed parts when left out.', 'carbon plate'),
  pitch: quantity('Belts: from tooth to tooth.', 'mm', '3 mm'),
  'belt-teeth': count('Belts: tooth count of the belt.', '420', 10, 10_000),
  runs: direction('Belts: direction from driver to driven.', 'aft'),
  twist: quantity('Belts: twist from driver to driven, right-handed about that direction.', '°', '90 °', {}),
  engages: rpm('Clutches: speed at which it grips.', '5200 rpm'),
  holds: quantity('Clutches: torque that it passes on at the governed speed before it slips.', 'N·m', '4.5 N·m'),
  'max-pull': quantity('Belts: pull that its maker allows.', 'N', '120 N'),
  efficiency: quantity('Power that comes out over power that goes in.', '%', '97 %', { above: 0, max: 1 }),
  expect: expectField,
}, { derived: { ratio: 'the tooth counts', speed: 'the engine speed and the tooth counts', 'mesh-frequency': 'speed and teeth', thrust: 'helix, sense of rotation and torque', backlash: 'centre distance, shift and tolerance; what you measure stands under measurements' } });

const sectionField = byShape('Airfoil: its name, or a table of your own.', 'NACA 0012', {
  scalar: text('Name of the airfoil.', 'NACA 0012'),
  map: record('Lift and drag by angle of attack: one row for each Reynolds number, one value for each angle.', {
    reynolds: required(list('Reynolds numbers, ascending.', number('Reynolds number.', '200000', { above: 0 }), { min: 1 })),
    angles: required(list('Angles of attack, ascending.', quantity('Angle of attack.', '°', '4 °', {}), { min: 2 })),
    lift: required(list('Lift coefficients.', list('Row.', number('Lift coefficient.', '0.42')), { min: 1 })),
    drag: required(list('Drag coefficients.', list('Row.', number('Drag coefficient.', '0.014')), { min: 1 })),
  }, { example: 'reynolds: [2e5], angles: [0 °, 4 °], lift: [[0, 0.42]], drag: [[0.011, 0.014]]' }),
});

export const rotorField = record('A set of blades.', {
  title: text('Name as a person says it.', 'Main rotor'),
  on: required(shaftRef),
  blades: count('Number of blades.', '2', 1, 16),
  diameter: quantity('Tip to tip.', 'mm', '1550 mm'),
  chord: quantity('Blade depth.', 'mm', '58 mm'),
  section: sectionField,
  twist: quantity('Of the blade from root to tip; negative washes out.', '°', '-4 °', { min: -Math.PI / 2, max: Math.PI / 2 }),
  roughness: number('Drag of these blades over that of their section; 1.1 when left out.', '1.2', { above: 0, max: 10 }),
  root: quantity('Where the blade begins, from the axis.', 'mm', '140 mm'),
  stops: window('Pitch at its stops: from end to end of collective or tail.', '°', '-8 to 26 °', { min: -Math.PI / 2, max: Math.PI / 2 }),
  arm: quantity('Tail rotors: from the main mast; from the places of both hubs when left out.', 'mm', '950 mm'),
  blockage: quantity('Tail rotors: share of the thrust that the fin takes.', '%', '5 %', { min: 0, max: 0.9 }),
  hinge: quantity('Flapping hinge, from the axis.', 'mm', '0 mm', { min: 0 }),
  'bolt-radius': quantity('Blade bolt, from the axis.', 'mm', '92 mm'),
  'blade-mass': quantity('One blade.', 'g', '168 g'),
  'blade-centre': quantity('Centre of mass of one blade, from its bolt.', 'mm', '330 mm'),
  'hub-inertia': quantity('What turns with it besides the blades.', 'kg·m²', '0.002 kg·m²', { min: 0 }),
  'grip-mass': quantity('What hangs on one thrust bearing besides the blade.', 'g', '74 g'),
  'grip-centre': quantity('Centre of that, from the axis.', 'mm', '70 mm'),
  'grip-moment': quantity('Bending moment that flap and drag of one blade put across the bearings of its grip, at most.', 'N·m', '6 N·m', { min: 0 }),
  damper: quantity('Stiffness of the dampers against flapping: moment of the head over the tilt of its disc.', 'N·m/rad', '60 N·m/rad'),
  wanted: window('Rotor speeds that the builder wants.', 'rpm', '1700 to 1800 rpm', { min: 0 }),
  part: reference('Part that is its hub.', ['part'], 'head/hub'),
  at: list('Where its feathering axis meets its shaft: forward, left, up.', quantity('Coordinate.', 'mm', '0 mm', {}), { min: 3, max: 3 }, '[0 mm, 0 mm, 200 mm]'),
  cyclic: quantity('Cyclic pitch that the builder wants to either side.', '°', '8 °', { above: 0, max: Math.PI / 2 }),
  'above-boom': quantity('From its feathering axis down to the top of the boom, under the blade tips.', 'mm', '210 mm'),
  'blade-play': quantity('How far a blade turns in its grip, from stop to stop: with the grip held, a pitch gauge on the blade.', '°', '0.05 °', { min: 0, max: Math.PI / 2 }),
  'bearing-play': quantity('Play of its feathering bearings: how far a grip goes up and down at the ball of its pitch arm.', 'mm', '0.02 mm', { min: 0 }),
  expect: expectField,
}, { derived: { speed: 'the engine speed and the tooth counts', turns: "the engine's sense of rotation and the couplings", 'tip-speed': 'rotor speed and diameter', ratio: 'the tooth counts', solidity: 'blades, chord and diameter' } });
