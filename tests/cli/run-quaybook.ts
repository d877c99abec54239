import { spawnSync } from 'node:child_process';
import { bundle } from '../../scripts/run-typescript.js';

/** What one run of the command line gave. */
export interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

const program = await bundle('src/cli/quaybook.ts');

/** Runs `quaybook` as a person would. */
export function quaybook(...args: readonly string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    encoding: 'utf8',
    // The cases of all templates are more than the megabyte that is read unless more is asked for.
    maxBuffer: 64_000_000,
  });
  return { status, out: stdout, err: stderr };
}

/** Runs it and reads its `--json`, whose shape the test states. */
export function quaybookJson(...args: readonly string[]): {
  readonly run: Run;
  readonly json: ReturnType<typeof JSON.parse>;
} {
  const run = quaybook(...args, '--json');
  return { run, json: JSON.parse(run.out) };
}
