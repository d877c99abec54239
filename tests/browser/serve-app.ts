import type { TestProject } from 'vitest/node';
import { buildApp, type ServedApp, serveApp } from './built-app.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, served from this machine for the length of the test run. */
    appAddress: string;
  }
}

let app: ServedApp | undefined;

/** Builds the app and serves it, once before all browser tests. */
export async function setup(project: TestProject): Promise<void> {
  buildApp();
  app = await serveApp();
  project.provide('appAddress', app.address);
}

/** Stops the server after the last browser test. */
export async function teardown(): Promise<void> {
  await app?.close();
}
