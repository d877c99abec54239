// Makes a clone ready to use: packages installed, grammar compiled. Does nothing when both are up to date.
// Plain JavaScript without packages, because it runs before any package is there.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const lockFile = `${root}package-lock.json`;
const installedLockFile = `${root}node_modules/.package-lock.json`;
const grammar = `${root}src/language/grammar/formula.grammar`;
const parser = `${root}src/language/grammar/parser.js`;

/**
 * The packages a lock file names, by folder.
 *
 * @param {string} path
 * @returns {Record<string, { version?: string, optional?: boolean, devOptional?: boolean }>}
 */
function packagesOf(path) {
  return JSON.parse(readFileSync(path, 'utf8')).packages;
}

/** Whether every package of the lock file is installed at its version (those for other machines aside). */
function isInstalled() {
  if (!existsSync(installedLockFile)) return false;
  const installed = packagesOf(installedLockFile);
  return Object.entries(packagesOf(lockFile)).every(
    ([folder, wanted]) =>
      folder === '' ||
      wanted.optional === true ||
      wanted.devOptional === true ||
      installed[folder]?.version === wanted.version,
  );
}

/** Whether the compiled parser is there and not older than its grammar. */
function isGrammarCompiled() {
  return existsSync(parser) && statSync(parser).mtimeMs >= statSync(grammar).mtimeMs;
}

/**
 * Runs npm quietly; its output is shown only when it fails, and then this process ends with its status.
 *
 * @param {readonly string[]} args
 * @param {string} purpose
 */
function npm(args, purpose) {
  if (process.stderr.isTTY) process.stderr.write(`${purpose}…\n`);
  const run = spawnSync('npm', args, { cwd: root, encoding: 'utf8', shell: process.platform === 'win32' });
  if (run.status === 0) return;
  process.stderr.write(
    `${run.stdout ?? ''}${run.stderr ?? ''}${run.error?.message ?? ''}\n${purpose} failed.\n`,
  );
  process.exit(2);
}

/**
 * Does a task that two processes must not do at the same time: the second waits for the first. A mark left by a process
 * that died counts no longer than ten minutes.
 *
 * @param {() => void} task
 */
function alone(task) {
  const mark = `${root}.cache/making-ready`;
  mkdirSync(`${root}.cache`, { recursive: true });
  while (!tryToMark(mark)) {
    const since = Date.now() - (statSync(mark, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (since > 600_000) rmSync(mark, { recursive: true, force: true });
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
  }
  const release = () => rmSync(mark, { recursive: true, force: true });
  process.once('exit', release);
  task();
  process.off('exit', release);
  release();
}

/**
 * Whether this process has put the mark there.
 *
 * @param {string} mark
 */
function tryToMark(mark) {
  try {
    mkdirSync(mark);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

/** Installs the packages and compiles the grammar, each only if needed. */
export function makeReady() {
  if (isInstalled() && isGrammarCompiled()) return;
  alone(() => {
    if (!isInstalled()) npm(['ci', '--include=dev'], 'Installing packages');
    if (!isGrammarCompiled()) npm(['run', '--silent', 'grammar'], 'Compiling the grammar');
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) makeReady();
