import type { EntryPath } from './place.ts';

/** Unit vector in the axes of the machine: x forward, y left, z up. */
export type Direction = readonly [x: number, y: number, z: number];

/** From `min` to `max` in SI; a fixed value has both alike; an open side is left out. */
export interface Window {
  readonly min?: number;
  readonly max?: number;
}

export interface Engine {
  readonly path: EntryPath;
  readonly kind?: string;
  /** Id of the shaft that it turns. */
  readonly on: string;
  /** m³ */
  readonly displacement?: number;
  /** W */
  readonly power?: number;
  /** Points at full throttle in ascending speed, rad/s and W. */
  readonly curve?: readonly { readonly path: EntryPath; readonly speed: number; readonly power: number }[];
  /** kg/J */
  readonly consumption?: number;
  /** Of the cooling fan at the governed speed, W. */
  readonly fan?: number;
  /** Share of the power kept back for the governor. */
  readonly reserve?: number;
  /** Governed speed, rad/s. */
  readonly speed?: number;
  /** Speeds at which it pulls well, rad/s. */
  readonly bestSpeed?: Window;
  /** rad/s */
  readonly idle?: number;
  /** Spin vector: right-handed about this direction. */
  readonly turns?: Direction;
  readonly cylinders?: number;
}

export interface Motor {
  readonly path: EntryPath;
  readonly on: string;
  /** rad/s per V */
  readonly speedConstant?: number;
  /** Ω */
  readonly resistance?: number;
  /** A */
  readonly noLoadCurrent?: number;
  /** Ω */
  readonly controllerResistance?: number;
  /** W */
  readonly power?: number;
  /** Share of the duty kept back for the governor. */
  readonly reserve?: number;
  /** Governed speed, rad/s. */
  readonly speed?: number;
  readonly bestSpeed?: Window;
  readonly turns?: Direction;
  readonly poles?: number;
}

export interface Battery {
  readonly path: EntryPath;
  readonly cells?: number;
  /** C (1 A·h = 3600 C) */
  readonly capacity?: number;
  /** Ω, whole pack */
  readonly resistance?: number;
  /** V, whole pack */
  readonly voltage?: number;
  /** kg */
  readonly mass?: number;
  /** Share of the charge that is flown. */
  readonly usable?: number;
}

export interface Tank {
  readonly path: EntryPath;
  /** Instance id of the part that is the tank, whose mass is that of the empty one. */
  readonly part?: string;
  /** m³ */
  readonly volume?: number;
  /** kg/m³ */
  readonly density?: number;
  /** Share that is in it when the machine has its mass; full when the file does not say. */
  readonly filled?: number;
  /** Share of that which is flown. */
  readonly usable?: number;
}

export interface Power {
  readonly engine?: Engine;
  readonly motor?: Motor;
  readonly battery?: Battery;
  readonly tank?: Tank;
}

export interface Shaft {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  /** Absent when the file does not say how the shaft lies. */
  readonly axis?: Direction;
  /** Instance id of the part that is the shaft's body. */
  readonly part?: string;
}

export type CouplingKind = 'external' | 'internal' | 'bevel' | 'belt' | 'centrifugal-clutch' | 'one-way' | 'rigid';

/** A gear or pulley that can be bought instead. */
export interface Choice {
  readonly teeth: number;
  readonly code?: string;
  readonly price?: string;
  readonly path: EntryPath;
}

export interface CouplingSide {
  readonly path: EntryPath;
  /** Shaft id. */
  readonly on: string;
  /** Instance id of the part that has the teeth or the clutch face. */
  readonly part?: string;
  readonly teeth?: number;
  /** What can be bought; the fitted count is among them when the file says so. */
  readonly choices: readonly Choice[];
  /** Profile shift in modules. */
  readonly shift?: number;
  /** Bevels: where the gear lies from the crossing point of the two axes. */
  readonly lies?: Direction;
}

export interface Coupling {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly kind: CouplingKind;
  readonly driver: CouplingSide;
  readonly driven: CouplingSide;
  /** Normal module, m. */
  readonly module?: number;
  /** Helix angle in rad and hand of the driver; an external mate has the other hand, an internal mate the same. */
  readonly helix?: { readonly angle: number; readonly hand: 'left' | 'right' };
  /** rad; 20° when not given. */
  readonly pressureAngle?: number;
  /** Face width, m. */
  readonly width?: number;
  /** Centre distance that the frame allows, m. */
  readonly centre?: Window;
  /** Set at assembly, along the pitch circle, m. */
  readonly backlash?: Window;
  /** Name of the material between its axes. */
  readonly between?: string;
  /** Belts: tooth pitch, m. */
  readonly pitch?: number;
  /** Belts: tooth count of the belt itself. */
  readonly beltTeeth?: number;
  /** Belts: direction in which the belt runs from driver to driven. */
  readonly runs?: Direction;
  /** Belts: twist of the belt from driver to driven, right-handed about `runs`, rad. */
  readonly twist?: number;
  /** Centrifugal clutch: speed at which it grips, rad/s. */
  readonly engages?: number;
  /** Clutches: torque at the governed speed, N·m. */
  readonly holds?: number;
  /** Belts: pull that the maker allows, N. */
  readonly maxPull?: number;
  /** Power out over power in. */
  readonly efficiency?: number;
}

/** Lift and drag coefficients: a row for each Reynolds number, a value for each angle [rad]. */
export interface SectionTable {
  readonly reynolds: readonly number[];
  readonly angles: readonly number[];
  readonly lift: readonly (readonly number[])[];
  readonly drag: readonly (readonly number[])[];
}

export interface Rotor {
  readonly id: string;
  readonly path: EntryPath;
  readonly title: string;
  /** Shaft id. */
  readonly on: string;
  readonly blades?: number;
  /** m */
  readonly diameter?: number;
  /** m */
  readonly chord?: number;
  readonly section?: string | SectionTable;
  /** rad */
  readonly twist?: number;
  /** Drag of the blades over that of their section. */
  readonly roughness?: number;
  /** Root cut-out, m from the axis. */
  readonly root?: number;
  /** Pitch at its stops, rad. */
  readonly stops?: Window;
  /** Of a tail rotor from the main mast, m. */
  readonly arm?: number;
  /** Share of the thrust that the fin takes. */
  readonly blockage?: number;
  /** Flapping hinge, m from the axis. */
  readonly hinge?: number;
  /** Blade bolt from the axis, m. */
  readonly boltRadius?: number;
  /** Mass of one blade, kg, and its centre of mass from the bolt, m. */
  readonly bladeMass?: number;
  readonly bladeCentre?: number;
  /** Inertia-bearing parts that turn with it besides the blades, kg·m². */
  readonly hubInertia?: number;
  /** Mass that hangs on one thrust bearing besides the blade, kg, and its centre from the axis, m. */
  readonly gripMass?: number;
  readonly gripCentre?: number;
  /** Of flap and drag of one blade across the bearings of its grip, N·m. */
  readonly gripMoment?: number;
  /** Stiffness of the dampers against flapping: moment of the head over the tilt of its disc, N·m/rad. */
  readonly damper?: number;
  /** Speed band that the builder wants, rad/s. */
  readonly wanted?: Window;
  /** Instance id of the hub. */
  readonly part?: string;
  /** Where its feathering axis meets its shaft, m, in the machine's axes. */
  readonly at?: readonly [number, number, number];
  /** Cyclic pitch that the builder wants to either side, rad. */
  readonly cyclic?: number;
  /** Feathering axis over the boom where the tips pass, m. */
  readonly aboveBoom?: number;
  /** Play of its feathering bearings: how far a grip goes up and down at the ball of its pitch arm, from stop to stop, m. */
  readonly bearingPlay?: number;
  /** How far a blade turns in its grip, from stop to stop, rad. */
  readonly bladePlay?: number;
}
