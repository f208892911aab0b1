import { involute } from './involute.ts';
import { checkGear, gearGeometry, type GearData } from './gear-pair.ts';

export interface RackedGear extends GearData {
  /** Tip radius of the rack that cuts the gear ρ_fP, in normal modules. */
  readonly filletRadius: number;
}

/** The critical section of a tooth, where tangents at 30° to the middle of the tooth touch the fillet; lengths in normal modules. */
export interface RootSection {
  /** Teeth of the virtual spur gear z_n. */
  readonly virtualTeeth: number;
  /** Chord s_Fn. */
  readonly chord: number;
  /** Radius of the fillet at that chord ρ_F. */
  readonly filletRadius: number;
  /** ϑ [rad] */
  readonly angle: number;
  /** G of the standard. */
  readonly offset: number;
}

export interface RootFactors {
  /** Y_F */
  readonly form: number;
  /** Y_S */
  readonly stressCorrection: number;
  /** Notch parameter q_s: the stress correction is stated for 1 to 8. */
  readonly notch: number;
  /** Bending lever h_F, in normal modules. */
  readonly lever: number;
}

/** Place at which the load acts: the outermost at which one pair alone carries it, or the tip. */
export type LoadPlace = 'outer-single-contact' | 'tip';

const SLANT = Math.PI / 3;

/**
 * Root section of an external tooth as its rack cuts it: 30° tangents to the fillet.
 *
 * @throws RangeError when an argument is out of range, the rack would be pointed, or the tangents find no fillet
 * @source ISO 6336-3:2006, section 6.2, method B (from memory); the section is checked against the fillet that the rack generates
 */
export function rootSection(gear: RackedGear): RootSection {
  checkGear('rootSection', gear);
  const { helixAngle, pressureAngle, teeth, shift, dedendum, filletRadius } = gear;
  const halfTip = Math.PI / 4 - dedendum * Math.tan(pressureAngle) - (filletRadius * (1 - Math.sin(pressureAngle))) / Math.cos(pressureAngle);
  const widest = ((Math.PI / 4 - dedendum * Math.tan(pressureAngle)) * Math.cos(pressureAngle)) / (1 - Math.sin(pressureAngle));
  if (!(widest >= 0)) throw new RangeError(`rootSection: dedendum must be smaller, the rack that cuts it would be pointed; got ${dedendum}`);
  if (!(filletRadius >= 0 && halfTip >= -1e-12)) throw new RangeError(`rootSection: filletRadius must fit into the tip of the rack, at most ${widest} modules, got ${filletRadius}`);
  const baseHelixCosine = Math.sqrt(1 - (Math.sin(helixAngle) * Math.cos(pressureAngle)) ** 2);
  const virtualTeeth = teeth / (baseHelixCosine ** 2 * Math.cos(helixAngle));
  const offset = filletRadius - dedendum + shift;
  const lean = (2 / virtualTeeth) * (Math.PI / 2 - halfTip) - SLANT;
  const angle = tangentAngle(offset, virtualTeeth, lean);
  const reach = offset / Math.cos(angle) - filletRadius;
  return {
    virtualTeeth,
    chord: virtualTeeth * Math.sin(SLANT - angle) + Math.sqrt(3) * reach,
    filletRadius: filletRadius + (2 * offset ** 2) / (Math.cos(angle) * (virtualTeeth * Math.cos(angle) ** 2 - 2 * offset)),
    angle,
    offset,
  };
}

/** ϑ = 2G/z_n·tan ϑ − H by Newton's method from π/6: the standard's own start. */
function tangentAngle(offset: number, virtualTeeth: number, lean: number): number {
  const slope = (2 * offset) / virtualTeeth;
  let angle = Math.PI / 6;
  for (let step = 0; step < 50; step++) {
    const tangent = Math.tan(angle);
    const next = angle - (angle - slope * tangent + lean) / (1 - slope * (1 + tangent * tangent));
    if (!(Math.abs(next) < Math.PI / 2)) break;
    if (Math.abs(next - angle) < 1e-14) return next;
    angle = next;
  }
  throw new RangeError(`rootSection: shift and dedendum must leave a fillet that a tangent at 30° touches; virtual number of teeth, got ${virtualTeeth}`);
}

/**
 * Form factor Y_F and stress-correction factor Y_S of a tooth.
 *
 * @param gear           its own rack included
 * @param place          where the load acts; the outer point of single contact asks for the contact ratio
 * @param contactRatio   ε_α, transverse, 1 or more
 * @throws RangeError when an argument is out of range, or no lever is left
 * @source ISO 6336-3:2006, sections 6.2 and 7.2, method B, and for load at the tip method C of DIN 3990-3:1987 (from memory)
 * @neglects the load share of a helical mesh (f_ε of the edition of 2019), a rim that gives way
 * @example rootFactors({ normalModule: 1, helixAngle: 0, pressureAngle: Math.PI / 9, teeth: 20, shift: 0, addendum: 1, dedendum: 1.25, filletRadius: 0.38 }, 'tip', 1).form // 2.7999904
 */
export function rootFactors(gear: RackedGear, place: LoadPlace, contactRatio: number): RootFactors {
  if (!(contactRatio >= 1)) throw new RangeError(`rootFactors: contactRatio must be at least 1, got ${contactRatio}`);
  const { helixAngle, pressureAngle, shift, normalModule } = gear;
  const section = rootSection(gear);
  const { tipDiameter, referenceDiameter } = gearGeometry(gear);
  const { virtualTeeth: z, chord } = section;
  const base = z * Math.cos(pressureAngle);
  const tip = z + (tipDiameter - referenceDiameter) / normalModule;
  const virtualRatio = contactRatio / (1 - (Math.sin(helixAngle) * Math.cos(pressureAngle)) ** 2);
  // Along the line of action of the virtual gear, one pair more or less at this distance from the tip.
  const back = place === 'tip' ? 0 : Math.PI * Math.cos(pressureAngle) * (virtualRatio - 1);
  const rolled = Math.sqrt(Math.max(0, tip ** 2 - base ** 2)) / 2 - back;
  const load = 2 * Math.sqrt(rolled ** 2 + (base / 2) ** 2);
  const loadAngle = Math.acos(base / load);
  const tilt = (Math.PI / 2 + 2 * Math.tan(pressureAngle) * shift) / z + involute(pressureAngle) - involute(loadAngle);
  const slant = loadAngle - tilt;
  const lever = ((Math.cos(tilt) - Math.sin(tilt) * Math.tan(slant)) * load - z * Math.cos(SLANT - section.angle) - (section.offset / Math.cos(section.angle) - gear.filletRadius)) / 2;
  if (!(rolled > 0)) throw new RangeError(`rootFactors: contactRatio must leave the outer point of single contact outside the base circle, got ${contactRatio}`);
  if (!(chord > 0 && lever > 0)) throw new RangeError(`rootFactors: shift must leave a root that bends; chord and lever in modules, got ${chord} and ${lever}`);
  const notch = chord / (2 * section.filletRadius);
  const slenderness = chord / lever;
  return {
    form: (6 * lever * Math.cos(slant)) / (chord ** 2 * Math.cos(pressureAngle)),
    stressCorrection: (1.2 + 0.13 * slenderness) * notch ** (1 / (1.21 + 2.3 / slenderness)),
    notch,
    lever,
  };
}
