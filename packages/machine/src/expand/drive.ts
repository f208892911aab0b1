import type { Choice, Coupling, CouplingSide, Engine, Power, Rotor, Shaft, Window } from '../model/drive.ts';
import { listed } from '../read/nearest.ts';
import { joinPath } from '../read/tree.ts';
import type { ReadsAs, ReadWindow } from '../schema/field.ts';
import type { couplingField, powerField, rotorField, shaftField } from '../schema/sections/drive.ts';
import { spanOf, type Expansion } from './names.ts';
import { resolveOne } from './resolve.ts';
import { compact, titleFrom } from './words.ts';

type WrittenCoupling = ReadsAs<typeof couplingField>;
type WrittenSide = NonNullable<WrittenCoupling['driver']>;

export function windowOf(read: ReadWindow | undefined): Window | undefined {
  return read && compact({ min: read.min, max: read.max });
}

export function expandPower(written: ReadsAs<typeof powerField> | undefined, expansion: Expansion): Power {
  if (!written) return {};
  const { engine, motor, battery, tank } = written;
  const shaft = (on: string | undefined, path: string) => (on === undefined ? undefined : resolveOne(expansion, on, ['shaft'], path));
  const engineOn = shaft(engine?.on, 'power.engine.on');
  const motorOn = shaft(motor?.on, 'power.motor.on');
  return compact({
    engine: engine && engineOn !== undefined ? compact({
      path: 'power.engine', kind: engine.kind, on: engineOn, displacement: engine.displacement, power: engine.power, curve: curveOf(engine.curve, expansion), consumption: engine.consumption,
      fan: engine.fan, reserve: engine.reserve, speed: engine.speed, bestSpeed: windowOf(engine.best), idle: engine.idle,
      turns: engine.turns, cylinders: engine.cylinders,
    }) : undefined,
    motor: motor && motorOn !== undefined ? compact({
      path: 'power.motor', on: motorOn, speedConstant: motor.constant, resistance: motor.resistance, noLoadCurrent: motor.idleCurrent, controllerResistance: motor.controllerResistance,
      power: motor.power, reserve: motor.reserve, speed: motor.speed,
      bestSpeed: windowOf(motor.best), turns: motor.turns, poles: motor.poles,
    }) : undefined,
    battery: battery && compact({ path: 'power.battery', cells: battery.cells, capacity: battery.capacity, resistance: battery.resistance, voltage: battery.voltage, mass: battery.mass, usable: battery.usable }),
    tank: tank && compact({ path: 'power.tank', part: part(tank.part, 'power.tank.part', expansion), volume: tank.volume, density: tank.density, filled: tank.filled, usable: tank.usable }),
  });
}

/** Points in ascending speed; undefined when they are not, which is then found. */
function curveOf(written: NonNullable<ReadsAs<typeof powerField>['engine']>['curve'], { report, spans }: Expansion): Engine['curve'] {
  if (!written) return undefined;
  const points = written.flatMap(({ speed, power }, i) => (speed === undefined || power === undefined ? [] : [{ path: joinPath('power.engine.curve', i), speed, power }]));
  const back = points.find(({ speed }, i) => i > 0 && speed <= points[i - 1]!.speed);
  if (back === undefined) return points;
  const at = joinPath(back.path, 'speed');
  report.add('curve/order', at, spanOf(spans, at), {});
  return undefined;
}

type WrittenTable = Exclude<ReadsAs<typeof rotorField>['section'], string | undefined>;

/** A name as it is, or a table whose rows fit its Reynolds numbers and angles. */
function sectionOf(written: string | WrittenTable | undefined, path: string, { report, spans }: Expansion): Rotor['section'] {
  if (written === undefined || typeof written === 'string') return written;
  const { reynolds, angles, lift, drag } = written;
  if (!reynolds || !angles || !lift || !drag) return undefined;
  for (const [key, values] of [['reynolds', reynolds], ['angles', angles]] as const) {
    const back = values.findIndex((value, i) => i > 0 && value <= values[i - 1]!);
    if (back < 0) continue;
    const at = joinPath(joinPath(path, key), back);
    report.add('curve/order', at, spanOf(spans, at), {});
    return undefined;
  }
  for (const [key, rows] of [['lift', lift], ['drag', drag]] as const) {
    if (rows.length === reynolds.length && rows.every((row) => row.length === angles.length)) continue;
    const at = joinPath(path, key);
    report.add('table/shape', at, spanOf(spans, at), { rows: reynolds.length, columns: angles.length });
    return undefined;
  }
  return { reynolds, angles, lift, drag };
}

export function expandShaft(id: string, written: ReadsAs<typeof shaftField>, expansion: Expansion): Shaft {
  const path = joinPath('shafts', id);
  return compact({ id, path, title: written.title ?? titleFrom(id), axis: written.axis, part: part(written.part, joinPath(path, 'part'), expansion) });
}

function part(ref: string | undefined, path: string, expansion: Expansion): string | undefined {
  return ref === undefined ? undefined : resolveOne(expansion, ref, ['part'], path);
}

/** Undefined when what a coupling cannot do without is wrong or missing; that is then reported already. */
export function expandCoupling(id: string, written: WrittenCoupling, expansion: Expansion): Coupling | undefined {
  const path = joinPath('drive', id);
  const driver = expandSide(written.driver, joinPath(path, 'driver'), expansion);
  const driven = expandSide(written.driven, joinPath(path, 'driven'), expansion);
  if (!written.kind || !driver || !driven) return undefined;
  return compact({
    id, path, title: written.title ?? titleFrom(id), kind: written.kind, driver, driven, module: written.module, helix: written.helix, pressureAngle: written.pressureAngle, width: written.width,
    centre: windowOf(written.centre), backlash: windowOf(written.backlash), between: written.between, pitch: written.pitch, beltTeeth: written.beltTeeth, runs: written.runs, twist: written.twist, engages: written.engages, efficiency: written.efficiency, holds: written.holds, maxPull: written.maxPull,
  });
}

function expandSide(written: WrittenSide | undefined, path: string, expansion: Expansion): CouplingSide | undefined {
  if (!written) return undefined;
  const on = written.on === undefined ? undefined : resolveOne(expansion, written.on, ['shaft'], joinPath(path, 'on'));
  const partId = part(written.part, joinPath(path, 'part'), expansion);
  const choices = (written.choices ?? []).flatMap((choice, i): Choice[] => {
    const at = joinPath(joinPath(path, 'choices'), i);
    if (typeof choice === 'number') return [{ teeth: choice, path: at }];
    return choice.teeth === undefined ? [] : [compact({ teeth: choice.teeth, code: choice.code, price: choice.price, path: at })];
  });
  if (written.teeth !== undefined && choices.length > 0 && !choices.some((choice) => choice.teeth === written.teeth)) {
    const at = joinPath(path, 'teeth');
    expansion.report.add('choice/not-sold', at, spanOf(expansion.spans, at), { teeth: written.teeth, choices: listed(choices.map((choice) => String(choice.teeth))) });
  }
  if (on === undefined) return undefined;
  return compact({ path, on, part: partId, teeth: written.teeth, choices, shift: written.shift, lies: written.lies });
}

export function expandRotor(id: string, written: ReadsAs<typeof rotorField>, expansion: Expansion): Rotor | undefined {
  const path = joinPath('rotors', id);
  const on = written.on === undefined ? undefined : resolveOne(expansion, written.on, ['shaft'], joinPath(path, 'on'));
  const hub = part(written.part, joinPath(path, 'part'), expansion);
  if (on === undefined) return undefined;
  return compact({
    id, path, title: written.title ?? titleFrom(id), on, blades: written.blades, diameter: written.diameter, chord: written.chord, section: sectionOf(written.section, joinPath(path, 'section'), expansion), twist: written.twist, roughness: written.roughness, root: written.root,
    stops: windowOf(written.stops), arm: written.arm, blockage: written.blockage, hinge: written.hinge, boltRadius: written.boltRadius, bladeMass: written.bladeMass, bladeCentre: written.bladeCentre, hubInertia: written.hubInertia, gripMass: written.gripMass,
    gripCentre: written.gripCentre, gripMoment: written.gripMoment, damper: written.damper, wanted: windowOf(written.wanted), part: hub,
    at: written.at as Rotor['at'], cyclic: written.cyclic, aboveBoom: written.aboveBoom, bearingPlay: written.bearingPlay, bladePlay: written.bladePlay,
  });
}
