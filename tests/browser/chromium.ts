import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium as driver, type Browser } from 'playwright-core';

export interface Chromium {
  readonly executable: string;
  /** Folder of shared libraries for systems that lack them. */
  readonly libraries?: string;
}

/** Where people have a browser on systems that the bundled one does not run on. */
const installed: Readonly<Record<string, readonly string[]>> = {
  darwin: ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', '/Applications/Chromium.app/Contents/MacOS/Chromium', '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge'],
  win32: [String.raw`C:\Program Files\Google\Chrome\Application\chrome.exe`, String.raw`C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe`],
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'],
};

/** The browser inside the npm package on Linux x64, unpacked once; elsewhere one that is installed. */
export async function findChromium(): Promise<Chromium> {
  if (process.platform === 'linux' && process.arch === 'x64') return unpacked();
  const executable = installed[process.platform]?.find((file) => existsSync(file));
  if (executable === undefined) throw new Error(`The browser tests need a Chromium, Chrome or Edge on ${process.platform} ${process.arch}; none was found.`);
  return { executable };
}

/** @param more  switches besides those that every test needs */
export function launch({ executable, libraries }: Chromium, more: readonly string[] = []): Promise<Browser> {
  return driver.launch({
    executablePath: executable,
    // The first four let it run as root and in a container; the next keeps it from calling home; the last three draw 3-D without a graphics card.
    args: ['--no-sandbox', '--no-zygote', '--disable-dev-shm-usage', '--headless=shell', '--disable-background-networking', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', ...more],
    env: { ...definedEnvironment(), ...(libraries !== undefined && { LD_LIBRARY_PATH: libraries }) },
  });
}

const definedEnvironment = (): Record<string, string> => Object.fromEntries(Object.entries(process.env).filter((pair): pair is [string, string] => pair[1] !== undefined));

async function unpacked(): Promise<Chromium> {
  const manifest = createRequire(import.meta.url).resolve('@sparticuz/chromium').replace(/build[/\\].*$/, 'package.json');
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string };
  const folder = path.join(tmpdir(), `rotorwright-chromium-${version}`);
  if (!existsSync(folder)) await unpackInto(folder, path.join(path.dirname(manifest), 'bin'));
  const executable = path.join(folder, 'chromium');
  // Lean systems lack the libraries of a desktop; the package carries them.
  return lacksLibraries(executable) ? { executable, libraries: path.join(folder, 'al2023', 'lib') } : { executable };
}

/** Unpacks beside the folder and renames: a half-unpacked browser is never taken for a whole one. */
async function unpackInto(folder: string, archives: string): Promise<void> {
  const beside = mkdtempSync(`${folder}-`);
  const before = process.env['TMPDIR'];
  try {
    // The package unpacks into the system's temporary folder, whatever lies there under its names.
    process.env['TMPDIR'] = beside;
    const { default: chromium } = await import('@sparticuz/chromium');
    await chromium.executablePath();
    const { inflate } = (await import(path.join(archives, '..', 'build', 'esm', 'lambdafs.js'))) as { inflate: (file: string) => Promise<string> };
    await inflate(path.join(archives, 'al2023.tar.br'));
    renameSync(beside, folder);
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    // Another run may have been quicker.
    if (!existsSync(folder)) throw error;
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
}

function lacksLibraries(executable: string): boolean {
  try {
    return execFileSync('ldd', [executable], { encoding: 'utf8' }).includes('not found');
  } catch {
    return false;
  }
}
