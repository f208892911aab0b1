/**
 * How long every figure and every margin of the demo machines take, together, while engine speed, mass or altitude is dragged: a
 * frame is 16 ms. Then how long they take from nothing, and the speeds of the shafts alone. Wall clock and processor, median and
 * best. One line of JSON.
 */
import { readFileSync } from 'node:fs';
import { figures, margins, prepareDrive, prepareFigures, speedsAt, type Conditions, type Margins } from '@rotorwright/figures';
import { readMachine, type Machine } from '@rotorwright/machine';
import { cpuSeconds } from './timing/cpu.ts';

/** Frames of a drag that are counted, after as many that warm up. */
const FRAMES = 200;

const rounded = (milliseconds: number): number => Number(milliseconds.toFixed(4));

/** Median and best of many runs, ms; what a run gives is added up, so that none is left out. */
function timed(runs: number, run: (index: number) => number): Readonly<Record<'wallMs' | 'wallBestMs' | 'cpuMs' | 'cpuBestMs', number>> {
  const [wall, cpu] = [[], []] as [number[], number[]];
  let sum = 0;
  for (let index = 0; index < 2 * runs; index += 1) {
    const [start, used] = [performance.now(), cpuSeconds()];
    sum += run(index);
    if (index < runs) continue;
    wall.push(performance.now() - start);
    cpu.push(1000 * (cpuSeconds() - used));
  }
  if (!(sum > 0)) throw new Error('nothing was computed');
  const median = (times: readonly number[]): number => rounded(times.toSorted((a, b) => a - b)[times.length >> 1]!);
  return { wallMs: median(wall), wallBestMs: rounded(Math.min(...wall)), cpuMs: median(cpu), cpuBestMs: rounded(Math.min(...cpu)) };
}

const total = (values: readonly { readonly value?: number }[]): number => values.reduce((sum, { value }) => sum + (value ?? 0), 0);

/** To and fro, no two frames alike. */
const swing = (index: number): number => Math.sin(index / 9);

function drags(machine: Machine): Readonly<Record<string, (index: number) => Conditions>> {
  const speed = (machine.power.engine ?? machine.power.motor)!.speed!;
  return {
    speed: (index) => ({ sourceSpeed: speed * (1 + 0.15 * swing(index)) }),
    mass: (index) => ({ mass: machine.mass! * (1 + 0.15 * swing(index)) }),
    altitude: (index) => ({ altitude: 1500 * (1 + swing(index)) }),
  };
}

function measure(name: string) {
  const { machine } = readMachine(readFileSync(new URL(`../../examples/${name}/machine.yaml`, import.meta.url), 'utf8'));
  if (!machine) throw new Error(`the demo machine ${name} is refused`);
  const dragged = Object.entries(drags(machine)).map(([what, at]) => {
    const reckon = prepareFigures(machine);
    let last: Margins | undefined;
    return [what, timed(FRAMES, (index) => {
      last = margins(reckon(at(index)), undefined, last);
      return total(last.set.all) + total(last.all);
    })] as const;
  });
  const all = margins(figures(machine));
  const prepared = prepareDrive(machine);
  return {
    figures: all.set.all.length, margins: all.all.length, drag: Object.fromEntries(dragged),
    fromNothing: timed(15, () => total(margins(figures({ ...machine })).set.all)),
    speeds: timed(2000, (index) => [...speedsAt(prepared, 1000 + index).values()].reduce((sum, speed) => sum + Math.abs(speed), 0)),
  };
}

console.log(JSON.stringify({ name: 'figures', frameMs: 16, whimbrel: measure('whimbrel'), sanderling: measure('sanderling') }));
