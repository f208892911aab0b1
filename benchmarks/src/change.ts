/**
 * What a page reckons at the largest demo machine, one thing after the other: a tooth more on each pinion, from the text to
 * what must be signed again; all that is left in the fewest evenings; and what can be done tonight. One line of JSON; times
 * are those of the processor.
 */
import { readFileSync } from 'node:fs';
import { applyEdits, readMachine } from '@rotorwright/machine';
import { evenings, planBuild, tonight, workOfChange, type Planned } from '../../packages/build/dist/index.js';
import { medianCpuSeconds } from './timing/cpu.ts';

const text = readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8');

function planned(source: string): Planned {
  const { machine } = readMachine(source);
  if (!machine) throw new Error('the demo machine is refused');
  return { machine, plan: planBuild(machine) };
}

/** What a run finds is looked at, so that none is left out. */
function cpuMs(run: () => number): number {
  return Number((1000 * medianCpuSeconds(() => {
    if (!(run() > 0)) throw new Error('nothing was found');
  })).toFixed(1));
}

const before = planned(text);
const pinions = [...before.machine.couplings.values()].flatMap(({ id, driver }) => (driver.teeth === undefined ? [] : [{ path: `drive.${id}.driver.teeth`, value: String(driver.teeth + 1) }]));
const edited = pinions.map((edit) => {
  const changed = applyEdits(text, [edit]);
  if ('findings' in changed) throw new Error(`${edit.path} is refused`);
  return changed.text;
});
const now = '2026-11-25T12:00:00.000Z';
const nights = [1, 1.5, 2.5, 4].flatMap((hours) => [1, 2, 3].map((people) => ({ from: '2026-11-25T18:30:00.000Z', now, length: hours * 3600, people })));
const found = nights.map((options) => evenings(before.plan, new Map(), options));

console.log(JSON.stringify({
  name: 'change',
  ideas: edited.length,
  ideaMs: Number((cpuMs(() => edited.reduce((sum, each) => sum + workOfChange(before, planned(each)).again.length, 0)) / edited.length).toFixed(1)),
  evenings: nights.length,
  proven: found.filter(({ proven }) => proven).length,
  eveningsMs: Number((cpuMs(() => nights.reduce((sum, options) => sum + evenings(before.plan, new Map(), options).count, 0)) / nights.length).toFixed(1)),
  tonightMs: cpuMs(() => tonight(before.plan, new Map(), { now, time: 2400, without: [] }).steps.length),
}));
