import { again, copies, count, direction, interval, list, map, perCopy, quantity, record, reference, required, text, window, word, type Field } from '../field.ts';
import { wordFields } from './words.ts';

const point = (about: string) => list(about, quantity('Coordinate.', 'mm', '40 mm', {}), { min: 3, max: 3 }, '[44 mm, 0 mm, 30 mm]');
const movers = ['servo', 'swashplate', 'link', 'part', 'joint', 'rotor'] as const;

export const controlsField = record('What moves the blades.', {
  swashplate: record('Swashplate.', {
    on: required(reference('Shaft.', ['shaft'], 'mast')),
    arms: count('Number of driven balls.', '3', 2, 8),
    radius: quantity('From the axis to a driven ball.', 'mm', '40 mm'),
    at: point('Its centre at mid travel.'),
    'turns-with': reference('Part that turns its inner ring.', ['part'], 'head/hub'),
  }),
  servos: map('Servos by id.', record('A servo.', {
    title: text('Name as a person says it.', 'Cyclic servo'),
    copies: copies('How many, or their names.'),
    part: perCopy(reference('Part that is the servo; what moves with its arm is followed from there.', ['part'], 'servos/cyclic')),
    arm: perCopy(quantity('From its axis to the ball.', 'mm', '16 mm')),
    travel: perCopy(quantity('From end to end.', '°', '90 °')),
    axis: perCopy(direction('How its output shaft lies.', '[0, 1, 0]')),
    pivot: perCopy(point('Centre of its output shaft.')),
    azimuth: perCopy(quantity('Around the mast from forward, counter-clockwise from above.', '°', '120 °', {})),
    torque: perCopy(quantity('Stall torque.', 'N·m', '1.4 N·m')),
    speed: perCopy(quantity('Speed without load.', '°/s', '600 °/s')),
  }, { example: 'arm: 16 mm, travel: 90 °' })),
  links: map('Links by id.', record('A rod between two balls.', {
    title: text('Name as a person says it.', 'Servo link'),
    copies: copies('How many, or their names.'),
    from: required(reference('What moves it.', movers, 'cyclic')),
    to: required(reference('What it moves.', movers, 'swashplate')),
    length: perCopy(quantity('From ball to ball; computed when left out.', 'mm', '84 mm')),
  })),
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
