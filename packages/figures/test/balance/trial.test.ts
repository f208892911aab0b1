import { describe, expect, it } from 'vitest';
import { trialCalculations, trialProblems, trialWords } from '../../src/balance/trial.ts';
import { exampleInputs, catalogue } from '@rotorwright/calculations';
import { example } from '../controls/benches.ts';

const machine = example('whimbrel');
const single = { initialAmplitude: 2, initialPhase: '0°', trialMass: '1 g', trialAngle: '0°', withTrialAmplitude: 3, withTrialPhase: '0°' };

describe('what follows from readings', () => {
  it('is told in grams and degrees', () => {
    // By hand: one gram at 0° adds 1 to the 2 that are there; two grams opposite take them away.
    expect(trialWords({ calculation: 'balance-single-plane', inputs: single })).toBe('2 g at 180°');
    // By hand: 2 g lighter, 2 g · 400 mm over 700 mm.
    expect(trialWords({ calculation: 'blade-match', inputs: { mass1: '200 g', centre1: '400 mm', mass2: '198 g', centre2: '400 mm', tapeRadius: '700 mm', speed: 180 } })).toBe('tape 1.14 g on blade 2');
    // By hand: a hole at the very angle takes all of it.
    expect(trialWords({ calculation: 'balance-split', inputs: { mass: '3 g', angle: '120°', places: ['0°', '120°', '240°'] } })).toBe('0 g, 3 g, 0 g');
  });

  it('is nothing where the trial changed nothing', () => {
    expect(trialWords({ calculation: 'balance-single-plane', inputs: { ...single, withTrialAmplitude: 2 } })).toBe('no correction follows');
  });

  it('is told of every calculation that something is balanced by', () => {
    for (const calculation of trialCalculations) expect(trialWords({ calculation, inputs: exampleInputs(catalogue.get(calculation)!) })).toMatch(/\d/u);
  });

  it('is no number where the readings cannot be taken', () => {
    expect(trialWords({ calculation: 'balance-single-plane', inputs: {} })).toBe('readings that this version does not take');
    expect(trialWords({ calculation: 'involute', inputs: { angle: '20 °' } })).toBe('no correction follows');
  });
});

describe('readings are refused', () => {
  it('in words, whatever is wrong with them', () => {
    expect(trialProblems(machine, { calculation: 'balance-single-plane', inputs: single, of: 'fan' })).toEqual([]);
    expect(trialProblems(machine, { calculation: 'involute', inputs: {} })).toEqual([expect.stringMatching(/^Nothing is balanced by “involute”; right would be one of blade-match, /u)]);
    expect(trialProblems(machine, { calculation: 'constructor', inputs: {} })).toEqual([expect.stringMatching(/^Nothing is balanced by/u)]);
    const { trialMass: _, ...lacking } = single;
    expect(trialProblems(machine, { calculation: 'balance-single-plane', inputs: lacking, of: 'propeller' })).toEqual([expect.stringMatching(/^trialMass: given .*; right would be/u), expect.stringMatching(/^The file has no “propeller” under balance\.spun; there are .*fan/u)]);
  });
});
