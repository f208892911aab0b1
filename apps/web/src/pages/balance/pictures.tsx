import type { CalcAnswer } from '@rotorwright/calculations';
import { bladeOrder, holesWords, inputOf, outputOf } from '@rotorwright/figures';
import type { ReactNode } from 'react';
import { PolarPlot, type Vector } from './polar-plot.tsx';

export interface PictureProps {
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly answered: CalcAnswer;
  /** Mass that may be left at that radius, kg. */
  readonly permissible?: number;
  readonly places?: readonly number[];
}

const turn = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
const grams = (mass: number): number => mass * 1000;
const left = (permissible: number | undefined) => (permissible === undefined ? [] : [{ name: 'may be left', radius: grams(permissible) }]);

function difference(a: { readonly size: number; readonly angle: number }, b: { readonly size: number; readonly angle: number }): { readonly size: number; readonly angle: number } {
  const [x, y] = [b.size * Math.cos(b.angle) - a.size * Math.cos(a.angle), b.size * Math.sin(b.angle) - a.size * Math.sin(a.angle)];
  return { size: Math.hypot(x, y), angle: turn(Math.atan2(y, x)) };
}

/** The readings before and with the trial mass, what it changed; and the masses. */
export function OnePlane({ inputs, answered, permissible, places }: PictureProps): ReactNode {
  const read = (name: string): number => inputOf(inputs, name);
  const [before, after] = [{ size: read('initialAmplitude'), angle: turn(read('initialPhase')) }, { size: read('withTrialAmplitude'), angle: turn(read('withTrialPhase')) }];
  return (
    <>
      <PolarPlot title="Readings" vectors={[{ name: 'V₀', ...before, line: 'fine' }, { name: 'V₁', ...after, line: 'fine' }, { name: 'change', ...difference(before, after), from: before, line: 'dashed' }]} />
      <Masses trials={[{ name: 'trial', size: grams(read('trialMass')), angle: turn(read('trialAngle')), line: 'fine' }]} answered={answered} names={[['correction', 'correctionMass', 'correctionAngle']]} {...(permissible === undefined ? {} : { permissible })} {...(places ? { places } : {})} />
    </>
  );
}

/** The circles of the three trial runs around the places of the trial mass: they meet where the correction belongs. */
export function WithoutPhase({ inputs, answered, permissible, places }: PictureProps): ReactNode {
  const read = (name: string): number => inputOf(inputs, name);
  const initial = read('initialAmplitude');
  const effect = outputOf(answered, 'trialEffect');
  const angle = outputOf(answered, 'correctionAngle');
  const rings = (['amplitude0', 'amplitude120', 'amplitude240'] as const).map((name, index) => ({ name: `run at ${120 * index}°`, radius: read(name), at: { size: initial, angle: (index * 2 * Math.PI) / 3 } }));
  return (
    <>
      <PolarPlot title="Readings: the circles meet at T" vectors={effect === undefined || angle === undefined ? [] : [{ name: 'T', size: effect, angle, line: 'heavy' }]} rings={[{ name: 'as it is', radius: initial }, ...rings]} />
      <Masses trials={[{ name: 'trial', size: grams(read('trialMass')), angle: 0, line: 'fine' }]} answered={answered} names={[['correction', 'correctionMass', 'correctionAngle']]} {...(permissible === undefined ? {} : { permissible })} {...(places ? { places } : {})} />
    </>
  );
}

/** The readings of both sensors, and the masses of both planes. */
export function TwoPlanes({ inputs, answered, permissible }: PictureProps): ReactNode {
  const vector = (sensor: 1 | 2, run: string, name: string, line: Vector['line']): Vector => ({ name, size: inputOf(inputs, `${run}.amplitude${sensor}`), angle: turn(inputOf(inputs, `${run}.phase${sensor}`)), line });
  return (
    <>
      {([1, 2] as const).map((sensor) => <PolarPlot key={sensor} title={`Readings of sensor ${sensor}`} vectors={[vector(sensor, 'initial', 'V₀', 'heavy'), vector(sensor, 'withTrial1', 'trial 1', 'fine'), vector(sensor, 'withTrial2', 'trial 2', 'fine')]} />)}
      <Masses trials={[]} answered={answered} names={[['plane 1', 'correctionMass1', 'correctionAngle1'], ['plane 2', 'correctionMass2', 'correctionAngle2']]} {...(permissible === undefined ? {} : { permissible })} />
    </>
  );
}

interface MassesProps {
  readonly trials: readonly Vector[];
  readonly answered: CalcAnswer;
  readonly names: readonly (readonly [name: string, mass: string, angle: string])[];
  readonly permissible?: number;
  readonly places?: readonly number[];
}

function Masses({ trials, answered, names, permissible, places }: MassesProps): ReactNode {
  const found = names.flatMap(([name, mass, angle]): Vector[] => {
    const [size, at] = [outputOf(answered, mass), outputOf(answered, angle)];
    return size === undefined || at === undefined ? [] : [{ name, size: grams(size), angle: at, line: 'heavy' }];
  });
  return found.length === 0 ? null : <PolarPlot title="Masses" unit="g" vectors={[...trials, ...found]} rings={left(permissible)} {...(places ? { places } : {})} />;
}

/** What each hole gets, and the mass that they stand for together. */
export function Holes({ inputs, answered }: PictureProps): ReactNode {
  const list = (name: 'masses' | 'rounded'): readonly number[] => {
    const found = answered.outputs[name];
    return Array.isArray(found) ? (found as readonly { readonly value: number }[]).map(({ value }) => value) : [];
  };
  const angles = (Array.isArray(inputs['places']) ? (inputs['places'] as readonly unknown[]) : []).map((_, index) => turn(inputOf(inputs, `places.${index}`)));
  const masses = list('rounded').length > 0 ? list('rounded') : list('masses');
  const each = masses.flatMap((mass, index): Vector[] => (mass === 0 ? [] : [{ name: `hole ${index + 1}`, size: grams(mass), angle: angles[index] ?? 0, line: 'fine' }]));
  return (
    <>
      <PolarPlot title="Masses" unit="g" vectors={[{ name: 'wanted', size: grams(inputOf(inputs, 'mass')), angle: turn(inputOf(inputs, 'angle')), line: 'heavy' }, ...each]} places={angles} />
      <section className="balance-holes" aria-label="What these holes can do"><h3>What these holes can do</h3>{holesWords(angles).map((line) => <p key={line}>{line}</p>)}</section>
    </>
  );
}

/** Where the heavy side of the pair stands. */
export function Blades({ answered }: PictureProps): ReactNode {
  const [size, angle] = [outputOf(answered, 'unbalance'), outputOf(answered, 'angle')];
  return size === undefined || angle === undefined ? null : <PolarPlot title="Heavy side, blade 1 at 0°" unit="g·mm" vectors={[{ name: 'heavy', size: size * 1e6, angle, line: 'heavy' }]} places={[0, Math.PI]} />;
}

/** What to do to the two blades, in this order. */
export function BladeOrder({ inputs, answered }: PictureProps): ReactNode {
  return <section aria-label="What to do"><h3>What to do</h3><ol className="balance-steps">{bladeOrder(inputs, answered).map((line) => <li key={line}>{line}</li>)}</ol></section>;
}
