import { readMachine, type Machine } from '@rotorwright/machine';

export interface BigMachine {
  readonly text: string;
  readonly machine: Machine;
}

/** Parts, joints and so on of one module, and hazards for one module in ten. */
const partsOfModule = 20;

/**
 * An invented machine of any size, always the same for the same seed: gear cases with two plates, blocks, a shaft in its
 * bearings, a pinned gear behind a lid, brackets on brackets, and links from case to case; each is fixed to the frame or
 * to a case before it, and drives the next. A module has 20 parts, 30 joints, a stack and two measurements.
 *
 * @param modules 100 give 2,000 parts and 3,000 joints
 */
export function bigMachine(modules: number, seed: number): BigMachine {
  const random = randomFrom(seed);
  const text = [
    'machine: {name: Big, invented: true}',
    'consumables:\n  medium: {kind: threadlocker, strength: medium, cure: 24 h}\n  high: {kind: threadlocker, strength: high, cure: 24 h, undo: heat}',
    'shafts:',
    ...Array.from({ length: modules }, (_, at) => `  s${at}: {axis: up, part: m${at}/shaft}`),
    'drive:',
    ...Array.from({ length: modules - 1 }, (_, at) => `  mesh${at}: {kind: external, module: 1 mm, width: 8 mm, driver: {on: s${at}, teeth: 20, part: m${at}/gear}, driven: {on: s${at + 1}, teeth: 40, part: m${at + 1}/gear}}`),
    'modules:',
    '  frame: {parts: {side: {ground: true}}}',
    ...Array.from({ length: modules }, (_, at) => moduleText(at, random)),
    'hazards:',
    ...Array.from({ length: Math.ceil(modules / 10) }, (_, at) => `  h${at}: {ends-in: crash, when: {any: [{comes-off: m${at * 10}/gear}, {comes-off: m${at * 10}/tip}]}}`),
    `  drive: {ends-in: crash, when: {no-torque: [s0, s${Math.min(5, modules - 1)}]}}`,
    '',
  ].join('\n');
  const { machine, findings } = readMachine(text);
  const wrong = findings.find(({ severity }) => severity === 'error');
  if (machine === undefined || wrong !== undefined) throw new Error(`the big machine is refused: ${JSON.stringify(wrong)}`);
  return { text, machine };
}

function moduleText(at: number, random: () => number): string {
  const brackets = Array.from({ length: partsOfModule - 10 }, (_, bracket) => (bracket === partsOfModule - 11 ? 'tip' : `bracket-${bracket}`));
  const pick = <Item>(from: readonly Item[]): Item => from[Math.floor(random() * from.length)] as Item;
  const screw = (more: string) => `{kind: screw, head: socket, thread: M3, lock: medium, torque: 1.1 N·m, ${more}}`;
  const seats = ['plate-left', 'plate-right', 'block-low', 'block-high'];
  const onto = at === 0 || random() < 0.5 ? 'frame/side' : `m${Math.floor(random() * at)}/${pick(['plate-left', 'plate-right'])}`;
  const link = at < 2 ? '' : `      link: {kind: ball-link, on: bracket-3, holds: m${Math.floor(random() * at)}/bracket-4}\n`;
  return [
    `  m${at}:`,
    `    keep: plate-left\n    openings: {a-plate: {any: [plate-right, plate-left]}}`,
    '    parts:',
    ...['plate-left', 'plate-right'].map((id) => `      ${id}: {material: carbon plate}`),
    ...['block-low', 'block-high', 'shaft', 'gear'].map((id) => `      ${id}: {material: steel, behind: a-plate}`),
    ...['bearing-low', 'bearing-high', 'lid', 'post'].map((id) => `      ${id}: {material: steel}`),
    ...brackets.map((id) => `      ${id}: {material: aluminium 7075}`),
    '    stacks:',
    '      main: {spindle: shaft, housing: [block-low, block-high], ends: [down, up], order: [{shoulder: shaft}, bearing-low, {shoulder: block-low}, {shoulder: block-high}, bearing-high, nut], loads: [{pushes: shaft, towards: up}]}',
    '    joints:',
    ...['left', 'right'].map((side) => `      mount-${side}: ${screw(`copies: 2, in: plate-${side}, holds: ${onto}`)}`),
    ...['low', 'high'].flatMap((block) => ['left', 'right'].map((side) => `      block-${block}-${side}: ${screw(`copies: 2, in: block-${block}, holds: plate-${side}`)}`)),
    ...['left', 'right'].map((side) => `      post-${side}: ${screw(`in: post, holds: plate-${side}`)}`),
    '      nut: {kind: nut, thread: M6, on: shaft, lock: insert, torque: 3 N·m}',
    '      pin: {kind: pin, in: shaft, holds: gear, diameter: 2 mm, fit: slide, behind: a-plate}',
    '      pin-screw: {kind: set-screw, thread: M4, in: shaft, holds: pin, lock: high, torque: 1.2 N·m, behind: lid}',
    `      lid-screw: ${screw('copies: 3, in: block-high, holds: lid')}`,
    ...brackets.map((id, index) => `      ${id}-screw: ${screw(`copies: ${1 + Math.floor(random() * 3)}, in: ${pick([...seats, ...brackets.slice(0, index)])}, holds: ${id}${random() < 0.2 ? ', behind: lid' : ''}`)}`),
    ...brackets.slice(at < 2 ? 1 : 2).map((id, index) => `      brace-${index}: ${screw(`in: ${pick(seats)}, holds: ${id}`)}`),
    `${link}    measurements:`,
    '      play: {of: end-play main, with: dial gauge, window: 0 to 0.03 mm}',
    '      free: {of: drag main, with: by hand, ask: "Does it coast?"}',
  ].join('\n');
}

/** Numbers from 0 to 1 that always come the same. @source the generator mulberry32, public domain (from memory) */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
