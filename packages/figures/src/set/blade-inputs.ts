import type { Rotor } from '@rotorwright/machine';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from './builder.ts';

export interface Gathered {
  readonly inputs: Readonly<Record<string, FigureInput>>;
  readonly missing: readonly string[];
}

/** Radius of a rotor as the calculations ask for it: half of what the file has. */
export function radiusOf(rotor: Rotor): FigureInput | undefined {
  return rotor.diameter === undefined ? undefined : { entry: `${rotor.path}.diameter`, value: rotor.diameter / 2, unit: 'm', as: 'half of' };
}

/** Blades, air and speed of a rotor: what `hover` and `forward-trim` ask for beside the load. */
export function bladeInputs(rotor: Rotor): Gathered {
  const of = (key: string): string => `${rotor.path}.${key}`;
  const axis: FigureInput = { constant: 0, unit: 'm', source: 'the chord is the same from root to tip' };
  const chord = entry(of('chord'), rotor.chord, 'm');
  const { inputs, missing } = gather([
    ['blades', entry(of('blades'), rotor.blades, '-'), of('blades')],
    ['radius', radiusOf(rotor), of('diameter')],
    ['rootCutout', entry(of('root'), rotor.root, 'm'), of('root')],
    ['chord', chord && { list: [{ r: axis, chord }] }, of('chord')],
    ['airfoil', sectionInput(rotor.section, of('section')), of('section')],
    ['speed', { figure: `speed ${rotor.on}` }, ''],
    ['density', { figure: 'air-density' }, ''],
    ['viscosity', { figure: 'air-viscosity' }, ''],
    ['speedOfSound', { figure: 'speed-of-sound' }, ''],
  ]);
  const roughness = entry(of('roughness'), rotor.roughness, '-');
  return { inputs: { ...inputs, ...twistInput(rotor), ...(roughness ? { roughness } : {}) }, missing };
}

function sectionInput(section: Rotor['section'], path: string): FigureInput | undefined {
  if (section === undefined) return undefined;
  if (typeof section === 'string') return { record: { name: { entry: path, value: section, unit: '' } } };
  const { reynolds, angles, lift, drag } = section;
  return {
    record: {
      reynolds: { entry: `${path}.reynolds`, table: reynolds, unit: '-' },
      alpha: { entry: `${path}.angles`, table: angles, unit: 'rad' },
      cl: { entry: `${path}.lift`, table: lift, unit: '-' },
      cd: { entry: `${path}.drag`, table: drag, unit: '-' },
    },
  };
}

/** The file has one twist, from root to tip; the collective is the pitch at three quarters of the radius. */
function twistInput({ twist, root, diameter, path }: Rotor): Readonly<Record<string, FigureInput>> {
  if (twist === undefined || root === undefined || diameter === undefined) return {};
  const radius = diameter / 2;
  const at = (r: number): Readonly<Record<string, FigureInput>> => ({
    r: { constant: r, unit: 'm', source: 'root and tip of the blade' },
    twist: { entry: `${path}.twist`, value: (twist * (r - 0.75 * radius)) / (radius - root), unit: 'rad', as: 'share of' },
  });
  return { twist: { list: [at(root), at(radius)] } };
}
