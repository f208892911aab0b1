import { contactFactors, elasticityFactor, pitchPointPressure, type ContactFactors, type ElasticFlank } from './contact-stress.ts';
import { meshGeometry, type MeshGeometry, type MeshInputs } from './gear-pair.ts';
import { rootFactors, type LoadPlace, type RackedGear, type RootFactors } from './tooth-root.ts';

export interface LoadedMesh extends MeshInputs {
  /** Of the rack, in normal modules. */
  readonly filletRadius: number;
  /** T on gear 1 [N·m], not negative */
  readonly torque: number;
  readonly flank1: ElasticFlank;
  readonly flank2: ElasticFlank;
  /** K_A·K_v·K_β·K_α: product of the load factors. */
  readonly loadFactor: number;
  /** Where the bending load acts: metal shares it between pairs and takes the outer point of single contact, plastic takes the tip. */
  readonly place: LoadPlace;
}

export interface MeshStresses {
  readonly mesh: MeshGeometry;
  /** F_t [N] */
  readonly tangential: number;
  /** Z_E [√Pa] */
  readonly elasticity: number;
  readonly contact: ContactFactors;
  /** At the pitch point, load factors in [Pa]. */
  readonly contactStress: number;
  readonly root1: RootFactors;
  readonly root2: RootFactors;
  /** Y_ε; 1 where the load acts at the outer point of single contact. */
  readonly contactRatioFactor: number;
  /** Y_β */
  readonly helixFactor: number;
  /** Load factors in [Pa]. */
  readonly rootStress1: number;
  readonly rootStress2: number;
}

/** Helix beyond which the factors of the standard are not stated. */
const MOST_HELIX = Math.PI / 6;

/**
 * Stresses of a mesh at root and flank: σ_F = F_t/(b·m_n)·Y_F·Y_S·Y_ε·Y_β·K and σ_H = σ_H0·√K
 *
 * @throws RangeError when the pair cannot run, its transverse contact ratio is below 1, or a tooth has no root
 * @source ISO 6336-2:2006 and ISO 6336-3:2006, method B; load at the tip as VDI 2736-2:2014 takes it (both from memory)
 * @neglects rim, surface, size, lubricant, dynamics other than by the load factor
 */
export function meshStresses(input: LoadedMesh): MeshStresses {
  const { torque, loadFactor, faceWidth, normalModule, helixAngle, teeth1, teeth2 } = input;
  if (!(torque >= 0 && Number.isFinite(torque))) throw new RangeError(`meshStresses: torque [N·m] must be 0 or more, got ${torque}`);
  if (!(loadFactor > 0 && Number.isFinite(loadFactor))) throw new RangeError(`meshStresses: loadFactor must be positive, got ${loadFactor}`);
  const mesh = meshGeometry(input);
  const contact = contactFactors(mesh, teeth1, teeth2, helixAngle);
  const tangential = (2 * torque) / mesh.gear1.referenceDiameter;
  const elasticity = elasticityFactor(input.flank1, input.flank2);
  const { transverseContactRatio, overlapRatio } = mesh;
  const root = (teeth: number, shift: number): RootFactors => rootFactors({ ...input, teeth, shift } satisfies RackedGear, input.place, transverseContactRatio);
  const [root1, root2] = [root(teeth1, input.shift1), root(teeth2, input.shift2)];
  const contactRatioFactor = input.place === 'tip' ? 0.25 + (0.75 * Math.cos(mesh.gear1.baseHelixAngle) ** 2) / transverseContactRatio : 1;
  const helixFactor = 1 - (Math.min(1, overlapRatio) * Math.min(MOST_HELIX, helixAngle)) / ((2 * Math.PI) / 3);
  const nominal = (tangential / (faceWidth * normalModule)) * contactRatioFactor * helixFactor * loadFactor;
  return {
    mesh,
    tangential,
    elasticity,
    contact,
    contactStress: pitchPointPressure(tangential, mesh.gear1.referenceDiameter, faceWidth, teeth2 / teeth1, elasticity, contact) * Math.sqrt(loadFactor),
    root1,
    root2,
    contactRatioFactor,
    helixFactor,
    rootStress1: nominal * root1.form * root1.stressCorrection,
    rootStress2: nominal * root2.form * root2.stressCorrection,
  };
}
