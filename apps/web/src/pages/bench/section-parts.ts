import { breakLine, rectangle, type Point, type Primitive } from './primitives.ts';
import type { Cut } from './section-hatch.ts';
import { threadDiameter, type Slot, type StackLayout } from './stack-slots.ts';

/** What one place of a stack adds to the upper half: regions that are cut, and marks that lie over them. */
export interface Drawn {
  readonly cuts: readonly Cut[];
  readonly over: readonly Primitive[];
}

/** The upper half of whatever stands at one place of the stack. */
export function drawSlot(layout: StackLayout, index: number): Drawn {
  const slot = layout.slots[index];
  switch (slot?.kind) {
    case 'radial-bearing': return drawRadial(slot);
    case 'roller': return drawRoller(slot);
    case 'thrust-bearing': return drawThrust(layout, slot);
    case 'shim': return { cuts: [], over: [{ shape: 'area', points: rectangle(slot.left, slot.right, slot.inner, slot.outer), fill: 'ink', weight: 'fine', part: slot.id }] };
    case 'gear': return drawGear(slot);
    case 'ring':
    case 'body': return { cuts: [{ points: rectangle(slot.left, slot.right, slot.inner, slot.outer), part: slot.id, small: slot.kind === 'ring' }], over: [] };
    case 'closing': return drawClosing(slot);
    default: return { cuts: [], over: [] };
  }
}

function drawRadial(slot: Slot): Drawn {
  const height = slot.outer - slot.inner;
  const ring = height * 0.3;
  const radius = Math.min(height * 0.29, (slot.right - slot.left) * 0.42);
  return {
    cuts: [
      { points: rectangle(slot.left, slot.right, slot.inner, slot.inner + ring), part: slot.id, small: true },
      { points: rectangle(slot.left, slot.right, slot.outer - ring, slot.outer), part: slot.id, small: true },
    ],
    over: ball([(slot.left + slot.right) / 2, (slot.inner + slot.outer) / 2], radius, slot.id),
  };
}

function ball(centre: Point, radius: number, part: string): readonly Primitive[] {
  const [x, y] = centre;
  const arm = radius * 0.35;
  return [
    { shape: 'circle', centre, radius, fill: 'paper', weight: 'heavy', part },
    { shape: 'line', points: [[x - arm, y], [x + arm, y]], weight: 'fine', part },
    { shape: 'line', points: [[x, y - arm], [x, y + arm]], weight: 'fine', part },
  ];
}

function drawRoller(slot: Slot): Drawn {
  const cup = slot.outer - (slot.outer - slot.inner) * 0.4;
  const inset = (slot.right - slot.left) * 0.14;
  return {
    cuts: [{ points: rectangle(slot.left, slot.right, cup, slot.outer), part: slot.id, small: true }],
    over: [{ shape: 'area', points: rectangle(slot.left + inset, slot.right - inset, slot.inner, cup), fill: 'paper', weight: 'heavy', part: slot.id }],
  };
}

function drawThrust(layout: StackLayout, slot: Slot): Drawn {
  const width = slot.right - slot.left;
  const height = slot.outer - slot.inner;
  const washer = width * 0.28;
  const loose = slot.loose === undefined ? undefined : slot.loose === layout.ends[0] ? 'left' : 'right';
  const bore = (side: 'left' | 'right'): number => (side === loose ? (slot.looseBore ?? slot.inner) : slot.inner);
  // The washer that runs with the spindle clears the housing; the one that leans on the housing fills it.
  const rim = (side: 'left' | 'right'): number => (loose !== undefined && side !== loose ? slot.outer - height * 0.1 : slot.outer);
  const middle = (slot.left + slot.right) / 2;
  const y = (slot.inner + slot.outer) / 2;
  const radius = Math.min(width * 0.25, height * 0.3);
  const open = slot.part?.facing['open-side'];
  // The closed side of the cage: a web beside the ball, with two lips round it.
  const web = middle + (open === layout.ends[1] ? -1 : 1) * radius * 0.72;
  const lip = radius * 1.3;
  const cage: readonly Primitive[] = open === undefined ? [] : [{ shape: 'line', points: [[middle, y + lip], [web, y + lip], [web, y - lip], [middle, y - lip]], weight: 'heavy', part: slot.id }];
  return {
    cuts: [
      { points: rectangle(slot.left, slot.left + washer, bore('left'), rim('left')), part: slot.id, small: true },
      { points: rectangle(slot.right - washer, slot.right, bore('right'), rim('right')), part: slot.id, small: true },
    ],
    over: [...cage, ...ball([middle, y], radius, slot.id)],
  };
}

/** Teeth are not cut: the body is hatched up to the root circle. */
function drawGear(slot: Slot): Drawn {
  const root = slot.root ?? slot.inner;
  const teeth: Primitive = { shape: 'area', points: rectangle(slot.left, slot.right, root, slot.outer), fill: 'paper', weight: 'heavy', part: slot.id };
  const pitch: readonly Primitive[] = slot.pitch === undefined ? [] : [{ shape: 'line', points: [[slot.left - 0.6, slot.pitch], [slot.right + 0.6, slot.pitch]], weight: 'fine', dash: 'chain', part: slot.id }];
  return { cuts: [{ points: rectangle(slot.left, slot.right, slot.inner, root), part: slot.id, small: false }], over: [teeth, ...pitch] };
}

function drawClosing(slot: Slot): Drawn {
  const outline = rectangle(slot.left, slot.right, slot.inner, slot.outer);
  switch (slot.joint?.kind) {
    case 'nut': {
      const flat = slot.inner + (slot.outer - slot.inner) * 0.45;
      return { cuts: [], over: [{ shape: 'area', points: outline, fill: 'paper', weight: 'heavy', part: slot.id }, { shape: 'line', points: [[slot.left, flat], [slot.right, flat]], weight: 'fine', part: slot.id }] };
    }
    case 'screw':
    case 'bolt':
    case 'set-screw':
      return { cuts: [], over: [{ shape: 'area', points: outline, fill: 'paper', weight: 'heavy', part: slot.id }] };
    case 'circlip':
      return { cuts: [], over: [{ shape: 'area', points: rectangle(slot.left, slot.right, slot.stops === 'housing' ? slot.inner : slot.inner * 0.88, slot.outer), fill: 'ink', weight: 'fine', part: slot.id }] };
    default:
      return { cuts: [{ points: outline, part: slot.id, small: false }], over: [] };
  }
}

/** A screw in the end of the spindle: socket in hidden lines, shank in a local break, thread as a fine line. */
export function screwInSpindle(layout: StackLayout, index: number): readonly Primitive[] {
  const slot = layout.slots[index];
  const joint = slot?.joint;
  if (!slot || !joint || slot.inner !== 0 || slot.stops !== 'spindle') return [];
  const atRight = index >= layout.slots.length / 2;
  const way = atRight ? -1 : 1;
  const face = atRight ? slot.left : slot.right;
  const head = atRight ? slot.right : slot.left;
  const radius = (threadDiameter(joint.thread) ?? slot.outer) / 2;
  // Two and a quarter diameters where the file does not say how far it goes in.
  const engagement = joint.engagement === undefined ? radius * 4.5 : joint.engagement * 1000;
  const tip = face + way * engagement;
  const bores = layout.slots.flatMap((one) => (one.inner > 0 && one.kind !== 'housing-shoulder' ? [one.inner] : []));
  const surface = (bores.length > 0 ? Math.min(...bores) : layout.reference * 0.45) * 0.98;
  const wave = breakLine([tip + way * radius * 1.2, 0], [tip + way * radius * 0.8, surface], radius * 0.3);
  const socket = slot.outer * 0.42;
  const depth = head + way * (slot.right - slot.left) * 0.5;
  const part = slot.id;
  return [
    { shape: 'area', points: [[face, 0], ...wave, [face, surface]], fill: 'paper', weight: 'fine', hatch: { turn: 1, close: true }, part: layout.stack.spindle },
    { shape: 'area', points: [[face, 0], [face, radius], [tip - way * radius * 0.3, radius], [tip, radius * 0.7], [tip, 0]], fill: 'paper', weight: 'heavy', part },
    { shape: 'line', points: [[face, radius * 0.82], [tip - way * radius * 0.3, radius * 0.82]], weight: 'fine', part },
    { shape: 'line', points: [[head, socket], [depth, socket], [depth, 0]], weight: 'fine', dash: 'hidden', part },
  ];
}
