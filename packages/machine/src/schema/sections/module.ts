import { copies, map, perCopy, point, quantity, record, reference, word } from '../field.ts';
import { accessField, jointField, measurementField, partField, stackField, stepField } from './things.ts';
import { thingWords } from './words.ts';

export const moduleField = record('A part of the machine that is built and stripped as one.', {
  ...thingWords,
  copies: copies('How many, or their names.'),
  comes: word('How it comes out of the bag.', { assembled: 'put together at the factory: to be stripped', loose: 'in parts' }, 'assembled'),
  mass: perCopy(quantity('The whole module as weighed, with screws, wires and grease.', 'g', '712 g')),
  at: perCopy(point('Where the centre of the whole module is, from the origin: forward, left, up; that of its parts when left out.', '[40 mm, 0 mm, 96 mm]')),
  behind: accessField,
  openings: map('Names for ways in.', accessField),
  keep: reference('Side that stays as reference while the other is opened.', ['part'], 'plate-left'),
  parts: map('Parts by id.', partField),
  joints: map('Joints by id.', jointField),
  stacks: map('Stacks by id.', stackField),
  measurements: map('Measurements by id.', measurementField),
  steps: map('Work that cannot be derived, by id.', stepField),
}, { example: 'title: Clutch stack, parts: {bell: {material: steel}}', derived: { order: 'holds, access and set-by; use after in a step where they do not say enough' } });
