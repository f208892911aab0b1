import type { LineComb } from '@rotorwright/signals';
import { bearingScene, strikingScene } from '../../../tests/recordings/bearings.ts';
import { dropOutScene, emptyScene, fieldScene, machines, offRatioScene, spoolScene, steadyScene } from '../../../tests/recordings/cases.ts';
import type { Scene } from '../../../tests/recordings/make-recording.ts';
import type { Heard, HearingClass } from './judge.ts';

const everybody = { speaking: ['main', 'tail', 'engine', 'mesh'] } as const;
const [twoStroke, electric] = machines as readonly [LineComb, LineComb];

/** Error over the least deviation that the information of the lines allows; none where another speed was taken. */
function overBound({ hearing, made, scene }: Heard): Readonly<Record<string, number>> {
  const error = (hearing.speed ?? 0) / (2 * Math.PI) - made.speed;
  if (Math.abs(error) > 0.01 * made.speed) return {};
  const information = made.lines.reduce((whole, { order, amplitude }) => whole + (Math.PI ** 2 * amplitude ** 2 * order ** 2 * scene.seconds ** 3) / (3 * made.density), 0);
  return { overBound: error * Math.sqrt(information) };
}

/** Median error of the speed over time, as a part of it. */
function trackError({ hearing: { track }, made }: Heard): number {
  if (track === undefined) return Infinity;
  const errors = [...track.speeds].map((speed, index) => Math.abs(speed / (2 * Math.PI) / made.speedAt(track.times[index]!) - 1));
  return errors.toSorted((a, b) => a - b)[errors.length >> 1]!;
}

/** Mean over the recording of what the engine's speed is multiplied by: a slip breathes. */
function meanFactor({ factors, seconds }: Scene): number {
  const { engine } = factors!;
  const steps = 1000;
  return typeof engine === 'function' ? Array.from({ length: steps }, (_, step) => engine(((step + 0.5) / steps) * seconds)).reduce((sum, each) => sum + each, 0) / steps : engine!;
}

/** What the file says is right for another wheel than the one that turns: its teeth meet at orders of their own. */
function oneCountWrong(comb: LineComb, group: 'engine' | 'tail', machine: string): HearingClass {
  const ratios = comb.otherRatios.filter((each) => each.group === group);
  const wrong = (number: number) => ratios[number % ratios.length]!;
  return {
    name: `one count wrong: ${group} of ${machine}`,
    scene: (number) => {
      const { factor, meshes = {} } = wrong(number);
      const real: LineComb = { ...comb, families: comb.families.map((family) => (meshes[family.id] === undefined ? family : { ...family, order: meshes[family.id]! })) };
      return { scene: { ...offRatioScene(number, 10, 0, group, factor, real), ...everybody }, file: comb };
    },
    marks: ({ hearing: { mismatch } }, number) => {
      const { id } = wrong(number);
      const named = mismatch?.otherRatios.some((each) => each.id === id) ?? false;
      return { found: mismatch?.group === group, named, namedAlone: named && mismatch!.otherRatios.length === 1 && !mismatch!.slip };
    },
  };
}

const plainly = (scene: (number: number) => Scene) => (number: number): { readonly scene: Scene } => ({ scene: scene(number) });

/** Every kind of recording by which the ear is judged. */
export const classes: readonly HearingClass[] = [
  ...([[10, 0], [10, -10], [2, 0], [2, -10]] as const).map(([seconds, loudness]): HearingClass => ({ name: `steady, ${seconds} s, ${loudness} dB`, right: true, scene: plainly((number) => steadyScene(number, seconds, loudness)) })),
  ...[0, -10].map((loudness): HearingClass => ({ name: `field, 10 s, ${loudness} dB`, right: true, scene: plainly((number) => fieldScene(number, 10, loudness)) })),
  { name: 'steady, 10 s, -15 dB', right: true, scene: plainly((number) => steadyScene(number, 10, -15)) },
  ...[10, 0, -10].map((loudness): HearingClass => ({
    name: `plain comb in white noise, 10 s, ${loudness} dB`, right: true,
    scene: plainly((number) => ({ ...steadyScene(number, 10, loudness), ...everybody, plain: true, rate: 8000 })),
    marks: overBound,
  })),
  { name: 'speeding up, 10 s, 0 dB', right: true, scene: plainly((number) => spoolScene(number, 10, 0)), marks: (heard) => ({ followed: trackError(heard) <= 0.002 }) },
  ...[0.02, 0.01, 0.005].map((slip): HearingClass => ({
    name: `clutch slips by ${100 * slip} %, 10 s, 0 dB`,
    scene: plainly((number) => ({ ...offRatioScene(number, 10, 0, 'engine', 1 + slip, twoStroke, true), ...everybody })),
    marks: ({ hearing: { mismatch }, scene }) => ({
      found: mismatch?.group === 'engine' && mismatch.slip,
      within: Math.abs((mismatch?.factor ?? 0) - meanFactor(scene)) <= 5e-4,
    }),
  })),
  oneCountWrong(twoStroke, 'engine', 'the two-stroke'),
  oneCountWrong(twoStroke, 'tail', 'the two-stroke'),
  oneCountWrong(electric, 'tail', 'the electric'),
  {
    name: 'engine falls silent, 10 s, 0 dB',
    scene: plainly((number) => ({ ...dropOutScene(number, 10, 0), ...everybody })),
    marks: ({ hearing, scene }) => ({ found: Math.abs((hearing.engineSilentFrom ?? Infinity) - scene.silentFrom!.engine!) <= 0.5 }),
  },
  { name: 'no machine, 10 s', scene: plainly((number) => emptyScene(number, 10)), marks: ({ hearing: { verdict } }) => ({ rightlyNot: verdict === 'not-heard' || verdict === 'cannot-tell' }) },
  { name: 'sound bearings in the field, 10 s, 0 dB', right: true, scene: plainly((number) => bearingScene(number, 10, 0)), marks: ({ hearing: { flaws = [] } }) => ({ falselyStruck: flaws.length > 0 }) },
  ...[0, -4, -8, -12].map((strikes): HearingClass => ({
    name: `a bearing strikes in the field, ${strikes} dB of all lines, 10 s, 0 dB`, right: true,
    scene: (number) => ({ scene: strikingScene(number, 10, 0, strikes).scene }),
    marks: ({ hearing: { flaws = [] } }, number) => {
      const { bearing, place } = strikingScene(number, 10, 0, strikes).flaw;
      const named = (flaw: (typeof flaws)[number]): boolean => flaw.candidates.some((each) => each.bearing === bearing && each.place === place);
      return { found: flaws.some(named), falselyStruck: flaws.some((flaw) => !named(flaw)) };
    },
  })),
];
