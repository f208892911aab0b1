import { list, map, point, quantity, record, reference, required, some, text, window } from '../field.ts';

export const balanceField = record('What brings the centre of mass where it belongs, and what is balanced for itself.', {
  movable: map('What can be moved forward and aft, by id.', record('Something that can be moved.', {
    part: required(reference('The part.', ['part'], 'electronics/battery')),
    along: required(window('How far aft and forward its centre can lie, from the origin.', 'mm', '196 to 262 mm')),
  })),
  ballast: map('Where a balance weight can be fixed, by id.', record('A place for a balance weight.', {
    title: text('Name as a person says it.', 'Nose plate'),
    at: required(point('Where the weight lies, from the origin: forward, left, up.', '[270 mm, 0 mm, -22 mm]')),
  })),
  spun: map('What turns together and is balanced for itself, by id.', record('Parts that turn as one.', {
    title: text('Name as a person says it.', 'Fan and carrier'),
    on: required(reference('Shaft that they turn with.', ['shaft'], 'crank')),
    parts: required(some(reference('The parts; of one with copies, all of them.', ['part'], 'engine/fan'))),
    grade: quantity('Balance quality grade: speed of the centre of mass around the axis.', 'mm/s', '6.3 mm/s'),
    radius: quantity('Where correction masses go, from the axis.', 'mm', '32 mm'),
    places: list('Angles at which they can be fixed, in the sense of rotation from a mark.', quantity('Angle.', '°', '120 °', {}), { min: 2 }, '[0 °, 120 °, 240 °]'),
  })),
}, { example: 'ballast: {nose: {at: [270 mm, 0 mm, -22 mm]}}' });
