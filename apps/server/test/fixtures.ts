import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { planBuild, type Step } from '@rotorwright/build';
import type { NewEntry } from '@rotorwright/logbook';
import { readMachine } from '@rotorwright/machine';
import { serve, type Serving } from '../src/index.ts';

/** Invented: two shafts, one mesh, one screw to sign for. */
export const plover = `# The plover, invented for tests
machine:
  name: Plover
  mass: 4.1 kg
power:
  engine: { on: crank, speed: 12400 rpm }
shafts:
  crank: { axis: up }
  mast: { axis: up }
drive:
  main-mesh: { kind: external, driver: { on: crank, teeth: 9 }, driven: { on: mast, teeth: 77 } }
rotors:
  main: { on: mast, blades: 2, diameter: 1.31 m }
modules:
  head:
    parts:
      plate: { kind: part, ground: true }
      post: { kind: part }
    joints:
      post-screw: { kind: screw, in: post, holds: plate, thread: M3, lock: medium }
`;

export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'rotorwright-server-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Workshop extends Serving {
  readonly home: string;
  readonly web: string;
  readonly demos: string;
}

/** A server of its own, with one demo machine and two built files. */
export async function workshop(): Promise<Workshop> {
  const folder = temporaryFolder();
  const [home, web, demos] = ['home', 'web', 'demos'].map((name) => path.join(folder, name)) as [string, string, string];
  mkdirSync(path.join(web, 'assets'), { recursive: true });
  writeFileSync(path.join(web, 'index.html'), '<!doctype html><meta property="csp-nonce" nonce="csp-nonce-placeholder"><title>Rotorwright</title>');
  writeFileSync(path.join(web, 'assets', 'main-1a2b3c.js'), 'export {};\n');
  writeFileSync(path.join(folder, 'secret.txt'), 'not for the web\n');
  mkdirSync(path.join(demos, 'plover'), { recursive: true });
  writeFileSync(path.join(demos, 'plover', 'machine.yaml'), plover);
  const serving = await serve({ port: 0, home, web, demos });
  onTestFinished(() => serving.close());
  return { ...serving, home, web, demos };
}

export function stepOf(text: string, id: string): Step {
  const { machine } = readMachine(text);
  const step = machine && planBuild(machine).steps.get(id);
  if (step === undefined) throw new Error(`fixture: no step ${id}`);
  return step;
}

export function signature(id: string, step: Pick<Step, 'id' | 'fingerprint'>): NewEntry {
  return { id, machine: 'plover', at: '2026-03-01T18:30:00Z', by: 'Maren', body: { kind: 'signed', step: step.id, fingerprint: step.fingerprint, locks: ['medium'], cure: 600 } };
}
