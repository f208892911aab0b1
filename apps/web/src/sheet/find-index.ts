import { figures } from '@rotorwright/figures';
import type { MachineView } from '../data/index.ts';
import { figureAt, machineAt, reachAt, sheets, stepAt } from './sheets.ts';

export interface Found {
  readonly kind: 'sheet' | 'machine' | 'figure' | 'step' | 'hazard' | 'part' | 'joint';
  readonly title: string;
  /** Where it belongs, or its id. */
  readonly of: string;
  readonly to: string;
}

/** All that Find reaches: machines and sheets, and of the open machine its figures, steps, hazards, parts and joints, each once: the way in leads on to what keeps it. */
export function findIndex(machines: readonly MachineView[], open: MachineView | undefined): readonly Found[] {
  const found: Found[] = machines.map((view) => ({ kind: 'machine', title: view.title, of: view.id, to: machineAt(view.id, view.machine ? 'drive' : 'file') }));
  if (!open) return [...found, { kind: 'sheet', title: 'Worksheet', of: 'any calculation alone', to: '/worksheet' }];
  found.push(...sheets.map(({ key, number, title }): Found => ({ kind: 'sheet', title, of: `sheet ${number}`, to: machineAt(open.id, key) })));
  const { machine, plan, id } = open;
  if (!machine) return found;
  for (const figure of figures(machine).all) found.push({ kind: 'figure', title: figure.title, of: figure.name, to: figureAt(id, figure.name) });
  for (const step of plan?.steps.values() ?? []) found.push({ kind: 'step', title: step.title, of: step.id, to: stepAt(id, step.id) });
  for (const hazard of machine.hazards.values()) found.push({ kind: 'hazard', title: hazard.title, of: hazard.id, to: machineAt(id, 'holds', `?hazard=${encodeURIComponent(hazard.id)}`) });
  for (const [kind, things] of [['part', machine.parts], ['joint', machine.joints]] as const) {
    for (const thing of things.values()) found.push({ kind, title: thing.title, of: thing.id, to: reachAt(id, thing.id) });
  }
  return found;
}

/** Best first: every word must occur; a title that begins with the words comes before one that holds them. */
export function search(index: readonly Found[], words: string, most = 40): readonly Found[] {
  const asked = words.toLowerCase().split(/\s+/).filter((word) => word !== '');
  if (asked.length === 0) return index.filter(({ kind }) => kind === 'sheet' || kind === 'machine').slice(0, most);
  const rank = (found: Found): number => {
    const title = found.title.toLowerCase();
    const all = `${title} ${found.of.toLowerCase()} ${found.kind}`;
    if (!asked.every((word) => all.includes(word))) return -1;
    return (title.startsWith(asked[0]!) ? 4 : 0) + (asked.every((word) => title.includes(word)) ? 2 : 0) + (found.kind === 'sheet' || found.kind === 'figure' ? 1 : 0);
  };
  return index.map((found) => ({ found, rank: rank(found) })).filter((each) => each.rank >= 0).toSorted((a, b) => b.rank - a.rank).slice(0, most).map(({ found }) => found);
}
