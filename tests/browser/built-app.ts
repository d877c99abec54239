import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { preview } from 'vite';

/** The built app, served from this machine until it is closed. */
export interface ServedApp {
  readonly address: string;
  readonly close: () => Promise<void>;
}

const path = (fromHere: string) => fileURLToPath(new URL(fromHere, import.meta.url));

/** Builds the app as `npm start` does. Throws if the build fails. */
export function buildApp(): void {
  // A process of its own, because a test run's NODE_ENV would build the packages' development versions.
  execFileSync(
    process.execPath,
    [path('../../node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'error'],
    { cwd: path('../..'), env: { ...process.env, NODE_ENV: 'production' }, stdio: 'inherit' },
  );
}

/** Serves what was built, at a free port. */
export async function serveApp(): Promise<ServedApp> {
  const server = await preview({
    configFile: path('../../vite.config.ts'),
    preview: { port: 0, host: '127.0.0.1' },
  });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error('the preview server has no address');
  return { address, close: () => server.close() };
}
