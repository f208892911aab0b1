/** CPU time of a full stick sweep of a demo machine: 1,000 positions, both blades at 72 azimuths, from the sticks to the pitch. One line of JSON. */
import { readFileSync } from 'node:fs';
import { controlsReport, figures, sweepSticks } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import { medianCpuSeconds } from './timing/cpu.ts';

const { machine } = readMachine(readFileSync(new URL('../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
const plate = machine && controlsReport(figures(machine)).plate?.plate;
if (!plate) throw new Error('the demo machine has no swashplate');
const positions = Array.from({ length: 1000 }, (_, index) => ({ collective: Math.sin(index / 160), fore: 0.7 * Math.sin(index / 23), right: 0.7 * Math.cos(index / 31) }));
const azimuths = 72;
const blades = plate.rotor.blades ?? 2;
/** Blades stand evenly: each passes the same azimuths, some of them later. */
const pitches = new Float64Array(blades * azimuths * positions.length);
let reached = 0;
const seconds = medianCpuSeconds(() => {
  const sweep = sweepSticks(plate, positions);
  reached = 0;
  for (let position = 0; position < positions.length; position += 1) {
    for (let blade = 0; blade < blades; blade += 1) {
      for (let azimuth = 0; azimuth < azimuths; azimuth += 1) {
        const pitch = sweep?.pitches[azimuths * position + ((azimuth + (blade * azimuths) / blades) % azimuths)] ?? Number.NaN;
        pitches[azimuths * (blades * position + blade) + azimuth] = pitch;
        if (!Number.isNaN(pitch)) reached += 1;
      }
    }
  }
});
if (reached !== pitches.length) throw new Error(`${pitches.length - reached} positions are out of reach`);
console.log(JSON.stringify({ name: 'controls-sweep', positions: positions.length, blades, azimuths, cpuMs: Number((1000 * seconds).toFixed(1)), limitMs: 50 }));
