import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { Trouble, requireNode } from '../scripts/prepare.mjs';
import { readOptions } from '../scripts/start.mjs';

const root = path.resolve(import.meta.dirname, '..');

describe('the Node that is asked for', () => {
  it.each(['20.19.0', '20.20.2', '22.0.0', '24.1.0', '100.0.0'])('%s is new enough', (version) => {
    expect(() => requireNode(version)).not.toThrow();
  });

  it.each(['20.18.3', '20.9.0', '18.20.8', '16.0.0'])('%s is too old, and told so with what is needed', (version) => {
    expect(() => requireNode(version)).toThrow(Trouble);
    expect(() => requireNode(version)).toThrow(`needs Node 20.19 or newer; this is Node ${version}`);
  });
});

describe('options of npm start', () => {
  const read = (args: readonly string[], environment: Readonly<Record<string, string>> = {}) => readOptions([...args], environment);

  it('default to the home of the environment, any free port and an open browser', () => {
    expect(read([], { ROTORWRIGHT_HOME: '/workshop' })).toEqual({ port: undefined, home: '/workshop', open: true, help: false });
  });

  it.each([[['--port', '8500', '--home', '/h', '--no-open']], [['--no-open', '--home=/h', '--port=8500']]])('are read from %j', (args) => {
    expect(read(args)).toEqual({ port: 8500, home: '/h', open: false, help: false });
  });

  it('a relative home is meant from where npm was called', () => {
    expect(read(['--home', 'mine'], { INIT_CWD: '/somewhere' }).home).toBe('/somewhere/mine');
  });

  it.each([[['--port']], [['--port', 'x']], [['--port', '-1']], [['--port', '65536']], [['--port', '80.5']], [['--home']], [['--home', '--no-open']], [['--home=']], [['--no-opne']], [['extra']], [['--no-open', 'yes']]])('%j are refused', (args) => {
    expect(() => read(args)).toThrow(Trouble);
  });
});

describe('npm test', () => {
  const test = (...args: readonly string[]) => spawnSync(process.execPath, ['scripts/test.mjs', ...args], { cwd: root, encoding: 'utf8' });

  it('refuses a part that it does not have, and counts that as a failure on its last line', () => {
    const { status, stdout, stderr } = test('--only', 'unti');
    expect(status).toBe(1);
    expect(stdout).toBe('0 passed, 1 failed\n');
    expect(stderr).toContain('unit');
  });
});
