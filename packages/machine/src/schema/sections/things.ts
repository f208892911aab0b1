import { again, byShape, copies, count, direction, flag, list, map, perCopy, point, quantity, quantityOr, record, reference, referenceOr, required, size, some, text, window, word, type Field } from '../field.ts';
import type { ReferenceKind } from '../field.ts';
import { expectField } from './machine.ts';
import { thingWords } from './words.ts';

/** An access expression as written: a reference; a list, all of which; or any or all of several. */
export type WrittenAccess = string | readonly WrittenAccess[] | { readonly any?: readonly WrittenAccess[]; readonly all?: readonly WrittenAccess[] };

const accessTo: readonly ReferenceKind[] = ['part', 'joint', 'module', 'opening'];
export const accessField: Field<WrittenAccess> = again<WrittenAccess>('access', 'What must be off or undone before a hand and a tool get there.', 'boom/clamp-screw', () =>
  byShape('What must be off or undone before a hand and a tool get there; a list means all of them.', '[cap, {any: [plate-left, plate-right]}]', {
    scalar: reference('A part, joint, module or opening.', accessTo, 'cap'),
    list: list('All of these.', accessField),
    map: record('Any or all of several.', { any: list('One of these is enough.', accessField), all: list('All of these.', accessField) }, { example: 'any: [plate-left, plate-right]' }),
  }),
);

const length = (about: string, example: string) => quantity(about, 'mm', example);
const toleranced = (about: string, example: string) => size(about, 'mm', example);

/** Sizes of a part by name; the model keeps the names. Each may carry the window that it was made within. */
export const sizeFields = {
  bore: toleranced('Hole.', '6 mm'),
  'housing-bore': toleranced('Thrust bearings: hole of the loose washer.', '5.2 mm'),
  outer: toleranced('Outer diameter.', '13 mm'),
  inner: toleranced('Inner diameter of a tube.', '26 mm'),
  diameter: toleranced('Diameter of a pin or shaft.', '8 mm'),
  width: toleranced('Along the axis: bearings, rings, gears.', '5 to 4.88 mm'),
  length: toleranced('Along the axis: shafts, tubes, posts.', '14 ±0.02 mm'),
  height: toleranced('Across the plate.', '20 mm'),
  thickness: toleranced('Plates, shims, washers.', '2 mm'),
  centre: toleranced('Blades: centre of mass from the bolt.', '58 mm'),
  'ball-diameter': toleranced('Bearings: one ball.', '2 mm'),
  'pitch-diameter': toleranced('Bearings: circle of ball centres.', '9.5 mm'),
} as const;

export const partKinds = {
  part: 'anything else',
  plate: 'plate', post: 'post between plates', tube: 'tube', shaft: 'shaft', hub: 'hub', housing: 'block or housing', lever: 'lever or horn', cover: 'cover or canopy',
  gear: 'gear', pulley: 'toothed pulley', belt: 'toothed belt', fan: 'cooling fan', bell: 'clutch bell', shoes: 'clutch with shoes', blade: 'rotor blade', grip: 'blade grip',
  shim: 'thin ring that takes up play', washer: 'washer', spacer: 'ring that keeps a distance', key: 'feather key', ball: 'ball of a ball link', spring: 'spring', seal: 'seal', damper: 'rubber damper', magnet: 'magnet',
  'deep-groove': 'radial ball bearing', 'thrust-ball': 'thrust ball bearing', 'angular-contact': 'angular contact ball bearing', needle: 'needle bearing', bush: 'plain bearing', 'one-way': 'one-way clutch',
  'threaded-rod': 'rod with two threaded ends',
  motor: 'engine or motor', servo: 'servo', sensor: 'sensor', battery: 'battery', tank: 'fuel tank', electronics: 'receiver, controller and the like',
} as const;

export const partFields = {
  kind: word('What it is; `part` when left out.', partKinds, 'deep-groove'),
  type: reference('A repeated kind from types, whose entries it takes.', ['type'], 'ball-6x13'),
  copies: copies('How many, or their names.'),
  material: text('Material, by its name in the table.', 'aluminium 7075'),
  mass: quantity('Of one.', 'g', '9 g'),
  at: perCopy(point('Where its centre is, from the origin: forward, left, up.', '[40 mm, 0 mm, 96 mm]')),
  lies: direction('How its length lies; of a shaft its axis when left out. With it a part counts as a rod, tube or box in moments of inertia, else as a point.', 'aft'),
  ...sizeFields,
  sizes: list('Shims: the thicknesses in the bag.', byShape('Thickness; one of it lies in the bag, or as many as count says.', '0.1 mm', {
    scalar: length('Thickness; one of it.', '0.1 mm'),
    map: record('Several of one thickness.', { thickness: required(length('Thickness.', '0.1 mm')), count: required(count('How many lie in the bag.', '2', 1, 100)) }),
  }), {}, '[0.05 mm, {thickness: 0.1 mm, count: 2}]'),
  dynamic: quantity('Dynamic load rating.', 'N', '1080 N'),
  static: quantity('Static load rating.', 'N', '440 N'),
  'max-torque': quantity('One-way clutches: torque that its maker allows.', 'N·m', '18 N·m'),
  balls: count('Bearings: number of balls.', '8', 3, 200),
  'housing-fit': text('Bearings: how the hole that takes it is made, after ISO 286. A press joint that holds it may say so as its `fit`.', 'N7'),
  thread: text('Thread, for rods and ends.', 'M3'),
  grease: reference('What it is greased with.', ['consumable'], 'ball-grease'),
  'turns-with': reference('Loose things in a stack, and rings driven over a ball: the part that they turn with.', ['part'], 'tail-hub/hub'),
  'moves-on': reference('Part that it slides on.', ['part'], 'tail-end/shaft'),
  facing: map('Only what is a choice: the open side of a cage, a seal.', text('Where it looks: an end of the stack.', 'outboard'), 'name'),
  ground: flag('What everything is finally mounted on.'),
  until: reference('Shims: the measurement that decides its size.', ['measurement'], 'play'),
  behind: accessField,
  code: text('Order code.', 'W-113'),
  price: text('Price with currency.', '18.50 EUR'),
  spares: count('How many lie in the drawer.', '2', 0, 10_000),
  expect: expectField,
  ...thingWords,
} as const;

const partDerived = { teeth: 'the coupling that the gear belongs to: write it at its driver or driven', speed: 'the shaft that it is on', load: 'the loads of its stack', rank: 'the joints that hold it', 'tight-washer': 'the load path', 'loose-washer': 'the load path' };
export const partField = record('A part.', partFields, { derived: partDerived, example: 'material: steel, mass: 21 g' });

export const jointKinds = {
  screw: 'screw into a thread', 'set-screw': 'screw without a head', bolt: 'through bolt with its nut', nut: 'nut on a thread', stud: 'stud or threaded ball', 'threaded-end': 'part with a thread of its own', 'threaded-rod': 'rod with two threads',
  pin: 'pin through a hole', circlip: 'ring in a groove', clamp: 'slit that is squeezed', press: 'press fit', bond: 'glued seat', 'ball-link': 'link snapped on a ball',
} as const;
export const lockGrades = {
  insert: 'nylon insert', low: 'compound, low strength', medium: 'compound, medium strength', high: 'compound, high strength', retaining: 'retaining compound', wire: 'locking wire', tab: 'tab washer', press: 'press fit', none: 'no lock, on purpose',
} as const;

const lockText = referenceOr('A grade, or the consumable that locks it; several back each other up.', ['consumable'], lockGrades, 'medium');

export const jointFields = {
  kind: required(word('How it joins.', jointKinds, 'screw')),
  type: reference('A repeated kind from types, whose entries it takes.', ['type'], 'cap-screw-m3'),
  copies: copies('How many, or their names.'),
  in: perCopy(reference('Part that has the thread, hole or seat.', ['part', 'joint'], 'frame/sides')),
  on: perCopy(reference('Part that has the thread or seat on its outside.', ['part', 'joint'], 'input-shaft')),
  holds: perCopy(some(reference('What it keeps in place: parts, or another joint.', ['part', 'joint'], 'plate-left'))),
  head: text('Head and drive.', 'socket'),
  thread: text('Thread.', 'M3'),
  hand: word('Hand of the thread; right when left out.', { right: 'tightens clockwise', left: 'tightens counter-clockwise' }, 'left'),
  class: text('Strength class.', '12.9'),
  material: text('Material, by its name in the table.', 'hardened steel'),
  engagement: length('Thread in thread.', '6 mm'),
  length: length('Overall, or under the head.', '12 mm'),
  circle: length('Diameter of the circle on which its copies stand, where torque goes through them by friction.', '32 mm'),
  diameter: length('Pins, seats.', '2 mm'),
  onto: word('Set screws: what the tip meets.', { flat: 'a ground flat', dimple: 'a drilled dimple' }, 'flat'),
  fit: text('How it sits.', 'slide'),
  lock: some(lockText),
  torque: quantityOr('Tightening torque; computed when left out.', 'N·m', { snug: 'by feel, without play and without load' }, '1.1 N·m'),
  'goes-in': direction('Direction in which a threaded end is screwed in.', 'down'),
  enough: count('How many of its copies suffice; all when left out.', '3'),
  group: text('Joints of one group share one `enough`.', 'case'),
  backup: flag('A second line that is not needed while the first one holds.'),
  carries: some(word('What it passes on, where the default of its kind is wrong.', { torque: 'torque', place: 'keeps in place', motion: 'motion of the controls' }, 'torque')),
  tool: text('Tool.', 'hexagon key 2.5 mm'),
  mark: flag('Gets a witness mark; false for none.'),
  behind: accessField,
  code: text('Order code.', 'W-201'),
  price: text('Price with currency.', '0.20 EUR'),
  spares: count('How many lie in the drawer.', '10', 0, 10_000),
  expect: expectField,
  ...thingWords,
} as const;

const jointDerived = { tightens: 'goes-in, hand and sense of rotation', loosens: 'goes-in, hand and sense of rotation', preload: 'torque, thread and friction', cure: 'the consumable that locks it' };
export const jointField = record('What keeps parts together.', jointFields, { derived: jointDerived, alternative: 'type' });

const { kind: _jointKind, ...jointOnly } = jointFields;
const { kind: _partKind, ...partOnly } = partFields;
/** A repeated kind may be of parts or of joints. */
export const typeField = record('A kind of part or joint that repeats.', { ...jointOnly, ...partOnly, kind: required(word('What it is.', { ...partKinds, ...jointKinds }, 'deep-groove')) }, { derived: { ...partDerived, ...jointDerived } });

const stackItem = byShape('What lies next: a part, a shoulder, or the joint that closes the stack.', 'bearing-low', {
  scalar: reference('A part, or the joint that closes the stack.', ['part', 'joint'], 'bearing-low'),
  map: record('A shoulder of a part.', { shoulder: required(reference('Part that has the shoulder.', ['part'], 'input-shaft')) }),
});
const stackLoad = byShape('What pushes along it.', 'front-bevel', {
  scalar: reference('Coupling whose thrust it takes.', ['coupling'], 'front-bevel'),
  map: record('A part that pushes.', { pushes: required(reference('Part that pushes.', ['part'], 'grip')), towards: required(text('An end of the stack.', 'outboard')) }),
});

const columnRoom = (whose: string, example: string) => toleranced(`Between the two faces of ${whose} that stop the rings: from one end to the other, or across what lies between the bearings.`, example);

export const stackField = record('Parts in a row on a shaft or spindle.', {
  spindle: required(reference('Part that the bores sit on.', ['part'], 'input-shaft')),
  housing: some(reference('Part or parts that the outer rings sit in.', ['part'], 'block-low')),
  ends: required(list('Two words for its two directions.', text('A direction.', 'up'), { min: 2, max: 2 }, '[down, up]')),
  order: required(list('From the first end to the second.', stackItem, { min: 1 }, '[{shoulder: input-shaft}, bearing-low, nut]')),
  loads: list('What pushes along it.', stackLoad, {}, '[front-bevel]'),
  room: record('Lengths between the faces that stop the rings, from which end play follows.', { spindle: columnRoom('the spindle', '31.2 to 31.25 mm'), housing: columnRoom('the housing', '4 to 3.97 mm') }, { example: 'spindle: 31.2 to 31.25 mm, housing: 4 to 3.97 mm' }),
  preload: window('How far the rings are to be pressed together, by their sizes alone.', 'mm', '0.01 to 0.03 mm', { min: 0 }),
  expect: expectField,
  ...thingWords,
}, { derived: { facing: 'the load path; a maker’s drawing goes under expect', 'load-path': 'order and loads', 'end-play': 'room and the sizes of what lies in it' } });

/** What is measured at the bench; any other words are the name of a figure. */
export const measuredQuantities = {
  'end-play': 'how far it moves along its axis', drag: 'how hard it turns', backlash: 'play between teeth', gap: 'distance', length: 'length', mass: 'mass', runout: 'how far it runs untrue', pull: 'force to move it', count: 'how many',
} as const;

/** How something moves under the hand, from the tightest to the loosest; common practice, no source. */
export const feels = { binds: 'catches or sticks', snug: 'moves with some force', free: 'moves by itself, no play', loose: 'has play' } as const;

export const measurementField = record('Something to measure or feel.', {
  of: required(text('Which quantity of what: end-play, drag, backlash, gap, length, mass, runout, pull, count, or the name of a figure.', 'end-play input')),
  with: text('Tool.', 'dial gauge'),
  window: window('What is right; from the figure of that name when left out.', undefined, '0 to 0.02 mm'),
  ask: text('A question of feel, answered yes when all is well; with a go gauge, go. With wanted it is answered in one of four words.', 'Does the shaft coast for a turn or more?'),
  wanted: some(word('How it must feel, where four words say more than yes and no; in place of a window.', feels, 'free')),
  'set-by': some(reference('Joints that adjust it.', ['joint'], 'mount-screw')),
  expect: expectField,
  ...thingWords,
});

export const stepField = record('Work that cannot be derived.', {
  do: required(text('One sentence, command first, at most 20 words.', 'Turn the shaft twenty times by hand.')),
  after: some(reference('What comes first.', ['part', 'joint', 'stack', 'measurement', 'step'], 'play')),
  before: some(reference('What comes later.', ['part', 'joint', 'stack', 'measurement', 'step'], 'play')),
  takes: quantity('Time of work.', 'min', '3 min'),
  ...thingWords,
});
