import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { contactFactors, elasticityFactor, lewisFormFactor, meshForces, meshGeometry, meshStresses, plasticMesh, plasticStrength, plasticToothTemperature, toothLossFactor, type LoadedMesh } from '../../src/index.ts';

const steel = { youngsModulus: 207e9, poissonsRatio: 0.3 };
const pom = { youngsModulus: 2.8e9, poissonsRatio: 0.35 };
const loaded: LoadedMesh = {
  normalModule: 0.001, helixAngle: 0.2, pressureAngle: Math.PI / 9, teeth1: 17, teeth2: 84, shift1: 0.2, shift2: 0, addendum: 1, dedendum: 1.25, faceWidth: 0.012,
  filletRadius: 0.38, torque: 1.5, flank1: steel, flank2: pom, loadFactor: 1.25, place: 'outer-single-contact',
};
const plastic = { ...loaded, gear: 2, mate: 'steel', speed: 1466, duration: 360_000, ambient: 298.15, friction: 0.09, dutyCycle: 1 } as const;

describe('stresses of a mesh', () => {
  test('bending grows with the torque, pressure with its root (law)', () => {
    const [one, four] = [meshStresses(loaded), meshStresses({ ...loaded, torque: 6 })];
    expect(four.rootStress1 / one.rootStress1).toBeCloseTo(4, 12);
    expect(four.contactStress / one.contactStress).toBeCloseTo(2, 12);
    expect(meshStresses({ ...loaded, loadFactor: 5 }).contactStress / one.contactStress).toBeCloseTo(2, 12);
  });

  test('half the size carries a quarter of the force: stresses stay when torque goes with the cube (law)', () => {
    const half = { ...loaded, normalModule: 0.0005, faceWidth: 0.006, torque: loaded.torque / 8 };
    expect(meshStresses(half).rootStress2 / meshStresses(loaded).rootStress2).toBeCloseTo(1, 10);
    expect(meshStresses(half).contactStress / meshStresses(loaded).contactStress).toBeCloseTo(1, 10);
  });

  test('the two gears change places with their values (law)', () => {
    const turned = meshStresses({ ...loaded, teeth1: 84, teeth2: 17, shift1: 0, shift2: 0.2, flank1: pom, flank2: steel, torque: (1.5 * 84) / 17 });
    const mesh = meshStresses(loaded);
    expect(turned.rootStress1).toBeCloseTo(mesh.rootStress2, 3);
    expect(turned.contactStress / mesh.contactStress).toBeCloseTo(1, 10);
    expect(turned.contact.singlePair1).toBeCloseTo(mesh.contact.singlePair2, 10);
  });

  test('with an overlap of one or more a helical mesh has no single-pair rise, and its contact factor is √(1/ε_α) (law of the standard’s formula)', () => {
    const mesh = meshGeometry({ ...loaded, faceWidth: 0.03 });
    const factors = contactFactors(mesh, 17, 84, loaded.helixAngle);
    expect(mesh.overlapRatio).toBeGreaterThan(1);
    expect(factors.singlePair1).toBe(1);
    expect(factors.contactRatio).toBeCloseTo(1 / Math.sqrt(mesh.transverseContactRatio), 12);
  });

  test('the helix factor of the root stops at 30° and an overlap of one (by hand: 1 − 30/120)', () => {
    expect(meshStresses({ ...loaded, helixAngle: 0.6, faceWidth: 0.05 }).helixFactor).toBeCloseTo(0.75, 12);
    expect(meshStresses({ ...loaded, helixAngle: 0 }).helixFactor).toBe(1);
  });

  test('two equal bodies are stiffer together by √½ less compliance (by hand)', () => {
    expect(elasticityFactor(steel, steel) / Math.sqrt(207e9 / (2 * Math.PI * 0.91))).toBeCloseTo(1, 12);
  });

  test('misuse is refused with argument, rule and value', () => {
    expect(() => meshStresses({ ...loaded, torque: -1 })).toThrow('torque [N·m] must be 0 or more, got -1');
    expect(() => meshStresses({ ...loaded, loadFactor: 0 })).toThrow('loadFactor');
    expect(() => meshStresses({ ...loaded, centreDistance: 0.0545 })).toThrow('must keep the transverse contact ratio at least 1');
    expect(() => elasticityFactor({ youngsModulus: 0, poissonsRatio: 0.3 }, steel)).toThrow('youngsModulus');
    expect(() => elasticityFactor({ youngsModulus: 1, poissonsRatio: 0.6 }, steel)).toThrow('poissonsRatio');
    expect(() => lewisFormFactor(11)).toThrow('12 to 300');
    expect(() => lewisFormFactor(301)).toThrow('12 to 300');
  });
});

describe('forces of a mesh', () => {
  test('power, square force and its parts agree (law: statics)', () => {
    const angle = fc.double({ min: 0.2, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(numberIn(-5, 5), angle, angle, (torque, transverse, helix) => {
        const { tangential, radial, axial, normal } = meshForces(torque, 0.03, transverse, transverse, helix, 'left', 1);
        expect((tangential * 0.03) / 2).toBeCloseTo(torque, 12);
        expect(normal ** 2).toBeCloseTo(tangential ** 2 + radial ** 2 + axial ** 2, 6);
        expect(Math.abs(axial)).toBeCloseTo(Math.abs(tangential) * Math.tan(helix), 9);
      }),
    );
  });

  test('the flank pushes more outwards where the pair stands further apart (law)', () => {
    const near = meshForces(1, 0.03, 0.35, 0.35, 0, 'right', 1);
    const far = meshForces(1, 0.03, 0.35, 0.4, 0, 'right', 1);
    expect(far.radial).toBeGreaterThan(near.radial);
    expect(far.normal).toBe(near.normal);
  });

  test('without helix or torque nothing pushes along the axis', () => {
    expect(meshForces(1, 0.03, 0.35, 0.35, 0, 'right', 1).axial).toBe(0);
    expect(meshForces(0, 0.03, 0.35, 0.35, 0.2, 'right', 1)).toEqual({ tangential: 0, radial: 0, axial: 0, normal: 0 });
    expect(() => meshForces(1, 0, 0.35, 0.35, 0, 'right', 1)).toThrow('referenceDiameter');
    expect(() => meshForces(Infinity, 1, 0.35, 0.35, 0, 'right', 1)).toThrow('torque');
  });
});

describe('plastic teeth', () => {
  test('stand less when warmer and after more cycles (law of the curves)', () => {
    fc.assert(
      fc.property(fc.double({ min: 283, max: 390, noNaN: true }), fc.double({ min: 1e5, max: 1e8, noNaN: true }), (temperature, cycles) => {
        const { root, flank } = plasticStrength(temperature, cycles);
        const [warmer, longer] = [plasticStrength(temperature + 1, cycles), plasticStrength(temperature, cycles * 1.1)];
        expect(warmer.root < root && warmer.flank < flank && longer.root < root && longer.flank < flank).toBe(true);
      }),
    );
  });

  test('a mesh that loses nothing stays as warm as the air (law)', () => {
    const { rootTemperature, flankTemperature, lossPower } = plasticMesh({ ...plastic, friction: 0 });
    expect([rootTemperature, flankTemperature, lossPower]).toEqual([298.15, 298.15, 0]);
  });

  test('the loss is that of the gears taken either way round (law)', () => {
    expect(toothLossFactor(20, 50, 0.7, 0.8, 0.1)).toBeCloseTo(toothLossFactor(50, 20, 0.8, 0.7, 0.1), 12);
  });

  test('a pinion of plastic meets more cycles than its wheel by the ratio (law)', () => {
    const [wheel, pinion] = [plasticMesh(plastic), plasticMesh({ ...plastic, gear: 1 })];
    expect(pinion.cycles / wheel.cycles).toBeCloseTo(84 / 17, 12);
    expect(pinion.rootTemperature).toBeGreaterThan(wheel.rootTemperature);
    expect(pinion.rootStress).toBe(pinion.stresses.rootStress1);
    expect(wheel.rootStress).toBe(wheel.stresses.rootStress2);
  });

  test('half the time under load heats by ½^0.64 (by hand)', () => {
    const tooth = { ambient: 300, lossPower: 10, place: 'flank', mate: 'steel', faceWidth: 0.01, teeth: 60, pitchLineSpeed: 8, normalModule: 0.001, dutyCycle: 1 } as const;
    expect((plasticToothTemperature({ ...tooth, dutyCycle: 0.5 }) - 300) / (plasticToothTemperature(tooth) - 300)).toBeCloseTo(0.5 ** 0.64, 12);
    expect(() => plasticToothTemperature({ ...tooth, dutyCycle: 1.1 })).toThrow('dutyCycle must be above 0 and at most 1, got 1.1');
    expect(() => plasticToothTemperature({ ...tooth, faceWidth: 0 })).toThrow('faceWidth must be positive');
    expect(() => plasticToothTemperature({ ...tooth, lossPower: -1 })).toThrow('lossPower');
    expect(() => plasticStrength(0, 1)).toThrow('temperature');
    expect(() => plasticMesh({ ...plastic, speed: 0 })).toThrow('speed');
    expect(() => plasticMesh({ ...plastic, friction: -1 })).toThrow('friction');
  });

  test('between the teeth of the table the Lewis factor rises and stays between its neighbours (law)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 12, max: 299 }), (teeth) => {
        expect(lewisFormFactor(teeth + 1)).toBeGreaterThan(lewisFormFactor(teeth));
      }),
    );
  });
});
