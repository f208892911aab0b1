import { figures, screwFigures, working } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';

/** A plate screwed to a post of the given material. Every number is invented. */
const plate = (joint: string, post = 'material: aluminium 7075', more = ''): string => `
rotorwright: 1
machine: {name: Plate}
${more}
modules:
  frame:
    parts:
      post: {kind: post, ground: true, ${post}}
      plate: {kind: plate, material: aluminium 7075}
    joints:
      cap: {title: cap screw, kind: screw, in: post, holds: plate, lock: medium, ${joint}}
`;
const cap = 'thread: M3, class: 12.9, head: socket, engagement: 6 mm';
const of = (text: string) => figures(read(text));

describe('figures of a screw', () => {
  // independent route: table of VDI 2230 worked elsewhere for a cap screw M3 12.9 at friction 0.12: 4375.0 N, 2.2703 N·m at 90 %
  test('the torque that the file leaves open is computed, with its preload', () => {
    const set = of(plate(cap));
    expect(set.get('torque frame/cap')!.value! / 2.2703).toBeCloseTo(1, 3);
    expect(set.get('preload frame/cap')!.value! / 4375).toBeCloseTo(1, 3);
    expect(set.get('utilisation frame/cap')).toBeUndefined();
  });

  test('the torque that the file gives has its preload and its share of the yield strength', () => {
    const set = of(plate(`${cap}, torque: 2.2703 N·m`));
    expect(set.get('preload frame/cap')!.value! / 4375).toBeCloseTo(1, 3);
    expect(set.get('utilisation frame/cap')!.value).toBeCloseTo(0.9, 3);
    expect(set.get('torque frame/cap')).toBeUndefined();
    expect(set.all.filter(({ name }) => name.endsWith('frame/cap')).flatMap(({ warnings }) => warnings).join(' ')).not.toMatch(/left out/);
  });

  test('the hold of the thread is that of what it is screwed into, and opens down to the file', () => {
    const margin = (post: string, more = ''): number | undefined => of(plate(`${cap}, torque: 1 N·m`, post, more)).get('thread-margin frame/cap')?.value;
    // law: the softer thread of the two holds in proportion to its strength, 53 to 207 MPa
    const shorter = cap.replace('6 mm', '2 mm');
    const short = (post: string): number => of(plate(`${shorter}, torque: 1 N·m`, post)).get('thread-margin frame/cap')!.value!;
    expect(short('material: aluminium 6061') / short('material: POM')).toBeCloseTo(207 / 53, 9);
    expect(margin('material: aluminium 7075')).toBeGreaterThan(1);
    expect(margin('material: oak')).toBeUndefined();
    expect(margin('material: oak', 'materials: {oak: {density: 700 kg/m³, tensile: 90 MPa}}')).toBeGreaterThan(0);
    const leaves = JSON.stringify(working(of(plate(`${cap}, torque: 1 N·m`)), 'thread-margin frame/cap'));
    expect(leaves).toContain('modules.frame.joints.cap.engagement');
    expect(leaves).toContain('331 MPa');
  });

  test('what the file lacks is named', () => {
    const set = of(plate('thread: M3, torque: 1 N·m'));
    expect(set.get('preload frame/cap')).toMatchObject({ missing: ['modules.frame.joints.cap.class'] });
    expect(set.get('thread-margin frame/cap')!.missing).toEqual(['modules.frame.joints.cap.class', 'modules.frame.joints.cap.engagement']);
    expect(of(plate(`${cap}, torque: 1 N·m`, 'mass: 10 g')).get('thread-margin frame/cap')!.missing).toEqual(['modules.frame.parts.post.material']);
  });

  test.each([['torque: snug'], ['torque: 1 N·m, kind: set-screw']])('there are none with %s', (change) => {
    const text = plate(`${cap}, ${change}`).replace('kind: screw, ', change.includes('kind:') ? '' : 'kind: screw, ');
    expect(screwFigures(of(text))).toEqual([]);
  });

  test('a class of other make has none, and another head or an insert nut is told', () => {
    expect(screwFigures(of(plate(`${cap.replace('12.9', 'plastic')}, torque: 1 N·m`)))).toEqual([]);
    expect(of(plate(`${cap.replace('socket', 'hexagon')}, torque: 1 N·m`)).get('preload frame/cap')!.warnings.join(' ')).toMatch(/not of a hexagon head/);
    expect(of(plate(`${cap}, torque: 1 N·m`).replace('lock: medium', 'lock: insert')).get('preload frame/cap')!.warnings.join(' ')).toMatch(/running torque of the insert nut/);
  });

  test('a size that is no thread is told on the figure, not thrown', () => {
    const preload = of(plate(`${cap.replace('M3', 'M3.7')}, torque: 1 N·m`)).get('preload frame/cap')!;
    expect(preload.value).toBeUndefined();
    expect(preload.warnings.join(' ')).toMatch(/next to it are M3\.5 and M4/);
  });

  test('they are listed by screw', () => {
    const [only, ...others] = screwFigures(of(plate(`${cap}, torque: 1 N·m`)));
    expect(others).toEqual([]);
    expect(only!.joint.id).toBe('frame/cap');
    expect([only!.torque, only!.preload?.name, only!.utilisation?.name, only!.threadMargin?.name]).toEqual([undefined, 'preload frame/cap', 'utilisation frame/cap', 'thread-margin frame/cap']);
  });
});
