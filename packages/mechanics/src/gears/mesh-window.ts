import { findRoot } from '../numeric/roots.ts';
import { inverseInvolute, involute } from './involute.ts';
import { gearGeometry, type GearGeometry, type MeshInputs } from './gear-pair.ts';

/** How much longer a part is than at assembly: 1.002 is two thousandths. */
export interface Growth {
  readonly gear1: number;
  readonly gear2: number;
  /** What holds the axes apart. */
  readonly frame: number;
}

export interface GrownMesh {
  /** Least play between the flanks, circumferential on the working circles [m]; negative where the teeth bind. */
  readonly backlash: number;
  /** Centre distance that the grown frame gives [m]. */
  readonly centreDistance: number;
}

type Teeth = Omit<MeshInputs, 'faceWidth' | 'centreDistance'>;

/**
 * Least backlash of a pair whose gears and frame have grown apart, by heat or damp.
 *
 * A gear grows to one of the same shape: its base circle, base pitch and base thickness grow alike. Two gears that grew differently no
 * longer share a base pitch: of a pair in mesh the smaller pitch decides, for a tooth of one stands in a gap of the other, and the other
 * way round a moment later. On the base circles (d_b1 + d_b2)·inv α_w − (s_b1 + s_b2 − p_b) is left; over cos α_w on the working circles.
 *
 * @param teeth           the pair at assembly
 * @param centreDistance  at assembly [m]
 * @param growth          1 for each at assembly
 * @throws RangeError when an argument is out of range
 * @neglects out-of-round teeth and the difference between a warm hub and a warmer rim
 * @source geometry of the involute: ISO 21771:2007 (from memory) with the lengths of each part scaled
 */
export function grownBacklash(teeth: Teeth, centreDistance: number, growth: Growth): GrownMesh {
  checkGrowth('grownBacklash', growth);
  const { bases, filled } = grownBases(teeth, growth);
  const distance = centreDistance * growth.frame;
  const cosine = bases / 2 / distance;
  // Closer than the base circles themselves the play is worse than at that place.
  const angle = cosine <= 1 ? Math.acos(cosine) : 0;
  const short = cosine <= 1 ? 0 : 2 * (bases / 2 - distance);
  return { backlash: (bases * involute(angle) - filled) / Math.cos(angle) - short, centreDistance: distance };
}

/**
 * Centre distance at assembly at which the pair, once grown, keeps just the backlash wanted.
 *
 * @param leastBacklash  circumferential on the working circles [m], not negative; 0: the teeth touch on both flanks
 * @returns [m]
 * @throws RangeError when an argument is out of range, or the teeth cannot touch at any distance
 * @source {@link grownBacklash} turned round
 */
export function grownCentreDistance(teeth: Teeth, growth: Growth, leastBacklash = 0): number {
  checkGrowth('grownCentreDistance', growth);
  if (!(leastBacklash >= 0 && Number.isFinite(leastBacklash))) throw new RangeError(`grownCentreDistance: leastBacklash [m] must be 0 or more, got ${leastBacklash}`);
  const { bases, filled } = grownBases(teeth, growth);
  if (!(filled >= 0)) throw new RangeError(`grownCentreDistance: shift1 and shift2 must let the flanks touch at some distance of the axes, got ${teeth.shift1} and ${teeth.shift2}`);
  const tight = inverseInvolute(filled / bases);
  const left = (wider: number): number => bases * involute(wider) - filled - leastBacklash * Math.cos(wider);
  // Play on the base circles is the play wanted times cos α_w; taking all of it gives an angle that is too wide. Rounding gets some room.
  const angle = leastBacklash === 0 ? tight : findRoot(left, tight * (1 - 1e-9), inverseInvolute((filled + leastBacklash) / bases) * (1 + 1e-9));
  return bases / 2 / Math.cos(angle) / growth.frame;
}

/** d_b1 + d_b2 and s_b1 + s_b2 − p_b of the grown pair [m]. */
function grownBases(teeth: Teeth, growth: Growth): { bases: number; filled: number } {
  const gear1 = gearGeometry({ ...teeth, teeth: teeth.teeth1, shift: teeth.shift1 });
  const gear2 = gearGeometry({ ...teeth, teeth: teeth.teeth2, shift: teeth.shift2 });
  const pitch = (Math.PI * gear1.baseDiameter) / teeth.teeth1;
  return {
    bases: gear1.baseDiameter * growth.gear1 + gear2.baseDiameter * growth.gear2,
    filled: baseThickness(gear1) * growth.gear1 + baseThickness(gear2) * growth.gear2 - pitch * Math.min(growth.gear1, growth.gear2),
  };
}

/** Tooth thickness on the base circle: d_b·(s/d + inv α_t). */
function baseThickness({ baseDiameter, toothThickness, referenceDiameter, transversePressureAngle }: GearGeometry): number {
  return baseDiameter * (toothThickness / referenceDiameter + involute(transversePressureAngle));
}

function checkGrowth(where: string, growth: Growth): void {
  for (const [name, value] of Object.entries(growth)) if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${where}: growth of ${name} must be positive, got ${value}`);
}
