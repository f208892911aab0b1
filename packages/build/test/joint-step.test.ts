import { describe, expect, it } from 'vitest';
import type { JointKind, LockGrade } from '@rotorwright/machine';
import { planBuild, type Step } from '@rotorwright/build';
import { wordCount } from '../src/words/index.ts';
import { machineByHand, type RoughMachine, type RoughModule } from './by-hand.ts';

const consumables: RoughMachine['consumables'] = {
  medium: { kind: 'threadlocker', strength: 'medium', cure: 36_000, undo: 'hand tools' },
  high: { kind: 'threadlocker', strength: 'high', cure: 90_000, undo: 'heat', caution: 'Only heat undoes it.' },
  resin: { kind: 'adhesive', title: 'toughened epoxy resin', cure: 43_200 },
};

type RoughJoint = NonNullable<RoughModule['joints']>[string];

function stepFor(joint: RoughJoint, parts: RoughModule['parts'] = { block: {}, plate: {} }): Step {
  const machine = machineByHand({ consumables, modules: { case: { parts, joints: { it: { in: 'case/block', holds: ['case/plate'], ...joint } } } } });
  const step = planBuild(machine).steps.get('case/it');
  if (step === undefined) throw new Error('no step');
  return step;
}

describe('a joint becomes one step', () => {
  it('with a tick for each copy', () => {
    const step = stepFor({ kind: 'screw', thread: 'M3', head: 'socket', copies: ['a', 'b', 'c', 'd'], locks: ['medium'], torque: 1.1, mark: true, length: 0.008 });
    expect(step.ticks).toEqual(['case/it.a', 'case/it.b', 'case/it.c', 'case/it.d']);
    expect(step.action).toBe('Screw the plate to the block with four M3 screws, medium-strength threadlocker, 1.1 N·m.');
    expect(step.actions).toEqual([
      'Degrease both threads and let them dry.', 'Put the plate in place.', 'Put one drop of medium-strength threadlocker on the thread.',
      'Tighten crosswise, in two rounds.', 'Tighten each M3 screw to 1.1 N·m.', 'Paint a witness mark across each M3 screw and its seat.',
    ]);
    expect(step.fastener).toEqual({ kind: 'screw', thread: 'M3', head: 'socket', length: 0.008, count: 4 });
    expect(step.parts).toEqual([{ id: 'case/it', title: 'It', count: 4 }, { id: 'case/block', title: 'Block', count: 1 }, { id: 'case/plate', title: 'Plate', count: 1 }]);
  });

  it('that speaks of the part that is brought: with the thread in it, too', () => {
    const machine = machineByHand({ modules: { frame: { parts: { floor: {} } }, gear: { parts: { leg: { copies: ['front', 'rear'] } }, joints: { screw: { thread: 'M4', copies: ['1', '2'], in: 'gear/leg.front', holds: ['frame/floor'], torque: 2.4 } } } } });
    expect(planBuild(machine).steps.get('gear/screw')).toMatchObject({ action: 'Screw the front leg to the floor (frame) with two M4 screws, 2.4 N·m.', actions: expect.arrayContaining(['Put the front leg in place.']) as string[] });
  });

  it('that says so when the torque is by feel, or still to be computed', () => {
    expect(stepFor({ kind: 'nut', thread: 'M6x0.75', torque: 'snug' }).actions.at(-1)).toBe('Turn the M6x0.75 nut snug by feel, never tight.');
    const unknown = stepFor({ kind: 'screw', thread: 'M3' });
    expect(unknown.actions.at(-1)).toBe('Tighten the M3 screw; the torque is still to be computed.');
    expect(unknown.torque).toBeUndefined();
    expect(unknown.tools).not.toContain('Torque wrench');
  });

  it('that cures as long as its slowest compound', () => {
    expect(stepFor({ locks: ['medium'] }).cure).toBe(36_000);
    expect(stepFor({ locks: ['medium', 'high'] }).cure).toBe(90_000);
    expect(stepFor({ locks: [{ grade: 'retaining', consumable: 'resin' }], kind: 'bond' }).cure).toBe(43_200);
    expect(stepFor({ locks: ['insert'] }).cure).toBe(0);
    expect(stepFor({}).cure).toBe(0);
    // 24 h at room temperature (read, makers of anaerobic compounds) where the file names no bottle.
    expect(stepFor({ locks: ['low'] }).cure).toBe(86_400);
    expect(stepFor({ kind: 'bond' }).cure).toBe(86_400);
  });

  it('with no compound on an insert nut', () => {
    const step = stepFor({ kind: 'nut', thread: 'M3', locks: ['insert'], torque: 0.8 });
    expect(step.actions.join(' ')).not.toMatch(/drop of|compound|threadlocker/u);
    expect(step.consumables).toEqual([]);
    expect(step.caution).toContain('No compound on an insert');
  });
});

describe('tools', () => {
  // Sizes as published: ISO 4762, ISO 4026, ISO 4032, ISO 10642, nominal s (read in tables of dimensions).
  it.each<[Partial<RoughJoint> & { kind: JointKind }, string]>([
    [{ kind: 'screw', head: 'socket', thread: 'M2' }, 'Hexagon key 1.5 mm'],
    [{ kind: 'screw', head: 'socket', thread: 'M2.5' }, 'Hexagon key 2 mm'],
    [{ kind: 'screw', head: 'socket', thread: 'M3' }, 'Hexagon key 2.5 mm'],
    [{ kind: 'screw', head: 'socket', thread: 'M4x0.7' }, 'Hexagon key 3 mm'],
    [{ kind: 'screw', head: 'socket', thread: 'M5' }, 'Hexagon key 4 mm'],
    [{ kind: 'screw', head: 'socket', thread: 'M6' }, 'Hexagon key 5 mm'],
    [{ kind: 'screw', head: 'countersunk', thread: 'M3' }, 'Hexagon key 2 mm'],
    [{ kind: 'screw', head: 'hexagon', thread: 'M4' }, 'Wrench 7 mm'],
    [{ kind: 'set-screw', thread: 'M3' }, 'Hexagon key 1.5 mm'],
    [{ kind: 'set-screw', thread: 'M4' }, 'Hexagon key 2 mm'],
    [{ kind: 'set-screw', thread: 'M5' }, 'Hexagon key 2.5 mm'],
    [{ kind: 'nut', thread: 'M3' }, 'Wrench 5.5 mm'],
    [{ kind: 'nut', thread: 'M6' }, 'Wrench 10 mm'],
    [{ kind: 'nut', thread: 'M6x0.75' }, 'Wrench to fit'],
    [{ kind: 'screw', thread: 'M3' }, 'Driver to fit the head'],
    [{ kind: 'circlip' }, 'Circlip pliers'],
    [{ kind: 'pin', diameter: 0.002 }, 'Pin punch under 2 mm'],
    [{ kind: 'screw', thread: 'M3', head: 'socket', tool: 'Long ball-ended key' }, 'Long ball-ended key'],
  ])('%o: %s', (joint, tool) => {
    expect(stepFor(joint).tools[0]).toBe(tool);
  });

  it('a torque wrench only where there is a torque', () => {
    expect(stepFor({ torque: 1 }).tools).toContain('Torque wrench');
    expect(stepFor({ torque: 'snug' }).tools).not.toContain('Torque wrench');
  });
});

describe('cautions', () => {
  it('the file’s own comes first, then the bottle’s, then ours', () => {
    const said = stepFor({ caution: 'Mind the gear', locks: ['high'] }).caution ?? '';
    expect(['Mind the gear.', 'Only heat undoes it.', 'degreaser'].map((words) => said.indexOf(words))).toEqual([0, 15, expect.any(Number)]);
    expect(said.indexOf('degreaser')).toBeGreaterThan(30);
  });

  it.each<[RoughJoint, RegExp]>([
    [{ kind: 'circlip' }, /circlip flies: wear eye protection/u],
    [{ kind: 'pin', fit: 'press' }, /splinters/u],
    [{ kind: 'bond' }, /Never test a cured bond with a wrench/u],
    [{ kind: 'screw', locks: ['retaining'] }, /Never test a cured bond with a wrench/u],
    [{ kind: 'screw', locks: ['medium'] }, /wear gloves.*polycarbonate/u],
    [{ kind: 'press' }, /press/u],
  ])('%o', (joint, words) => {
    expect(stepFor(joint).caution).toMatch(words);
  });

  it('a bearing is never pressed through its balls', () => {
    expect(stepFor({ kind: 'press' }, { block: {}, plate: { kind: 'deep-groove' } }).caution).toContain('never through the balls');
  });

  it('there is none where nothing can hurt', () => {
    expect(stepFor({ kind: 'screw', torque: 1 }).caution).toBeUndefined();
  });

  it('heat and its dangers stand with stripping what was to be locked for good', () => {
    const strip = (locks: readonly LockGrade[]) =>
      planBuild(machineByHand({ consumables, modules: { case: { comes: 'assembled', parts: { bell: {}, pinion: {} }, joints: { thread: { kind: 'threaded-end', in: 'case/bell', holds: ['case/pinion'], locks } } } } })).steps.get('case');
    expect(strip(['high'])).toMatchObject({ kind: 'strip', caution: expect.stringMatching(/gloves.*window/u) as string, tools: expect.arrayContaining(['Hot-air gun']) as string[] });
    expect(strip(['high'])?.actions).toContain('Undo the thread; if it will not turn, warm it first.');
    expect(strip(['medium'])?.tools).not.toContain('Hot-air gun');
  });
});

describe('whatever the names', () => {
  const kinds: readonly JointKind[] = ['screw', 'set-screw', 'bolt', 'nut', 'stud', 'threaded-end', 'threaded-rod', 'pin', 'circlip', 'clamp', 'press', 'bond', 'ball-link'];
  const long = { title: 'the very long name of a part that somebody has written with great care over a whole line of the file' };

  it.each(kinds)('%s: no sentence of ours has more than 20 words, each is one sentence', (kind) => {
    for (const parts of [{ block: {}, plate: {} }, { block: long, plate: long }]) {
      for (const joint of [{}, { locks: ['medium', 'tab', 'wire'] as const, torque: 1.2345, mark: true, copies: ['a', 'b', 'c'], thread: 'M3' }, { in: undefined, holds: [] }]) {
        const { action, actions } = stepFor({ kind, ...(joint as RoughJoint) }, parts);
        for (const words of [action, ...actions]) {
          expect(wordCount(words), words).toBeLessThanOrEqual(20);
          expect(words).toMatch(/^\p{Lu}.*[.?]$/u);
          expect(words).not.toMatch(/undefined| {2}|\bthe\s*[.,]/u);
        }
      }
    }
  });
});
