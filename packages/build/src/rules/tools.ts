import type { Joint, Machine } from '@rotorwright/machine';
import { normalThread } from '../fingerprint/index.ts';
import { isPushFit } from './by-hand.ts';

type Sizes = Readonly<Record<string, number>>;

/** Hexagon keys in mm of socket head cap screws. @source ISO 4762, nominal s (read in tables of dimensions) */
const capScrewKeys: Sizes = { 'M1.6': 1.5, M2: 1.5, 'M2.5': 2, M3: 2.5, M4: 3, M5: 4, M6: 5, M8: 6 };

/** Hexagon keys in mm of set screws. @source ISO 4026 to 4029, nominal s (read in tables of dimensions) */
const setScrewKeys: Sizes = { 'M1.6': 0.7, M2: 0.9, 'M2.5': 1.3, M3: 1.5, M4: 2, M5: 2.5, M6: 3, M8: 4 };

/** Hexagon keys in mm of countersunk and button heads. @source ISO 10642 and ISO 7380-1 (countersunk read in tables of dimensions; button heads from memory) */
const lowHeadKeys: Sizes = { M3: 2, M4: 2.5, M5: 3, M6: 4, M8: 5 };

/** Width across flats in mm of hexagon nuts and heads. @source ISO 4032 and ISO 4014, nominal s (read in tables of dimensions) */
const flats: Sizes = { 'M1.6': 3.2, M2: 4, 'M2.5': 5, M3: 5.5, M4: 7, M5: 8, M6: 10, M8: 13 };


/** What a joint is fitted with, the tool that turns it first. */
export function toolsOf(machine: Machine, joint: Joint): readonly string[] {
  const turning = joint.tool === undefined ? (isPushFit(machine, joint) ? [] : turningTools(joint)) : [joint.tool];
  return [...turning, ...(typeof joint.torque === 'number' ? ['Torque wrench'] : []), ...(joint.mark ? ['Paint pen'] : [])];
}

/** What a joint is undone with. */
export function undoingToolsOf(joint: Joint, warm: boolean): readonly string[] {
  const turning = joint.tool === undefined ? turningTools(joint) : [joint.tool];
  return [...(joint.kind === 'bond' ? [] : turning), ...(warm ? ['Hot-air gun'] : [])];
}

function turningTools(joint: Joint): readonly string[] {
  const thread = joint.thread === undefined ? undefined : normalThread(joint.thread);
  switch (joint.kind) {
    case 'screw':
      return [headTool(joint.head, thread)];
    case 'set-screw':
      return [key(setScrewKeys, thread, 'Hexagon key to fit the set screw')];
    case 'bolt':
      return [headTool(joint.head, thread), ...(joint.locks?.some((lock) => lock.grade === 'insert') === true ? [wrench(thread)] : [])];
    case 'nut':
      return [wrench(thread)];
    case 'stud':
      return ['Stud or ball wrench'];
    case 'threaded-end':
      return ['Wrench or strap to fit the part', 'Holding tool for its mate'];
    case 'threaded-rod':
      return ['Two nuts locked against each other'];
    case 'pin':
      return [joint.diameter === undefined ? 'Pin punch' : `Pin punch under ${mm(joint.diameter * 1000)}`];
    case 'circlip':
      return ['Circlip pliers'];
    case 'clamp':
      // Straps and ties clamp too; they have no thread, and want no tool.
      return thread === undefined ? [] : [joint.head === undefined ? 'Driver to fit the clamp screw' : headTool(joint.head, thread)];
    case 'press':
      return ['Arbor press or vice with soft jaws'];
    case 'bond':
      return ['Abrasive paper', 'Alignment support'];
    case 'ball-link':
      return ['Ball link pliers'];
  }
}

function headTool(head: string | undefined, thread: string | undefined): string {
  const words = head?.toLowerCase() ?? '';
  if (/counter|button|flat/u.test(words)) return key(lowHeadKeys, thread, 'Hexagon key to fit the head');
  if (/socket|cap|cyl/u.test(words)) return key(capScrewKeys, thread, 'Hexagon key to fit the head');
  if (/hex/u.test(words)) return wrench(thread);
  return 'Driver to fit the head';
}

function key(sizes: Sizes, thread: string | undefined, otherwise: string): string {
  const size = thread === undefined ? undefined : sizes[thread];
  return size === undefined ? otherwise : `Hexagon key ${mm(size)}`;
}

/** Fine threads are no standard nut of this table: their width is the maker's. */
function wrench(thread: string | undefined): string {
  const size = thread === undefined ? undefined : flats[thread];
  return size === undefined ? 'Wrench to fit' : `Wrench ${mm(size)}`;
}

function mm(size: number): string {
  return `${Number(size.toPrecision(4))} mm`;
}
