import type { LineComb, LineGroup } from '@rotorwright/signals';
import { chanceOf, type Chance } from './chance.ts';
import { electric, twoStroke } from './machines.ts';
import type { Scene } from './make-recording.ts';

export const machines: readonly LineComb[] = [twoStroke, electric];
const rates = [8000, 11_025, 16_000, 22_050, 44_100, 48_000] as const;

/** A steady machine at rest: only turns and noise, and what a field adds now and then. */
export function steadyScene(seed: number, seconds: number, loudness: number): Scene {
  const chance = chanceOf(seed * 31 + 7);
  return { ...common(chance, seed, seconds, loudness), speed: speedOf(chance) };
}

/** The same with all that a field does: drift, wander, Doppler, wind, echo, clipping, coding, tones of others. */
export function fieldScene(seed: number, seconds: number, loudness: number): Scene {
  const chance = chanceOf(seed * 37 + 5);
  const scene = common(chance, seed, seconds, loudness);
  const base = speedOf(chance);
  const wander = chance.between(0, 0.004);
  const beat = chance.between(0.3, 2);
  const phase = 6 * chance.unit();
  const drift = chance.between(-0.002, 0.002);
  const closing = chance.unit() < 0.3 ? chance.between(-3, 3) : 0;
  return {
    ...scene,
    speed: (time) => base * (1 + wander * Math.sin(beat * time + phase) + drift * time) * (1 + (closing / 343) * Math.tanh((time - seconds / 2) / 2)),
    jitter: chance.between(0, 0.0006),
    wind: chance.between(0, 0.7),
    foreign: Math.floor(4 * chance.unit()),
    ...(chance.unit() < 0.3 ? { echo: chance.between(4, 12) } : {}),
    ...(chance.unit() < 0.2 ? { coder: chance.between(24, 40) } : {}),
    ...(chance.unit() < 0.2 ? { clipped: chance.between(0.3, 0.8) } : {}),
  };
}

/** Speeding up from where the blades begin to be heard. */
export function spoolScene(seed: number, seconds: number, loudness: number): Scene {
  const chance = chanceOf(seed * 41 + 3);
  const scene = common(chance, seed, seconds, loudness);
  const end = speedOf(chance);
  const start = end * chance.between(0.4, 0.7);
  const begins = chance.between(0.5, 2);
  const lasts = chance.between(3, 6);
  return { ...scene, speed: (time) => start + (end - start) * smoothStep((time - begins) / lasts) };
}

/** Tail or engine off its ratio: by a count that is wrong, or by slip, which breathes a little. */
export function offRatioScene(seed: number, seconds: number, loudness: number, group: LineGroup, factor: number, comb: LineComb, slips = false): Scene {
  const chance = chanceOf(seed * 43 + 1);
  const scene = { ...common(chance, seed, seconds, loudness), comb };
  const beat = chance.between(0.5, 2);
  const breath = slips ? 0.1 * (factor - 1) : 0;
  return { ...scene, speed: speedOf(chance), factors: { [group]: (time: number) => factor + breath * Math.sin(beat * time) } };
}

/** The engine stops in the middle, the rotor runs on and slows down a little. */
export function dropOutScene(seed: number, seconds: number, loudness: number): Scene {
  const chance = chanceOf(seed * 47 + 2);
  const scene = common(chance, seed, seconds, loudness);
  const base = speedOf(chance);
  const at = chance.between(0.3, 0.7) * seconds;
  return { ...scene, speed: (time) => base * (time < at ? 1 : 1 - 0.02 * Math.min(1, (time - at) / 2)), silentFrom: { engine: at } };
}

/** No machine of these ratios: noise, wind, tones, hum. */
export function emptyScene(seed: number, seconds: number): Scene {
  const chance = chanceOf(seed * 53 + 9);
  return { ...common(chance, seed, seconds, -60), speed: speedOf(chance), foreign: Math.floor(5 * chance.unit()), wind: chance.between(0, 0.9) };
}

const speedOf = (chance: Chance): number => chance.between(20, 36);
const smoothStep = (x: number): number => (x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - 2 * x));

function common(chance: Chance, seed: number, seconds: number, loudness: number): Omit<Scene, 'speed'> {
  // Two groups at least are to be heard; gears speak with them.
  const speaking = chance.pick<readonly LineGroup[]>([['main', 'tail', 'engine', 'mesh'], ['main', 'tail', 'engine', 'mesh'], ['main', 'tail', 'engine'], ['main', 'tail', 'mesh'], ['main', 'engine', 'mesh']]);
  return { seed, seconds, rate: chance.pick(rates), comb: chance.pick(machines), loudness, speaking, jitter: 0, wind: chance.between(0, 0.5) };
}
