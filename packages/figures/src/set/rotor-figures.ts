import type { Rotor } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { entry, gather, type Builder } from './builder.ts';
import type { Conditions } from './conditions.ts';

const standardDay = 'standard atmosphere, unless set';

/** The air that the rotors meet. */
export function addAir(builder: Builder, { altitude, temperatureOffset, humidity }: Conditions): void {
  const set = (value: number | undefined, unit: string): FigureInput => ({ constant: value ?? 0, unit, source: value === undefined ? standardDay : 'set by hand' });
  const inputs = { pressureAltitude: set(altitude, 'm'), temperatureOffset: set(temperatureOffset, 'K'), relativeHumidity: set(humidity, '-') };
  builder.add({ name: 'speed-of-sound', title: 'Speed of sound', unit: 'm/s', shown: 'm/s', calculation: 'atmosphere', output: 'speedOfSound', inputs });
  builder.add({ name: 'air-viscosity', title: 'Viscosity of the air', unit: 'Pa·s', shown: 'Pa·s', calculation: 'atmosphere', output: 'dynamicViscosity', inputs });
  builder.add({ name: 'air-density', title: 'Density of the air', unit: 'kg/m³', shown: 'kg/m³', calculation: 'atmosphere', output: 'density', inputs });
  builder.add({ name: 'density-altitude', title: 'Density altitude', unit: 'm', shown: 'm', calculation: 'atmosphere', output: 'densityAltitude', inputs });
  builder.add({ name: 'air-temperature', title: 'Temperature of the air', unit: 'K', shown: '°C', calculation: 'atmosphere', output: 'temperature', inputs });
  builder.add({ name: 'dry-air-pressure', title: 'Pressure of the air without its vapour', unit: 'Pa', shown: 'hPa', calculation: 'atmosphere', output: 'dryPressure', inputs });
}

/** Tip speed, pull of the blades and stored energy of one rotor. */
export function addRotor(builder: Builder, rotor: Rotor): void {
  const { id, path, title } = rotor;
  const of = (key: string): string => `${path}.${key}`;
  const speed: FigureInput = { figure: `speed ${rotor.on}` };
  // The file has the diameter; half of it is what the calculations ask for.
  const radius: FigureInput | undefined = rotor.diameter === undefined ? undefined : { entry: of('diameter'), value: rotor.diameter / 2, unit: 'm', as: 'half of' };
  const read = (key: string, value: number | undefined, unit: string): readonly [FigureInput | undefined, string] => [entry(of(key), value, unit), of(key)];
  const blades = read('blades', rotor.blades, '-');
  const mass = read('blade-mass', rotor.bladeMass, 'kg');
  const bolt = read('bolt-radius', rotor.boltRadius, 'm');
  const centre = read('blade-centre', rotor.bladeCentre, 'm');
  const gripMass = read('grip-mass', rotor.gripMass, 'kg');
  const gripCentre = read('grip-centre', rotor.gripCentre, 'm');
  const hub = entry(of('hub-inertia'), rotor.hubInertia, 'kg·m²');

  builder.add({ name: `tip-speed ${id}`, title: `Tip speed of ${inSentence(title)}`, unit: 'm/s', shown: 'm/s', calculation: 'tip-speed', output: 'tipSpeed', ...gather([['speed', speed, ''], ['radius', radius, of('diameter')]]) });
  builder.add({
    name: `tip-mach ${id}`, title: `Tip Mach number of ${inSentence(title)}, hovering`, unit: '-', shown: '-', calculation: 'tip-mach', output: 'tipMach',
    inputs: { tipSpeed: { figure: `tip-speed ${id}` }, speedOfSound: { figure: 'speed-of-sound' } },
  });
  const blade = gather([['blades', ...blades], ['bladeMass', ...mass], ['boltRadius', ...bolt], ['bladeCentre', ...centre]]);
  builder.add({ name: `blade-centre ${id}`, title: `Centre of mass of a blade of ${inSentence(title)}, from the axis`, unit: 'm', shown: 'mm', calculation: 'linear-blade', output: 'centreOfMass', ...blade });
  builder.add({ name: `blade-inertia ${id}`, title: `Moment of inertia of a blade of ${inSentence(title)} about the axis`, unit: 'kg·m²', shown: 'kg·m²', calculation: 'linear-blade', output: 'inertia', inputs: { ...blade.inputs, ...(radius ? { radius } : {}) }, missing: [...blade.missing, ...(radius ? [] : [of('diameter')])] });
  const hung = gather([['mass', ...mass], ['centreOfMass', { figure: `blade-centre ${id}` }, '']]);
  const common = gather([['blades', ...blades], ['speed', speed, '']]);
  const missing = [...new Set([...common.missing, ...hung.missing])];
  builder.add({
    name: `bolt-pull ${id}`, title: `Pull on a blade bolt of ${inSentence(title)}`, unit: 'N', shown: 'N', calculation: 'blade-loads', output: 'centrifugalForceBolt',
    inputs: { ...common.inputs, blade: { record: hung.inputs } }, missing,
  });
  const grip = gather([['r', ...gripCentre], ['mass', ...gripMass]]);
  builder.add({
    name: `blade-pull ${id}`, title: `Pull of blade and grip of ${inSentence(title)}: load of a thrust bearing`, unit: 'N', shown: 'N', calculation: 'blade-loads', output: 'centrifugalForceGrip',
    inputs: { ...common.inputs, blade: { record: hung.inputs }, grip: { list: [grip.inputs] } }, missing: [...missing, ...grip.missing],
  });
  builder.add({
    name: `rotor-inertia ${id}`, title: `Moment of inertia of ${inSentence(title)}`, unit: 'kg·m²', shown: 'kg·m²', calculation: 'linear-blade', output: 'rotorInertia',
    inputs: { ...blade.inputs, ...(radius ? { radius } : {}), ...(gripMass[0] && gripCentre[0] ? { gripMass: gripMass[0], gripCentre: gripCentre[0] } : {}), ...(hub ? { hubInertia: hub } : {}) },
    missing: [...blade.missing, ...(radius ? [] : [of('diameter')])],
    warnings: [...(gripMass[0] && gripCentre[0] ? [] : ['The grips are left out: the file has no grip-mass and grip-centre.']), ...(hub ? [] : ['The hub is left out: the file has no hub-inertia.'])],
  });
  builder.add({
    name: `stored-energy ${id}`, title: `Energy stored in ${inSentence(title)}`, unit: 'J', shown: 'J', calculation: 'stored-energy', output: 'storedEnergy',
    inputs: { rotorInertia: { figure: `rotor-inertia ${id}` }, speed },
  });
}
