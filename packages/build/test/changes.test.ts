import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { applyEdits, readMachine, type Edit } from '@rotorwright/machine';
import { planBuild, workOfChange, type ChangeWork, type Planned } from '@rotorwright/build';

const text = readFileSync(path.resolve(import.meta.dirname, '../../../examples/whimbrel/machine.yaml'), 'utf8');

function planned(source: string, variant?: string): Planned {
  const { machine } = readMachine(source, variant === undefined ? {} : { variant });
  if (machine === undefined) throw new Error('no machine');
  return { machine, plan: planBuild(machine) };
}
const before = planned(text);

function change(...edits: readonly Edit[]): ChangeWork {
  const edited = applyEdits(text, edits);
  if ('findings' in edited) throw new Error(edited.findings.map(({ code }) => code).join());
  return workOfChange(before, planned(edited.text));
}
const idsOf = ({ again }: ChangeWork): readonly string[] => again.map(({ step }) => step.id);

describe('what a change means at the bench', () => {
  it('is nothing when nothing that is built changes', () => {
    expect(change({ path: 'machine.mass', value: '6.4 kg' })).toEqual({ parts: [], again: [], gone: [] });
    expect(change({ path: 'modules.frame.title', value: 'Chassis' })).toEqual({ parts: [], again: [], gone: [] });
  });

  it('is a pinion out and another in: its own way, and not the free wheel that its thrust runs through', () => {
    const work = change({ path: 'drive.main-mesh.driver.teeth', value: '15' });
    expect(work.parts).toMatchObject([{ id: 'clutch/pinion', kind: 'replaced', teeth: 15, code: 'WH-2115', price: '21.50 EUR' }]);
    expect(work.wayIn?.proven).toBe(true);
    const undone = work.wayIn?.ways[0]?.undo.map(({ id }) => id) ?? [];
    expect(undone).toContain('clutch/preload-nut');
    expect(undone.some((id) => id.startsWith('mast/'))).toBe(false);
    // What comes undone is signed again, and so is the mesh.
    for (const id of [...undone, 'clutch/backlash']) expect(idsOf(work)).toContain(id);
    expect(idsOf(work).some((id) => id.startsWith('mast/'))).toBe(false);
  });

  it('is one joint made in another way, and what stands before it', () => {
    const work = change({ path: 'modules.tail-case.joints.pin-screw.lock', value: 'high' });
    expect(work.parts).toEqual([]);
    expect(work.again.find(({ step }) => step.id === 'tail-case/pin-screw')?.why).toBe('changed');
    expect(work.wayIn?.ways[0]?.undo.at(-1)?.id).toBe('tail-case/pin-screw');
  });

  it('is a joint that falls away, and a new one', () => {
    const work = change({ path: 'modules.boom.joints.stop-screw' });
    expect(work.gone.map(({ id }) => id)).toEqual(['boom/stop-screw']);
    const back = workOfChange(planned((applyEdits(text, [{ path: 'modules.boom.joints.stop-screw' }]) as { text: string }).text), before);
    expect(back.again.find(({ step }) => step.id === 'boom/stop-screw')?.why).toBe('new');
  });

  it('comes in the order of work', () => {
    const order = [...planned(text, 'short').plan.steps.keys()];
    const ids = idsOf(workOfChange(before, planned(text, 'short')));
    expect(ids.length).toBeGreaterThan(20);
    expect(ids).toEqual(order.filter((id) => ids.includes(id)));
  });
});
