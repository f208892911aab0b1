import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planBuild } from '@rotorwright/build';
import { figures, gearChoices, oneWayFacing, helixPush, solveDrive, threadSense, turning } from '@rotorwright/figures';
import { readMachine, type Finding, type Machine } from '@rotorwright/machine';

const textOf = (name: string) => readFileSync(new URL(`../examples/${name}/machine.yaml`, import.meta.url), 'utf8');
const read = (name: string, variant?: string) => readMachine(textOf(name), variant === undefined ? {} : { variant });
const codes = (findings: readonly Finding[]) => findings.map(({ code, path }) => `${code} ${path}`).toSorted();
const radPerSecond = (rpm: number) => (rpm * Math.PI) / 30;
const rpm = (speed: number | undefined) => ((speed ?? Number.NaN) * 30) / Math.PI;

const all: readonly (readonly [name: string, variant: string | undefined])[] = [
  ['turnstone', undefined], ['sanderling', undefined], ['sanderling', 'calm'], ['whimbrel', undefined], ['whimbrel', 'short'], ['whimbrel', 'calm'],
];

/** Mass of the parts alone, all copies counted, kg. Independent of any mass figure. */
function massOfParts(machine: Machine): number {
  return [...machine.parts.values()].reduce((sum, part) => sum + (part.mass ?? 0) * part.instances.length, 0);
}

/** Sum of mass times distance forward of the mast, over the mass, m. Only of parts whose place the file gives. */
function centreForward(machine: Machine): number {
  const placed = [...machine.parts.values()].flatMap((part) => part.instances.flatMap((id) => {
    const at = part.ats?.get(id) ?? part.at;
    return at === undefined || part.mass === undefined ? [] : [{ mass: part.mass, forward: at[0] }];
  }));
  return placed.reduce((sum, { mass, forward }) => sum + mass * forward, 0) / placed.reduce((sum, { mass }) => sum + mass, 0);
}

describe.each(all)('%s, variant %s', (name, variant) => {
  const { machine, findings } = read(name, variant);

  it('is read without a finding', () => {
    expect(codes(findings)).toEqual([]);
  });

  it('says that it is invented', () => {
    expect(machine.invented).toBe(true);
    expect(textOf(name)).toMatch(/^# .*\n(?:# .*\n)*?.*every number.* invented/iu);
  });

  it('turns both rotors within the bands that it wants, and within its limits', () => {
    const set = figures(machine);
    expect(codes(set.findings)).toEqual([]);
    for (const rotor of machine.rotors.values()) {
      const speed = set.get(`speed ${rotor.on}`)?.value;
      expect(speed).toBeDefined();
      if (rotor.wanted?.min !== undefined) expect(speed).toBeGreaterThanOrEqual(rotor.wanted.min);
      if (rotor.wanted?.max !== undefined) expect(speed).toBeLessThanOrEqual(rotor.wanted.max);
    }
  });

  it('knows which way every shaft turns', () => {
    expect(turning(machine, solveDrive(machine)).flatMap(({ shaft, missing }) => missing.map((path) => `${shaft}: ${path}`))).toEqual([]);
  });
});
