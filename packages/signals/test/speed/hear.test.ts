import { describe, expect, it } from 'vitest';
import { hear, hearingWords, type Hearing, type LineComb } from '@rotorwright/signals';
import { bearingScene } from '../../../../tests/recordings/bearings.ts';
import { dropOutScene, emptyScene, fieldScene, offRatioScene, spoolScene, steadyScene } from '../../../../tests/recordings/cases.ts';
import { electric, twoStroke } from '../../../../tests/recordings/machines.ts';
import { makeRecording, type Made, type Scene } from '../../../../tests/recordings/make-recording.ts';

/** A few of the cases of the benchmark `listen`: enough to see that nothing broke. Recordings are made up, and their truth is known. */

const everybody = { speaking: ['main', 'tail', 'engine', 'mesh'] as const, rate: 8000 };

function listen(scene: Scene): { readonly hearing: Hearing; readonly made: Made; readonly error: number } {
  const made = makeRecording(scene);
  const hearing = hear(made.recording, scene.comb);
  return { hearing, made, error: hearing.speed === undefined ? Number.NaN : Math.abs(hearing.speed / (2 * Math.PI) / made.speed - 1) };
}

describe('speed by the comb of a machine', () => {
  it.each([1, 2])('steady, ten seconds, as loud as the noise: within 0.01 % (%i)', (seed) => {
    const { hearing, error } = listen({ ...steadyScene(seed, 10, 0), ...everybody });
    expect(hearing.verdict).toBe('heard');
    expect(error).toBeLessThan(1e-4);
    expect(hearing.groups.filter(({ audible }) => audible).length).toBeGreaterThanOrEqual(2);
  });

  it('ten decibels below the noise: within 0.15 %', () => {
    const { hearing, error } = listen({ ...steadyScene(3, 10, -10), ...everybody });
    expect(hearing.verdict).toBe('heard');
    expect(error).toBeLessThan(1.5e-3);
  });

  it('in the field, with wander, wind and foreign tones: within 0.05 %', () => {
    const { error } = listen({ ...fieldScene(4, 8, 3), ...everybody });
    expect(error).toBeLessThan(5e-4);
  });

  it('follows a rotor that speeds up', () => {
    const { hearing, made } = listen({ ...spoolScene(1, 10, 3), ...everybody });
    const { times, speeds } = hearing.track!;
    const errors = [...speeds].map((speed, index) => Math.abs(speed / (2 * Math.PI) / made.speedAt(times[index]!) - 1)).toSorted((a, b) => a - b);
    expect(errors[errors.length >> 1]).toBeLessThan(2e-3);
    expect(speeds.at(-1)! / speeds[0]!).toBeGreaterThan(1.3);
  });

  it('is not content with a path that is right at the end only: a start at less than half the speed is found', () => {
    // At 804 rpm in the first second, at 1,667 from the fourth on: the first search explains the end well, and nothing of the start.
    const { hearing, error } = listen(spoolScene(100_032, 10, 0));
    expect(hearing.verdict).toBe('heard');
    expect(error).toBeLessThan(1e-3);
  });

  it('cannot tell where a part of the recording speaks for half the speed', () => {
    // No search finds how it speeds up from 720 to 1,380 rpm; the path that is left begins at twice the speed.
    const { hearing, error } = listen({ ...spoolScene(31, 10, 0), rate: 8000 });
    expect(error).toBeGreaterThan(0.1);
    expect(hearing.verdict).toBe('cannot-tell');
  });

  it('is not sure of the whole where the machine is heard in a part only, and says where it is not', () => {
    const { hearing } = listen({ ...steadyScene(1, 10, 3), ...everybody, silentFrom: { main: 6, tail: 6, engine: 6, mesh: 6 } });
    expect(hearing.verdict).toBe('cannot-tell');
    const [start, end] = hearing.unheard!;
    expect(Math.abs(start - 6)).toBeLessThan(2.6);
    expect(end).toBeGreaterThan(9.9);
    expect(hearingWords(hearing, (speed) => `${speed} rad/s`)[0]).toMatch(/^Cannot tell: the machine is not heard from \d\.\d to 10\.0 s/u);
  });

  it('gives the same for the same bytes, louder, and turned over', () => {
    const { recording } = makeRecording({ ...steadyScene(5, 4, 3), ...everybody, comb: twoStroke });
    const first = hear(recording, twoStroke);
    expect(hear(recording, twoStroke)).toEqual(first);
    const width = first.interval![1] - first.interval![0];
    for (const factor of [-1, 8, 0.001]) {
      const again = hear({ ...recording, channels: recording.channels.map((channel) => channel.map((value) => factor * value)) }, twoStroke);
      expect(Math.abs(again.speed! - first.speed!)).toBeLessThan(0.2 * width);
    }
  });
});

describe('what does not fit', () => {
  it('a clutch that slips by one per cent is told, with the slip', () => {
    const { hearing, error } = listen({ ...offRatioScene(1, 10, 3, 'engine', 1.01, twoStroke, true), ...everybody });
    expect(hearing.verdict).toBe('mismatch');
    expect(hearing.mismatch).toMatchObject({ group: 'engine', slip: true });
    expect(hearingWords(hearing, (speed) => `${speed} rad/s`)).toContain('Inspect the clutch before the next flight.');
    // The slip breathes by a tenth; what is told is its mean.
    expect(Math.abs(hearing.mismatch!.factor - 1.01)).toBeLessThan(5e-4);
    expect(error).toBeLessThan(1e-4);
  });

  it('a pinion with a tooth less is named', () => {
    const { hearing } = listen({ ...offRatioScene(2, 10, 3, 'engine', 14 / 15, twoStroke), ...everybody });
    expect(hearing.verdict).toBe('mismatch');
    expect(hearing.mismatch!.otherRatios.map(({ id }) => id)).toEqual(['pinion 15']);
    const words = hearingWords(hearing, (speed) => `${speed} rad/s`);
    expect(words[0]).toMatch(/The engine turns 6\.67 % slower than the file would have it\. One count of the file is wrong: pinion 15\.$/u);
    expect(words[1]).toMatch(/^Count the teeth on the machine/u);
    expect(hearing.mismatch!.slip).toBe(false);
    // Its firing is told where it was heard: 113/15 turns for one of the rotor.
    const firing = hearing.lines!.filter(({ family }) => family === 'firing');
    expect(firing.length).toBeGreaterThan(2);
    for (const { order, multiple } of firing) expect(Math.abs(order / multiple! / (113 / 15) - 1)).toBeLessThan(2e-4);
  });

  it('an engine that rings at its own firing is no bearing that strikes, though the file has another pinion', () => {
    const firing = (113 / 14) * (14 / 15);
    const file: LineComb = { ...twoStroke, bearings: [{ id: 'beside the firing', turns: 4.7, strikes: { 'outer race': 0.985 * 2 * firing, 'inner race': 22.7, ball: 9.1 } }] };
    const scene = { ...offRatioScene(2, 4, 3, 'engine', 14 / 15, twoStroke), ...everybody, rate: 22_050, strikes: { order: firing, ring: 7000, loudness: -8 } };
    const hearing = hear(makeRecording(scene).recording, file);
    expect(hearing.verdict).toBe('mismatch');
    expect(hearing.flaws).toEqual([]);
    // The same strikes from a bearing are told: 1.2 % off what its sizes say, where nothing of the engine stands.
    const struck = hear(makeRecording({ ...scene, strikes: { ...scene.strikes, order: 0.997 * 2 * firing } }).recording, file);
    expect(struck.flaws!.map(({ candidates: [first] }) => first!.place)).toEqual(['outer race']);
  });

  it('a wheel with a tooth less, whose firing falls upon blade lines, is named by the lines between them', () => {
    // 112 on 14 turns eight times: the first three firing lines are blade lines, the fourth is beyond the blades.
    const real: LineComb = { ...twoStroke, families: twoStroke.families.map((family) => (family.id === 'mesh main' ? { ...family, order: 112 } : family)) };
    const scene = { ...offRatioScene(11_013, 10, 0, 'engine', 112 / 113, real), ...everybody };
    const hearing = hear(makeRecording(scene).recording, twoStroke);
    expect(hearing.verdict).toBe('mismatch');
    expect(hearing.mismatch!.otherRatios.map(({ id }) => id)).toEqual(['main gear 112']);
  });

  it('a count that alone is wrong puts the lines of its teeth where they are heard', () => {
    const { factor, meshes = {} } = twoStroke.otherRatios.find(({ id }) => id === 'tail gear 46')!;
    const real: LineComb = { ...twoStroke, families: twoStroke.families.map((family) => ({ ...family, order: meshes[family.id] ?? family.order })) };
    const { recording } = makeRecording({ ...offRatioScene(3, 10, 3, 'tail', factor, real), ...everybody });
    const hearing = hear(recording, twoStroke);
    expect(hearing.mismatch!.otherRatios.map(({ id }) => id)).toEqual(['tail gear 46']);
    const teeth = hearing.lines!.filter(({ family }) => family === 'mesh tail');
    expect(teeth.length).toBeGreaterThan(0);
    // 46 for one turn of the rotor, not 47 as the file has it.
    for (const { order, multiple } of teeth) expect(order / multiple!).toBeCloseTo(46, 6);
  });

  const loud: LineComb = { ...twoStroke, families: twoStroke.families.map((family) => (family.id === 'blades main' ? { ...family, harmonics: 40 } : family)) };

  it('blades that are heard further up than the file expects are no engine off its ratio', () => {
    const { recording } = makeRecording({ ...steadyScene(6, 8, 10), rate: 8000, comb: loud, speaking: ['main', 'tail'] });
    const { verdict, mismatch } = hear(recording, twoStroke);
    expect(mismatch).toBeUndefined();
    expect(verdict).toBe('heard');
  });

  it('and their lines are told as the blades\', as far as the row goes on', () => {
    const { recording } = makeRecording({ ...steadyScene(9, 8, 10), rate: 8000, comb: loud, speaking: ['main', 'tail'] });
    const { lines } = hear(recording, twoStroke);
    // The file expects fourteen; twenty-four are there.
    const multiples = lines!.flatMap(({ family, multiple }) => (family === 'blades main' ? [multiple!] : []));
    expect(Math.max(...multiples)).toBeGreaterThan(20);
    expect(lines!.every(({ family }) => family !== undefined)).toBe(true);
  });

  it('the slope of a loud line is no tail that slips', () => {
    // The tail says nothing; at 3.8 % of slip its lines would lie beside those of the motor.
    const scene = { ...bearingScene(71_008, 10, 0), rate: 22_050 };
    const hearing = hear(makeRecording(scene).recording, scene.comb);
    expect(hearing.mismatch).toBeUndefined();
    expect(hearing.groups.find(({ group }) => group === 'tail')!.audible).toBe(false);
  });

  it('an engine that falls silent is told, and when', () => {
    const scene = { ...dropOutScene(2, 10, 3), ...everybody };
    const { hearing } = listen(scene);
    expect(Math.abs(hearing.engineSilentFrom! - scene.silentFrom!.engine!)).toBeLessThan(0.5);
  });

  it('one source alone is not taken for a proof', () => {
    const { hearing } = listen({ ...steadyScene(7, 8, 3), ...everybody, comb: twoStroke, speaking: ['tail'] });
    expect(['not-verified', 'cannot-tell', 'not-heard']).toContain(hearing.verdict);
  });

  it.each([1, 2, 3])('no machine in the recording, no speed (%i)', (seed) => {
    const { hearing } = listen({ ...emptyScene(seed, 6), rate: 8000 });
    expect(['not-heard', 'cannot-tell']).toContain(hearing.verdict);
  });

  it('silence is not heard, and crashes nothing', () => {
    expect(hear({ rate: 8000, channels: [new Float64Array(16_000)], warnings: [] }, electric)).toMatchObject({ verdict: 'not-heard', groups: [] });
    expect(hear({ rate: 8000, channels: [new Float64Array(16_000).fill(0.3)], warnings: [] }, electric).verdict).toBe('not-heard');
  });

  it('refuses a recording that is too short, and a comb that is none', () => {
    const recording = { rate: 8000, channels: [new Float64Array(4000)], warnings: [] };
    expect(() => hear(recording, electric)).toThrow(/must last 1 s or more; it lasts 0\.5 s/u);
    const long = { ...recording, channels: [new Float64Array(16_000)] };
    const bad: LineComb = { ...electric, families: [{ id: 'x', group: 'main', order: 0, harmonics: 1 }] };
    expect(() => hear(long, bad)).toThrow(/order of x must be above 0/u);
    expect(() => hear(long, { ...electric, families: [] })).toThrow(/no lines/u);
    expect(() => hear(long, { ...electric, slowest: 0 })).toThrow(/slowest/u);
  });
});
