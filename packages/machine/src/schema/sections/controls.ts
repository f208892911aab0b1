import { again, copies, count, direction, interval, list, map, perCopy, quantity, record, reference, required, text, window, word, type Field } from '../field.ts';
import { wordFields } from './words.ts';

const point = (about: string) => list(about, quantity('Coordinate.', 'mm', '40 mm', {}), { min: 3, max: 3 }, '[44 mm, 0 mm, 30 mm]');
const movers = ['servo', 'lever', 'swashplate', 'slider', 'link', 'part', 'joint', 'rotor'] as const;
const play = (about: string, example = '0.02 mm') => quantity(about, 'mm', example, { min: 0 });
const rightAngle = Math.PI / 2;

export const controlsField = record('What moves the blades.', {
  swashplate: record('Swashplate.', {
    on: required(reference('Shaft.', ['shaft'], 'mast')),
    arms: count('Number of driven balls.', '3', 2, 8),
    radius: quantity('From the axis to a driven ball.', 'mm', '40 mm'),
    at: point('Its centre, level and at mid travel.'),
    'turns-with': reference('Part that turns its inner ring.', ['part'], 'head/hub'),
    guide: point('Lower ring: the point that its guide keeps from turning, from its centre: forward, left, up. Straight aft when left out.'),
    driver: point('Upper ring: the point that its driver keeps with the blade, from its centre: outboard, towards the leading edge, up. In line with the ball of the pitch link when left out.'),
    tilt: quantity('How far it can lean before something touches.', '°', '14 °', { above: 0, max: rightAngle }),
    rise: window('How far its centre can go from there along the mast.', 'mm', '-9 to 9 mm'),
    play: play('Play of its bearing along the mast.'),
  }),
  servos: map('Servos by id.', record('A servo.', {
    title: text('Name as a person says it.', 'Cyclic servo'),
    copies: copies('How many, or their names.'),
    part: perCopy(reference('Part that is the servo; what moves with its arm is followed from there.', ['part'], 'servos/cyclic')),
    arm: perCopy(quantity('From its axis to the ball.', 'mm', '16 mm')),
    holes: list('Holes of its arm, from the axis: what `arm` could be instead.', quantity('From the axis.', 'mm', '15 mm'), {}, '[13 mm, 15 mm, 17 mm]'),
    points: perCopy(direction('Where its arm points at mid travel.', 'aft')),
    travel: perCopy(quantity('From end to end.', '°', '90 °')),
    pulses: window('Pulses from end to end of that travel; mid travel lies midway.', 'µs', '1020 to 2020 µs', { min: 0 }),
    step: quantity('Least change of the pulse that moves it.', 'µs', '1 µs'),
    spline: count('Teeth on which its arm sits.', '25', 2, 200),
    play: perCopy(quantity('Play of its gears, at the arm.', '°', '0.2 °', { min: 0, max: rightAngle })),
    axis: perCopy(direction('How its output shaft lies.', '[0, 1, 0]')),
    pivot: perCopy(point('Point of its axis level with the ball of its arm.')),
    azimuth: perCopy(quantity('Around the mast from forward, counter-clockwise from above.', '°', '120 °', {})),
    torque: perCopy(quantity('Stall torque.', 'N·m', '1.4 N·m')),
    speed: perCopy(quantity('Speed without load.', '°/s', '600 °/s')),
  }, { example: 'arm: 16 mm, travel: 90 °', derived: { trim: 'the lengths that its link can be set to', direction: 'where its arm points and what it moves' } })),
  levers: map('Levers and bell-cranks by id.', record('A lever between two links, or between a link and a slider.', {
    title: text('Name as a person says it.', 'Tail lever'),
    copies: copies('How many, or their names.'),
    part: perCopy(reference('Part that is the lever.', ['part'], 'tail-hub/lever')),
    pivot: required(perCopy(point('A point of its axis.'))),
    axis: required(perCopy(direction('How its axis lies.', 'up'))),
    on: perCopy(reference('Lever that its pivot rides on; the frame when left out.', ['lever'], 'collective')),
    play: perCopy(play('Play of its pivot.')),
  }, { example: 'pivot: [-904 mm, 18 mm, -34 mm], axis: up' })),
  slider: record('What moves along the tail shaft.', {
    on: required(reference('Shaft that it slides on.', ['shaft'], 'tail-rotor')),
    part: reference('Part that is the slider.', ['part'], 'tail-hub/slider'),
    at: required(point('Its centre at mid travel, on the axis of the shaft.')),
    by: reference('Lever whose pin takes it along; left out where a link does.', ['lever'], 'tail-lever'),
    pin: point('That pin at mid travel.'),
    travel: window('How far it can go from there; plus is away from the boom.', 'mm', '-7 to 7 mm'),
    play: play('Play of its bearing along the shaft, and of what takes it along.'),
  }),
  links: map('Links by id.', record('A rod between two balls.', {
    title: text('Name as a person says it.', 'Servo link'),
    copies: copies('How many, or their names.'),
    from: required(reference('What moves it.', movers, 'cyclic')),
    to: required(reference('What it moves.', movers, 'swashplate')),
    'from-ball': perCopy(point('Its ball on what moves it, at mid travel: on a lever from the origin, on swashplate or slider from its centre: outboard, towards the leading edge, up the shaft. A servo has it from its arm.')),
    'to-ball': perCopy(point('Its ball on what it moves, at mid travel: on a lever or slider from the origin; on the swashplate from its centre: forward, left, up; on a rotor at pitch 0 from where its feathering axis meets its shaft: outboard, towards the leading edge, up the shaft.')),
    length: perCopy(quantity('From ball to ball; computed when left out.', 'mm', '84 mm')),
    thread: text('Thread of its rod.', 'M2.5'),
    rod: quantity('Length of the rod that is screwed into both ends.', 'mm', '46 mm'),
    end: quantity('One end: from the centre of its ball to the mouth of its thread.', 'mm', '18 mm'),
    engaged: quantity('Least length of thread in each end.', 'mm', '6 mm'),
    lean: quantity('How far its ends may lean on their balls.', '°', '25 °', { above: 0, max: rightAngle }),
    play: play('Play of each of its balls.', '0.01 mm'),
  }, { derived: { turns: 'its thread, its rod and the length it must have', trim: 'the lengths that it can be set to' } })),
}, { example: 'swashplate: {on: mast, arms: 3}' });

export const sensorField = record('A speed sensor.', {
  title: text('Name as a person says it.', 'Governor sensor'),
  reads: required(reference('Shaft that carries its magnets.', ['shaft'], 'bell')),
  magnets: count('Magnets that pass in a turn.', '2', 1, 100),
  part: reference('Part that carries the sensor.', ['part'], 'clutch/bracket'),
  gap: window('Between magnet and sensor.', 'mm', '1.0 to 1.5 mm', { min: 0 }),
}, { derived: { ratio: 'the tooth counts', pulses: 'magnets and speed' } });

/** A hazard's condition as written. */
export interface WrittenEvent {
  readonly noTorque?: readonly string[];
  readonly noMotion?: readonly string[];
  readonly comesOff?: string;
  readonly jams?: string;
  readonly any?: readonly WrittenEvent[];
  readonly all?: readonly WrittenEvent[];
}
const eventField: Field<WrittenEvent> = again<WrittenEvent>('event', 'What must have happened.', '{comes-off: tail-grip/blade}', () =>
  record('What must have happened: one of these keys.', {
    'no-torque': list('From one shaft to another.', reference('Shaft.', ['shaft'], 'mast'), { min: 2, max: 2 }, '[mast, tail-rotor]'),
    'no-motion': list('From a servo to what it moves.', reference('Servo, link, swashplate or rotor.', movers, 'rudder'), { min: 2, max: 2 }, '[rudder, tail]'),
    'comes-off': reference('A part; of a part with copies, any of them.', ['part'], 'tail-grip/blade'),
    jams: reference('A part, joint, shaft or servo.', ['part', 'joint', 'shaft', 'servo', 'swashplate'], 'controls'),
    any: list('One of these.', eventField, { min: 1 }),
    all: list('All of these.', eventField, { min: 1 }),
  }, { example: 'comes-off: tail-grip/blade' }),
);

export const hazardField = record('What must not happen.', {
  ...wordFields,
  'ends-in': required(word('How it ends.', { crash: 'the machine is lost', injury: 'somebody may be hurt', landing: 'the flight is over', nuisance: 'a bother' }, 'crash')),
  when: required(eventField),
});

export const serviceField = record('Work that comes again.', {
  ...wordFields,
  of: required(reference('Part, joint or module; of one with copies, all of them.', ['part', 'joint', 'module'], 'tail-grip/thrust')),
  do: required(text('What is done.', 'grease')),
  every: required(interval('Running time or flights.')),
});

export const bagField = record('One bag of the kit, or one line of a list.', {
  title: text('Name as a person says it.', 'Bag 3: tail'),
  holds: map('How many of each part or joint.', count('How many.', '4', 1, 10_000), 'reference', ['part', 'joint']),
});
