import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { type PreviewServer, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, served from this machine for the length of the test run. */
    appAddress: string;
  }
}

const path = (fromHere: string) => fileURLToPath(new URL(fromHere, import.meta.url));

let server: PreviewServer | undefined;

/** Builds the app and serves it, once before all browser tests, as `npm start` does. */
export async function setup(project: TestProject): Promise<void> {
  // A process of its own, because the test run's NODE_ENV would build the packages' development versions.
  execFileSync(
    process.execPath,
    [path('../../node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'error'],
    {
      cwd: path('../..'),
      env: { ...process.env, NODE_ENV: 'production' },
      stdio: 'inherit',
    },
  );
  server = await preview({
    configFile: path('../../vite.config.ts'),
    preview: { port: 0, host: '127.0.0.1' },
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('the preview server has no address');
  project.provide('appAddress', address);
}

/** Stops the server after the last browser test. */
export async function teardown(): Promise<void> {
  await server?.close();
}
