import { describe, expect, test } from 'vitest';
import { minimalCutSets } from '@rotorwright/reliability';
import type { HazardEvent } from '@rotorwright/machine';
import { chainsOf, holds, keeps, missing } from '../../src/index.ts';
import { machineByHand, type RoughMachine, type RoughModule } from '../by-hand.ts';

/** A machine with one hazard; all cut sets of it, shortest first. */
function cutSets(module: RoughModule, when: HazardEvent, rest: Omit<RoughMachine, 'modules'> = {}): readonly string[] {
  const { tree } = holds(machineByHand({ modules: { m: module }, ...rest, hazards: { h: { when } } })).hazards.get('h')!;
  return tree === undefined ? [] : minimalCutSets(tree).sets().map((set) => set.join(' + '));
}

const frame = { frame: { ground: true } } as const;
const off = (part: string): HazardEvent => ({ comesOff: `m/${part}` });

// All expected sets by hand, from the rules of what keeps what.
describe('a joint is lost', () => {
  test('when it was left undone, or when its lock gives way', () => {
    expect(cutSets({ parts: { ...frame, a: {} }, joints: { s: { in: 'm/frame', holds: ['m/a'], locks: ['medium'] } } }, off('a'))).toEqual(['lock:m/s:medium', 'undone:m/s']);
  });

  test('when all its locks give way: they back each other up', () => {
    expect(cutSets({ parts: { ...frame, a: {} }, joints: { s: { in: 'm/frame', holds: ['m/a'], locks: ['insert', 'wire'] } } }, off('a'))).toEqual(['undone:m/s', 'lock:m/s:insert + lock:m/s:wire']);
  });

  test('by itself when nothing locks it and nothing keeps it', () => {
    expect(cutSets({ parts: { ...frame, a: {} }, joints: { s: { in: 'm/frame', holds: ['m/a'], locks: ['none'] } } }, off('a'))).toEqual(['loose:m/s', 'undone:m/s']);
  });

  test('with what keeps it: a pin with its set screw, the set screw with its compound', () => {
    const joints: RoughModule['joints'] = { pin: { kind: 'pin', in: 'm/frame', holds: ['m/a'], fit: 'slide', locks: ['none'] }, screw: { kind: 'set-screw', in: 'm/frame', holds: ['m/pin'], locks: ['medium'] } };
    expect(cutSets({ parts: { ...frame, a: {} }, joints }, off('a'))).toEqual(['lock:m/screw:medium', 'undone:m/pin', 'undone:m/screw']);
  });

  test('not with a second line alone, nor with the first alone', () => {
    const joints: RoughModule['joints'] = { first: { in: 'm/frame', holds: ['m/a'], locks: ['medium'] }, second: { in: 'm/frame', holds: ['m/a'], locks: ['insert'], backup: true } };
    expect(cutSets({ parts: { ...frame, a: {} }, joints }, off('a'))).toEqual([
      'lock:m/first:medium + lock:m/second:insert', 'lock:m/first:medium + undone:m/second', 'lock:m/second:insert + undone:m/first', 'undone:m/first + undone:m/second',
    ]);
  });

  test('by its own fit where it is a press fit, a bond, a ring in its groove', () => {
    for (const kind of ['press', 'bond', 'circlip'] as const) {
      expect(cutSets({ parts: { ...frame, a: {} }, joints: { j: { kind, in: 'm/frame', holds: ['m/a'] } } }, off('a'))).toEqual(['lock:m/j:fit', 'undone:m/j']);
    }
  });

  test('in a circle of joints that keep only each other: said, and no endless search', () => {
    const machine = machineByHand({ modules: { m: { parts: { ...frame, a: {} }, joints: { x: { kind: 'pin', in: 'm/frame', holds: ['m/a', 'm/y'], locks: ['none'] }, y: { kind: 'pin', in: 'm/a', holds: ['m/x'], locks: ['none'] } } } }, hazards: { h: { when: off('a') } } });
    expect(holds(machine).findings.map(({ code }) => code)).toContain('hold/circle');
  });
});

describe('copies', () => {
  const joints = (enough: number): RoughModule['joints'] => ({ s: { in: 'm/frame', holds: ['m/a'], copies: ['1', '2', '3'], enough, locks: ['press'] } });

  test('of which two of three suffice are lost in twos, or with the whole step', () => {
    const sets = cutSets({ parts: { ...frame, a: {} }, joints: joints(2) }, off('a'));
    expect(sets).toHaveLength(1 + 3 * 4);
    expect(sets.slice(0, 2)).toEqual(['skipped:m/s', 'lock:m/s.1:press + lock:m/s.2:press']);
  });

  test('that are all wanted are lost with any one', () => {
    expect(cutSets({ parts: { ...frame, a: {} }, joints: { s: { in: 'm/frame', holds: ['m/a'], copies: ['1', '2'], locks: ['press'] } } }, off('a'))).toEqual(['lock:m/s.1:press', 'lock:m/s.2:press', 'skipped:m/s', 'undone:m/s.1', 'undone:m/s.2']);
  });

  test('in two joints of one group answer together', () => {
    const side = (): NonNullable<RoughModule['joints']>[string] => ({ in: 'm/frame', holds: ['m/a'], copies: ['1', '2'], group: 'block', enough: 3, locks: ['press'] });
    const sets = cutSets({ parts: { ...frame, a: {} }, joints: { left: side(), right: side() } }, off('a'));
    expect(sets.slice(0, 2)).toEqual(['skipped:m/left', 'skipped:m/right']);
    expect(sets).toContain('undone:m/left.1 + undone:m/right.2');
  });
});

describe('a part leaves its place', () => {
  test('when what it sits on does, down to the ground', () => {
    const joints: RoughModule['joints'] = { low: { in: 'm/frame', holds: ['m/a'], locks: ['press'] }, high: { in: 'm/a', holds: ['m/b'], locks: ['press'] } };
    expect(cutSets({ parts: { ...frame, a: {}, b: {} }, joints }, off('b'))).toEqual(['lock:m/high:press', 'lock:m/low:press', 'undone:m/high', 'undone:m/low']);
  });

  test('not when one of two clamps goes, where either suffices', () => {
    const parts: RoughModule['parts'] = { ...frame, front: {}, rear: {}, tube: {} };
    const clamp = (holding: string): NonNullable<RoughModule['joints']>[string] => ({ kind: 'clamp', in: `m/${holding}`, holds: ['m/tube'], group: 'clamps', enough: 1, locks: ['press'] });
    const joints: RoughModule['joints'] = { f: { in: 'm/frame', holds: ['m/front'], locks: ['press'] }, r: { in: 'm/frame', holds: ['m/rear'], locks: ['press'] }, cf: clamp('front'), cr: clamp('rear') };
    const sets = cutSets({ parts, joints }, off('tube'));
    expect(sets.every((set) => set.includes(' + '))).toBe(true);
    expect(sets).toContain('undone:m/cf + undone:m/r');
  });

  // the blade hangs on the grip, and the grip on its stack; the link that turns the grip keeps nothing of it
  test('with the stack that carries it, not with the link that turns it', () => {
    const module: RoughModule = {
      parts: { ...frame, spindle: {}, grip: {}, blade: {}, bearing: { kind: 'deep-groove' }, washer: { turnsWith: 'm/spindle' }, arm: {}, link: {} },
      stacks: { f: { spindle: 'm/spindle', housing: ['m/grip'], order: [{ shoulder: 'm/spindle' }, { shoulder: 'm/grip' }, { part: 'm/bearing' }, { part: 'm/washer' }, { joint: 'm/screw' }] } },
      joints: {
        base: { in: 'm/frame', holds: ['m/spindle'], locks: ['press'] }, screw: { in: 'm/spindle', locks: ['medium'] }, bolt: { kind: 'bolt', in: 'm/grip', holds: ['m/blade'], locks: ['insert'] },
        armed: { in: 'm/frame', holds: ['m/arm'], locks: ['press'] }, low: { kind: 'ball-link', in: 'm/arm', holds: ['m/link'], locks: ['press'] }, high: { kind: 'ball-link', in: 'm/grip', holds: ['m/link'], locks: ['press'] },
      },
    };
    expect(cutSets(module, off('blade'))).toEqual(['lock:m/base:press', 'lock:m/bolt:insert', 'lock:m/screw:medium', 'undone:m/base', 'undone:m/bolt', 'undone:m/screw', 'wrong:m/f']);
  });

  // what stops the shaft one way is the shoulder of its housing, the other way a cover that screws keep
  test('with a cover that closes its stack, and with the pin that stops it on the shaft', () => {
    const module: RoughModule = {
      parts: { case: { ground: true }, cover: {}, shaft: {}, bevel: {}, shim: { turnsWith: 'm/shaft' }, right: { kind: 'deep-groove' }, left: { kind: 'deep-groove' } },
      stacks: { out: { spindle: 'm/shaft', housing: ['m/case'], ends: ['right', 'left'], order: [{ part: 'm/cover' }, { part: 'm/right' }, { part: 'm/bevel' }, { part: 'm/shim' }, { part: 'm/left' }, { shoulder: 'm/case' }] } },
      joints: { covered: { in: 'm/case', holds: ['m/cover'], locks: ['press'] }, pin: { kind: 'pin', in: 'm/shaft', holds: ['m/bevel'], fit: 'press' } },
    };
    expect(cutSets(module, off('shaft'))).toEqual(['lock:m/covered:press', 'lock:m/pin:fit', 'undone:m/covered', 'undone:m/pin', 'wrong:m/out']);
  });
});

describe('torque is lost', () => {
  const shafts = { a: { part: 'm/p' }, b: { part: 'm/q' } };
  const wants: HazardEvent = { noTorque: ['a', 'b'] };
  const joint = (seat: string, held: string): NonNullable<RoughModule['joints']>[string] => ({ in: `m/${seat}`, holds: [`m/${held}`], locks: ['press'], carries: ['torque'] });

  test('only when every way is cut', () => {
    const sets = cutSets({ parts: { p: {}, q: {}, r: {} }, joints: { straight: joint('p', 'q'), one: joint('p', 'r'), two: joint('r', 'q') } }, wants, { shafts });
    expect(sets).toHaveLength(2 * 4);
    expect(sets).toContain('undone:m/one + undone:m/straight');
  });

  test('not through the frame, and not backwards through a one-way clutch', () => {
    const parts = { frame: { ground: true }, p: {}, q: {}, r: {}, s: {} };
    const coupling = (kind: 'one-way' | 'external', driver: string, driven: string) => ({ kind, driver: { path: '', on: 'a', choices: [], part: `m/${driver}` }, driven: { path: '', on: 'b', choices: [], part: `m/${driven}` } });
    const viaFrame = holds(machineByHand({ modules: { m: { parts, joints: { x: { in: 'm/frame', holds: ['m/p'] }, y: { in: 'm/frame', holds: ['m/q'] } } } }, shafts, hazards: { h: { when: wants } } }));
    expect(viaFrame.findings.map(({ code }) => code)).toEqual(['place/unknown', 'place/unknown', 'hazard/gap']);
    const back = holds(machineByHand({ modules: { m: { parts } }, shafts, couplings: { c: coupling('one-way', 'q', 'p') }, hazards: { h: { when: wants } } }));
    expect(back.hazards.get('h')?.gaps).toEqual(['no joint or coupling passes torque on from p (m) to q (m)']);
  });

  test('at a ring or a ball link never: they carry none', () => {
    for (const kind of ['circlip', 'ball-link'] as const) {
      const { hazards } = holds(machineByHand({ modules: { m: { parts: { p: {}, q: {} }, joints: { j: { kind, in: 'm/p', holds: ['m/q'] } } } }, shafts, hazards: { h: { when: wants } } }));
      expect(hazards.get('h')?.gaps[0]).toMatch(/passes torque/);
    }
  });
});

describe('what the file does not tell', () => {
  test('is said of each part that nothing leads to, and of a hazard that hangs on it', () => {
    const { findings, hazards } = holds(machineByHand({ modules: { m: { parts: { ...frame, a: {}, b: {} }, joints: { s: { in: 'm/frame', holds: ['m/a'] } } } }, hazards: { h: { when: off('b') } } }));
    expect(findings.map(({ code, path }) => `${code} ${path}`)).toEqual(['place/unknown modules.m.parts.b', 'hazard/gap hazards.h']);
    expect(hazards.get('h')?.tree).toBeUndefined();
  });

  test('of a machine without joints is not told part by part', () => {
    expect(holds(machineByHand({ modules: { m: { parts: { a: {}, b: {} } } } })).findings).toEqual([]);
  });

  test('of a servo is which part it is', () => {
    const { hazards } = holds(machineByHand({ modules: { m: { parts: frame } }, servos: { rudder: {} }, rotors: { tail: {} }, hazards: { h: { when: { noMotion: ['rudder', 'tail'] } } } }));
    expect(hazards.get('h')?.gaps).toEqual(['the file does not say which part the servo rudder is', 'the file stacks no blade grip on the hub of the rotor tail']);
  });
});

describe('what if it is missed', () => {
  const module: RoughModule = { parts: { ...frame, a: {}, b: {}, c: {} }, joints: { low: { in: 'm/frame', holds: ['m/a'], locks: ['press'] }, high: { in: 'm/a', holds: ['m/b'], copies: ['1', '2'], enough: 1, locks: ['press'] }, other: { in: 'm/frame', holds: ['m/c'], locks: ['press'] } } };
  const model = holds(machineByHand({ modules: { m: module }, hazards: { h: { when: off('b') } } }));

  test('all that hangs on it comes off', () => {
    expect(missing(model, ['m/low'])).toEqual({ comesOff: ['m/a', 'm/b'], hazards: ['h'] });
  });

  test('one copy to spare is not missed; both are', () => {
    expect(missing(model, ['m/high.1'])).toEqual({ comesOff: [], hazards: [] });
    expect(missing(model, ['m/high'])).toEqual({ comesOff: ['m/b'], hazards: ['h'] });
  });

  test('a chain names what keeps a part, and on what', () => {
    const [kept] = keeps(model, 'm/b');
    expect(kept).toMatchObject({ state: 'kept', restsOn: ['m/a'], chains: [{ joint: 'm/high', keeps: ['m/b'], on: ['m/a'], least: 2, copies: 2 }] });
    expect(keeps(model, 'm/frame')).toMatchObject([{ state: 'ground', chains: [] }]);
    expect(keeps(model, 'm/nothing')).toEqual([]);
    expect(chainsOf(model, model.hazards.get('h')!).map(({ joint, links }) => [joint, links.map(({ kind }) => kind)])).toEqual([['m/low', ['joint', 'lock']], ['m/high', ['joint', 'lock']]]);
  });
});
