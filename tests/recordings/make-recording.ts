import type { LineComb, LineGroup, Recording } from '@rotorwright/signals';
import { chanceOf, type Chance } from './chance.ts';
import { coded } from './coder.ts';

/** A made-up recording: what speaks, how it turns, and what the sound goes through. */
export interface Scene {
  readonly seed: number;
  readonly seconds: number;
  /** Hz */
  readonly rate: number;
  readonly comb: LineComb;
  /** Turns of the main rotor in a second, as they are received; a number, or a course over time (s). */
  readonly speed: number | ((time: number) => number);
  /** Power of all lines over that of noise and wind from 20 to 4,000 Hz, dB. */
  readonly loudness: number;
  /** Groups that speak; all by default. */
  readonly speaking?: readonly LineGroup[];
  /** What the speed of a group is multiplied by, off the file's ratio: a number, or a course over time. */
  readonly factors?: Partial<Record<LineGroup, number | ((time: number) => number)>>;
  /** When a group falls silent, s. */
  readonly silentFrom?: Partial<Record<LineGroup, number>>;
  /** Shake of each turn, standard deviation as a part of it. */
  readonly jitter?: number;
  /** Part of the noise that is wind, which falls with frequency and comes in gusts. */
  readonly wind?: number;
  /** Echoes of a room, dB below the sound itself. */
  readonly echo?: number;
  /** Peaks are cut off at this part of the highest. */
  readonly clipped?: number;
  /** A lossy coder drops what is this much below its band, dB. */
  readonly coder?: number;
  /** Tones of others, and hum: how many. */
  readonly foreign?: number;
  /** A flaw in a bearing: strikes for one turn of the main rotor, the frequency that rings, Hz, and how loud it is against all lines, dB. */
  readonly strikes?: { readonly order: number; readonly ring: number; readonly loudness: number };
  /** Lines of a family grow and fade once a turn of a shaft of this order. */
  readonly swelling?: { readonly family: string; readonly order: number; readonly depth: number };
  /** Amplitudes of one line each alike, phases by chance, white noise, no wobble: the case of the bound. */
  readonly plain?: boolean;
}

export interface Made {
  readonly recording: Recording;
  /** Mean of the speed over the whole, Hz, and the speed at a time. */
  readonly speed: number;
  readonly speedAt: (time: number) => number;
  /** Order and amplitude of each line, and the one-sided noise density: what the bound asks for. */
  readonly lines: readonly { readonly order: number; readonly amplitude: number }[];
  readonly density: number;
}

const at = (course: number | ((time: number) => number) | undefined, time: number): number => (course === undefined ? 1 : typeof course === 'number' ? course : course(time));
const band = [20, 4000] as const;

export function makeRecording(scene: Scene): Made {
  const chance = chanceOf(scene.seed);
  const { seconds, rate } = scene;
  const count = Math.round(seconds * rate);
  const jitter = jitterOf(scene, chance, count);
  const speedAt = (time: number): number => at(scene.speed, time) * jitter(time);
  const turns = turnsOf(speedAt, count, rate);
  const sound = new Float64Array(count);
  const lines = linesOf(scene, chance);
  const total = lines.reduce((sum, { amplitude }) => sum + amplitude ** 2 / 2, 0);
  for (const group of ['main', 'tail', 'engine', 'mesh'] as const) {
    const own = lines.filter((line) => line.group === group);
    if (own.length === 0) continue;
    const factor = scene.factors?.[group];
    const angle = factor === undefined ? turns : turnsOf((time) => speedAt(time) * at(factor, time), count, rate);
    const silent = Math.round((scene.silentFrom?.[group] ?? Infinity) * rate);
    const fade = 0.05 * rate;
    for (const { family, order, amplitude, phase, wobble, beat } of own) {
      const swells = scene.swelling?.family === family ? scene.swelling : undefined;
      for (let index = 0; index < count && index < silent + fade; index += 1) {
        const swell = swells === undefined ? 1 : 1 + swells.depth * Math.cos(2 * Math.PI * swells.order * angle[index]!);
        const loud = swell * (scene.plain ? 1 : 1 + wobble * Math.sin(beat * (index / rate) + 7 * phase)) * (index < silent ? 1 : 1 - (index - silent) / fade);
        sound[index]! += amplitude * loud * Math.cos(2 * Math.PI * (order * angle[index]! + phase));
      }
    }
  }
  if (scene.strikes) addStrikes(sound, scene, turns, total, chance);
  const noise = total / 10 ** (scene.loudness / 10);
  const through = scene.echo === undefined ? sound : echoed(sound, rate, scene.echo, chance);
  addNoise(through, scene, noise, chance);
  addForeign(through, scene, Math.sqrt(total), chance);
  const finished = finish(through, scene);
  return {
    recording: { rate, channels: [finished], warnings: [] },
    speed: ((turns[count - 1]! - turns[0]!) * rate) / (count - 1),
    speedAt,
    lines: lines.map(({ order, amplitude }) => ({ order, amplitude })),
    density: noise / (Math.min(band[1], rate / 2) - band[0]),
  };
}

function turnsOf(speedAt: (time: number) => number, count: number, rate: number): Float64Array {
  const turns = new Float64Array(count);
  for (let index = 1; index < count; index += 1) turns[index] = turns[index - 1]! + speedAt((index - 0.5) / rate) / rate;
  return turns;
}

/** Each turn a little longer or shorter than the next; nothing where none is asked for. */
function jitterOf({ jitter, seconds }: Scene, chance: Chance, count: number): (time: number) => number {
  if (jitter === undefined || jitter === 0) return () => 1;
  const step = 0.04;
  const knots = Float64Array.from({ length: Math.ceil(seconds / step) + 2 }, () => jitter * chance.normal());
  return (time) => {
    const place = Math.max(0, Math.min(count, time / step));
    const knot = Math.floor(place);
    return 1 + knots[knot]! + (place - knot) * (knots[knot + 1]! - knots[knot]!);
  };
}

interface MadeLine {
  readonly family: string;
  readonly group: LineGroup;
  readonly order: number;
  readonly amplitude: number;
  /** turns */
  readonly phase: number;
  readonly wobble: number;
  readonly beat: number;
}

function linesOf({ comb, speaking, rate, speed, plain }: Scene, chance: Chance): readonly MadeLine[] {
  const loud: Readonly<Record<LineGroup, number>> = { main: chance.between(-3, 3), tail: chance.between(-5, 3), engine: chance.between(-4, 4), mesh: chance.between(-16, -8) };
  const highest = Math.min(3900, 0.44 * rate);
  const fastest = typeof speed === 'number' ? speed : comb.fastest;
  return comb.families.flatMap((family) => {
    const roll = chance.between(1.2, 3.5);
    const last = 3 + Math.floor(chance.unit() * (family.harmonics - 2));
    const level = loud[family.group] + (family.group === 'mesh' ? chance.between(-4, 4) : 0);
    const lines = Array.from({ length: family.harmonics }, (_, index): MadeLine => ({
      family: family.id, group: family.group,
      order: family.order * (index + 1),
      amplitude: index >= last ? 0 : 10 ** ((level - roll * index + (plain ? 0 : chance.between(-5, 3))) / 20),
      phase: chance.unit(), wobble: chance.between(0, 0.3), beat: chance.between(0.5, 4),
    }));
    const faint = (family.faint ?? []).map((order): MadeLine => ({ family: family.id, group: family.group, order, amplitude: plain ? 0 : 10 ** ((level - chance.between(8, 30)) / 20), phase: chance.unit(), wobble: 0.1, beat: 1 }));
    return [...lines, ...faint].filter(({ amplitude, order, group }) => amplitude > 0 && order * fastest * 1.02 < highest && (speaking?.includes(group) ?? true));
  });
}

function addNoise(sound: Float64Array, { rate, wind = 0, plain }: Scene, power: number, chance: Chance): void {
  const share = plain ? 0 : wind;
  // White noise fills all frequencies; what counts lies between 20 Hz and 4 kHz.
  const within = Math.min(band[1], rate / 2) - band[0];
  const white = Math.sqrt((power * (1 - share) * (rate / 2)) / within);
  for (let index = 0; index < sound.length; index += 1) sound[index]! += white * chance.normal();
  if (share === 0) return;
  const gusts = new Float64Array(sound.length);
  const decay = Math.exp((-2 * Math.PI * 60) / rate);
  const calm = Math.exp((-2 * Math.PI * 18) / rate);
  let low = 0;
  let slow = 0;
  let square = 0;
  const beat = chance.between(0.1, 0.5);
  for (let index = 0; index < sound.length; index += 1) {
    low = decay * low + chance.normal();
    // What lies below 18 Hz no microphone passes on.
    slow = calm * slow + (1 - calm) * low;
    gusts[index] = (low - slow) * (1 + 0.7 * Math.sin(2 * Math.PI * beat * (index / rate) + beat * 50));
    square += gusts[index]! ** 2 / sound.length;
  }
  const loud = Math.sqrt((power * share) / square);
  for (let index = 0; index < sound.length; index += 1) sound[index]! += loud * gusts[index]!;
}

function addForeign(sound: Float64Array, { rate, foreign = 0 }: Scene, loud: number, chance: Chance): void {
  for (let tone = 0; tone < foreign; tone += 1) {
    const hum = tone === 0;
    const frequency = hum ? 50 : chance.between(60, Math.min(3000, 0.4 * rate));
    const amplitude = loud * 10 ** (chance.between(-14, -2) / 20);
    const phase = chance.unit();
    for (let harmonic = 1; harmonic <= (hum ? 6 : 1); harmonic += 1) {
      for (let index = 0; index < sound.length; index += 1) sound[index]! += (amplitude / harmonic ** 1.5) * Math.cos(2 * Math.PI * ((frequency * harmonic * index) / rate + phase * harmonic));
    }
  }
}

/** Each strike rings and dies away within a millisecond or two; balls slip, so that the strikes come a little early or late. */
function addStrikes(sound: Float64Array, { strikes, rate }: Scene, turns: Float64Array, power: number, chance: Chance): void {
  const { order, ring, loudness } = strikes!;
  const decay = 0.0008;
  const added = new Float64Array(sound.length);
  for (let index = 0, strike = 0; index < sound.length; index += 1) {
    if (turns[index]! * order < strike + 0.01 * chance.normal()) continue;
    strike += 1;
    const loud = 1 + 0.2 * chance.normal();
    for (let at = index; at < sound.length && at < index + 6 * decay * rate; at += 1) added[at]! += loud * Math.exp((index - at) / rate / decay) * Math.sin((2 * Math.PI * ring * (at - index)) / rate);
  }
  const own = added.reduce((sum, value) => sum + value * value, 0) / added.length;
  const gain = Math.sqrt((power * 10 ** (loudness / 10)) / own);
  for (let index = 0; index < sound.length; index += 1) sound[index]! += gain * added[index]!;
}

function echoed(sound: Float64Array, rate: number, below: number, chance: Chance): Float64Array {
  const out = sound.slice();
  for (let each = 0; each < 4; each += 1) {
    const delay = Math.round(chance.between(0.003, 0.045) * rate);
    const loud = 10 ** (-(below + 2 * each) / 20) * chance.pick([-1, 1]);
    for (let index = delay; index < out.length; index += 1) out[index]! += loud * sound[index - delay]!;
  }
  return out;
}

function finish(sound: Float64Array, { clipped, coder, rate }: Scene): Float64Array {
  const highest = sound.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const most = highest * (clipped ?? 1);
  const cut = sound.map((value) => (0.9 * Math.max(-most, Math.min(most, value))) / most);
  return coder === undefined ? cut : coded(cut, rate, coder, Math.min(16_000, 0.42 * rate));
}
