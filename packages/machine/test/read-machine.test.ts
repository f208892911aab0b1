import { describe, expect, it } from 'vitest';
import { formatFinding, placeOf, readMachine, type Machine } from '../src/index.ts';
import { broken, fixture } from './fixture.ts';

function read(text: string, variant?: string): Machine {
  const { machine, findings } = readMachine(text, variant === undefined ? {} : { variant });
  expect(findings.map((finding) => formatFinding(finding, 'test'))).toEqual([]);
  if (!machine) throw new Error('no machine');
  return machine;
}

const machine = read(fixture);

describe('the model', () => {
  it('knows what the machine is', () => {
    expect(machine).toMatchObject({ id: 'test-petrel', name: 'Test Petrel', mass: 4.2, invented: true, revision: '2026-11' });
  });

  it('has every quantity in SI', () => {
    // By hand: 14000 · 2π/60 rad/s; 21e-6 m³.
    expect(machine.power.engine?.speed).toBeCloseTo(1466.0765716752, 9);
    expect(machine.power.engine?.displacement).toBeCloseTo(21e-6, 15);
    expect(machine.power.engine?.bestSpeed?.min).toBeCloseTo((12500 * Math.PI) / 30, 9);
    expect(machine.couplings.get('main-mesh')).toMatchObject({ module: 0.001, helix: { angle: expect.closeTo(Math.PI / 15, 12), hand: 'left' } });
    expect(machine.couplings.get('tail-belt')).toMatchObject({ pitch: 0.003, beltTeeth: 300, runs: [-1, 0, 0], twist: -Math.PI / 2 });
    expect(machine.rotors.get('main')).toMatchObject({ diameter: expect.closeTo(1.4, 12), bladeMass: expect.closeTo(0.15, 12), boltRadius: expect.closeTo(0.09, 12) });
    expect(machine.materials.get('carbon plate')?.properties).toEqual({ density: 1550, expansion: 2e-6 });
    expect(machine.service.get('bearings')?.everyTime).toBe(216_000);
    expect(machine.service.get('look')?.everyFlights).toBe(50);
  });

  it('keeps choices with their codes', () => {
    expect(machine.couplings.get('main-mesh')?.driver.choices).toMatchObject([{ teeth: 13 }, { teeth: 14 }, { teeth: 15, code: 'P-15', price: '18.50 EUR' }]);
  });

  it('gives things with a type the entries of the type, unless they state their own', () => {
    expect(machine.parts.get('clutch/bearing')).toMatchObject({ kind: 'deep-groove', sizes: { bore: 0.008, outer: 0.016, width: 0.005 }, dynamic: 1600, grease: 'grease' });
    expect(machine.joints.get('clutch/mount-screw')).toMatchObject({ kind: 'screw', thread: 'M3', class: '12.9', torque: 1.1 });
    expect(machine.joints.get('clutch/cap-screw')).toMatchObject({ torque: 0.9 });
  });

  it('shows where an inherited value was written', () => {
    const place = machine.places.get('modules.clutch.joints.mount-screw.thread');
    expect(fixture.split('\n')[(place?.line ?? 0) - 1]).toContain('screw-m3: {kind: screw');
    expect(fixture.split('\n')[(place?.line ?? 0) - 1]?.slice((place?.column ?? 0) - 1, (place?.endColumn ?? 0) - 1)).toBe('M3');
  });

  it('copies modules and things', () => {
    expect([...machine.modules.keys()]).toEqual(['frame', 'clutch', 'mast', 'grip.A', 'grip.B']);
    expect(machine.modules.get('grip.B')).toMatchObject({ key: 'grip', copy: 'B', title: 'Grip B', comes: 'loose' });
    expect(machine.parts.get('grip.A/ring')?.instances).toEqual(['grip.A/ring.in', 'grip.A/ring.out']);
    expect(machine.joints.get('clutch/cap-screw')?.instances).toEqual(['clutch/cap-screw.1', 'clutch/cap-screw.2', 'clutch/cap-screw.3']);
    expect(machine.thingOf.get('grip.B/ring.out')).toBe('grip.B/ring');
    expect(machine.thingOf.get('grip.B/blade')).toBe('grip.B/blade');
  });

  it('refers like to like: copy A to copy A, and to all with a star', () => {
    expect(machine.joints.get('mast/stud-thread')?.each).toEqual([
      { id: 'mast/stud-thread.A', seat: 'mast/hub', holds: ['mast/stud.A'] },
      { id: 'mast/stud-thread.B', seat: 'mast/hub', holds: ['mast/stud.B'] },
    ]);
    expect(machine.joints.get('grip.B/link')?.each).toEqual([{ id: 'grip.B/link', seat: 'mast/stud.B', holds: ['grip.B/body', 'grip.B/ring.in', 'grip.B/ring.out'] }]);
    expect(machine.controls.links.get('rod.left')).toMatchObject({ from: 'cyclic.left', to: 'swashplate', length: 0.082 });
    expect(machine.controls.links.get('rudder-rod')).toMatchObject({ to: 'tail' });
  });

  it('takes values per copy', () => {
    expect(machine.controls.servos.get('cyclic.left')).toMatchObject({ arm: 0.016, azimuth: (2 * Math.PI) / 3, axis: [0, 1, 0] });
  });

  it('resolves locks to grades and consumables; unstated is not none', () => {
    expect(machine.joints.get('clutch/mount-screw')?.locks).toEqual([{ grade: 'medium', consumable: 'medium' }, { grade: 'wire' }]);
    expect(machine.joints.get('mast/stud-thread')?.locks).toEqual([{ grade: 'none' }]);
    expect(machine.joints.get('grip.A/link')?.locks).toBeUndefined();
    expect(machine.joints.get('grip.A/blade-bolt')?.hand).toBe('left');
  });

  it('resolves access with openings, parts and joints', () => {
    expect(machine.parts.get('clutch/bearing')?.behind).toEqual({ any: [{ off: 'clutch/cap' }, { off: 'clutch/mount' }] });
    expect(machine.joints.get('grip.B/screw')?.behind).toEqual({ off: 'grip.B/blade' });
  });

  it('resolves stacks and measurements', () => {
    expect(machine.stacks.get('clutch/main')).toMatchObject({
      spindle: 'clutch/bell', housing: ['clutch/mount'], ends: ['down', 'up'], loads: [{ coupling: 'main-mesh' }],
      order: [{ shoulder: 'clutch/bell' }, { part: 'clutch/bearing' }, { shoulder: 'clutch/mount' }, { joint: 'clutch/nut' }],
    });
    expect(machine.measurements.get('clutch/backlash')).toMatchObject({ quantity: 'backlash', of: 'main-mesh', unit: 'm', shown: 'mm', setBy: ['clutch/mount-screw'] });
    expect(machine.measurements.get('clutch/coast')).toMatchObject({ quantity: 'drag', of: 'clutch/main', ask: 'Does the bell coast?' });
    expect(machine.steps.get('clutch/turn')).toMatchObject({ after: ['clutch/coast'], takes: 180 });
  });

  it('means any copy in a hazard, and all of them in service', () => {
    expect(machine.hazards.get('blade-lost')?.when).toEqual({ any: [{ comesOff: 'grip.A/blade' }, { comesOff: 'grip.B/blade' }] });
    expect(machine.hazards.get('tail-lost')?.when).toEqual({ any: [{ noTorque: ['mast', 'tail'] }, { noMotion: ['rudder', 'tail'] }] });
    expect(machine.service.get('bearings')?.each).toEqual(['grip.A/ring.in', 'grip.A/ring.out', 'grip.B/ring.in', 'grip.B/ring.out']);
  });

  it('keeps expected facts apart', () => {
    expect(machine.expects.get('shafts.bell.expect.speed')).toBeCloseTo(1466.0765716752, 9);
  });

  // Law: right-handed axes x forward, y left, z up; the viewer stands where he says and looks at the machine.
  it.each([
    ['counter-clockwise from above', [0, 0, 1]], ['clockwise from above', [0, 0, -1]], ['clockwise from below', [0, 0, 1]], ['counter-clockwise from left', [0, 1, 0]],
    ['clockwise from right', [0, 1, 0]], ['counter-clockwise from front', [1, 0, 0]], ['clockwise from behind', [1, 0, 0]],
  ])('turns %s about %j', (words, spin) => {
    expect(read(broken('counter-clockwise from above', words)).power.engine?.turns).toEqual(spin);
  });

  it('places every value, and what is missing at the nearest entry above it', () => {
    for (const [path, place] of machine.places) {
      expect(place.line, path).toBeGreaterThan(0);
      expect(place.endLine * 1e6 + place.endColumn, path).toBeGreaterThanOrEqual(place.line * 1e6 + place.column);
    }
    const teeth = machine.places.get('drive.main-mesh.driver.teeth');
    expect(fixture.split('\n')[(teeth?.line ?? 0) - 1]?.slice((teeth?.column ?? 0) - 1, (teeth?.endColumn ?? 0) - 1)).toBe('14');
    expect(placeOf(machine, 'rotors.main.damper')).toEqual(machine.places.get('rotors.main'));
    expect(placeOf(machine, 'nowhere.at.all')).toEqual(machine.places.get(''));
  });
});

describe('a variant', () => {
  const short = read(fixture, 'short');

  it('merges maps, replaces values, removes with null, and leaves the rest', () => {
    expect(short.rotors.get('main')).toMatchObject({ diameter: 1.25, chord: 0.054 });
    expect(short.rotors.get('main')?.wanted).toBeUndefined();
    expect(short.couplings.get('front-bevel')?.driver.teeth).toBe(38);
    expect(short.parts.size).toBe(machine.parts.size);
    expect(short.variant).toBe('short');
    expect([...short.variants]).toEqual([['short', 'Short blades']]);
    expect(machine.variant).toBeUndefined();
  });

  it('places what it changes where the variant says it', () => {
    const place = short.places.get('rotors.main.diameter');
    expect(fixture.split('\n')[(place?.line ?? 0) - 1]).toContain('1250 mm');
  });

  it('is refused when the file has none of that name', () => {
    expect(readMachine(fixture, { variant: 'shrot' }).findings).toMatchObject([{ code: 'ref/unknown', values: { ref: 'shrot', nearest: 'short' } }]);
  });
});

describe('a file that says little', () => {
  it('is a machine all the same', () => {
    const { machine: small, findings } = readMachine('machine: {name: Turnstone}\nshafts:\n  crank:\n  mast: {axis: up}\n');
    expect(findings).toEqual([]);
    expect(small?.shafts.get('crank')).toEqual({ id: 'crank', path: 'shafts.crank', title: 'Crank' });
  });

  it('takes its name from the file when it has none', () => {
    expect(readMachine('', { file: '/home/oda/My Plover.yaml' }).machine).toMatchObject({ id: 'my-plover', name: 'My Plover' });
  });
});
