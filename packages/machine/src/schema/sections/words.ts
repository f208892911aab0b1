import { text } from '../field.ts';

/** What any thing may carry for the reader. Words never change what is computed. */
export const wordFields = {
  title: text('Name as a person says it; made from the id when left out.', 'Front tail gear case'),
  tip: text('Advice for whoever does it.', 'Feel the screw meet the pin.'),
  why: text('Reason for a choice.', 'each screw sits on its own flat'),
  caution: text('Danger, told before the step.', 'Heat frees it; wear gloves.'),
} as const;

/** What things of a module may carry besides. */
export const thingWords = {
  ...wordFields,
  photo: text('Picture beside the machine file.', 'photos/pin-screw.jpg'),
  was: text('Former id, whose signatures it carries on.', 'tail-case/old-name'),
} as const;
