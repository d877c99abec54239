import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';

/** A check that is one command: it holds when the command ends with status 0. */
interface Check {
  readonly name: string;
  readonly command: readonly string[];
}

const reportFile = '.cache/vitest.json';
const countsFile = '.cache/test-counts.txt';

/** What a wrong change meets within a minute, before any test: the longest first, the others run beside it. */
const quickChecks: readonly Check[] = [
  {
    name: 'lint that needs types',
    command: ['oxlint', '--type-aware', '--deny-warnings', 'src', 'tests', 'bench'],
  },
  { name: 'types: tests, bench, scripts', command: ['tsc', '-p', 'tests'] },
  { name: 'types: app', command: ['tsc', '-p', 'src/app'] },
  { name: 'types: core, without the DOM', command: ['tsc', '-p', '.'] },
  { name: 'types: command line', command: ['tsc', '-p', 'src/cli'] },
  { name: 'format and lint', command: ['biome', 'check', '--error-on-warnings'] },
  { name: 'unused files, exports, packages', command: ['knip'] },
];

/** What a command came to, and what it printed where that was kept back. */
interface Ended {
  readonly well: boolean;
  readonly printed: string;
}

/** Runs a command of an installed package; what it prints is shown as it comes, or kept for the end. */
function run([program, ...args]: readonly string[], printing: 'shown' | 'kept'): Promise<Ended> {
  const onWindows = process.platform === 'win32';
  return new Promise((resolve, reject) => {
    const stdio = printing === 'shown' ? 'inherit' : 'pipe';
    const child = spawn(`node_modules/.bin/${program}`, args, { stdio, shell: onWindows });
    let printed = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.setEncoding('utf8').on('data', (text: string) => {
        printed += text;
      });
    child.on('error', reject);
    child.on('close', (status) => resolve({ well: status === 0, printed }));
  });
}

/** Runs a check and tells of it when it ends. Gives it if it fails. */
async function runCheck(check: Check): Promise<readonly Check[]> {
  const start = performance.now();
  const { well, printed } = await run(check.command, 'kept');
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`${printed}${well ? 'holds ' : 'FAILS '} ${check.name} (${seconds} s)`);
  return well ? [] : [check];
}

/** Runs the quick checks, two at a time as the machine has cores. Gives those that fail. */
async function runQuickChecks(): Promise<readonly Check[]> {
  const waiting = [...quickChecks];
  const failing: Check[] = [];
  const work = async (): Promise<void> => {
    for (let check = waiting.shift(); check; check = waiting.shift())
      failing.push(...(await runCheck(check)));
  };
  await Promise.all([work(), work()]);
  return failing;
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
async function runEverything(): Promise<void> {
  mkdirSync('.cache', { recursive: true });
  rmSync(reportFile, { force: true });
  rmSync(countsFile, { force: true });
  const failedChecks = await runQuickChecks();
  const { well: testsHold } = await run(
    ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`],
    'shown',
  );
  const tests = readCounts(testsHold ? 'well' : 'badly');
  const failed = tests.failed + failedChecks.length;
  for (const { name } of failedChecks) console.log(`FAILS  ${name}`);
  const counts = `${tests.passed + quickChecks.length - failedChecks.length} passed, ${failed} failed`;
  writeFileSync(countsFile, `${counts}\n`);
  console.log(counts);
  process.exitCode = failed === 0 ? 0 : 1;
}

await runEverything();
