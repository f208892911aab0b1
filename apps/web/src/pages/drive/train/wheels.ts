import { centreOf } from '@rotorwright/figures';
import type { Coupling, CouplingSide } from '@rotorwright/machine';
import { gearOutline, ringProfile, toothProfile, type ToothProfile } from '@rotorwright/mechanics';

/** A gear or pulley as it is drawn, mm. */
export interface Wheel {
  /** `main-mesh driver`. */
  readonly id: string;
  readonly coupling: string;
  readonly side: 'driver' | 'driven';
  readonly shaft: string;
  readonly kind: 'external' | 'ring' | 'bevel' | 'pulley';
  /** Undefined: the file does not say; a dashed circle stands for it. */
  readonly teeth?: number;
  /** Pitch circle. */
  readonly radius: number;
  /** Outermost circle: tip, or the rim of a ring. */
  readonly outer: number;
  readonly root: number;
  /** One closed polygon about the centre, y up, a tooth on the x axis. Absent without teeth. */
  readonly outline?: readonly (readonly [number, number])[];
  /** Face width. */
  readonly width: number;
  /** Module or pitch was not given: the size is nominal. */
  readonly nominal: boolean;
}

/** Sizes where the file gives none, mm. They only make a picture possible, and the sheet then says that it has no scale. */
const nominalModule = 1;
const nominalTeeth = 20;
const nominalWidth = 8;
/** ISO 53: tip and root height of the basic rack, in modules. */
const rack = { addendum: 1, dedendum: 1.25 };

const millimetres = (metres: number): number => metres * 1000;

export function wheelOf(coupling: Coupling, side: 'driver' | 'driven'): Wheel {
  const own = coupling[side];
  const mate = coupling[side === 'driver' ? 'driven' : 'driver'];
  const base = {
    id: `${coupling.id} ${side}`, coupling: coupling.id, side, shaft: own.on,
    ...(own.teeth === undefined ? {} : { teeth: own.teeth }),
    width: coupling.width === undefined ? nominalWidth : millimetres(coupling.width),
  };
  const teeth = own.teeth ?? nominalTeeth;
  if (coupling.kind === 'belt') return { ...base, kind: 'pulley', ...pulley(coupling, teeth, own.teeth !== undefined) };
  const module = coupling.module === undefined ? nominalModule : millimetres(coupling.module);
  const nominal = coupling.module === undefined || own.teeth === undefined;
  const ring = coupling.kind === 'internal' && teeth > (mate.teeth ?? Infinity);
  const helix = coupling.kind === 'bevel' ? 0 : (coupling.helix?.angle ?? 0);
  const radius = (teeth * module) / 2 / Math.cos(helix);
  const profile = own.teeth === undefined ? undefined : profileOf(coupling, own, module, helix, ring);
  const kind = coupling.kind === 'bevel' ? 'bevel' : ring ? 'ring' : 'external';
  const tip = profile?.tipRadius ?? radius + module;
  const root = profile?.rootRadius ?? radius - 1.25 * module;
  return { ...base, kind, radius, outer: ring ? root + 2.5 * module : tip, root, ...(profile ? { outline: gearOutline(profile) } : {}), nominal };
}

/** Undefined when no such tooth can be cut: the coupling's findings say so. */
function profileOf(coupling: Coupling, side: CouplingSide, module: number, helixAngle: number, ring: boolean): ToothProfile | undefined {
  const teeth = side.teeth!;
  const gear = {
    normalModule: module, helixAngle, pressureAngle: coupling.pressureAngle ?? Math.PI / 9, teeth, shift: side.shift ?? 0, ...rack,
    // A flank of a big gear is a few pixels long: a few points are as good as many.
    pointsPerFlank: teeth > 60 ? 4 : 7,
  };
  try {
    return ring ? ringProfile(gear) : toothProfile(gear);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Toothed pulley: pitch circle from the belt's pitch; the tooth form is that of a trapezoid, half a pitch wide. */
function pulley(coupling: Coupling, teeth: number, counted: boolean): Pick<Wheel, 'radius' | 'outer' | 'root' | 'outline' | 'nominal'> {
  const pitch = coupling.pitch === undefined ? 3 * nominalModule : millimetres(coupling.pitch);
  const radius = (teeth * pitch) / (2 * Math.PI);
  const outer = radius - pitch * 0.09;
  const root = outer - pitch * 0.25;
  const outline = Array.from({ length: teeth }, (_, tooth) => {
    const at = (part: number, r: number): readonly [number, number] => {
      const angle = ((tooth + part) * 2 * Math.PI) / teeth;
      return [r * Math.cos(angle), r * Math.sin(angle)];
    };
    return [at(-0.5, root), at(-0.34, root), at(-0.22, outer), at(0.22, outer), at(0.34, root)];
  }).flat();
  return { radius, outer, root, ...(counted ? { outline } : {}), nominal: coupling.pitch === undefined || !counted };
}

/** Distance of the axes of a mesh or belt, mm; undefined when it does not follow from the file. */
export function distanceOf(coupling: Coupling): number | undefined {
  const { driver, driven } = coupling;
  if (driver.teeth === undefined || driven.teeth === undefined) return undefined;
  const centre = centreOf(coupling, driver.teeth, driven.teeth);
  return typeof centre === 'number' ? millimetres(centre) : undefined;
}
