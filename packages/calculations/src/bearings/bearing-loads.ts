import { angularContactFactors, angularContactRange, deepGrooveFactors, equivalentLoad, staticEquivalentLoad, staticThrustLoad, thrustFactors, type LoadFactors } from '@rotorwright/mechanics';
import { CalculationError } from '../define.ts';
import { degrees } from '../specs.ts';

export const bearingTypes = ['deep-groove', 'thrust-ball', 'angular-contact', 'needle'] as const;
type BearingType = (typeof bearingTypes)[number];

interface Given {
  readonly type: BearingType;
  readonly staticRating: number;
  readonly f0: number;
  readonly radial?: number;
  readonly axial?: number;
  readonly contactAngle?: number;
  readonly radialFactor?: number;
  readonly axialFactor?: number;
}

export interface BearingLoads {
  readonly equivalent: number;
  readonly still: number;
  /** As they count: 1 and 0 where the axial load does not. */
  readonly radialFactor: number;
  readonly axialFactor: number;
  /** e and f0·F_a/C_0 where the bearing has them. */
  readonly limit?: number;
  readonly relativeLoad?: number;
}

const usualAngle = degrees(40);
const rightAngle = degrees(90);
const shown = (angle: number): string => `${Math.round((angle * 180) / Math.PI)}°`;

/** One kind of load that a bearing cannot take at all: it may be left out, and must be zero. */
function noLoad(name: 'radial' | 'axial', given: number | undefined, type: BearingType): void {
  if (given !== undefined && given !== 0) throw new CalculationError(name, `${given} N`, `0 or nothing: a bearing of type ${type} takes no ${name} load`);
}

function loadOf(name: 'radial' | 'axial', given: number | undefined, type: BearingType): number {
  if (given === undefined) throw new CalculationError(name, 'nothing', `a force, 0 when there is none: a bearing of type ${type} takes ${name} load`);
  return given;
}

function angleOf({ type, contactAngle }: Given): number {
  if (type === 'deep-groove' || type === 'needle') {
    if (contactAngle !== undefined) throw new CalculationError('contactAngle', `${contactAngle} rad`, `nothing: a bearing of type ${type} has none`);
    return 0;
  }
  const angle = contactAngle ?? (type === 'thrust-ball' ? rightAngle : usualAngle);
  const [least, most] = type === 'thrust-ball' ? [degrees(45), rightAngle] : [angularContactRange.least, angularContactRange.most];
  const within = type === 'thrust-ball' ? angle > least : angle >= least * (1 - 1e-9);
  if (!within || angle > most * (1 + 1e-9)) throw new CalculationError('contactAngle', `${angle} rad`, `${type === 'thrust-ball' ? 'over ' : ''}${shown(least)} to ${shown(most)} for a bearing of type ${type}`);
  return Math.min(Math.max(angle, least), most);
}

/** X and Y as the maker's own table has them, in place of the standard's. */
function ownFactors({ radialFactor, axialFactor }: Given): Omit<LoadFactors, 'limit'> | undefined {
  if (radialFactor === undefined && axialFactor === undefined) return undefined;
  if (radialFactor === undefined) throw new CalculationError('radialFactor', 'nothing', 'X, for axialFactor is given and the two belong together');
  if (axialFactor === undefined) throw new CalculationError('axialFactor', 'nothing', 'Y, for radialFactor is given and the two belong together');
  return { radial: radialFactor, axial: axialFactor };
}

/** Equivalent loads of a bearing, dynamic and static. */
export function bearingLoads(given: Given): BearingLoads {
  const { type, staticRating, f0 } = given;
  const contactAngle = angleOf(given);
  const own = ownFactors(given);
  const single = type === 'needle' || contactAngle === rightAngle;
  if (single && own) throw new CalculationError('radialFactor', String(own.radial), `nothing: a bearing of type ${type} takes one kind of load only`);
  if (type === 'needle') {
    noLoad('axial', given.axial, type);
    const radial = loadOf('radial', given.radial, type);
    return { equivalent: radial, still: radial, radialFactor: 1, axialFactor: 0 };
  }
  if (contactAngle === rightAngle) {
    noLoad('radial', given.radial, type);
    const axial = loadOf('axial', given.axial, type);
    return { equivalent: axial, still: axial, radialFactor: 0, axialFactor: 1 };
  }
  const radial = loadOf('radial', given.radial, type);
  const axial = loadOf('axial', given.axial, type);
  const relativeLoad = (f0 * axial) / staticRating;
  const factors = type === 'deep-groove' ? deepGrooveFactors(relativeLoad) : type === 'thrust-ball' ? thrustFactors(contactAngle) : angularContactFactors(contactAngle, relativeLoad);
  if (type === 'thrust-ball' && axial < factors.limit * radial) throw new CalculationError('axial', `${axial} N`, `at least ${factors.limit * radial} N, e times the radial load: below it a bearing that takes thrust one way does not hold together`);
  const still = type === 'thrust-ball' ? staticThrustLoad(radial, axial, contactAngle) : staticEquivalentLoad(radial, axial, contactAngle);
  const known = { still, limit: factors.limit, ...(type === 'thrust-ball' ? {} : { relativeLoad }) };
  if (own) return { ...known, equivalent: own.radial * radial + own.axial * axial, radialFactor: own.radial, axialFactor: own.axial };
  const counts = type === 'thrust-ball' || axial > factors.limit * radial;
  const equivalent = type === 'thrust-ball' ? factors.radial * radial + axial : equivalentLoad(radial, axial, factors);
  return { ...known, equivalent, radialFactor: counts ? factors.radial : 1, axialFactor: counts ? factors.axial : 0 };
}
