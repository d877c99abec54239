import { type MessagePort, parentPort } from 'node:worker_threads';
import { runCommand } from '../../src/cli/run-command.ts';
import { visible } from '../../src/cli/visible.ts';

/** One run that is asked for: its arguments, where its answer goes, and the flag that its asker sleeps on. */
interface Asked {
  readonly args: readonly string[];
  readonly answer: MessagePort;
  readonly flag: Int32Array;
}

async function serve({ args, answer, flag }: Asked): Promise<void> {
  let [out, err] = ['', ''];
  const told = await runCommand(args, {
    print: (text) => {
      out += `${visible(text)}\n`;
    },
    complain: (text) => {
      err += `${visible(text)}\n`;
    },
  }).then(
    (status) => ({ status, out, err }),
    // As a process ends of itself: its status is 1, and the fault stands behind what was told.
    (fault: Error) => ({ status: 1, out, err: `${err}${fault.stack}` }),
  );
  answer.postMessage(told);
  answer.close();
  Atomics.store(flag, 0, 1);
  Atomics.notify(flag, 0);
}

// Runs the command line for tests, so that the program is read once and not for each run.
parentPort?.on('message', (asked: Asked) => void serve(asked));
