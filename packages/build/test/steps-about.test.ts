import { readFileSync } from 'node:fs';
import path from 'node:path';
import { planBuild, stepAbout } from '@rotorwright/build';
import { readMachine } from '@rotorwright/machine';
import { describe, expect, it } from 'vitest';

const { machine } = readMachine(readFileSync(path.resolve(import.meta.dirname, '../../../examples/whimbrel/machine.yaml'), 'utf8'));
const plan = planBuild(machine!);

describe('the step to open for a thing that is suspected', () => {
  it('is the measurement of it where there is one', () => {
    expect(stepAbout(machine!, plan, ['main-mesh'])?.title).toMatch(/backlash of the main mesh/iu);
  });

  it('is otherwise the last in which it is handled, and the first thing that has one counts', () => {
    const step = stepAbout(machine!, plan, ['nowhere/nothing', 'frame/post-left']);
    expect([step?.id, ...(step?.parts.map(({ id }) => id) ?? [])]).toContain('frame/post-left');
  });

  it('is none for what nothing is done to', () => {
    expect(stepAbout(machine!, plan, ['nowhere/nothing'])).toBeUndefined();
  });
});
