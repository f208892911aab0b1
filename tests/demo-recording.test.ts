import { readFileSync } from 'node:fs';
import { machineSound } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import { hear, isUnreadable, readWav } from '@rotorwright/signals';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoFile, demoRecording } from './recordings/demo.ts';

describe('the recording of the demo', () => {
  it('is what its maker makes: nobody recorded it', () => {
    expect(Buffer.from(demoRecording()).equals(readFileSync(demoFile))).toBe(true);
  });

  it('says how fast the rotor turned, and which bearing strikes', () => {
    const recording = readWav(readFileSync(demoFile));
    if (isUnreadable(recording)) throw new Error(recording.problem);
    const { machine } = readMachine(readFileSync(path.join(path.dirname(demoFile), 'machine.yaml'), 'utf8'));
    const { verdict, speed, interval, flaws } = hear(recording, machineSound(machine!)!);
    expect(verdict).toBe('heard');
    // The maker turns it at 29.2 turns a second, shaken by a few parts in ten thousand.
    expect(Math.abs(speed! / (2 * Math.PI * 29.2) - 1)).toBeLessThan(2e-4);
    expect(interval![1] - interval![0]).toBeLessThan(1e-3 * speed!);
    expect(flaws!.map(({ candidates: [first] }) => [first!.bearing, first!.place])).toEqual([[expect.stringMatching(/^tail-end\/bearing-/u), 'outer race']]);
  });
});
