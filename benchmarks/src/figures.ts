/**
 * How long every figure and every margin of the demo machines take, together, while one slider of the pages is dragged from end to
 * end: a frame is 16 ms. Then how long they take from nothing, and the speeds of the shafts alone. Wall clock and processor, median
 * and best, and the worst median of all sliders. One line of JSON.
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

/** To and fro from end to end of a slider, no two frames alike. */
const between = (low: number, high: number, index: number): number => low + (high - low) * (0.5 + 0.5 * Math.sin(index / 9));

/** The sliders of the Rotor sheet, which go farther than those of Margins. */
function sliders(machine: Machine): Readonly<Record<string, (index: number) => Conditions>> {
  const speed = (machine.power.engine ?? machine.power.motor)!.speed!;
  return {
    speed: (index) => ({ sourceSpeed: between(0.6 * speed, 1.3 * speed, index) }),
    mass: (index) => ({ mass: between(0.6 * machine.mass!, 2 * machine.mass!, index) }),
    altitude: (index) => ({ altitude: between(-400, 4000, index) }),
    warmer: (index) => ({ temperatureOffset: between(-40, 40, index) }),
    humidity: (index) => ({ humidity: between(0, 1, index) }),
  };
}

function measure(name: string) {
  const { machine } = readMachine(readFileSync(new URL(`../../examples/${name}/machine.yaml`, import.meta.url), 'utf8'));
  if (!machine) throw new Error(`the demo machine ${name} is refused`);
  const dragged = Object.entries(sliders(machine)).map(([what, at]) => {
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
    figures: all.set.all.length, margins: all.all.length, worstMedianMs: Math.max(...dragged.map(([, { wallMs }]) => wallMs)), drag: Object.fromEntries(dragged),
    fromNothing: timed(15, () => total(margins(figures({ ...machine })).set.all)),
    speeds: timed(2000, (index) => [...speedsAt(prepared, 1000 + index).values()].reduce((sum, speed) => sum + Math.abs(speed), 0)),
  };
}

console.log(JSON.stringify({ name: 'figures', frameMs: 16, whimbrel: measure('whimbrel'), sanderling: measure('sanderling') }));
