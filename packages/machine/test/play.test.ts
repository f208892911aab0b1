import { describe, expect, it } from 'vitest';
import { formatFinding, playChain, readMachine, type Machine, type PlayChain } from '../src/index.ts';

function read(text: string): Machine {
  const { machine, findings } = readMachine(text);
  if (!machine || findings.some(({ severity }) => severity === 'error')) throw new Error(findings.map((finding) => formatFinding(finding, 'test')).join('\n'));
  return machine;
}

/** A stack of a module `m` on `shaft` in `case`. Every number is invented. */
function chainOf(stack: string, parts: string, joints = ''): PlayChain {
  const machine = read(`
rotorwright: 1
machine: {name: Chain, invented: true}
modules:
  m:
    parts:
      shaft: {kind: shaft}
      case: {kind: housing}
      low: {kind: deep-groove, width: 5 to 4.9 mm}
      high: {kind: deep-groove, width: 4 mm}
${parts}
    stacks:
      s: {spindle: shaft, housing: case, ends: [down, up], ${stack}}
    joints:
      ring: {kind: circlip, on: shaft, holds: high, lock: press}
${joints}`);
  return playChain(machine, machine.stacks.get('m/s')!);
}

const said = ({ lengths }: PlayChain): readonly string[] => lengths.map(({ sense, size, title }) => `${sense === 1 ? '+' : '−'}${Number((size.nominal * 1000).toPrecision(6))} ${title}`);

describe('the chain of a stack', () => {
  it('is the room of the spindle less the web and all that lies between', () => {
    const chain = chainOf(
      'order: [{shoulder: shaft}, low, {shoulder: case}, high, shim, washer, ring], room: {spindle: 17 to 17.05 mm, housing: 6 mm}',
      '      shim: {kind: shim, sizes: [0.1 mm], until: play, turns-with: shaft}\n      washer: {kind: washer, thickness: 1 ±0.02 mm, turns-with: shaft}',
      '    measurements:\n      play: {of: end-play s, window: 0 to 0.04 mm}',
    );
    expect(said(chain)).toEqual(['+17 room of the spindle', '−6 room of the housing', '−5 Low', '−4 High', '−1 Washer']);
    expect(chain).toMatchObject({ shims: ['m/shim'], missing: [] });
    expect(chain.lengths.find(({ title }) => title === 'Low')).toMatchObject({ path: 'modules.m.parts.low.width', size: { nominal: 0.005, least: expect.closeTo(0.0049, 12), most: 0.005 } });
  });

  it('is the room of the housing where its stops lie outside, and takes the width of what stands between', () => {
    const chain = chainOf('order: [cover, low, gear, spacer, high, {shoulder: case}], room: {housing: 30.1 mm}', '      cover: {kind: cover}\n      gear: {kind: gear, length: 7 mm}\n      spacer: {kind: spacer, length: 14 mm, turns-with: shaft}', '      cover-screw: {kind: screw, in: case, holds: cover, lock: medium}\n      pin: {kind: pin, in: shaft, holds: gear, lock: none}');
    expect(said(chain)).toEqual(['−7 Gear', '+30.1 room of the housing', '−4 High', '−14 Spacer', '−5 Low']);
  });

  it('leaves out what lies beside it: a ring of the housing between two things of the spindle', () => {
    const chain = chainOf('order: [{shoulder: shaft}, low, {shoulder: case}, gear, {shoulder: case}, high, ring], room: {spindle: 40 mm, housing: 30 mm}', '      gear: {kind: gear, width: 20 mm}', '      pin: {kind: pin, in: shaft, holds: gear, lock: none}');
    expect(said(chain)).toEqual(['+40 room of the spindle', '−30 room of the housing', '−5 Low', '−4 High']);
  });

  it('leaves out a ring on the spindle that only lies beside the web', () => {
    const chain = chainOf('order: [{shoulder: shaft}, low, {shoulder: case}, washer, high, ring], room: {spindle: 17 mm, housing: 6 mm}', '      washer: {kind: washer, thickness: 1 mm, turns-with: shaft}');
    expect(said(chain)).toEqual(['+17 room of the spindle', '−6 room of the housing', '−5 Low', '−4 High']);
  });

  it('names what the file lacks', () => {
    const chain = chainOf('order: [{shoulder: shaft}, low, {shoulder: case}, high, washer, ring]', '      washer: {kind: washer, turns-with: shaft}');
    expect(chain.missing).toEqual(['modules.m.stacks.s.room.spindle', 'modules.m.stacks.s.room.housing', 'modules.m.parts.washer.thickness']);
  });

  it.each([
    ['nothing stops it one way', 'order: [{shoulder: shaft}, low, {shoulder: case}], room: {spindle: 17 mm}', '', /Nothing stops it going up\./],
    ['a nut is set by hand', 'order: [{shoulder: shaft}, low, {shoulder: case}, high, nut]', '      nut: {kind: nut, on: shaft, lock: medium}', /set at the bench/],
    ['each column holds the bearing by itself', 'order: [{shoulder: shaft}, {shoulder: case}, high, clip, ring], room: {spindle: 5 mm, housing: 5 mm}', '      clip: {kind: circlip, in: case, holds: high, lock: press}', /two plays/],
    ['two bearings stop it one way', 'order: [{shoulder: shaft}, low, {shoulder: case}, high, ring, {shoulder: case}, other, clip]', '      clip: {kind: circlip, on: shaft, holds: other, lock: press}', /More than one bearing stops it going up/],
  ])('says why sizes do not decide it: %s', (_why, stack, joint, words) => {
    const chain = chainOf(stack, '      other: {kind: deep-groove, width: 4 mm}', joint);
    expect(chain.open).toMatch(words);
    expect(chain.lengths).toEqual([]);
  });
});

describe('a size in the file', () => {
  it('keeps its nominal for all that read it, and its window beside', () => {
    const part = read('rotorwright: 1\nmachine: {name: A}\nmodules: {m: {parts: {a: {kind: washer, thickness: 1 to 0.97 mm, bore: 3 mm}}}}').parts.get('m/a')!;
    expect(part.sizes).toEqual({ bore: 0.003, thickness: 0.001 });
    expect(part.limits).toEqual({ thickness: { nominal: 0.001, least: expect.closeTo(0.00097, 12), most: 0.001 } });
  });

  it.each([
    ['0.5 ±0.5 mm', 'value/range'],
    ['5 to 4.9', 'unit/missing'],
    ['5 to 4 g', 'unit/wrong'],
    ['5 ±± 1 mm', 'value/number'],
  ])('is refused where it cannot be one: %s', (size, code) => {
    const { findings } = readMachine(`rotorwright: 1\nmachine: {name: A}\nmodules: {m: {parts: {a: {thickness: ${size}}}}}`);
    expect(findings.map((finding) => finding.code)).toEqual([code]);
  });
});
