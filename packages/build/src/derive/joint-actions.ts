import type { Joint, Machine } from '@rotorwright/machine';
import { bottleOf, consumableOf, hasGrade, isGlued, isPushFit, isStrap, lockWords, wetLocks } from '../rules/index.ts';
import { sentence, small, torqueWords } from '../words/index.ts';
import { bringsSeat, isThreaded, jointNoun, sidesOf } from './joint-sentences.ts';

/** What fitting a joint is made of, in order: clean, place, grease, lock, tighten, mark. */
export function actionsOf(machine: Machine, joint: Joint): readonly string[] {
  return [...cleaning(machine, joint), ...landing(machine, joint), ...locking(machine, joint), ...tightening(joint), ...closing(joint)];
}

function cleaning(machine: Machine, joint: Joint): readonly string[] {
  if (isPushFit(machine, joint)) return ['Wipe both faces clean.'];
  if (isStrap(joint)) return [];
  if (isThreaded(joint) && wetLocks(joint).length > 0) return ['Degrease both threads and let them dry.'];
  if (joint.kind === 'bond') return ['Roughen both faces, degrease them and let them dry.'];
  if (wetLocks(joint).length > 0 || joint.kind === 'press') return ['Degrease both faces and let them dry.'];
  if (joint.kind === 'pin' || joint.kind === 'circlip') return [sentence(`Clean the seat of the ${jointNoun(joint)}.`)];
  if (joint.kind === 'ball-link') return [];
  return ['Check that the threads are clean and whole.'];
}

/** Getting the parts to where the joint can hold them. */
function landing(machine: Machine, joint: Joint): readonly string[] {
  const { seat, held } = sidesOf(machine, joint);
  const noun = joint.instances.length === 1 ? `the ${jointNoun(joint)}` : `each ${jointNoun(joint)}`;
  switch (joint.kind) {
    case 'set-screw': {
      const target = joint.onto === undefined ? (held === '' ? 'its seat' : held) : `the ${joint.onto}`;
      return [sentence(`Turn ${noun} in dry until it meets ${target}, then back out.`, `Turn ${noun} in dry until it lands, then back out.`)];
    }
    case 'screw':
    case 'bolt':
    case 'nut': {
      const brought = bringsSeat(machine, joint) ? seat : held;
      return brought === '' ? [] : [sentence(`Put ${brought} in place.`, 'Put the parts in place.')];
    }
    case 'threaded-end':
      return [sentence('Start the thread by hand; it must run freely to its shoulder.')];
    case 'stud':
    case 'threaded-rod':
      return [sentence('Start the thread by hand.')];
    case 'pin':
      return [held === '' || seat === '' ? 'Line the holes up.' : sentence(`Line up the holes of ${held} and ${seat}.`, 'Line the holes up.'), pinSentence(joint)];
    case 'circlip':
      return ['Open the circlip no further than it needs.', 'Turn it in its groove to prove that it sits.'];
    case 'clamp':
      return held === '' ? [] : [isStrap(joint) ? sentence(`Put ${held} in place.`, 'Put the part in place.') : sentence(`Set ${held} to its mark.`, 'Set the clamp to its mark.')];
    case 'press':
      return isPushFit(machine, joint) ? ['Push it home evenly, and see that it lies flat.'] : ['Support the part that stays, and press square.'];
    case 'bond':
      return [];
    case 'ball-link':
      return ['Press it on square until it snaps.', 'It must turn freely and have no play.'];
  }
}

function pinSentence(joint: Joint): string {
  return joint.fit !== undefined && /slide|loose/iu.test(joint.fit) ? 'Slide the pin in until it stands even on both sides.' : 'Drive the pin in square until it stands even on both sides.';
}

function locking(machine: Machine, joint: Joint): readonly string[] {
  const wet = wetLocks(joint).map((lock) => {
    const consumable = consumableOf(machine, lock);
    const words = consumable?.kind === 'adhesive' ? small(bottleOf(machine, lock)) : lockWords(lock);
    if (joint.kind === 'bond' || !isThreaded(joint)) return sentence(`Coat both faces thinly with ${words}.`, `Coat both faces thinly with ${lockWords(lock)}.`);
    return sentence(`Put one drop of ${words} on the thread.`, `Put one drop of ${lockWords(lock)} on the thread.`);
  });
  if (joint.kind === 'bond' && wet.length === 0) wet.push('Coat both faces thinly with the glue that the maker names.');
  const dry = [
    ...(hasGrade(joint, 'insert') ? ['Feel the insert grip; renew a nut that a finger can turn.'] : []),
    ...(hasGrade(joint, 'tab') ? ['Lay the tab washer under the head.'] : []),
  ];
  return [...wet, ...dry];
}

function tightening(joint: Joint): readonly string[] {
  if (joint.kind === 'bond') return ['Push the parts together with a twist, and line them up.', 'Wipe off what comes out.'];
  if (isStrap(joint)) return ['Pull the strap tight; it must not cut in.'];
  if (!isThreaded(joint)) return [];
  const which = joint.instances.length === 1 ? 'the' : 'each';
  const noun = jointNoun(joint);
  const rounds = joint.instances.length > 2 && (joint.kind === 'screw' || joint.kind === 'bolt' || joint.kind === 'nut') ? ['Tighten crosswise, in two rounds.'] : [];
  const last =
    typeof joint.torque === 'number'
      ? sentence(`Tighten ${which} ${noun} to ${torqueWords(joint.torque)}.`)
      : joint.torque === 'snug'
        ? sentence(`Turn ${which} ${noun} snug by feel, never tight.`)
        : sentence(`Tighten ${which} ${noun}; the torque is still to be computed.`);
  return [...rounds, last];
}

function closing(joint: Joint): readonly string[] {
  return [
    ...(hasGrade(joint, 'wire') ? ['Wire it so that the wire pulls in the tightening sense.'] : []),
    ...(hasGrade(joint, 'tab') ? ['Bend the tab against a flat.'] : []),
    ...(joint.mark ? [sentence(`Paint a witness mark across ${joint.instances.length === 1 ? 'the' : 'each'} ${jointNoun(joint)} and its seat.`)] : []),
    ...(isGlued(joint) ? ['Leave it still until it has cured.'] : []),
  ];
}

/** Bottles and rags that the joint wants, by the names that the builder knows. */
export function consumablesOf(machine: Machine, joint: Joint): readonly string[] {
  const bottles = wetLocks(joint).map((lock) => bottleOf(machine, lock));
  const glue = joint.kind === 'bond' && bottles.length === 0 ? ['Glue as the maker names'] : [];
  const cleaner = bottles.length + glue.length > 0 || (joint.kind === 'press' && !isPushFit(machine, joint)) ? ['Degreaser'] : [];
  return [...new Set([...bottles, ...glue, ...cleaner])];
}
