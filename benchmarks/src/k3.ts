/**
 * Yardstick K3: power density and spectrogram of 60 s of sound at 48 kHz, Hann frames of 16,384 samples that overlap by half.
 * One line of JSON: the median CPU seconds of a warm run, and sums that tell whether the work was done rightly.
 * The recording is `$YARDSTICKS/build/audio.f32`; without it, noise of a fixed seed.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { spectra, type Spectra } from '@rotorwright/signals';

const SECONDS = 60;
const RATE = 48_000;
const SIZE = 16_384;

function recording(): Float64Array {
  const folder = process.env['YARDSTICKS'];
  const file = folder === undefined ? undefined : path.join(folder, 'build', 'audio.f32');
  if (file !== undefined && existsSync(file)) {
    const bytes = readFileSync(file);
    return Float64Array.from(new Float32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4));
  }
  let state = 1;
  return Float64Array.from({ length: SECONDS * RATE }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 31 - 1;
  });
}

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

const samples = recording();
let found: Spectra = spectra(samples, RATE, SIZE);
// As a waterfall does, minute after minute.
const room = found.magnitudes;
const times = Array.from({ length: 9 }, () => {
  const start = cpuSeconds();
  found = spectra(samples, RATE, SIZE, room);
  return cpuSeconds() - start;
});
const { density, magnitudes, bins } = found;
const sum = (values: Float64Array): number => values.reduce((all, value) => all + value, 0);
const check = [sum(density), sum(magnitudes), density[17]!, magnitudes[123 * bins + 456]!];
if (!check.every((value) => value > 0)) throw new Error('nothing was computed');
console.log(JSON.stringify({ k: 'K3', work: SECONDS, t: times.toSorted((a, b) => a - b)[times.length >> 1], check }));
