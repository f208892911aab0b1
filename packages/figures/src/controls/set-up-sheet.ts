import type { Machine, Servo } from '@rotorwright/machine';
import { ballOf } from '@rotorwright/mechanics';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureSet } from '../set/figure-set.ts';
import { pulseAt, type SubTrim } from './link-table.ts';
import { servosFor, wantedAt } from './plate-motion.ts';
import type { Plate, Sticks } from './plate-types.ts';
import type { Quality, TailQuality } from './quality.ts';
import type { Tail } from './tail.ts';

/** One thing to enter in a flight controller, or to measure at the machine, in plain terms. */
export interface SetUpRow {
  /** Of what is measured against a figure, the name of that figure: a measurement of the file may be of it. */
  readonly key: string;
  readonly group: 'swashplate' | 'tail' | 'governor';
  readonly title: string;
  /** A number, SI, with its unit and the one in which it is shown. */
  readonly value?: number;
  readonly unit?: string;
  readonly shown?: string;
  readonly words?: string;
  /** With a gauge at the machine: what is measured stands beside it. */
  readonly measured?: true;
}

/** Terms that any flight controller has under one name or another. */
export function setUpSheet(set: FigureSet, plate: Plate | undefined, quality: Quality | undefined, tail: Tail | undefined, tailQuality: TailQuality | undefined, trims: readonly SubTrim[]): readonly SetUpRow[] {
  return [
    ...(plate ? plateRows(plate, quality) : []),
    ...trimRows('swashplate', trims.filter(({ servo }) => plate?.servos.includes(servo))),
    ...(tail ? tailRows(set, tail, tailQuality, plate) : []),
    ...trimRows('tail', trims.filter(({ servo }) => tail?.servos.includes(servo))),
    ...governorRows(set),
  ];
}

/** Below this plate and pitch agree: no flight controller is set finer, rad. Our own choice. */
const agreeing = 1e-3;

const angle = (value: number) => ({ value, unit: 'rad', shown: '°' }) as const;
const pulse = (value: number) => ({ value, unit: 's', shown: 'µs' }) as const;

function plateRows(plate: Plate, quality: Quality | undefined): readonly SetUpRow[] {
  const { servos, wanted, geometry, rotor } = plate;
  const group = 'swashplate';
  const azimuths = plate.ends.map(({ balls: [, to] }) => ((Math.atan2(to[1], to[0]) * 180) / Math.PI + 360) % 360);
  const middle = (wanted.low + wanted.high) / 2;
  const phase = quality === undefined || Math.abs(quality.phase) < agreeing ? 0 : quality.phase;
  const withRotor = phase > 0 === (geometry.rotation === 'counterclockwise');
  return [
    { key: 'servos', group, title: 'Servos of the swashplate', words: `${servos.length}; their balls on the plate stand at ${azimuths.map((each) => `${Math.round(each * 10) / 10}°`).join(', ')} from forward, counter-clockwise from above` },
    { key: 'sense', group, title: 'Main rotor', words: `${geometry.rotation === 'clockwise' ? 'clockwise' : 'counter-clockwise'} from above` },
    ...directionRows(plate),
    ...(quality ? [{ key: 'phase', group, title: 'Phase of cyclic', ...angle(Math.abs(phase)), words: phase === 0 ? 'none: plate and pitch agree' : `the plate leans ahead ${withRotor ? 'with' : 'against'} the sense of the rotor` } as const] : []),
    { key: `pitch-middle ${rotor.id}`, group, title: 'Pitch, collective in the middle', ...angle(middle), words: 'servos at mid travel, plate level', measured: true },
    { key: `pitch-low ${rotor.id}`, group, title: 'Pitch, collective down', ...angle(wanted.low), ...throws(plate, { collective: -1, fore: 0, right: 0 }), measured: true },
    { key: `pitch-high ${rotor.id}`, group, title: 'Pitch, collective up', ...angle(wanted.high), ...throws(plate, { collective: 1, fore: 0, right: 0 }), measured: true },
    { key: `cyclic-fore ${rotor.id}`, group, title: `Pitch, stick forward, blade over the ${geometry.rotation === 'clockwise' ? 'left' : 'right'}`, ...angle(middle - wanted.cyclic), ...throws(plate, { collective: 0, fore: 1, right: 0 }), measured: true },
    { key: `cyclic-right ${rotor.id}`, group, title: `Pitch, stick right, blade over the ${geometry.rotation === 'clockwise' ? 'nose' : 'tail'}`, ...angle(middle - wanted.cyclic), ...throws(plate, { collective: 0, fore: 0, right: 1 }), measured: true },
  ];
}

function directionRows(plate: Plate): readonly SetUpRow[] {
  const moves = plate.servos.map((servo, index) => ({ servo, way: risesWith(plate, index) ? 'up' : 'down' }));
  return together(moves, ({ way }) => way).map((own): SetUpRow => ({
    key: `direction ${idsOf(own)}`, group: 'swashplate', title: `Direction of ${namesOf(own)}`,
    words: own.length === 1 ? `arm ${own[0]!.way} for more collective; reverse its channel if it goes the other way` : `each arm ${own[0]!.way} for more collective; reverse the channel of any that goes the other way`,
  }));
}

/** Whether the arm's ball goes up when this servo gives more collective. */
function risesWith(plate: Plate, index: number): boolean {
  const { pivot, axis } = plate.train.servos[index]!;
  const direct = plate.ends.find(({ mover }) => 'servo' in mover && mover.servo === index)?.balls[0];
  const levered = plate.train.levers.find(({ rod }) => 'servo' in rod.from && rod.from.servo === index)?.rod.ball;
  const ball = direct ?? levered ?? pivot;
  const step = 1e-4 * Math.sign(plate.sensitivity[0][index]!);
  const arm = [ball[0] - pivot[0], ball[1] - pivot[1], ball[2] - pivot[2]] as const;
  return ballOf({ pivot, axis, arm }, step)[2] > ball[2];
}

/** How far each servo then stands from mid travel. */
function throws(plate: Plate, sticks: Sticks): { readonly words?: string } {
  const angles = servosFor(plate, wantedAt(plate, sticks));
  if (angles === undefined) return { words: 'out of reach' };
  const said = plate.servos.map((servo, index) => {
    const up = risesWith(plate, index) === angles[index]! * plate.sensitivity[0][index]! > 0;
    const [there, middle] = [pulseAt(servo, angles[index]!), pulseAt(servo, 0)];
    const size = there === undefined || middle === undefined ? `${degrees(Math.abs(angles[index]!))}` : `${Math.round(Math.abs(there - middle) * 1e6)} µs`;
    return `${shortName(servo.id)} ${size} ${up ? 'up' : 'down'}`;
  });
  return { words: `from mid travel: ${said.join(', ')}` };
}

const shortName = (id: string): string => id.slice(id.indexOf('.') + 1);
const degrees = (value: number): string => `${Math.round((value * 1800) / Math.PI) / 10}°`;

function trimRows(group: SetUpRow['group'], trims: readonly SubTrim[]): readonly SetUpRow[] {
  // A millionth of a second is as fine as any pulse is set.
  const whole = (size: number): number => Math.round(size * 1e6) / 1e6;
  const rows = trims.flatMap(({ servo, pulse: size, spline, steps, lost }) => (size === undefined ? [] : [{
    servo,
    size: whole(size),
    words: [
      ...(whole(size) === 0 ? ['half turns of the link leave none'] : ['what half turns of the link leave', ...(lost === undefined || steps === undefined ? [] : [`it takes ${lost} of ${steps} steps`])]),
      ...(spline === undefined ? [] : [`the teeth of the arm may leave up to ${Math.round(spline * 1e6)} µs besides`]),
    ].join('; '),
  }]));
  return together(rows, ({ size, words }) => `${size} ${words}`).map((own): SetUpRow => ({
    key: `trim ${idsOf(own)}`, group, title: `Sub-trim of ${namesOf(own)}, for ${own.length === 1 ? 'its link' : 'their links'}`, ...pulse(own[0]!.size), words: own[0]!.words,
  }));
}

interface OfServo {
  readonly servo: Servo;
}

/** What is the same of several servos stands in one row. */
const together = <T extends OfServo>(all: readonly T[], told: (one: T) => string): readonly (readonly T[])[] => [...new Set(all.map(told))].map((each) => all.filter((one) => told(one) === each));
const idsOf = (all: readonly OfServo[]): string => all.map(({ servo }) => servo.id).join(' ');

function namesOf(all: readonly OfServo[]): string {
  const [last, ...others] = all.map(({ servo }) => shortName(servo.id)).toReversed();
  return others.length === 0 ? inSentence(all[0]!.servo.title) : `the servos ${others.toReversed().join(', ')} and ${last}`;
}

function tailRows(set: FigureSet, tail: Tail, quality: TailQuality | undefined, plate: Plate | undefined): readonly SetUpRow[] {
  const group = 'tail';
  const [servo] = tail.servos;
  const right = pitchForRight(set.machine, tail);
  const hover = set.get('tail-collective hover')?.value;
  const needed = hover === undefined || right === undefined || !plate ? undefined : hover * right * (plate.geometry.rotation === 'clockwise' ? 1 : -1);
  const at = (end: { readonly angle: number; readonly slide: number } | undefined): { readonly words: string } => {
    if (end === undefined || servo === undefined) return { words: 'out of reach' };
    const [there, middle] = [pulseAt(servo, end.angle), pulseAt(servo, 0)];
    const size = there === undefined || middle === undefined ? degrees(Math.abs(end.angle)) : `${Math.round(Math.abs(there - middle) * 1e6)} µs`;
    return { words: `servo ${size} from mid travel, slider ${Math.round(Math.abs(end.slide) * 1e4) / 10} mm ${end.slide > 0 ? 'away from' : 'towards'} the boom` };
  };
  return [
    ...(right === undefined ? [] : [{ key: 'yaw-direction', group, title: 'Rudder stick right, nose right', words: `leading edges ${right > 0 ? 'away from' : 'towards'} the boom; reverse the channel if they go the other way` } as const]),
    { key: `pitch-low ${tail.rotor.id}`, group, title: 'Tail pitch at one end', ...angle(tail.wanted.low), ...at(quality?.low), measured: true },
    { key: `pitch-high ${tail.rotor.id}`, group, title: 'Tail pitch at the other end', ...angle(tail.wanted.high), ...at(quality?.high), measured: true },
    { key: `pitch-middle ${tail.rotor.id}`, group, title: 'Tail pitch, servo at mid travel', ...angle((tail.wanted.low + tail.wanted.high) / 2), measured: true },
    ...(needed === undefined ? [] : [{ key: 'tail-hover', group, title: 'Tail pitch that holds the nose in hover', ...angle(needed), words: 'where the servo should rest when the stabiliser is told to hold nothing' } as const]),
  ];
}

/** Sign of the tail pitch that turns the nose to the right; undefined where the file does not place the rotors. */
function pitchForRight({ rotors }: Machine, { rotor, line }: Tail): 1 | -1 | undefined {
  const main = rotors.get('main')?.at;
  if (!main || !rotor.at || line[1] === 0 || rotor.at[0] === main[0]) return undefined;
  // Nose right is clockwise from above: the tail goes left when it lies aft of the mast.
  return (rotor.at[0] < main[0] ? 1 : -1) * line[1] > 0 ? 1 : -1;
}

function governorRows(set: FigureSet): readonly SetUpRow[] {
  return [...set.machine.sensors.values()].flatMap((sensor): SetUpRow[] => {
    const ratio = set.get(`governor-ratio ${sensor.id}`);
    return [
      ...(ratio?.value === undefined ? [] : [{ key: `ratio ${sensor.id}`, group: 'governor', title: ratio.title, value: ratio.value, unit: ratio.unit, shown: ratio.shown, ...(ratio.exact === undefined ? {} : { words: `${ratio.exact} exactly` }) } as const]),
      ...(sensor.magnets === undefined ? [] : [{ key: `magnets ${sensor.id}`, group: 'governor', title: `Magnets that ${inSentence(sensor.title)} sees in a turn`, value: sensor.magnets, unit: '-', shown: '-' } as const]),
    ];
  });
}
