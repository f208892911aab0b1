import type { RoughMachine, RoughModule } from './by-hand.ts';

const screw = { kind: 'screw', thread: 'M3', head: 'socket', class: '12.9', locks: ['medium'], torque: 1.1 } as const;
const plates = { any: [{ off: 'tail-case/plate-right' }, { off: 'tail-case/plate-left' }] } as const;

/** A gear case of two plates, blocks and posts, with a shaft that a pin and a set screw drive. Invented. */
export const tailCase: RoughModule = {
  title: 'Front tail gear case',
  comes: 'assembled',
  behind: { off: 'boom/clamp-screw' },
  openings: { 'a-plate': plates },
  parts: {
    'plate-left': {}, 'plate-right': {},
    'block-low': { material: 'aluminium 7075', behind: plates }, 'block-high': { material: 'aluminium 7075', behind: plates },
    post: { copies: ['a', 'b', 'c', 'd'], tip: 'Mark each post’s place before the first plate comes off.' },
    'input-shaft': { material: 'steel', behind: plates }, spur: { material: 'steel', behind: plates },
    'bearing-low': { kind: 'deep-groove', grease: 'ball-grease', sizes: { bore: 0.006, outer: 0.013 } },
    'bearing-high': { kind: 'deep-groove', grease: 'ball-grease', sizes: { bore: 0.006, outer: 0.013 } },
  },
  stacks: {
    input: {
      spindle: 'tail-case/input-shaft', housing: ['tail-case/block-low', 'tail-case/block-high'], ends: ['down', 'up'],
      order: [
        { shoulder: 'tail-case/input-shaft' }, { part: 'tail-case/bearing-low' }, { shoulder: 'tail-case/block-low' }, { part: 'tail-case/spur' },
        { shoulder: 'tail-case/block-high' }, { part: 'tail-case/bearing-high' }, { joint: 'tail-case/nut' },
      ],
      loads: [{ coupling: 'front-bevel' }],
    },
  },
  joints: {
    'case-screw-left': { ...screw, copies: ['1', '2'], in: 'frame/sides', holds: ['tail-case/plate-left'] },
    'case-screw-right': { ...screw, copies: ['1', '2'], in: 'frame/sides', holds: ['tail-case/plate-right'] },
    'block-low-left': { ...screw, copies: ['1', '2'], in: 'tail-case/block-low', holds: ['tail-case/plate-left'] },
    'block-low-right': { ...screw, copies: ['1', '2'], in: 'tail-case/block-low', holds: ['tail-case/plate-right'] },
    'cross-pin': { kind: 'pin', in: 'tail-case/input-shaft', holds: ['tail-case/spur'], diameter: 0.002, fit: 'slide', behind: plates },
    'pin-screw': {
      kind: 'set-screw', thread: 'M4', class: '45H', in: 'tail-case/input-shaft', holds: ['tail-case/cross-pin'], locks: ['medium'], torque: 1.2, mark: true,
      behind: { any: [{ off: 'tail-case' }, { off: 'mast/main-gear' }] },
      tip: 'Feel the screw meet the pin before the compound goes in.', why: 'It is all that keeps the pin in.',
    },
    nut: { kind: 'nut', thread: 'M6x0.75', in: 'tail-case/input-shaft', locks: ['medium'], torque: 'snug' },
  },
  measurements: {
    play: { quantity: 'end-play', of: 'tail-case/input', with: 'dial gauge', window: { min: 0, max: 2e-5 }, unit: 'm', shown: 'mm' },
    free: { quantity: 'drag', of: 'tail-case/input', with: 'by hand', ask: 'Does the shaft coast for a turn or more?' },
  },
  steps: { turn: { do: 'Turn the shaft twenty times by hand and feel for a notch.', after: ['tail-case/play'], takes: 180 } },
};

/** The case with the frame that it hangs in and the boom that is pushed in behind it. Invented. */
export const caseInFrame: RoughMachine = {
  consumables: {
    medium: { kind: 'threadlocker', strength: 'medium', cure: 86_400, undo: 'hand tools' },
    high: { kind: 'threadlocker', strength: 'high', cure: 43_200, undo: 'heat' },
    'ball-grease': { kind: 'grease', title: 'synthetic bearing grease' },
  },
  couplings: {
    'tail-mesh': { kind: 'external', module: 0.001, width: 0.008, driver: { path: '', on: 'mast', teeth: 46, choices: [] }, driven: { path: '', on: 'tail-input', teeth: 10, part: 'tail-case/spur', choices: [] } },
    'front-bevel': { kind: 'bevel', driver: { path: '', on: 'tail-input', teeth: 17, part: 'tail-case/input-shaft', choices: [] }, driven: { path: '', on: 'tail-tube', teeth: 17, choices: [] } },
  },
  modules: {
    'tail-case': tailCase,
    frame: { parts: { sides: { ground: true } } },
    boom: { parts: { tube: {} }, joints: { 'clamp-screw': { ...screw, copies: ['1', '2'], in: 'frame/sides', holds: ['boom/tube'] } } },
  },
};
