import { fact, flag, map, number, quantity, record, required, text, word, window, type Field } from '../field.ts';

export const expectField = map('Facts that the maker states and that are computed here: compared, never used.', fact('A quantity, a number or a word.', '1760 rpm'), 'name');

export const machineField = record('What the machine is.', {
  id: text('Short stable id for the logbook; the name in small letters when left out.', 'whimbrel'),
  name: required(text('Its name.', 'Whimbrel')),
  title: text('One line about it.', 'two-stroke trainer, 1.55 m'),
  mass: quantity('Ready to fly.', 'kg', '5.4 kg'),
  'drag-area': quantity('Drag of the fuselage over dynamic pressure.', 'm²', '0.02 m²', { min: 0 }),
  'vertical-drag-area': quantity('The same from above, where the wake of the main rotor blows on it in hover.', 'm²', '0.05 m²', { min: 0 }),
  'rotor-height': quantity('Main rotor above the ground as the machine stands.', 'mm', '420 mm', { above: 0 }),
  'yaw-inertia': quantity('Moment of inertia about the mast.', 'kg·m²', '0.4 kg·m²'),
  origin: text('What the axes start from: x forward, y left, z up.', 'mast axis, top face of the lower mast bearing'),
  invented: flag('Says that the machine does not exist.'),
  revision: text('Which state of the file this is.', '2026-11'),
});

export const consumableField = record('A compound, grease or cleaner.', {
  kind: required(word('What it is.', {
    threadlocker: 'compound for threads',
    retainer: 'compound for cylindrical seats',
    grease: 'grease',
    oil: 'oil',
    adhesive: 'glue',
    cleaner: 'degreaser',
  }, 'threadlocker')),
  title: text('Name as a person says it.', 'synthetic bearing grease'),
  strength: word('How hard it holds.', { low: 'small screws, undone often', medium: 'undone with hand tools', high: 'undone with heat' }, 'medium'),
  cure: quantity('Time until it has its full strength.', 'h', '24 h'),
  undo: text('How it comes off again.', 'hand tools'),
  caution: text('Danger, told before the step.', 'Wear gloves.'),
});

export const materialFields = {
  density: quantity('Mass by volume.', 'kg/m³', '2810 kg/m³'),
  'youngs-modulus': quantity('Stress by strain in tension.', 'GPa', '71.7 GPa'),
  'shear-modulus': quantity('Stress by strain in shear.', 'GPa', '26.9 GPa'),
  expansion: quantity('Strain by kelvin.', '1/K', '23e-6 1/K'),
  yield: quantity('Stress at which it stays deformed.', 'MPa', '500 MPa'),
  tensile: quantity('Stress at which it breaks.', 'MPa', '570 MPa'),
  shear: quantity('Stress at which it shears off.', 'MPa', '330 MPa'),
  'root-strength': quantity('Gears: nominal stress number of the root, σ_Flim.', 'MPa', '310 MPa'),
  'flank-strength': quantity('Gears: endurance limit of the flank, σ_Hlim.', 'MPa', '1300 MPa'),
  endurance: quantity('Stress amplitude that it bears for ever, or as long as the source says.', 'MPa', '160 MPa'),
  'max-temperature': quantity('Highest lasting temperature.', 'K', '100 °C'),
  'specific-heat': quantity('Energy by mass and kelvin.', 'J/(kg·K)', '960 J/(kg·K)'),
} as const;

export const materialField = record('A material that differs from the built-in table.', { ...materialFields, title: text('Name as a person says it.', 'aluminium 7075, plate') }, { example: 'density: 2810 kg/m³' });

export const limitField = record('A bound for a figure.', {
  of: required(text('Name of the figure.', 'speed bell')),
  'at-least': window('It must not be smaller.', undefined, '1600 rpm'),
  'at-most': window('It must not be larger.', undefined, '17000 rpm'),
  source: text('Who says so.', "maker's sheet"),
  why: text('Reason for the limit.', 'clutch bell bursts beyond'),
});

export const loadsField = record('How hard it is flown: what the loads are reckoned with.', {
  application: number('How roughly it is driven, on every torque; 1 for a motor, 1.25 for an engine and 1.5 for one of a single cylinder when left out.', '1.5', { min: 1, max: 5 }),
  'load-factor': number('Thrust in hard collective over weight; 2 when left out.', '2', { min: 1, max: 10 }),
  'tail-stop': number('Thrust of the tail rotor at its hardest stop over that in hover; 3 when left out.', '3', { min: 1, max: 20 }),
  overspeed: number('Highest rotor speed over the governed one; 1.1 when left out.', '1.1', { min: 1, max: 2 }),
  'head-moment': quantity('Moment that the head puts on the mast in hard cyclic.', 'N·m', '6 N·m', { min: 0 }),
  life: quantity('How long bearings and gears shall last; 100 h when left out.', 'h', '100 h'),
  ambient: quantity('Warmest air around the gears; 35 °C when left out.', 'K', '35 °C'),
  coldest: quantity('Coldest that meshes and locks shall bear; −10 °C when left out.', 'K', '-10 °C'),
  hottest: quantity('Hottest that they shall bear; 60 °C when left out.', 'K', '60 °C'),
  twist: quantity('How far a drive tube may twist from end to end.', '°', '3 °', { above: 0 }),
  separation: number('How far a natural frequency shall lie from what shakes, as a share of it; 0.1 when left out.', '0.1', { above: 0, max: 1 }),
}, { example: 'load-factor: 2, life: 100 h' });

/** Widens a record for the reader's `readsAs`; helps where a section only passes a record on. */
export type Reading<F> = F extends Field<infer T> ? T : never;

const flownField = {
  mass: quantity('All-up mass then; that of the machine when left out.', 'kg', '5.4 kg'),
  'rotor-speed': quantity('Speed of the main rotor then; that of the drive when left out.', 'rpm', '1760 rpm'),
  altitude: quantity('Pressure altitude then; 0 when left out.', 'm', '400 m', {}),
  warmer: quantity('Air warmer than the standard atmosphere there by.', 'K', '8 K', {}),
} as const;

export const flownSection = record('What was measured in flight: it narrows the band of what is computed.', {
  hover: record('Steady hover in still air, out of ground effect.', {
    collective: quantity('Pitch of the main blades.', '°', '6.2 °', {}),
    'fuel-flow': quantity('Fuel burnt.', 'g/min', '9 g/min'),
    current: quantity('Drawn from the pack.', 'A', '28 A'),
    ...flownField,
  }, { example: 'fuel-flow: 9 g/min' }),
}, { example: 'hover: {fuel-flow: 9 g/min}' });
