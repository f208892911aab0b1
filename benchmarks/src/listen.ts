/**
 * How well a machine is heard: made-up recordings of every kind, each answer held against the truth.
 * One line of JSON a class. `CASES=1000` makes as many of each class as that; 40 otherwise.
 */
import { hear, type Hearing, type LineComb } from '@rotorwright/signals';
import { dropOutScene, emptyScene, fieldScene, machines, offRatioScene, spoolScene, steadyScene } from '../../tests/recordings/cases.ts';
import { makeRecording, type Made, type Scene } from '../../tests/recordings/make-recording.ts';

const cases = Number(process.env['CASES'] ?? 40);
if (!(Number.isInteger(cases) && cases > 0)) throw new Error(`CASES must be a whole number above 0; given: ${process.env['CASES']}`);
const everybody = { speaking: ['main', 'tail', 'engine', 'mesh'] } as const;
const [twoStroke, electric] = machines as readonly [LineComb, LineComb];

interface Heard {
  readonly scene: Scene;
  readonly made: Made;
  readonly hearing: Hearing;
  /** Relative error of the mean speed; not there when none was named. */
  readonly error?: number;
  /** CPU seconds */
  readonly time: number;
}

function listen(scene: Scene): Heard {
  const made = makeRecording(scene);
  const start = process.cpuUsage();
  const hearing = hear(made.recording, scene.comb);
  const { user, system } = process.cpuUsage(start);
  return { scene, made, hearing, ...(hearing.speed === undefined ? {} : { error: hearing.speed / (2 * Math.PI) / made.speed - 1 }), time: (user + system) / 1e6 };
}

const quantile = (values: readonly number[], part: number): number => values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))] ?? Number.NaN;
const percent = (value: number): number => Number((100 * value).toPrecision(3));
const sure = ({ hearing: { verdict } }: Heard): boolean => verdict === 'heard' || verdict === 'mismatch';
const gross = ({ error }: Heard): boolean => error !== undefined && Math.abs(error) > 0.01;
const share = (all: readonly Heard[], which: (heard: Heard) => boolean): number => percent(all.filter(which).length / all.length);
const inside = ({ hearing, made }: Heard): boolean => hearing.interval![0] / (2 * Math.PI) <= made.speed && made.speed <= hearing.interval![1] / (2 * Math.PI);
const frameError = ({ hearing, made }: Heard): number =>
  hearing.track === undefined ? Infinity : quantile([...hearing.track.speeds].map((speed, index) => Math.abs(speed / (2 * Math.PI) / made.speedAt(hearing.track!.times[index]!) - 1)), 0.5);

function report(name: string, scenes: (seed: number) => Scene, more: (all: readonly Heard[]) => Readonly<Record<string, number>>, count = cases): void {
  const all = Array.from({ length: count }, (_, index) => listen(scenes(index + 1)));
  const answered = all.filter((heard) => sure(heard) && !gross(heard));
  const errors = answered.map(({ error }) => Math.abs(error!));
  console.log(JSON.stringify({
    class: name, cases: all.length,
    sure: share(all, sure), grossErrors: share(all, gross), wrongAndSure: all.filter((heard) => gross(heard) && sure(heard)).length,
    medianError: percent(quantile(errors, 0.5)), error95: percent(quantile(errors, 0.95)),
    ...(answered.length === 0 ? {} : { insideInterval: share(answered, inside) }),
    falseAlarms: all.filter(({ hearing }) => hearing.verdict === 'mismatch').length,
    ...more(all),
    cpuSeconds: Number(quantile(all.map(({ time }) => time), 0.5).toFixed(2)),
  }));
}

const nothing = (): Readonly<Record<string, number>> => ({});
/** Root of the mean square of the errors over the least deviation that the information of the lines allows. */
const overBound = (all: readonly Heard[]): Readonly<Record<string, number>> => ({
  rmsOverBound: Number(Math.sqrt(all.filter((heard) => !gross(heard) && heard.error !== undefined).reduce((sum, { error, made, scene }, _, { length }) => {
    const information = made.lines.reduce((whole, { order, amplitude }) => whole + (Math.PI ** 2 * amplitude ** 2 * order ** 2 * scene.seconds ** 3) / (3 * made.density), 0);
    return sum + (error! * made.speed) ** 2 * information / length;
  }, 0)).toFixed(2)),
});

for (const [seconds, loudness] of [[10, 0], [10, -10], [2, 0], [2, -10]] as const) report(`steady, ${seconds} s, ${loudness} dB`, (seed) => steadyScene(seed, seconds, loudness), nothing);
for (const loudness of [0, -10]) report(`field, 10 s, ${loudness} dB`, (seed) => fieldScene(seed, 10, loudness), nothing);
report('steady, 10 s, −15 dB', (seed) => steadyScene(seed, 10, -15), nothing);
for (const loudness of [10, 0, -10]) report(`plain comb in white noise, 10 s, ${loudness} dB`, (seed) => ({ ...steadyScene(seed, 10, loudness), ...everybody, plain: true, rate: 8000 }), overBound);
report('speeding up, 10 s, 0 dB', (seed) => spoolScene(seed, 10, 0), (all) => ({ followed: share(all, (heard) => frameError(heard) <= 0.002) }));
for (const slip of [0.02, 0.01, 0.005]) {
  report(`clutch slips by ${percent(slip)} %, 10 s, 0 dB`, (seed) => ({ ...offRatioScene(seed, 10, 0, 'engine', 1 + slip, twoStroke, true), ...everybody }), (all) => ({
    found: share(all, ({ hearing }) => hearing.mismatch?.group === 'engine' && hearing.mismatch.slip),
    // What slips breathes by a tenth of the slip: its mean over the recording may differ by that.
    within: share(all, ({ hearing }) => Math.abs((hearing.mismatch?.factor ?? 0) - 1 - slip) <= 5e-4 + 0.1 * slip),
  }));
}
for (const [comb, group] of [[twoStroke, 'engine'], [twoStroke, 'tail'], [electric, 'tail']] as const) {
  const ratios = comb.otherRatios.filter((each) => each.group === group);
  const wrong = (seed: number) => ratios[seed % ratios.length]!;
  // What the file says is right, what turns is another wheel: its teeth meet at orders of their own.
  const scene = (seed: number): Scene => {
    const { factor, meshes = {} } = wrong(seed);
    const real: LineComb = { ...comb, families: comb.families.map((family) => (meshes[family.id] === undefined ? family : { ...family, order: meshes[family.id]! })) };
    return { ...offRatioScene(seed, 10, 0, group, factor, real), ...everybody };
  };
  const all = Array.from({ length: cases }, (_, index) => {
    const made = makeRecording(scene(index + 1));
    return { wrong: wrong(index + 1), hearing: hear(made.recording, comb) };
  });
  const part = (which: (each: (typeof all)[number]) => boolean): number => percent(all.filter(which).length / all.length);
  console.log(JSON.stringify({
    class: `one count wrong: ${group} of ${comb === twoStroke ? 'the two-stroke' : 'the electric'}`, cases: all.length,
    found: part(({ hearing }) => hearing.mismatch?.group === group),
    named: part(({ hearing, wrong: { id } }) => hearing.mismatch?.otherRatios.some((each) => each.id === id) ?? false),
    namedAlone: part(({ hearing, wrong: { id } }) => hearing.mismatch?.otherRatios.length === 1 && hearing.mismatch.otherRatios[0]!.id === id && !hearing.mismatch.slip),
  }));
}
report('engine falls silent, 10 s, 0 dB', (seed) => ({ ...dropOutScene(seed, 10, 0), ...everybody }), (all) => ({
  found: share(all, ({ hearing, scene }) => Math.abs((hearing.engineSilentFrom ?? Infinity) - scene.silentFrom!.engine!) <= 0.5),
}));
report('no machine, 10 s', (seed) => emptyScene(seed, 10), (all) => ({ rightlyNot: share(all, ({ hearing: { verdict } }) => verdict === 'not-heard' || verdict === 'cannot-tell') }));
