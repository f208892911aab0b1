/** How long every figure of the largest demo machine takes: from nothing, while the engine speed is dragged, and the speeds alone. The whole machine, margins and all, belongs into a frame. Times are those of the processor. One line of JSON. */
import { readFileSync } from 'node:fs';
import { figures, margins, prepareDrive, prepareFigures, speedsAt, type Margins } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import { cpuSeconds } from './timing/cpu.ts';

const { machine } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
if (!machine) throw new Error('the demo machine is refused');

/** Median and best time of a run on the processor, ms; what a run gives is added up, so that none is left out. */
function median(runs: number, run: (index: number) => number): { readonly ms: number; readonly best: number; readonly sum: number } {
  const times: number[] = [];
  let sum = 0;
  for (let index = 0; index < runs; index += 1) {
    const start = cpuSeconds();
    sum += run(index);
    times.push(1000 * (cpuSeconds() - start));
  }
  return { ms: times.toSorted((a, b) => a - b)[runs >> 1]!, best: Math.min(...times), sum };
}

const all = median(60, (index) => figures({ ...machine }, { sourceSpeed: 1000 + index }).all.reduce((total, figure) => total + (figure.value ?? 0), 0));
const reckon = prepareFigures(machine);
const drag = median(200, (index) => reckon({ sourceSpeed: 1000 + index }).all.reduce((total, figure) => total + (figure.value ?? 0), 0));
const sets = Array.from({ length: 100 }, (_, index) => reckon({ sourceSpeed: 1000 + index }));
let last: Margins | undefined;
const margin = median(sets.length, (index) => {
  last = margins(sets[index]!, undefined, last);
  return last.all.reduce((total, { value }) => total + (value ?? 0), 0);
});
const prepared = prepareDrive(machine);
const speeds = median(2000, (index) => [...speedsAt(prepared, 1000 + index).values()].reduce((total, speed) => total + Math.abs(speed), 0));
if (!(all.sum > 0 && drag.sum > 0 && margin.sum > 0 && speeds.sum > 0)) throw new Error('nothing was computed');
console.log(JSON.stringify({ name: 'figures', figures: figures(machine).all.length, ms: Number(all.ms.toFixed(3)), dragMs: Number(drag.ms.toFixed(3)), margins: last?.all.length, marginsMs: Number(margin.ms.toFixed(3)), wholeMs: Number((drag.ms + margin.ms).toFixed(3)), wholeBestMs: Number((drag.best + margin.best).toFixed(3)), frameMs: 16, speedsMs: Number(speeds.ms.toFixed(4)) }));
