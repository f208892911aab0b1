import { describe, expect, test } from 'vitest';
import { figures, solveDrive } from '@rotorwright/figures';
import { ring, wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

describe('two ways to one shaft', () => {
  // By hand: a to c is 20/60 = 1/3. Over b it is 20/40 · 40/60 = 1/3 as well; a pinion in a ring keeps the sense of b, that of c.
  test('that agree are no finding', () => {
    const drive = solveDrive(read(ring([40, 60])));
    expect(drive.findings).toEqual([]);
    expect(drive.states.get('driven')!.motions.get('c')!.exact).toBe('1/3');
  });

  // By hand: over b it is 20/40 · 41/60 = 41/120.
  test('that ask for different speeds are an error that names the loop and both ratios', () => {
    const machine = read(ring([41, 60]));
    const drive = solveDrive(machine);
    expect(drive.findings.map((finding) => finding.code)).toEqual(['drive/loop']);
    const { values, path, place } = drive.findings[0]!;
    expect([...(values['loop'] as readonly string[])].toSorted()).toEqual(['ab', 'ac', 'bc']);
    expect([values['ratioOne'], values['ratioTwo']]).toEqual(['c at 1/3 of the source', 'c at 41/120 of the source']);
    expect(place).toEqual(machine.places.get(path));
  });

  test('that contradict leave no number on the loop, nor behind it', () => {
    const { motions } = solveDrive(read(ring([41, 60]))).states.get('driven')!;
    expect([...motions.values()].map((motion) => motion.condition)).toEqual(['turns', 'contradicted', 'contradicted', 'contradicted']);
    expect(figures(read(ring([41, 60]))).get('speed d')).toMatchObject({ missing: ['drive'] });
    expect(figures(read(ring([41, 60]))).get('speed d')!.value).toBeUndefined();
  });

  test('that agree in speed and not in sense are an error too', () => {
    // By hand: three external gears in a ring cannot turn: c would turn against a and with a.
    const drive = solveDrive(read(ring([40, 60], 'external')));
    expect(drive.findings).toHaveLength(1);
    expect(drive.findings[0]).toMatchObject({ code: 'drive/loop', values: { what: 'sense' } });
  });
});

describe('a one-way clutch beside another way to the same shaft', () => {
  const beside = (teeth: number): string => wholeDrive.replace('  free-wheel:', `  lay: {kind: internal, driver: {on: gear, teeth: 40}, driven: {on: mast, teeth: ${teeth}}}\n  free-wheel:`);

  // By hand: the other way drives the mast at 40/20 of the gear; the clutch overruns.
  test('overruns when the other way is faster', () => {
    const drive = solveDrive(read(beside(20)));
    expect(drive.findings).toEqual([]);
    expect(drive.states.get('driven')!.motions.get('mast')!.exact).toBe('1/4');
  });

  // By hand: the other way drives the mast at 40/50 of the gear; the clutch would lock and ask for 1.
  test('contradicts when the other way is slower', () => {
    const drive = solveDrive(read(beside(50)));
    expect(drive.findings.map((finding) => finding.code)).toEqual(['drive/loop']);
  });
});
