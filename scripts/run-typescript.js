// Runs one of the project's TypeScript programs on Node 20, which cannot read TypeScript:
//   node scripts/run-typescript.js [--where-called] PROGRAM.ts [ARGUMENT]...
// The program is bundled when a source is newer than its bundle, then runs in this process.
// --where-called: relative paths are the caller's, not the project folder's, where npm puts a script.
import { existsSync, mkdirSync, readdirSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { makeReady } from './ready.js';

const root = fileURLToPath(new URL('..', import.meta.url));

// Packages written for CommonJS call `require`, which a module lacks.
const requireForPackages =
  "import { createRequire as makeRequireForPackages } from 'node:module';" +
  'const require = makeRequireForPackages(import.meta.url);';

/**
 * Where a program's bundle lies: as deep in the project as its source, so that what it finds relative to
 * `import.meta.url` is found from both. `src/cli/quaybook.ts` gives `dist/cli/quaybook.js`.
 *
 * @param {string} program path from the project folder
 */
function bundlePath(program) {
  const [top, ...rest] = program.replace(/\.ts$/, '.js').split('/');
  if (top === 'src') return ['dist', ...rest].join('/');
  return ['.cache', ...rest.slice(0, -1), `${top}-${rest.at(-1)}`].join('/');
}

/**
 * The newest time of change in a file, or in a folder and all below it (a file taken away changes its folder);
 * 0 if there is none.
 *
 * @param {string} path
 * @returns {number} milliseconds
 */
function newestChange(path) {
  const facts = statSync(path, { throwIfNoEntry: false });
  if (facts === undefined) return 0;
  if (!facts.isDirectory()) return facts.mtimeMs;
  const below = readdirSync(path).map((name) => newestChange(`${path}/${name}`));
  return Math.max(facts.mtimeMs, ...below);
}

/**
 * Bundles a TypeScript program for Node unless its bundle is newer than everything it could be made from.
 *
 * @param {string} program path from the project folder
 * @returns {Promise<string>} the bundle's absolute path
 * @throws esbuild's build failure, after esbuild has written what is wrong to standard error
 */
export async function bundle(program) {
  const out = root + bundlePath(program);
  const top = program.split('/')[0] ?? '';
  // The bench measures the app in the browser that the tests start.
  const sources = ['src', 'scripts', 'package-lock.json', top, ...(top === 'bench' ? ['tests/browser'] : [])];
  const newest = Math.max(...sources.map((source) => newestChange(root + source)));
  if (existsSync(out) && statSync(out).mtimeMs > newest) return out;
  const { build } = await import('esbuild');
  const built = await build({
    absWorkingDir: root,
    entryPoints: [program],
    outfile: out,
    write: false,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    external: ['esbuild', 'vite', 'vitest', 'playwright-core', '@sparticuz/chromium'],
    banner: { js: requireForPackages },
    logLevel: 'error',
  });
  // Written aside and renamed, so that a second process never reads half a file.
  const aside = `${out}.${process.pid}`;
  mkdirSync(dirname(out), { recursive: true });
  for (const file of built.outputFiles) writeFileSync(aside, file.contents, { mode: 0o755 });
  renameSync(aside, out);
  return out;
}

/**
 * Why a program could not be bundled, where esbuild has not said it.
 *
 * @param {string} program path from the project folder
 * @param {NodeJS.ErrnoException} error
 */
function bundleFailure(program, error) {
  const why = error.code === undefined ? error.message : `the system says ${error.code}`;
  return `${bundlePath(program)} is older than its sources and cannot be written anew (${why}); make it and its folder writable`;
}

async function main() {
  const args = process.argv.slice(2);
  const whereCalled = args[0] === '--where-called' && args.shift() !== undefined;
  const program = args.shift();
  if (program === undefined) throw new Error('name a program: node scripts/run-typescript.js PROGRAM.ts');
  makeReady();
  // esbuild has said what is wrong; its stack would say it again.
  const path = await bundle(program).catch((error) => {
    if (!Array.isArray(error.errors)) process.stderr.write(`${bundleFailure(program, error)}\n`);
    process.exit(2);
  });
  process.argv = [process.argv[0] ?? 'node', path, ...args];
  if (whereCalled && process.env.INIT_CWD !== undefined) process.chdir(process.env.INIT_CWD);
  await import(pathToFileURL(path).href);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
