import { readFileSync } from 'node:fs';

const { version }: { readonly version: string } = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
);

/** The version of this program. */
export const PROGRAM_VERSION = version;
