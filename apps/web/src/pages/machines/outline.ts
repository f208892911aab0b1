import { rotorsOf } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';

/** Side view of a machine, forward to the left, in mm from the mast: x aft, y up from the ground. It shows size, not shape. */
export interface Outline {
  readonly width: number;
  readonly height: number;
  /** From the front edge to the mast. */
  readonly mast: number;
  readonly mainDiameter?: number;
  readonly tailDiameter?: number;
  readonly paths: readonly { readonly d: string; readonly line: 'heavy' | 'fine' | 'chain' | 'hidden' }[];
}

/** Part of the main diameter by which a machine without a tail rotor in its file is drawn. */
const tailPart = 0.17;

/**
 * Outline from the rotors and the kind of power. The tail rotor stands just clear of the main disc, as it must;
 * everything else is drawn in proportion to the main rotor.
 *
 * @returns undefined when the file gives no main rotor diameter
 */
export function outlineOf(machine: Machine): Outline | undefined {
  const { main, tail } = rotorsOf(machine);
  if (main?.diameter === undefined) return undefined;
  const diameter = main.diameter * 1000;
  const tailDiameter = tail?.diameter === undefined ? undefined : tail.diameter * 1000;
  const radius = diameter / 2;
  const tailRadius = (tailDiameter ?? diameter * tailPart) / 2;
  const tailAt = radius + tailRadius + diameter * 0.015;
  const mast = radius;
  const belt = [...machine.couplings.values()].some(({ kind }) => kind === 'belt');
  const unit = diameter / 100;
  const x = (part: number): string => (mast + part * unit).toFixed(1);
  const skid = 1.5;
  const floor = 9;
  const boom = 17;
  const disc = 33;
  const y = (part: number): string => (part * unit).toFixed(1);
  const height = (disc + 6) * unit;
  const tx = mast + tailAt;
  const ty = (boom + 3) * unit;

  const paths: Outline['paths'][number][] = [
    // Main rotor: blades edge-on, hub, mast.
    { line: 'heavy', d: `M0 ${y(disc)}H${(diameter).toFixed(1)}M${x(-3)} ${y(disc - 1.2)}H${x(3)}V${y(disc + 1.2)}H${x(-3)}Z` },
    { line: 'fine', d: `M${x(-0.7)} ${y(disc - 1.2)}V${y(26)}M${x(0.7)} ${y(disc - 1.2)}V${y(26)}` },
    { line: 'chain', d: `M${x(0)} ${y(disc + 5)}V0` },
    // Frame and canopy.
    { line: 'heavy', d: `M${x(-9)} ${y(26)}H${x(10)}L${x(13)} ${y(boom + 2)}V${y(boom - 3)}L${x(9)} ${y(floor)}H${x(-10)}Z` },
    { line: 'heavy', d: `M${x(-9)} ${y(26)}C${x(-20)} ${y(26)} ${x(-27)} ${y(18)} ${x(-27)} ${y(14)}C${x(-27)} ${y(10.5)} ${x(-20)} ${y(floor)} ${x(-10)} ${y(floor)}` },
    // Skids.
    { line: 'heavy', d: `M${x(-21)} ${y(skid + 1)}Q${x(-20)} ${y(skid)} ${x(-18)} ${y(skid)}H${x(14)}` },
    { line: 'fine', d: `M${x(-8)} ${y(floor)}L${x(-10)} ${y(skid)}M${x(7)} ${y(floor)}L${x(9)} ${y(skid)}` },
    // Boom, and what runs inside it.
    { line: 'heavy', d: `M${x(13)} ${y(boom + 1)}H${tx.toFixed(1)}M${x(13)} ${y(boom - 1)}H${tx.toFixed(1)}` },
    belt ? { line: 'hidden', d: `M${x(13)} ${y(boom + 0.4)}H${tx.toFixed(1)}M${x(13)} ${y(boom - 0.4)}H${tx.toFixed(1)}` } : { line: 'chain', d: `M${x(13)} ${y(boom)}H${tx.toFixed(1)}` },
    // Tail rotor, gear case and fin.
    { line: 'chain', d: circle(tx, ty, tailRadius) },
    { line: 'heavy', d: `M${tx.toFixed(1)} ${(ty - tailRadius).toFixed(1)}V${(ty + tailRadius).toFixed(1)}${circle(tx, ty, 1.4 * unit)}` },
    { line: 'fine', d: `M${(tx - 3 * unit).toFixed(1)} ${y(boom - 1)}L${(tx - 1.5 * unit).toFixed(1)} ${y(4)}H${(tx + 1.5 * unit).toFixed(1)}L${(tx + 2 * unit).toFixed(1)} ${y(boom - 1)}` },
    ...powerOf(machine, x, y, mast, unit),
  ];
  return { width: tx + tailRadius + unit, height, mast, mainDiameter: diameter, ...(tailDiameter === undefined ? {} : { tailDiameter }), paths };
}

/** An engine is a cylinder with its fan, a motor a can with the pack before it; where the file names neither, nothing is drawn. */
function powerOf(machine: Machine, x: (part: number) => string, y: (part: number) => string, mast: number, unit: number): Outline['paths'][number][] {
  if (machine.power.engine) {
    return [
      { line: 'fine', d: circle(mast - 3 * unit, 15 * unit, 4.2 * unit) },
      { line: 'chain', d: circle(mast - 3 * unit, 15 * unit, 2.6 * unit) },
      { line: 'fine', d: `M${x(-1)} ${y(11.3)}V${y(9.8)}M${x(-5)} ${y(11.3)}V${y(9.8)}M${x(4)} ${y(20)}H${x(9)}V${y(12)}H${x(4)}Z` },
    ];
  }
  if (machine.power.motor) {
    return [
      { line: 'fine', d: `M${x(-6)} ${y(24)}H${x(0)}V${y(18)}H${x(-6)}Z` },
      { line: 'fine', d: `M${x(-22)} ${y(15)}H${x(-8)}V${y(11)}H${x(-22)}Z` },
    ];
  }
  return [];
}

const circle = (cx: number, cy: number, r: number): string =>
  `M${(cx - r).toFixed(1)} ${cy.toFixed(1)}A${r.toFixed(1)} ${r.toFixed(1)} 0 1 0 ${(cx + r).toFixed(1)} ${cy.toFixed(1)}A${r.toFixed(1)} ${r.toFixed(1)} 0 1 0 ${(cx - r).toFixed(1)} ${cy.toFixed(1)}`;
