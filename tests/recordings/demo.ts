import { readFileSync } from 'node:fs';
import path from 'node:path';
import { machineSound } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import { makeRecording } from './make-recording.ts';
import { wavOf } from './wav.ts';

const whimbrel = path.resolve(import.meta.dirname, '../../examples/whimbrel');

/** Where the recording of the demo lies. */
export const demoFile = path.join(whimbrel, 'hover.wav');

/**
 * The recording of the demo: a made-up hover of Whimbrel at 1,752 rpm, as heard by a phone three metres away, with a bearing of the
 * tail rotor that has begun to strike. Written anew by
 *
 *     node --import tsx -e "import('./tests/recordings/demo.ts').then(({ demoFile, demoRecording }) => require('node:fs').writeFileSync(demoFile, demoRecording()))"
 */
export function demoRecording(): Uint8Array {
  const { machine } = readMachine(readFileSync(path.join(whimbrel, 'machine.yaml'), 'utf8'));
  const comb = machineSound(machine!)!;
  const bearing = comb.bearings.find(({ shaft }) => shaft === 'tail-rotor')!;
  const rate = 16_000;
  const { recording } = makeRecording({ seed: 4, seconds: 6, rate, comb, speed: 29.2, loudness: 6, wind: 0.4, jitter: 0.0002, strikes: { order: 0.988 * bearing.strikes['outer race'], ring: 5600, loudness: -10 } });
  return wavOf(recording.channels[0]!, rate);
}
