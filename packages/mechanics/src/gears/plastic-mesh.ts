import type { GearGeometry } from './gear-pair.ts';
import { meshStresses, type LoadedMesh, type MeshStresses } from './gear-strength.ts';
import { plasticStrength, plasticToothTemperature, toothLossFactor, type PlasticMate } from './plastic-gears.ts';

export interface PlasticMeshInputs extends Omit<LoadedMesh, 'place'> {
  /** The gear that is looked at; its flank is plastic. */
  readonly gear: 1 | 2;
  /** What the other gear is made of. */
  readonly mate: PlasticMate;
  /** Of gear 1 [rad/s], positive */
  readonly speed: number;
  /** Under load [s], positive */
  readonly duration: number;
  /** [K] */
  readonly ambient: number;
  /** µ between the flanks */
  readonly friction: number;
  /** Share of the time under load, above 0, at most 1. */
  readonly dutyCycle: number;
}

export interface PlasticMesh {
  readonly stresses: MeshStresses;
  /** H_V */
  readonly lossFactor: number;
  /** W */
  readonly lossPower: number;
  /** m/s */
  readonly pitchLineSpeed: number;
  /** Of the plastic gear under load. */
  readonly cycles: number;
  /** K */
  readonly rootTemperature: number;
  readonly flankTemperature: number;
  /** Pa; zero and less: at this temperature it stands none. */
  readonly rootStrength: number;
  readonly flankStrength: number;
  /** Of the plastic gear, Pa */
  readonly rootStress: number;
}

/** A notched tooth stands so many times its nominal stress number, as that number was measured on teeth with the factor in it. */
export const stressCorrectionOfTestGear = 2;

/**
 * Root and flank of a plastic gear under load, with the temperature that its losses give it.
 *
 * @throws RangeError when an argument is out of range
 * @source VDI 2736-2:2014 (from memory): Y_St = 2, load at the tip
 * @neglects wear, deformation that lets more teeth share the load, a modulus that falls with warmth
 */
export function plasticMesh(input: PlasticMeshInputs): PlasticMesh {
  const { gear, mate, torque, speed, duration, ambient, friction, dutyCycle, teeth1, teeth2, faceWidth, normalModule } = input;
  if (!(speed > 0 && duration > 0 && Number.isFinite(speed * duration))) throw new RangeError(`plasticMesh: speed [rad/s] and duration [s] must be positive, got ${speed} and ${duration}`);
  if (!(friction >= 0 && Number.isFinite(friction))) throw new RangeError(`plasticMesh: friction must be 0 or more, got ${friction}`);
  const stresses = meshStresses({ ...input, place: 'tip' });
  const { gear1, gear2, workingPressureAngle } = stresses.mesh;
  const lossFactor = toothLossFactor(teeth1, teeth2, tipRatio(gear1, teeth1, workingPressureAngle), tipRatio(gear2, teeth2, workingPressureAngle), gear1.baseHelixAngle);
  const lossPower = torque * speed * friction * lossFactor;
  const pitchLineSpeed = (speed * gear1.referenceDiameter) / 2;
  const teeth = gear === 1 ? teeth1 : teeth2;
  const temperature = (place: 'root' | 'flank'): number => plasticToothTemperature({ ambient, lossPower, place, mate, faceWidth, teeth, pitchLineSpeed, normalModule, dutyCycle });
  const [rootTemperature, flankTemperature] = [temperature('root'), temperature('flank')];
  const cycles = (((speed * duration) / (2 * Math.PI)) * teeth1) / teeth;
  return {
    stresses,
    lossFactor,
    lossPower,
    pitchLineSpeed,
    cycles,
    rootTemperature,
    flankTemperature,
    rootStrength: stressCorrectionOfTestGear * plasticStrength(rootTemperature, cycles).root,
    flankStrength: plasticStrength(flankTemperature, cycles).flank,
    rootStress: gear === 1 ? stresses.rootStress1 : stresses.rootStress2,
  };
}

/** Contact ratio of the path from the pitch point to the tip: z/2π·(tan α_a − tan α_wt). */
function tipRatio({ tipDiameter, baseDiameter }: GearGeometry, teeth: number, workingAngle: number): number {
  return (teeth / (2 * Math.PI)) * (Math.sqrt(Math.max(0, (tipDiameter / baseDiameter) ** 2 - 1)) - Math.tan(workingAngle));
}
