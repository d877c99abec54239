import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';

/** A check that is one command: it holds when the command ends with status 0. */
interface Check {
  readonly name: string;
  readonly command: readonly string[];
}

const reportFile = '.cache/vitest.json';
const countsFile = '.cache/test-counts.txt';

const checks: readonly Check[] = [
  { name: 'types: core, without the DOM', command: ['tsc', '-p', '.'] },
  { name: 'types: app', command: ['tsc', '-p', 'src/app'] },
  { name: 'types: command line', command: ['tsc', '-p', 'src/cli'] },
  { name: 'types: tests, bench, scripts', command: ['tsc', '-p', 'tests'] },
  { name: 'format and lint', command: ['biome', 'check', '--error-on-warnings'] },
  { name: 'lint that needs types', command: ['eslint', '--max-warnings', '0'] },
  { name: 'unused files, exports, packages', command: ['knip'] },
];

/** Runs a command of an installed package, its output shown as it comes; true if it ended with status 0. */
function succeeds(command: readonly string[]): boolean {
  const [program, ...args] = command;
  const onWindows = process.platform === 'win32';
  const run = spawnSync(`node_modules/.bin/${program}`, args, { stdio: 'inherit', shell: onWindows });
  if (run.error) throw run.error;
  return run.status === 0;
}

/** The counts in the report of a finished test run. A run that ended badly has at least one failure. */
function readCounts(ended: 'well' | 'badly'): { passed: number; failed: number } {
  const report = JSON.parse(readFileSync(reportFile, 'utf8')) as Record<string, unknown>;
  const count = (key: string): number => {
    const value = report[key];
    if (typeof value !== 'number') throw new Error(`the test report has no ${key}`);
    return value;
  };
  // A skipped or unwritten test is a failure here.
  const failed = count('numFailedTests') + count('numPendingTests') + count('numTodoTests');
  return { passed: count('numPassedTests'), failed: ended === 'badly' ? Math.max(failed, 1) : failed };
}

/** Runs every check and every test, even after one has failed, and prints the counts of both together. */
function runEverything(): void {
  mkdirSync('.cache', { recursive: true });
  rmSync(reportFile, { force: true });
  rmSync(countsFile, { force: true });
  const failedChecks = checks.filter(({ name, command }) => {
    const start = performance.now();
    const holds = succeeds(command);
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    console.log(`${holds ? 'holds ' : 'FAILS '} ${name} (${seconds} s)`);
    return !holds;
  });
  const testsHold = succeeds([
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportFile}`,
  ]);
  const tests = readCounts(testsHold ? 'well' : 'badly');
  const failed = tests.failed + failedChecks.length;
  for (const { name } of failedChecks) console.log(`FAILS  ${name}`);
  const counts = `${tests.passed + checks.length - failedChecks.length} passed, ${failed} failed`;
  writeFileSync(countsFile, `${counts}\n`);
  console.log(counts);
  process.exitCode = failed === 0 ? 0 : 1;
}

runEverything();
