/** One station along the blade; between two stations every field is linear in r. */
export interface BladeStation {
  /** From the rotor axis, m. */
  readonly r: number;
  /** kg/m */
  readonly massPerLength: number;
  /** Centre of mass ahead of the feathering axis, m; positive towards the leading edge. */
  readonly chordwise: number;
  /** Centre of mass over the feathering axis at pitch 0, m. */
  readonly height: number;
  /** Radii of gyration of the section about its centre of mass, along the chord and across it, m. */
  readonly chordwiseGyration: number;
  readonly heightGyration: number;
}

export interface PointMass {
  /** m */
  readonly r: number;
  /** kg */
  readonly mass: number;
  /** m */
  readonly chordwise: number;
  /** m */
  readonly height: number;
}

/** Integrals over mass. */
export interface MassIntegrals {
  /** ∫dm [kg], ∫r dm [kg·m], ∫r² dm [kg·m²] */
  readonly mass: number;
  readonly staticMoment: number;
  readonly inertia: number;
  /** ∫ξ² dm, ∫η² dm, ∫ξη dm [kg·m²]: chordwise and height from the feathering axis. */
  readonly chordwiseInertia: number;
  readonly heightInertia: number;
  readonly product: number;
}

const NOTHING: MassIntegrals = { mass: 0, staticMoment: 0, inertia: 0, chordwiseInertia: 0, heightInertia: 0, product: 0 };

/** Three Gauss points on [0, 1]: exact to the fifth degree, and no integrand here is above the third. */
const GAUSS = [
  { at: 0.5 - Math.sqrt(0.15), weight: 5 / 18 },
  { at: 0.5, weight: 8 / 18 },
  { at: 0.5 + Math.sqrt(0.15), weight: 5 / 18 },
] as const;

/**
 * Mass integrals of a blade and of what turns with it.
 *
 * @param stations  in ascending r; fewer than two carry no mass
 * @param points    masses that count as points
 * @source definition
 */
export function massIntegrals(stations: readonly BladeStation[], points: readonly PointMass[]): MassIntegrals {
  const sections = stations.slice(1).flatMap((outer, index) => sectionMasses(stations[index]!, outer));
  return [...sections, ...points.map((point) => ({ ...point, chordwiseGyration: 0, heightGyration: 0 }))].reduce(
    (sum, { r, mass, chordwise, height, chordwiseGyration, heightGyration }) => ({
      mass: sum.mass + mass,
      staticMoment: sum.staticMoment + mass * r,
      inertia: sum.inertia + mass * r * r,
      chordwiseInertia: sum.chordwiseInertia + mass * (chordwise ** 2 + chordwiseGyration ** 2),
      heightInertia: sum.heightInertia + mass * (height ** 2 + heightGyration ** 2),
      product: sum.product + mass * chordwise * height,
    }),
    NOTHING,
  );
}

function sectionMasses(inner: BladeStation, outer: BladeStation): (PointMass & Pick<BladeStation, 'chordwiseGyration' | 'heightGyration'>)[] {
  const length = outer.r - inner.r;
  return GAUSS.map(({ at, weight }) => {
    const between = (field: keyof BladeStation): number => inner[field] + (outer[field] - inner[field]) * at;
    return {
      r: between('r'),
      mass: between('massPerLength') * length * weight,
      chordwise: between('chordwise'),
      height: between('height'),
      chordwiseGyration: between('chordwiseGyration'),
      heightGyration: between('heightGyration'),
    };
  });
}

export interface UniformBlade {
  /** S = m·(R + r₀)/2 [kg·m], about the rotor axis. */
  readonly staticMoment: number;
  /** I = m·(R² + R·r₀ + r₀²)/3 [kg·m²], about the rotor axis. */
  readonly inertia: number;
  /** (R + r₀)/2 [m] */
  readonly centreOfMass: number;
}

/**
 * A blade whose mass is spread evenly from root to tip, for want of better knowledge.
 *
 * @param mass  m [kg], not negative
 * @param root  r₀ [m] from the rotor axis
 * @param tip   R [m], beyond the root
 * @throws RangeError when the tip does not lie beyond the root
 * @source definition: ∫r dm and ∫r² dm with dm = m dr/(R − r₀)
 * @example uniformBlade(3, 0, 1).inertia // 1
 */
export function uniformBlade(mass: number, root: number, tip: number): UniformBlade {
  if (!(tip > root) || !(mass >= 0)) throw new RangeError(`uniformBlade: the tip [m] must lie beyond the root and the mass [kg] not be negative, got ${tip}, ${root} and ${mass}`);
  const centreOfMass = (tip + root) / 2;
  return { staticMoment: mass * centreOfMass, inertia: (mass * (tip ** 2 + tip * root + root ** 2)) / 3, centreOfMass };
}
