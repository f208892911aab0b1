import { describe, expect, it } from 'vitest';
import { readMachine } from '../src/index.ts';

const file = (controls: string): string => `
rotorwright: 1
machine: {name: Bench}
shafts: {mast: {axis: up}, tail: {axis: left}}
rotors: {main: {on: mast, at: [0 mm, 0 mm, 200 mm], stops: -10 to 12 °, cyclic: 7 °, above-boom: 200 mm}}
controls:
${controls}
`;
const codes = (text: string): readonly string[] => readMachine(file(text)).findings.map(({ code, path }) => `${code} ${path}`);

describe('controls in space', () => {
  const { machine, findings } = readMachine(file(`
  swashplate: {on: mast, at: [0 mm, 0 mm, 100 mm], guide: [-46 mm, 0 mm, 0 mm], tilt: 13 °, rise: -9 to 9 mm, play: 0.02 mm}
  servos:
    cyclic: {copies: [front, left], arm: {front: 17 mm, left: 15 mm}, holes: [13 mm, 15 mm, 17 mm], points: {front: aft, left: fore}, pulses: 1020 to 2020 µs, step: 1 µs, spline: 25, play: 0.2 °}
  levers:
    crank: {pivot: [60 mm, 0 mm, 30 mm], axis: left, on: beam}
    beam: {pivot: [90 mm, 0 mm, 30 mm], axis: [0, 2, 0]}
  slider: {on: tail, at: [-900 mm, 40 mm, 0 mm], by: crank, pin: [-900 mm, 40 mm, 0 mm], travel: -7 to 7 mm}
  links:
    rod: {copies: [front, left], from: cyclic, to: swashplate, to-ball: {front: [40 mm, 0 mm, 0 mm], left: [-20 mm, 35 mm, 0 mm]}, thread: M2.5, rod: 50 mm, end: 18 mm, engaged: 6 mm, lean: 24 °, play: 0.01 mm}
    pitch-link: {from: swashplate, to: main, from-ball: [8 mm, 30 mm, 6 mm], to-ball: [8 mm, 30 mm, -6 mm]}
    push: {from: slider, to: crank}`));

  it('are read with their units, and per copy with the place of each', () => {
    expect(findings).toEqual([]);
    const { controls, rotors } = machine!;
    expect(controls.servos.get('cyclic.left')).toMatchObject({ title: 'Cyclic, left', arm: 0.015, armPath: 'controls.servos.cyclic.arm.left', points: [1, 0, 0], pulses: { min: expect.closeTo(1020e-6, 12), max: expect.closeTo(2020e-6, 12) }, step: expect.closeTo(1e-6, 15), spline: 25 });
    expect(controls.links.get('rod.left')).toMatchObject({ toBall: [-0.02, 0.035, 0], toBallPath: 'controls.links.rod.to-ball.left', lengthPath: 'controls.links.rod.length', thread: 'M2.5', lean: expect.closeTo((24 * Math.PI) / 180, 12) });
    expect(controls.links.get('pitch-link')).toMatchObject({ from: 'swashplate', to: 'main', fromBall: [0.008, 0.03, 0.006] });
    expect(controls.levers.get('crank')).toMatchObject({ pivot: [0.06, 0, 0.03], axis: [0, 1, 0], on: 'beam' });
    expect(controls.slider).toMatchObject({ by: 'crank', travel: { min: -0.007, max: 0.007 } });
    expect(rotors.get('main')).toMatchObject({ at: [0, 0, 0.2], aboveBoom: 0.2, cyclic: expect.closeTo((7 * Math.PI) / 180, 12) });
  });
});

describe('slips in the controls', () => {
  it('are found with their place', () => {
    expect(codes('  levers: {a: {axis: up}}')).toEqual(['key/missing controls.levers.a.pivot']);
    expect(codes('  levers: {a: {pivot: [0 mm, 0 mm, 0 mm], axis: up, on: b}}')).toEqual(['ref/unknown controls.levers.a.on']);
    expect(codes('  servos: {a: {trim: 3 µs}}')).toEqual(['fact/derived controls.servos.a.trim']);
    expect(codes('  servos: {a: {pulses: 1020 to 2020}}')).toEqual([expect.stringMatching(/^unit\/missing controls\.servos\.a\.pulses/u)]);
    expect(codes('  slider: {on: tail, at: [0 mm, 0 mm]}')).toEqual([expect.stringMatching(/controls\.slider\.at/u)]);
    expect(codes('  links: {a: {from: slider, to: swashplate}}')).toEqual(expect.arrayContaining(['ref/unknown controls.links.a.from', 'ref/unknown controls.links.a.to']));
  });
});
