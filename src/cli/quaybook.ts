#!/usr/bin/env node
import { writeSync } from 'node:fs';
import { REFUSES } from './command.ts';
import { runCommand } from './run-command.ts';
import { visible } from './visible.ts';

// A reader that closes the pipe early has what it wanted; anything else that takes no output is told, if that can be.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    const why =
      error.code === 'ENOSPC' ? 'there is no space left' : `the system says ${error.code ?? error.message}`;
    if (stream === process.stdout) writeToStandardError(`the output cannot be written (${why})`);
    process.exit(REFUSES);
  });

/** Without a stream, whose end would not be waited for; that there is no standard error either cannot be told. */
function writeToStandardError(text: string): void {
  try {
    writeSync(2, `${text}\n`);
  } catch {
    // The exit status alone tells it.
  }
}

process.exitCode = await runCommand(process.argv.slice(2), {
  print: (text) => process.stdout.write(`${visible(text)}\n`),
  complain: (text) => process.stderr.write(`${visible(text)}\n`),
});
