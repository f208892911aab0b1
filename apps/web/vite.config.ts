import react from '@vitejs/plugin-react';
import { defaultClientConditions, defineConfig } from 'vite';
import { formulas } from './vite/formulas.ts';
import { offline } from './vite/offline.ts';

export default defineConfig({
  plugins: [react(), formulas(), offline()],
  // The rooms are bundled from their sources.
  resolve: { conditions: ['source', ...defaultClientConditions] },
  worker: { format: 'es' },
  build: {
    target: 'es2023',
    // Nothing is inlined: the pages' policy takes fonts and pictures from this server only.
    assetsInlineLimit: 0,
    sourcemap: true,
    // The rooms, with YAML and the whole catalogue, are one piece that every sheet needs; it comes from this machine.
    chunkSizeWarningLimit: 1400,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  server: { proxy: { '/api': { target: process.env['ROTORWRIGHT_API'] ?? 'http://127.0.0.1:8420', changeOrigin: true } } },
});
