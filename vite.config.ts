import { fileURLToPath } from 'node:url';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import { makeReady } from './scripts/ready.js';
import { LongestFirst } from './tests/longest-first.ts';

makeReady();

const folder = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The app is built from src/ into dist/app; the tests run from the project folder. */
export default defineConfig({
  root: folder('src'),
  base: './',
  plugins: [
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      manifest: {
        name: 'Quaybook',
        short_name: 'Quaybook',
        description: 'A calculation notebook for people who rebuild wharves',
        display: 'standalone',
        start_url: './',
        background_color: '#e3e7e6',
        theme_color: '#fdfefc',
        icons: [{ src: './icon.svg', sizes: 'any', type: 'image/svg+xml' }],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,woff2,json}'],
        // The demo book and the second engine are larger than the usual limit.
        maximumFileSizeToCacheInBytes: 6_000_000,
      },
    }),
  ],
  build: {
    outDir: folder('dist/app'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
  },
  worker: { format: 'es' },
  test: {
    root: folder('.'),
    // A test of the page waits for half of its time: three keep two cores busy.
    maxWorkers: 3,
    sequence: { sequencer: LongestFirst },
    // Ends a test that hangs; how long one takes says nothing of what it tests, on a machine that does other work.
    testTimeout: 180_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          // A wrong change is told by these before a browser is started.
          sequence: { groupOrder: 0 },
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          // Most of a small file's time is reading the program: one reading serves all files of a worker.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          sequence: { groupOrder: 1 },
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/browser/serve-app.ts',
          hookTimeout: 180_000,
          // What the page comes to is waited for as long as a busy machine may take; a page that never comes to it fails as before.
          expect: { poll: { timeout: 10_000 } },
          // Each file starts a browser of its own, and nothing else stays between files.
          isolate: false,
        },
      },
    ],
  },
});
