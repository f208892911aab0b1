import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

/** Decision record 0001: what each room may import. */
const rooms: Readonly<Record<string, readonly string[]>> = {
  units: [],
  mechanics: [],
  reliability: [],
  rotor: ['mechanics'],
  signals: ['mechanics'],
  machine: ['units'],
  calculations: ['units', 'mechanics', 'rotor', 'signals', 'reliability'],
  figures: ['units', 'mechanics', 'rotor', 'machine', 'calculations'],
  build: ['units', 'machine', 'reliability'],
  logbook: ['units', 'machine', 'build'],
};
const doors = [...Object.keys(rooms), 'logbook/store', 'server', 'web'].map((room) => `@rotorwright/${room}`);

const root = path.resolve(import.meta.dirname, '..');
const read = (file: string) => readFileSync(path.join(root, file), 'utf8');

/** Runs the linter under the project's own rules over a tree of made-up files. @returns the forbidden import of each file */
function lint(files: Readonly<Record<string, readonly string[]>>): Map<string, Set<string>> {
  const folder = mkdtempSync(path.join(tmpdir(), 'rotorwright-rooms-'));
  try {
    copyFileSync(path.join(root, '.oxlintrc.json'), path.join(folder, '.oxlintrc.json'));
    for (const [file, imports] of Object.entries(files)) {
      mkdirSync(path.join(folder, path.dirname(file)), { recursive: true });
      writeFileSync(path.join(folder, file), imports.map((name) => `import '${name}';\n`).join(''));
    }
    const { bin } = JSON.parse(read('node_modules/oxlint/package.json')) as { bin: { oxlint: string } };
    const { stdout } = spawnSync(process.execPath, [path.join(root, 'node_modules/oxlint', bin.oxlint), '--format', 'json'], { cwd: folder, encoding: 'utf8' });
    const { diagnostics } = JSON.parse(stdout) as { diagnostics: { code: string; message: string; filename: string }[] };
    const found = new Map(Object.keys(files).map((file) => [file, new Set<string>()]));
    for (const { code, message, filename } of diagnostics) {
      if (code === 'eslint(no-restricted-imports)') found.get(filename)?.add(/^'([^']+)'/.exec(message)?.[1] ?? message);
    }
    return found;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const fixture = (room: string) => `packages/${room}/src/fixture.ts`;
const doorsOf = (names: readonly string[] = []) => names.map((name) => `@rotorwright/${name}`);

describe('the linter keeps the rooms apart', () => {
  const everything = [...doors, 'rotorwright', 'node:fs'];
  const found = lint({
    ...Object.fromEntries(Object.keys(rooms).map((room) => [fixture(room), everything])),
    'packages/logbook/src/store/fixture.ts': everything,
    'apps/web/src/fixture.ts': everything,
    'apps/cli/src/fixture.ts': everything,
  });
  const forbidden = (names: readonly string[], also: readonly string[] = []) => new Set(everything.filter((door) => !doorsOf(names).includes(door) && !also.includes(door)));

  it.each(Object.entries(rooms))('%s imports nothing but %j', (room, names) => {
    expect(found.get(fixture(room))).toEqual(forbidden(names));
  });

  it('the store of the logbook may use Node besides', () => {
    expect(found.get('packages/logbook/src/store/fixture.ts')).toEqual(forbidden(rooms['logbook'] ?? [], ['node:fs']));
  });

  it('pages import neither server, command line, store nor Node', () => {
    expect(found.get('apps/web/src/fixture.ts')).toEqual(new Set(['@rotorwright/server', '@rotorwright/logbook/store', 'rotorwright', 'node:fs']));
  });

  it('the command line may import every room', () => {
    expect(found.get('apps/cli/src/fixture.ts')).toEqual(new Set());
  });
});

const present = Object.keys(rooms).filter((room) => existsSync(path.join(root, 'packages', room)));

interface Manifest { readonly dependencies?: Record<string, string>; readonly devDependencies?: Record<string, string> }
const manifest = (folder: string) => JSON.parse(read(`${folder}/package.json`)) as Manifest;
const roomsIn = (dependencies: Record<string, string> = {}) => Object.keys(dependencies).filter((name) => name.startsWith('@rotorwright/'));

function* sources(folder: string): Generator<string> {
  for (const entry of readdirSync(path.join(root, folder), { withFileTypes: true })) {
    if (entry.isDirectory()) yield* sources(`${folder}/${entry.name}`);
    else if (/\.tsx?$/.test(entry.name)) yield `${folder}/${entry.name}`;
  }
}

/** Packages that the sources of a folder import, by name. */
function imported(folder: string): Set<string> {
  const found = new Set<string>();
  for (const file of sources(folder)) {
    for (const [, name = ''] of read(file).matchAll(/^(?:import|export)\b(?:[^'";]*?\bfrom)?\s*'([^']+)'/gm)) {
      if (name.startsWith('.') || name.startsWith('node:') || name.startsWith('virtual:')) continue;
      found.add(name.split('/').slice(0, name.startsWith('@') ? 2 : 1).join('/'));
    }
  }
  return found;
}

describe('every room is one that the table knows', () => {
  it('packages/ holds no other', () => {
    expect(readdirSync(path.join(root, 'packages')).filter((name) => !(name in rooms))).toEqual([]);
  });
});

describe.each(present)('packages/%s', (room) => {
  const folder = `packages/${room}`;

  it('depends on rooms that the table allows', () => {
    expect(roomsIn(manifest(folder).dependencies).filter((name) => !doorsOf(rooms[room]).includes(name))).toEqual([]);
  });

  it('depends on everything that its sources import', () => {
    const declared = Object.keys(manifest(folder).dependencies ?? {});
    expect([...imported(`${folder}/src`)].filter((name) => !declared.includes(name))).toEqual([]);
  });

  it('is compiled after the rooms that it depends on', () => {
    const { references } = JSON.parse(read(`${folder}/tsconfig.json`)) as { references: { path: string }[] };
    expect(references.map(({ path: other }) => `@rotorwright/${path.basename(other)}`).sort()).toEqual(roomsIn(manifest(folder).dependencies).sort());
  });
});

describe.each(['apps/server', 'apps/cli', 'apps/web'])('%s', (folder) => {
  it('depends on everything that its sources import', () => {
    const { dependencies = {}, devDependencies = {} } = manifest(folder);
    expect([...imported(`${folder}/src`)].filter((name) => !(name in dependencies) && !(name in devDependencies))).toEqual([]);
  });
});

describe('this test sees what it looks for', () => {
  it('finds the imports of a source', () => {
    expect([...imported('apps/server/src')]).toContain('hono');
  });
});
