import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { bundle } from '../../scripts/run-typescript.js';

/** What one run of the command line gave. */
export interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

const server = new Worker(await bundle('tests/cli/serve-quaybook.ts'));
// It waits for runs, and is not to be waited for.
server.unref();

/** Longer than this no run takes, in milliseconds. */
const LONGEST = 120_000;

/** Runs `quaybook` with these arguments, in a thread where the program stays read, and waits for its end. */
export function quaybook(...args: readonly string[]): Run {
  const flag = new Int32Array(new SharedArrayBuffer(4));
  const { port1, port2 } = new MessageChannel();
  server.postMessage({ args, answer: port2, flag }, [port2]);
  const ended = Atomics.wait(flag, 0, 0, LONGEST);
  const told: { readonly message: Run } | undefined = receiveMessageOnPort(port1);
  port1.close();
  if (told === undefined) throw new Error(`quaybook ${args.join(' ')}: ${ended}, and no answer came`);
  return told.message;
}

/** Runs it and reads its `--json`, whose shape the test states. */
export function quaybookJson(...args: readonly string[]): {
  readonly run: Run;
  readonly json: ReturnType<typeof JSON.parse>;
} {
  const run = quaybook(...args, '--json');
  return { run, json: JSON.parse(run.out) };
}
