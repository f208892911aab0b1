import { child, entriesOf, isEmpty, type MapNode, type TreeNode } from '../read/tree.ts';
import type { ReferenceKind } from '../schema/field.ts';

const plainSections: Readonly<Partial<Record<ReferenceKind, readonly string[]>>> = {
  shaft: ['shafts'], coupling: ['drive'], rotor: ['rotors'], consumable: ['consumables'], type: ['types'], sensor: ['sensors'], servo: ['controls', 'servos'], lever: ['controls', 'levers'], link: ['controls', 'links'],
};
const thingSections: Readonly<Partial<Record<ReferenceKind, string>>> = { part: 'parts', joint: 'joints', stack: 'stacks', measurement: 'measurements', step: 'steps' };

/** Names of one kind that a half-written file has, as they would be written inside a module or elsewhere. */
export function namesOf(kind: ReferenceKind, root: MapNode, module: string | undefined): readonly string[] {
  const section = plainSections[kind];
  if (section) return keysOf(section.reduce<TreeNode | undefined>((node, key) => child(node, key), root));
  if (kind === 'swashplate' || kind === 'slider') return child(child(root, 'controls'), kind) ? [kind] : [];
  const modules = child(root, 'modules');
  if (kind === 'module') return keysOf(modules);
  const own = module === undefined ? undefined : child(modules, module);
  if (kind === 'opening') return keysOf(child(own, 'openings'));
  const things = thingSections[kind];
  if (things === undefined) return [];
  const others = [...entriesOf(modules)].filter(([key]) => key !== module).flatMap(([key, entry]) => keysOf(child(entry.node, things)).map((thing) => `${key}/${thing}`));
  return [...keysOf(child(own, things)), ...others];
}

function keysOf(node: TreeNode | undefined): readonly string[] {
  return [...entriesOf(node)].filter(([, entry]) => entry.node.kind === 'map' || isEmpty(entry.node) || entry.node.kind === 'list').map(([key]) => key);
}
