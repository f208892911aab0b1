import { describe, expect, it } from 'vitest';
import { hear, hearAll, type Hearing, type LineComb, type Recording } from '@rotorwright/signals';
import { strikingScene } from '../../../../tests/recordings/bearings.ts';
import { fieldScene, steadyScene } from '../../../../tests/recordings/cases.ts';
import { twoStroke } from '../../../../tests/recordings/machines.ts';
import { makeRecording, type Scene } from '../../../../tests/recordings/make-recording.ts';

/** What a recording says besides the speed. Recordings are made up, and their truth is known. */

// By hand: tail shaft of order 4.7 · 19/18 = 4.961; eight balls, a ball a fifth of the pitch circle: strikes 4 · 0.8, 4 · 1.2 and (1 − 0.04)/0.2 = 4.8 a turn.
const tailTurns = 4.7 * (19 / 18);
const machine: LineComb = {
  ...twoStroke,
  shafts: [{ shaft: 'mast', order: 1 }, { shaft: 'tube', order: 4.7 }, { shaft: 'tail', order: tailTurns }, { shaft: 'crank', order: 113 / 14 }],
  bearings: [
    { id: 'tail bearing', turns: tailTurns, strikes: { 'outer race': 3.2 * tailTurns, 'inner race': 4.8 * tailTurns, ball: 4.8 * tailTurns } },
    { id: 'mast bearing', turns: 1, strikes: { 'outer race': 5.1, 'inner race': 7.9, ball: 6.3 } },
  ],
};
const everybody = { speaking: ['main', 'tail', 'engine', 'mesh'] as const, comb: machine };

function listen(scene: Scene, file = machine, unit?: string): Hearing {
  const { recording } = makeRecording(scene);
  return hear(unit === undefined ? recording : { ...recording, unit }, file);
}

describe('bearings', () => {
  it('strikes of a flaw are found where slip has moved them, and the bearing is named', () => {
    const order = 3.2 * tailTurns * 0.987;
    const { flaws } = listen({ ...steadyScene(11, 6, 3), ...everybody, rate: 44_100, strikes: { order, ring: 9000, loudness: -12 } });
    expect(flaws).toHaveLength(1);
    expect(flaws![0]!.order / order).toBeCloseTo(1, 3);
    expect(flaws![0]!.candidates[0]).toMatchObject({ bearing: 'tail bearing', place: 'outer race' });
    expect(flaws![0]!.multiples.length).toBeGreaterThanOrEqual(2);
  });

  // 61005: loud enough for its twelfth multiple; 61009: a bearing of the tail would strike four times as often; 61010: half the order has every line of it.
  it.each([61_005, 61_009, 61_010])('one flaw is told once, and by its own bearing (%i)', (seed) => {
    const { scene, flaw } = strikingScene(seed, 6, 0, 2);
    const { flaws } = listen(scene, scene.comb);
    expect(flaws).toHaveLength(1);
    expect(flaws![0]!.candidates[0]).toMatchObject(flaw);
    expect(flaws![0]!.order / scene.strikes!.order).toBeCloseTo(1, 3);
  });

  it.each([21, 22, 24])('none are found in sound machines (%i)', (seed) => {
    expect(listen({ ...fieldScene(seed, 4, 3), ...everybody, rate: 22_050 }).flaws).toEqual([]);
  });

  it('are not looked for where the file knows none', () => {
    expect(listen({ ...steadyScene(12, 4, 3), ...everybody, rate: 8000 }, twoStroke).flaws).toBeUndefined();
  });
});

describe('lines', () => {
  it('on both sides of a mesh line, a turn of a shaft away, name the shaft', () => {
    // 14 on 113: the fourteenth firing line is the first of the teeth.
    const { lines } = listen({ ...steadyScene(13, 6, 6), ...everybody, rate: 16_000, speed: 27, swelling: { family: 'mesh main', order: 1, depth: 1.5 } });
    const beside = lines!.filter((line) => line.beside !== undefined).map(({ beside }) => beside);
    expect(beside).toContainEqual({ family: 'firing', multiple: 14, shaft: 'mast', turns: 1 });
    expect(beside).toContainEqual({ family: 'firing', multiple: 14, shaft: 'mast', turns: -1 });
  });

  it('that nothing explains, but that are multiples of one, are one row', () => {
    const stranger = { id: 'stranger', group: 'main' as const, order: 5.61, harmonics: 5 };
    const { lines } = listen({ ...steadyScene(14, 6, 6), ...everybody, rate: 8000, comb: { ...machine, families: [...machine.families, stranger] } });
    const rows = lines!.filter((line) => line.row !== undefined).map(({ row }) => row!);
    expect(rows.length).toBeGreaterThanOrEqual(3);
    for (const row of rows) expect(row.order).toBeCloseTo(5.61, 2);
  });

  it('have their amplitude in the unit of the recording', () => {
    // By hand: lines of 1, 0.5 and 0.25 m/s² at 2, 4 and 6 turns of 28 Hz, tail at 9.92 turns with 0.5 m/s².
    const rate = 8000;
    const tones = [[2, 1], [4, 0.5], [6, 0.25], [2 * tailTurns, 0.5], [4 * tailTurns, 0.25]] as const;
    const samples = Float64Array.from({ length: 6 * rate }, (_, index) => tones.reduce((sum, [order, amplitude]) => sum + amplitude * Math.cos(2 * Math.PI * 28 * order * (index / rate) + order), 0) + 0.05 * Math.sin(index * index * 0.731));
    const { lines, unit } = hear({ rate, channels: [samples], unit: 'm/s²', warnings: [] }, machine);
    expect(unit).toBe('m/s²');
    for (const [order, amplitude] of tones) expect(lines!.find((line) => Math.abs(line.order - order) < 0.02)!.amplitude / amplitude).toBeCloseTo(1, 1);
  });
});

describe('a long recording', () => {
  it('is heard piece after piece, each with where it begins, and says how far it is', () => {
    // As slow as an accelerometer: three quarters of a minute of it are quickly heard.
    const { recording } = makeRecording({ ...steadyScene(15, 45, 10), ...everybody, rate: 1000, speed: (time: number) => (time < 15 ? 26 : time < 30 ? 29 : 27) });
    const parts: number[] = [];
    const pieces = [...hearAll(recording, twoStroke, ({ part }) => parts.push(part))];
    expect(pieces.map(({ from, seconds }) => [from, seconds])).toEqual([[0, 15], [15, 15], [30, 15]]);
    expect(pieces.map(({ speed }) => Math.round(speed! / (2 * Math.PI)))).toEqual([26, 29, 27]);
    expect(parts).toEqual(parts.toSorted((a, b) => a - b));
    expect(parts.at(-1)).toBeGreaterThan(0.8);
  }, 60_000);

  it('of up to half a minute is heard as a whole, of more the loudest fifteen seconds', () => {
    const speed = 26;
    const of = (seconds: number): Recording => {
      const { recording } = makeRecording({ ...steadyScene(17, seconds, 10), ...everybody, rate: 1000, speed });
      // Three times as loud from the twentieth second to the thirty-fifth.
      return { ...recording, channels: recording.channels.map((samples) => samples.map((value, index) => (index >= 20_000 && index < 35_000 ? 3 * value : value))) };
    };
    expect(hear(of(30), twoStroke)).toMatchObject({ from: 0, seconds: 30 });
    expect(hear(of(40), twoStroke)).toMatchObject({ from: 20, seconds: 15 });
  }, 60_000);

  it('as short as one piece is heard as ever', () => {
    const { recording } = makeRecording({ ...steadyScene(16, 3, 6), ...everybody, rate: 8000 });
    expect([...hearAll(recording, twoStroke)]).toEqual([hear(recording, twoStroke)]);
  });
});
