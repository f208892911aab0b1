/**
 * Yardstick K5: a million helical pairs, their contact ratio, backlash and whether they run, by the sweep that the catalogue uses.
 * One line of JSON: the median CPU seconds of a warm run, and sums that tell whether the work was done rightly.
 */
import { sweepMeshes, type SweptMeshes } from '@rotorwright/mechanics';
import { medianCpuSeconds } from './timing/cpu.ts';

const MODULES = [0.7, 0.8, 1, 1.25, 1.5];
const PAIRS = 1_000_000;
const SHIFTS = 100;
const LEAST_RATIO = 1.2;

const shift1 = Float64Array.from({ length: SHIFTS }, (_, index) => 0.08 * Math.floor(index / 10));
const shift2 = Float64Array.from({ length: SHIFTS }, (_, index) => -0.4 + 0.1 * (index % 10));
const centreDistance = new Float64Array(SHIFTS);
const out: SweptMeshes = { contactRatio: new Float64Array(PAIRS), backlash: new Float64Array(PAIRS), runs: new Uint8Array(PAIRS) };

let count = 0;
let best = -1;
let bestAt = 0;

// Millimetres, as the yardstick has them; nothing in the sweep knows which.
function sweep(): void {
  count = 0;
  best = -1;
  let at = 0;
  for (const normalModule of MODULES) {
    for (let helix = 0; helix < 10; helix++) {
      const helixAngle = (helix * 3 * Math.PI) / 180;
      for (let teeth1 = 10; teeth1 < 30; teeth1 += 2) {
        for (let teeth2 = 60; teeth2 < 160; teeth2 += 5) {
          sweepPair({ normalModule, helixAngle, pressureAngle: Math.PI / 9, teeth1, teeth2, addendum: 1, faceWidth: 10 }, at);
          at += SHIFTS;
        }
      }
    }
  }
}

function sweepPair(teeth: Parameters<typeof sweepMeshes>[0], at: number): void {
  const reference = (teeth.normalModule * (teeth.teeth1 + teeth.teeth2)) / (2 * Math.cos(teeth.helixAngle));
  for (let i = 0; i < SHIFTS; i++) centreDistance[i] = reference + 0.96 * (shift1[i]! + shift2[i]!) * teeth.normalModule;
  sweepMeshes(teeth, shift1, shift2, centreDistance, LEAST_RATIO, out, at);
  keepBest(at);
}

function keepBest(from: number): void {
  let [running, ratio, place] = [count, best, bestAt];
  for (let i = from; i < from + SHIFTS; i++) {
    if (out.runs[i] === 0) continue;
    running++;
    if (out.contactRatio[i]! > ratio) {
      ratio = out.contactRatio[i]!;
      place = i;
    }
  }
  count = running;
  best = ratio;
  bestAt = place;
}

const t = medianCpuSeconds(sweep);
const sum = (values: Float64Array): number => {
  let total = 0;
  for (const value of values) total += value;
  return total;
};
const check = [sum(out.contactRatio), sum(out.backlash), count, best, bestAt];
if (!(count > 0 && count < PAIRS)) throw new Error('nothing was computed');
console.log(JSON.stringify({ k: 'K5', work: PAIRS, t, check }));
