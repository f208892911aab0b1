import { bandMatrix, type BandMatrix } from '../numeric/band.ts';

/** A straight beam cut into elements, each of constant section. */
export interface BeamMesh {
  /** Nodes along the beam, ascending, m. One more than there are elements. */
  readonly positions: Float64Array;
  /** EI of each element, N·m². */
  readonly bendingStiffness: Float64Array;
  /** Mass per length of each element, kg/m. */
  readonly massPerLength: Float64Array;
}

/** What holds a node. A pin keeps the deflection at zero, a clamp the slope as well; a spring resists both by its stiffnesses. */
export interface NodeSupport {
  readonly node: number;
  readonly kind: 'pinned' | 'clamped' | 'spring';
  /** N/m */
  readonly stiffness?: number;
  /** N·m/rad */
  readonly rotationalStiffness?: number;
}

/** A mass on a node, kg, and its moment of inertia about the transverse axis, kg·m² (negative where a gyroscopic effect outweighs it). */
export interface NodeMass {
  readonly node: number;
  readonly mass: number;
  readonly inertia?: number;
}

export interface BeamMatrices {
  readonly stiffness: BandMatrix;
  readonly mass: BandMatrix;
  /** For each node its row of the deflection and of the slope; −1 where it is held. */
  readonly freedoms: Int32Array;
}

/**
 * Stiffness and consistent mass of an Euler–Bernoulli beam in one plane: cubic elements, deflection and slope at each node,
 * held freedoms left out.
 *
 * @param mesh      n + 1 nodes, n elements
 * @param supports  any number; several on one node add up
 * @param masses    any number
 * @returns         band matrices over the free freedoms, in N/m, N, N·m and kg, kg·m, kg·m²
 * @source Przemieniecki, Theory of Matrix Structural Analysis (1968), sections 5.6 and 11.3 (from memory)
 * @neglects shear deformation, rotary inertia of the beam's own section, axial force
 */
export function assembleBeam(mesh: BeamMesh, supports: readonly NodeSupport[], masses: readonly NodeMass[]): BeamMatrices {
  const nodes = mesh.positions.length;
  const freedoms = numberFreedoms(nodes, supports);
  let order = 0;
  for (const freedom of freedoms) if (freedom >= order) order = freedom + 1;
  const stiffness = bandMatrix(order);
  const mass = bandMatrix(order);

  for (let e = 0; e < nodes - 1; e++) {
    const h = mesh.positions[e + 1]! - mesh.positions[e]!;
    const k = mesh.bendingStiffness[e]! / (h * h * h);
    const m = (mesh.massPerLength[e]! * h) / 420;
    const a = freedoms[2 * e]!;
    const b = freedoms[2 * e + 1]!;
    const c = freedoms[2 * e + 2]!;
    const d = freedoms[2 * e + 3]!;
    const kh = k * h;
    const khh = kh * h;
    const mh = m * h;
    const mhh = mh * h;
    add(stiffness, a, a, 12 * k);
    add(stiffness, b, a, 6 * kh);
    add(stiffness, b, b, 4 * khh);
    add(stiffness, c, a, -12 * k);
    add(stiffness, c, b, -6 * kh);
    add(stiffness, c, c, 12 * k);
    add(stiffness, d, a, 6 * kh);
    add(stiffness, d, b, 2 * khh);
    add(stiffness, d, c, -6 * kh);
    add(stiffness, d, d, 4 * khh);
    add(mass, a, a, 156 * m);
    add(mass, b, a, 22 * mh);
    add(mass, b, b, 4 * mhh);
    add(mass, c, a, 54 * m);
    add(mass, c, b, 13 * mh);
    add(mass, c, c, 156 * m);
    add(mass, d, a, -13 * mh);
    add(mass, d, b, -3 * mhh);
    add(mass, d, c, -22 * mh);
    add(mass, d, d, 4 * mhh);
  }

  for (const { node, kind, stiffness: k = 0, rotationalStiffness: kr = 0 } of supports) {
    if (kind !== 'spring') continue;
    add(stiffness, freedoms[2 * node]!, freedoms[2 * node]!, k);
    add(stiffness, freedoms[2 * node + 1]!, freedoms[2 * node + 1]!, kr);
  }
  for (const { node, mass: m, inertia = 0 } of masses) {
    add(mass, freedoms[2 * node]!, freedoms[2 * node]!, m);
    add(mass, freedoms[2 * node + 1]!, freedoms[2 * node + 1]!, inertia);
  }
  return { stiffness, mass, freedoms };
}

function numberFreedoms(nodes: number, supports: readonly NodeSupport[]): Int32Array {
  const freedoms = new Int32Array(2 * nodes);
  for (const { node, kind } of supports) {
    if (kind === 'spring') continue;
    freedoms[2 * node] = -1;
    if (kind === 'clamped') freedoms[2 * node + 1] = -1;
  }
  let next = 0;
  for (let i = 0; i < freedoms.length; i++) if (freedoms[i] === 0) freedoms[i] = next++;
  return freedoms;
}

/** Adds to one entry of the lower half; a held freedom (−1) takes nothing. */
function add(matrix: BandMatrix, row: number, column: number, value: number): void {
  if (row < 0 || column < 0) return;
  if (row >= column) matrix[4 * row + row - column]! += value;
  else matrix[4 * column + column - row]! += value;
}
