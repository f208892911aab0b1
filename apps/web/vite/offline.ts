import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';
import { iconPng, icons } from './icons.ts';

const root = path.resolve(import.meta.dirname, '..');
const worker = 'worker.js';
/** In `public/`: copied as it is. */
const mark = 'mark.svg';

const manifest = {
  name: 'Rotorwright',
  short_name: 'Rotorwright',
  description: 'A bench companion for builders of large radio-controlled helicopters.',
  id: '/',
  start_url: '/',
  scope: '/',
  display: 'standalone',
  background_color: '#FAF6EA',
  theme_color: '#FAF6EA',
  icons: [
    ...[icons.small, icons.large].map(({ file, size }) => ({ src: `/${file}`, sizes: `${size}x${size}`, type: 'image/png' })),
    { src: `/${icons.cut.file}`, sizes: `${icons.cut.size}x${icons.cut.size}`, type: 'image/png', purpose: 'maskable' },
    { src: `/${mark}`, sizes: 'any', type: 'image/svg+xml' },
  ],
};

/**
 * Makes the pages installable and lets them open with the network gone: draws the icons, writes the manifest, and
 * builds the service worker, which is told every file of this very build.
 */
export function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: path.join(root, 'worker/service-worker.ts'), fileName: worker });
      for (const icon of Object.values(icons)) this.emitFile({ type: 'asset', fileName: icon.file, source: iconPng(icon) });
      this.emitFile({ type: 'asset', fileName: 'manifest.webmanifest', source: JSON.stringify(manifest) });
    },
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const chunk = bundle[worker];
        if (chunk?.type !== 'chunk') this.error('The service worker is missing from the build.');
        if (chunk.imports.length > 0) this.error('The service worker must stand in one file: it is no module.');
        // The page itself is kept under the address that answers with it.
        const files = Object.values(bundle).filter(({ fileName }) => fileName !== worker && !fileName.endsWith('.map'));
        const version = createHash('sha256').update(chunk.code).update(readFileSync(path.join(root, 'public', mark)));
        for (const file of files.toSorted((a, b) => (a.fileName < b.fileName ? -1 : 1))) version.update(file.fileName).update('\0').update(file.type === 'chunk' ? file.code : file.source);
        const build = { version: version.digest('hex').slice(0, 16), files: ['/', `/${mark}`, ...files.map(({ fileName }) => `/${fileName}`).filter((file) => file !== '/index.html')] };
        chunk.code = `self.build = ${JSON.stringify(build)};\n${chunk.code.replace(/\n\/\/# sourceMappingURL=.*/, '')}`;
        delete bundle[`${worker}.map`];
      },
    },
  };
}
