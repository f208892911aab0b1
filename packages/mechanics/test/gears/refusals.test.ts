import { describe, expect, test } from 'vitest';
import * as gears from '../../src/gears/index.ts';

const gear = { normalModule: 0.001, helixAngle: 0.2, pressureAngle: 0.35, teeth: 20, shift: 0, addendum: 1, dedendum: 1.25, filletRadius: 0.38 };
const mesh = { ...gear, teeth1: 20, teeth2: 40, shift1: 0, shift2: 0, faceWidth: 0.01 };
/** Five teeth in thirty-five, shifted and with a steep rack. */
const deep = { ...mesh, helixAngle: 0.3026, pressureAngle: 0.2411, teeth1: 5, teeth2: 35, shift1: 0.1621, shift2: 0.5061, addendum: 0.863, dedendum: 1.7 };
const steel = { youngsModulus: 206e9, poissonsRatio: 0.3 };
const loaded = { ...mesh, torque: 1, flank1: steel, flank2: steel, loadFactor: 1, place: 'tip' } as const;
const plastic = { ...loaded, gear: 2, mate: 'steel', speed: 100, duration: 3600, ambient: 300, friction: 0.2, dutyCycle: 1 } as const;
const tooth = { ambient: 300, lossPower: 1, place: 'root', mate: 'steel', faceWidth: 0.01, teeth: 20, pitchLineSpeed: 1, normalModule: 0.001, dutyCycle: 1 } as const;

/** What is called, the argument that is wrong, the whole message. */
type Refusal = readonly [what: string, call: () => unknown, message: string | RegExp];

const ofGears: readonly Refusal[] = [
  ['module 0', () => gears.gearGeometry({ ...gear, normalModule: 0 }), 'gearGeometry: normalModule [m] must be positive, got 0'],
  ['endless module', () => gears.gearGeometry({ ...gear, normalModule: Infinity }), 'gearGeometry: normalModule [m] must be positive, got Infinity'],
  ['helix to the other side', () => gears.gearGeometry({ ...gear, helixAngle: -1e-9 }), 'gearGeometry: helixAngle [rad] must lie from 0 to below π/2, got -1e-9'],
  ['helix along the axis', () => gears.gearGeometry({ ...gear, helixAngle: Math.PI / 2 }), `gearGeometry: helixAngle [rad] must lie from 0 to below π/2, got ${Math.PI / 2}`],
  ['no pressure angle', () => gears.gearGeometry({ ...gear, pressureAngle: 0 }), 'gearGeometry: pressureAngle [rad] must lie between 0 and π/4, got 0'],
  ['pressure angle of 45°', () => gears.gearGeometry({ ...gear, pressureAngle: Math.PI / 4 }), `gearGeometry: pressureAngle [rad] must lie between 0 and π/4, got ${Math.PI / 4}`],
  ['half a tooth', () => gears.gearGeometry({ ...gear, teeth: 20.5 }), 'gearGeometry: teeth must be a whole number from 3 up, got 20.5'],
  ['two teeth', () => gears.gearGeometry({ ...gear, teeth: 2 }), 'gearGeometry: teeth must be a whole number from 3 up, got 2'],
  ['no shift', () => gears.gearGeometry({ ...gear, shift: Number.NaN }), 'gearGeometry: shift must be finite, got NaN'],
  ['no tip', () => gears.gearGeometry({ ...gear, addendum: 0 }), 'gearGeometry: addendum must be positive, got 0'],
  ['endless tip', () => gears.gearGeometry({ ...gear, addendum: Infinity }), 'gearGeometry: addendum must be positive, got Infinity'],
  ['no root', () => gears.gearGeometry({ ...gear, dedendum: 0 }), 'gearGeometry: dedendum must be positive, got 0'],
  ['endless root', () => gears.gearGeometry({ ...gear, dedendum: Infinity }), 'gearGeometry: dedendum must be positive, got Infinity'],
  ['tip below the base circle', () => gears.gearGeometry({ ...gear, helixAngle: 0, shift: -2 }), 'gearGeometry: shift and addendum must keep the tip above the base circle; tip radius in modules, got 9'],
  ['root beyond the axis', () => gears.gearGeometry({ ...gear, helixAngle: 0, teeth: 4, shift: 0, dedendum: 2 }), 'gearGeometry: shift and dedendum must keep the root outside the axis; shift less dedendum, got -2'],
  ['ring as small as its pinion', () => gears.centreDistances(gear, 20, 20, 0, 0, 'internal'), 'centreDistances: a ring needs more teeth than its pinion, got 20 and 20'],
  ['shifts that leave no angle', () => gears.centreDistances(gear, 12, 12, -1, -1, 'external'), 'centreDistances: shift1 and shift2 must let the flanks touch at some distance of the axes, got -1 and -1'],
  ['inside the base circle', () => gears.thicknessAt(0.9, { referenceDiameter: 1, baseDiameter: 0.94, toothThickness: 0.1, transversePressureAngle: 0.35 }), 'thicknessAt: diameter [m] must be at least that of the base circle, 0.94, got 0.9'],
  ['half an interval', () => gears.involute(-Math.PI / 2), `involute: angle [rad] must lie between −π/2 and π/2, got ${-Math.PI / 2}`],
  ['no involute', () => gears.inverseInvolute(Number.NaN), 'inverseInvolute: a finite value wanted, got NaN'],
  ['forces on no circle', () => gears.meshForces(1, -1, 0.35, 0.35, 0, 'right', 1), 'meshForces: referenceDiameter [m] must be positive, got -1'],
  ['forces on an endless circle', () => gears.meshForces(1, Infinity, 0.35, 0.35, 0, 'right', 1), 'meshForces: referenceDiameter [m] must be positive, got Infinity'],
  ['forces of no torque', () => gears.meshForces(Number.NaN, 1, 0.35, 0.35, 0, 'right', 1), 'meshForces: torque [N·m] must be finite, got NaN'],
  ['a frame that shrinks to nothing', () => gears.grownBacklash(mesh, 0.03, { gear1: 1, gear2: 1, frame: 0 }), 'grownBacklash: growth of frame must be positive, got 0'],
  ['a frame without end', () => gears.grownCentreDistance(mesh, { gear1: 1, gear2: 1, frame: Infinity }), 'grownCentreDistance: growth of frame must be positive, got Infinity'],
  ['endless play', () => gears.grownCentreDistance(mesh, { gear1: 1, gear2: 1, frame: 1 }, Infinity), 'grownCentreDistance: leastBacklash [m] must be 0 or more, got Infinity'],
  ['one point a flank', () => gears.toothProfile({ ...gear, pointsPerFlank: 1 }), 'toothProfile: pointsPerFlank must be a whole number from 2 up, got 1'],
  ['two and a half points a flank', () => gears.ringProfile({ ...gear, teeth: 60, pointsPerFlank: 2.5 }), 'ringProfile: pointsPerFlank must be a whole number from 2 up, got 2.5'],
  ['a bevel gear without teeth', () => gears.bevelForces(1, 0.001, 0, 20, 0.005, 0.35), 'bevelForces: teeth, module and face must be positive and the face shorter than the cone, got 0 and 20 teeth, 0.001 m, 0.005 m, 0.35 rad, 1 N·m'],
];

const ofStrength: readonly Refusal[] = [
  ['no stiffness', () => gears.elasticityFactor({ ...steel, youngsModulus: 0 }, steel), 'elasticityFactor: youngsModulus [Pa] must be positive and poissonsRatio 0 to 0.5, got 0 and 0.3'],
  ['ν below 0', () => gears.elasticityFactor(steel, { ...steel, poissonsRatio: -0.1 }), 'elasticityFactor: youngsModulus [Pa] must be positive and poissonsRatio 0 to 0.5, got 206000000000 and -0.1'],
  ['no torque', () => gears.meshStresses({ ...loaded, torque: Infinity }), 'meshStresses: torque [N·m] must be 0 or more, got Infinity'],
  ['no load factor', () => gears.meshStresses({ ...loaded, loadFactor: 0 }), 'meshStresses: loadFactor must be positive, got 0'],
  ['endless load factor', () => gears.meshStresses({ ...loaded, loadFactor: Infinity }), 'meshStresses: loadFactor must be positive, got Infinity'],
  ['half a pair in contact', () => gears.contactFactors({ ...gears.meshGeometry(mesh), transverseContactRatio: 0.5 }, 20, 40, 0.2), 'contactFactors: centreDistance, shift and addendum must keep the transverse contact ratio at least 1, got 0.5'],
  ['half a pair at the root', () => gears.rootFactors(gear, 'tip', 0.5), 'rootFactors: contactRatio must be at least 1, got 0.5'],
  ['a rack without a tip', () => gears.rootSection({ ...gear, dedendum: 2.2 }), 'rootSection: dedendum must be smaller, the rack that cuts it would be pointed; got 2.2'],
  ['a point of single contact inside the base circle', () => gears.rootFactors({ ...gear, teeth: 13, shift: 0, addendum: 0.6 }, 'outer-single-contact', 2.4), 'rootFactors: contactRatio must leave the outer point of single contact outside the base circle, got 2.4'],
  ['a root cut away', () => gears.rootFactors({ ...gear, helixAngle: 0, pressureAngle: 0.28, teeth: 4, shift: -1.079, addendum: 1.2, dedendum: 0.588, filletRadius: 0.3 }, 'tip', 1), /^rootFactors: shift must leave a root that bends; chord and lever in modules, got -0\.\d+ and \d+/u],
  ['a tip below the section', () => gears.rootFactors({ ...gear, helixAngle: 0.05, pressureAngle: 0.47, teeth: 51, shift: 1.14, addendum: 0.86, dedendum: 1.08, filletRadius: 0.135 }, 'outer-single-contact', 2), /^rootFactors: shift must leave a root that bends; chord and lever in modules, got \d[\d.]+ and -0\.\d+/u],
  ['no fillet that a tangent touches', () => gears.rootSection({ ...gear, helixAngle: 0.49, pressureAngle: 0.25, teeth: 8, shift: 1.16, dedendum: 0.5, filletRadius: 0.2 }), /^rootSection: shift and dedendum must leave a fillet that a tangent at 30° touches; virtual number of teeth, got 11\.\d+$/u],
  ['tips that reach past single contact', () => gears.contactFactors(gears.meshGeometry(deep), 5, 35, 0.3), 'contactFactors: addendum and shift must let single contact lie above the base circle; the tips reach too deep'],
  ['tips that reach past single contact, the other way round', () => gears.contactFactors(gears.meshGeometry({ ...deep, teeth1: 35, teeth2: 5, shift1: deep.shift2, shift2: deep.shift1 }), 35, 5, 0.3), 'contactFactors: addendum and shift must let single contact lie above the base circle; the tips reach too deep'],
  ['a gear of no helix that is one', () => gears.rootSection({ ...gear, helixAngle: -1 }), 'rootSection: helixAngle [rad] must lie from 0 to below π/2, got -1'],
  ['a tooth of no height', () => gears.toothProfile({ ...gear, addendum: 0 }), 'toothProfile: addendum must be positive, got 0'],
  ['frozen to zero', () => gears.plasticStrength(0, 1e6), 'plasticStrength: temperature [K] and cycles must be positive, got 0 and 1000000'],
  ['no cycles', () => gears.plasticStrength(300, 0), 'plasticStrength: temperature [K] and cycles must be positive, got 300 and 0'],
  ['endless heat', () => gears.plasticStrength(Infinity, 1), 'plasticStrength: temperature [K] and cycles must be positive, got Infinity and 1'],
  ['cycles without end', () => gears.plasticStrength(300, Infinity), 'plasticStrength: temperature [K] and cycles must be positive, got 300 and Infinity'],
  ...(['ambient', 'faceWidth', 'teeth', 'pitchLineSpeed', 'normalModule'] as const).flatMap((name): Refusal[] => [
    [`${name} 0`, () => gears.plasticToothTemperature({ ...tooth, [name]: 0 }), `plasticToothTemperature: ${name} must be positive, got 0`],
    [`${name} endless`, () => gears.plasticToothTemperature({ ...tooth, [name]: Infinity }), `plasticToothTemperature: ${name} must be positive, got Infinity`],
  ]),
  ['power that is made', () => gears.plasticToothTemperature({ ...tooth, lossPower: -1 }), 'plasticToothTemperature: lossPower [W] must be 0 or more, got -1'],
  ['power without end', () => gears.plasticToothTemperature({ ...tooth, lossPower: Infinity }), 'plasticToothTemperature: lossPower [W] must be 0 or more, got Infinity'],
  ['never under load', () => gears.plasticToothTemperature({ ...tooth, dutyCycle: 0 }), 'plasticToothTemperature: dutyCycle must be above 0 and at most 1, got 0'],
  ['standing', () => gears.plasticMesh({ ...plastic, speed: 0 }), 'plasticMesh: speed [rad/s] and duration [s] must be positive, got 0 and 3600'],
  ['for no time', () => gears.plasticMesh({ ...plastic, duration: 0 }), 'plasticMesh: speed [rad/s] and duration [s] must be positive, got 100 and 0'],
  ['for ever', () => gears.plasticMesh({ ...plastic, duration: Infinity }), 'plasticMesh: speed [rad/s] and duration [s] must be positive, got 100 and Infinity'],
  ['driven by friction', () => gears.plasticMesh({ ...plastic, friction: -0.1 }), 'plasticMesh: friction must be 0 or more, got -0.1'],
  ['friction without end', () => gears.plasticMesh({ ...plastic, friction: Infinity }), 'plasticMesh: friction must be 0 or more, got Infinity'],
  ['eleven teeth', () => gears.lewisFormFactor(11), 'lewisFormFactor: teeth must be 12 to 300, as the table goes, got 11'],
  ['backwards', () => gears.barthFactor(-1), 'barthFactor: pitchLineSpeed [m/s] must be 0 or more, got -1'],
  ['at endless speed', () => gears.barthFactor(Infinity), 'barthFactor: pitchLineSpeed [m/s] must be 0 or more, got Infinity'],
];

describe('what is refused, in whole words', () => {
  test.each([...ofGears, ...ofStrength])('%s', (_what, call, message) => {
    if (typeof message === 'string') return expect(call).toThrow(new RangeError(message));
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });
});

describe('what lies just inside', () => {
  test.each([
    ['three teeth', () => gears.gearGeometry({ ...gear, teeth: 3, shift: 0.8 })],
    ['no helix', () => gears.gearGeometry({ ...gear, helixAngle: 0 })],
    ['no torque', () => gears.meshStresses({ ...loaded, torque: 0 })],
    ['ν of 0 and of ½', () => gears.elasticityFactor({ ...steel, poissonsRatio: 0 }, { ...steel, poissonsRatio: 0.5 })],
    ['one pair in contact', () => gears.rootFactors(gear, 'tip', 1)],
    ['no loss', () => gears.plasticToothTemperature({ ...tooth, lossPower: 0 })],
    ['no friction', () => gears.plasticMesh({ ...plastic, friction: 0 })],
    ['twelve and three hundred teeth', () => gears.lewisFormFactor(12) + gears.lewisFormFactor(300)],
    ['standing still', () => gears.barthFactor(0)],
    ['the base circle itself', () => gears.thicknessAt(0.94, { referenceDiameter: 1, baseDiameter: 0.94, toothThickness: 0.1, transversePressureAngle: 0.35 })],
    ['two points a flank', () => gears.toothProfile({ ...gear, pointsPerFlank: 2 })],
    ['no play', () => gears.grownCentreDistance(mesh, { gear1: 1, gear2: 1, frame: 1 }, 0)],
    ['base circles that touch', () => gears.meshGeometry({ ...mesh, centreDistance: gears.centreDistances(mesh, 20, 40, 0, 0, 'external').referenceCentreDistance * Math.cos(Math.atan(Math.tan(0.35) / Math.cos(0.2))) * (1 + 1e-12) })],
  ] as const)('%s is taken', (_what, call) => {
    expect(call).not.toThrow();
  });
});
