/**
 * Hover of a rotor with straight lift, each ring by halving its inflow angle until momentum and lift agree: another way to the
 * answer than the coupled steps of the product.
 */
const KAPPA = 1.08;
const COUNT = 60;

export interface PlainRotor {
  readonly blades: number;
  readonly radius: number;
  readonly rootCutout: number;
  readonly chord: number;
  readonly liftSlope: number;
  readonly cd0: number;
  readonly cd2: number;
  readonly speed: number;
  readonly density: number;
  readonly viscosity: number;
  readonly collective: number;
}

export interface PlainHover {
  readonly r: readonly number[];
  readonly angleOfAttack: readonly number[];
  readonly reynolds: readonly number[];
  readonly lift: readonly number[];
  readonly thrust: number;
  readonly power: number;
  readonly profilePower: number;
}

export function plainHover(rotor: PlainRotor): PlainHover {
  const { blades, radius, rootCutout, chord, liftSlope, cd0, cd2, speed, density, viscosity, collective } = rotor;
  const width = (radius - rootCutout) / COUNT;
  const rings = Array.from({ length: COUNT }, (_, i) => {
    const r = rootCutout + (i + 0.5) * width;
    const inflow = halved((phi) => {
      const loss = (distance: number): number => (2 / Math.PI) * Math.acos(Math.exp((-blades * distance) / (2 * r * Math.sin(phi))));
      const momentum = ((8 * Math.PI * r) / (blades * chord * KAPPA ** 2)) * loss(radius - r) * loss(r - rootCutout) * Math.sin(phi) ** 2;
      return momentum - liftSlope * (collective - phi) * Math.cos(phi);
    }, collective);
    const angle = collective - inflow;
    const past = speed * r * Math.cos(inflow);
    const [cl, cd] = [liftSlope * angle, cd0 + cd2 * angle ** 2];
    const pressure = 0.5 * density * past ** 2 * chord;
    return { r, angle, reynolds: (density * past * chord) / viscosity, lift: pressure * (cl * Math.cos(inflow) - cd * Math.sin(inflow)), held: pressure * (cl * Math.sin(inflow) + cd * Math.cos(inflow)) * r, dragged: pressure * cd * Math.cos(inflow) * r };
  });
  const sum = (of: (ring: (typeof rings)[number]) => number): number => blades * width * rings.reduce((total, ring) => total + of(ring), 0);
  return {
    r: rings.map(({ r }) => r),
    angleOfAttack: rings.map(({ angle }) => angle),
    reynolds: rings.map(({ reynolds }) => reynolds),
    lift: rings.map(({ lift }) => lift),
    thrust: sum(({ lift }) => lift),
    power: speed * sum(({ held }) => held),
    profilePower: speed * sum(({ dragged }) => dragged),
  };
}

/** Where a function that grows passes through nought between nothing and a highest place. */
function halved(of: (place: number) => number, most: number): number {
  let [low, high] = [1e-9, most];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (of(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
