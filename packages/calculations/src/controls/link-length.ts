import { metricThread } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { refusing } from '../refuse.ts';
import { lengthInput, lengthOutput, numberOutput } from '../specs.ts';
import { pointInput, three } from './control-specs.ts';

export const linkLength = defineCalculation({
  id: 'link-length',
  title: 'Length of a link',
  section: 'Controls',
  summary: 'From ball to ball, and how far the rod is then screwed into its two ends.',
  inputs: {
    from: pointInput('Ball at one end', [0.042, 0, 0.046]),
    to: pointInput('Ball at the other end', [0.042, 0, 0.118]),
    rod: { ...lengthInput('Rod that is screwed into both ends', 'l_R', 50), optional: true },
    end: { ...lengthInput('One end: centre of its ball to the mouth of its thread', 'l_E', 18), optional: true },
    thread: { kind: 'text', title: 'Thread of the rod', optional: true, example: 'M2.5' },
  },
  outputs: {
    length: lengthOutput('Length, ball to ball', 'L'),
    seen: lengthOutput('Rod seen between the ends', 's'),
    engaged: lengthOutput('Thread in each end', 'e'),
    turnsEngaged: numberOutput('Turns of thread in each end', 'n'),
  },
  formulas: [
    { output: 'length', tex: String.raw`L = \left|b_2 - b_1\right|` },
    { output: 'seen', tex: String.raw`s = L - 2\,l_E` },
    { output: 'engaged', tex: String.raw`e = \tfrac{1}{2}\left(l_R + 2\,l_E - L\right)` },
    { output: 'turnsEngaged', tex: String.raw`n = e / P` },
  ],
  source: 'Geometry of a rod between two balls; pitch of the thread: ISO 261:1998 (from memory).',
  validity: ['Both ends alike and screwed on equally far.', 'A negative length engaged says that the rod is too short by twice as much.'],
  compute: ({ from, to, rod, end, thread }) => {
    const [a, b] = [three(from, 'from'), three(to, 'to')];
    const length = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2 + (b[2] - a[2]) ** 2);
    if (!(length > 0)) throw new CalculationError('to', `[${to.join(', ')}] m`, 'another point than `from`');
    const seen = end === undefined ? undefined : length - 2 * end;
    const engaged = rod === undefined || end === undefined ? undefined : (rod + 2 * end - length) / 2;
    const pitch = thread === undefined ? undefined : refusing('thread', `"${thread}"`, () => metricThread(thread)).pitch;
    return {
      outputs: { length, ...(seen === undefined ? {} : { seen }), ...(engaged === undefined ? {} : { engaged }), ...(engaged === undefined || pitch === undefined ? {} : { turnsEngaged: engaged / pitch }) },
      warnings: [
        ...(seen === undefined ? ['seen is left out: it needs end.'] : []),
        ...(engaged === undefined ? ['engaged is left out: it needs rod and end.'] : engaged <= 0 ? ['The rod is too short: its ends would not be screwed on at all.'] : []),
        ...(engaged === undefined || pitch === undefined ? ['turnsEngaged is left out: it needs rod, end and thread.'] : []),
      ],
    };
  },
});
