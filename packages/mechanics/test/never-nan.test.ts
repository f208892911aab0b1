import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as m from '../src/index.ts';

/** Any number at all, with those that arithmetic trips over more often than chance would have them. */
const any = fc.oneof(fc.double(), fc.double({ min: -10, max: 10 }), fc.constantFrom(Number.NaN, Infinity, -Infinity, 0, -0, 1, -1, 1e-300, 1e300));
const thread = m.metricThread('M4');
const least = fc.record({ screwMajor: any, screwPitch: any, nutPitch: any, nutMinor: any });
const clutch = fc.record({ rollers: any, rollerDiameter: any, rollerLength: any, shaftDiameter: any, wedgeAngle: any, youngsModulus: any, poissonsRatio: any });
const elastic = fc.record({ youngsModulus: any, poissonsRatio: any });

const kernels: Readonly<Record<string, fc.Arbitrary<() => unknown>>> = {
  deepGrooveFactors: any.map((a) => () => m.deepGrooveFactors(a)),
  angularContactFactors: fc.tuple(any, any).map(([a, b]) => () => m.angularContactFactors(a, b)),
  thrustFactors: any.map((a) => () => m.thrustFactors(a)),
  equivalentLoad: fc.tuple(any, any).map(([a, b]) => () => m.equivalentLoad(a, b, m.deepGrooveFactors(1))),
  staticEquivalentLoad: fc.tuple(any, any, any).map(([a, b, c]) => () => m.staticEquivalentLoad(a, b, c)),
  staticThrustLoad: fc.tuple(any, any, any).map(([a, b, c]) => () => m.staticThrustLoad(a, b, c)),
  basicLife: fc.tuple(any, any).map(([a, b]) => () => m.basicLife(a, b, 3)),
  reliabilityFactor: any.map((a) => () => m.reliabilityFactor(a, '2007')),
  speedFactor: any.map((a) => () => m.speedFactor(a, 3)),
  lifeModification: fc.tuple(any, any).map(([a, b]) => () => m.lifeModification(a, b, 'radial-ball')),
  referenceViscosity: fc.tuple(any, any).map(([a, b]) => () => m.referenceViscosity(a, b)),
  regreaseInterval: fc.tuple(any, any, any).map(([bore, speed, temperature]) => () => m.regreaseInterval({ kind: 'needle', bore, speed, temperature, verticalShaft: false })),
  regreaseMass: fc.tuple(any, any).map(([a, b]) => () => m.regreaseMass(a, b)),
  clearanceLost: fc.tuple(any, any, any, any).map(([a, b, c, d]) => () => m.clearanceLost(a, b, c, d)),
  meanDiameterSpeed: fc.tuple(any, any, any).map(([a, b, c]) => () => m.meanDiameterSpeed(a, b, c)),
  rollerClutchPressure: fc.tuple(clutch, any).map(([a, b]) => () => m.rollerClutchPressure(a, b)),
  rollerClutchTorque: fc.tuple(clutch, any).map(([a, b]) => () => m.rollerClutchTorque(a, b)),
  tighteningArms: fc.tuple(any, any, any, any).map(([headDiameter, holeDiameter, a, b]) => () => m.tighteningArms(thread, { headDiameter, holeDiameter }, { thread: a, head: b })),
  combinedStressRatio: any.map((a) => () => m.combinedStressRatio(thread, a)),
  assemblyPreload: fc.tuple(any, any, any).map(([a, b, c]) => () => m.assemblyPreload(thread, a, b, c)),
  shearAreas: fc.tuple(any, least).map(([a, b]) => () => m.shearAreas(thread, a, b)),
  pinShearCapacity: fc.tuple(any, any).map(([a, b]) => () => m.pinShearCapacity(a, b, 2)),
  pinShearForce: fc.tuple(any, any).map(([a, b]) => () => m.pinShearForce(a, b)),
  setScrewForce: any.map((a) => () => m.setScrewForce(thread, a)),
  setScrewHold: fc.tuple(any, any, any).map(([a, b, c]) => () => m.setScrewHold(a, b, c)),
  threadlockSizeShare: any.map((a) => () => m.threadlockSizeShare(a)),
  threadlockHeatShare: fc.tuple(any, any).map(([a, b]) => () => m.threadlockHeatShare(a, b)),
  threadlockCureTime: any.map((a) => () => m.threadlockCureTime(a, 'with primer')),
  leastTorqueOff: any.map((a) => () => m.leastTorqueOff('M3', a)),
  circlipHold: fc.tuple(any, any, any, any).map(([seatDiameter, grooveDiameter, shoulder, yieldStrength]) => () => m.circlipHold({ seatDiameter, grooveDiameter, shoulder, yieldStrength })),
  limitDeviations: any.map((a) => () => m.limitDeviations(a, 'N7')),
  pressFit: fc.tuple(any, any, any, any, any, any, elastic, elastic).map(([nominal, interference, shaftBore, hubOuter, length, friction, shaft, hub]) => () => m.pressFit({ nominal, interference, shaftBore, hubOuter, length, friction, shaft, hub })),
  warmingToFit: fc.tuple(any, any, any, any).map(([a, b, c, d]) => () => m.warmingToFit(a, b, c, d)),
  interferenceLost: fc.tuple(any, any, any, any).map(([a, b, c, d]) => () => m.interferenceLost(a, b, c, d)),
};

const numbersOf = (value: unknown): readonly number[] => (typeof value === 'number' ? [value] : typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : []);

describe('whatever it is given', () => {
  test.each(Object.entries(kernels))('%s answers with numbers or refuses in words', (_, calls) => {
    fc.assert(
      fc.property(calls, (call) => {
        let result: unknown;
        try {
          result = call();
        } catch (error) {
          expect(error).toBeInstanceOf(RangeError);
          return;
        }
        expect(numbersOf(result).some(Number.isNaN), JSON.stringify(result)).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });
});
