import { nearest } from '../diagnostics/index.ts';
import { PROGRAM_VERSION } from '../record/index.ts';
import { type Command, type Output, REFUSES } from './command.ts';
import { calc } from './commands/calc.ts';
import { checking } from './commands/checking.ts';
import { compare } from './commands/compare.ts';
import { evaluate } from './commands/eval.ts';
import { recheck } from './commands/recheck.ts';
import { record } from './commands/record.ts';
import { verify } from './commands/verify.ts';
import { Refused } from './refused.ts';

const commands: readonly Command[] = [calc, compare, recheck, evaluate, verify, checking, record];

function usage(listed: readonly Command[]): string {
  return listed.map((command) => `  quaybook ${command.usage}\n      ${command.help}`).join('\n');
}

function find(name: string | undefined): Command {
  const command = commands.find((one) => one.name === name);
  if (command) return command;
  if (name === undefined) throw new Refused('a command is missing; quaybook --help lists them');
  const near = nearest(
    name,
    commands.map((one) => one.name),
    1,
  ).map((one) => `; did you mean ${one}?`);
  throw new Refused(`there is no command “${name}”${near.join('')}`);
}

/** Carries out what the arguments say, and gives the exit status. Throws only what is a fault of the program. */
export async function runCommand(args: readonly string[], output: Output): Promise<number> {
  const [name, ...rest] = args;
  if (name === '--help' || name === 'help') {
    output.print(usage(commands));
    return 0;
  }
  if (name === '--version') {
    output.print(`quaybook ${PROGRAM_VERSION}`);
    return 0;
  }
  try {
    const command = find(name);
    if (rest[0] === '--help') {
      output.print(usage([command]));
      return 0;
    }
    return await command.run(rest, output);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    if (rest.includes('--json')) output.print(JSON.stringify(error.printed(), null, 2));
    output.complain(error.message);
    return REFUSES;
  }
}
