/** How many answers a second `calc --batch` gives to everyday questions, from a file to a file, the start of the program included. One line of JSON. */
import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const LINES = 20_000;

const asked = [
  { id: 'drive-ratio', inputs: { stages: [{ driver: 17, driven: 85 }, { driver: 54, driven: 11 }], inputSpeed: '14600 rpm' } },
  { id: 'gear-pair', inputs: { normalModule: '1 mm', helixAngle: '15 °', teeth1: 17, teeth2: 84, faceWidth: '12 mm', centreDistance: '52.4 mm' } },
  { id: 'gear-strength-plastic', inputs: { normalModule: '1 mm', helixAngle: '15 °', teeth1: 17, teeth2: 84, faceWidth: '12 mm', torque: '1.6 N·m', speed: '14000 rpm', hours: '100 h', ambient: '25 °C' } },
  { id: 'bearing-frequencies', inputs: { rollingElements: 8, elementDiameter: '2 mm', pitchDiameter: '8 mm', shaftSpeed: '6000 rpm' } },
  { id: 'iso-fit', inputs: { nominal: '22 mm', hole: 'H7', shaft: 'g6' } },
  { id: 'tube-torsion', inputs: { torque: '0.9 N·m', outer: '6 mm', inner: '5 mm', length: '0.95 m', G: '26 GPa' } },
  { id: 'balance-single-plane', inputs: { initialAmplitude: 7, initialPhase: '160 °', trialMass: '2 g', trialAngle: 0, withTrialAmplitude: 5, withTrialPhase: '70 °' } },
  { id: 'atmosphere', inputs: { pressureAltitude: '1200 m' } },
];

const folder = mkdtempSync(path.join(tmpdir(), 'rotorwright-batch-'));
try {
  const [from, to] = [path.join(folder, 'asked.jsonl'), path.join(folder, 'answered.jsonl')];
  writeFileSync(from, Array.from({ length: LINES }, (_, line) => `${JSON.stringify(asked[line % asked.length])}\n`).join(''));
  const out = openSync(to, 'w');
  const start = performance.now();
  const { status } = spawnSync(process.execPath, [path.resolve(import.meta.dirname, '../../apps/cli/dist/main.js'), 'calc', '--batch', from], { stdio: ['ignore', out, 'inherit'] });
  const seconds = (performance.now() - start) / 1e3;
  closeSync(out);
  const answers = readFileSync(to, 'utf8').trim().split('\n');
  const refused = answers.filter((line) => !line.includes('"outputs"')).length;
  if (status !== 0 || answers.length !== LINES || refused > 0) throw new Error(`${answers.length} answers to ${LINES} lines, ${refused} of them refusals, status ${status}`);
  console.log(JSON.stringify({ name: 'calc-batch', answers: answers.length, perSecond: Math.round(answers.length / seconds) }));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
