import type { Joint } from '@rotorwright/machine';
import { hasGrade, wetLocks } from './locks.ts';

/** What is looked at, cleaned or taken new before a joint that was undone is made again. */
interface Renewal {
  readonly words: string;
  readonly source: string;
  readonly applies: (joint: Joint) => boolean;
}

const renewals: readonly Renewal[] = [
  {
    words: 'Take a new insert nut, or prove the old one: ISO 2320 tests its grip for five removals.',
    source: 'ISO 2320, prevailing torque at the first and the fifth removal (read as a transcription); a new one in doubt: common practice, no source',
    applies: (joint) => hasGrade(joint, 'insert'),
  },
  {
    words: 'Take new lock wire: it is used once.',
    source: 'FAA AC 43.13-1B, chapter 7: new wire at each application (from memory)',
    applies: (joint) => hasGrade(joint, 'wire'),
  },
  {
    words: 'Take a new tab washer: a tab that was bent back cracks.',
    source: 'common practice, no source',
    applies: (joint) => hasGrade(joint, 'tab'),
  },
  {
    words: 'Brush old compound out of both threads.',
    source: 'makers’ sheets of anaerobic compounds: remove old product before it is used again (read)',
    applies: (joint) => joint.kind !== 'bond' && joint.kind !== 'press' && wetLocks(joint).length > 0,
  },
  {
    words: 'Scrape old adhesive off both faces, down to the material.',
    source: 'common practice, no source',
    applies: (joint) => joint.kind === 'bond' || (joint.kind === 'press' && wetLocks(joint).length > 0),
  },
  {
    words: 'Look both faces over for scores; a press fit that came apart loses grip each time.',
    source: 'common practice, no source',
    applies: (joint) => joint.kind === 'press',
  },
  {
    words: 'Take a new circlip if it is bent or sits loose in its groove.',
    source: 'common practice, no source',
    applies: (joint) => joint.kind === 'circlip',
  },
  {
    words: 'Pull at the link when it is on: one that comes off by hand is worn.',
    source: 'common practice, no source',
    applies: (joint) => joint.kind === 'ball-link',
  },
];

/** One sentence of at most 20 words each, in the order in which they are done. */
export function renewalsOf(joint: Joint): readonly string[] {
  return renewals.filter(({ applies }) => applies(joint)).map(({ words }) => words);
}

/** What is looked at when a stack is put together again. Common practice, no source. */
export const stackRenewal = 'Turn each bearing by hand, and take a new one in place of any that feels notched.';
