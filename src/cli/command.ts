/** One command of the command line. */
export interface Command {
  readonly name: string;
  /** What follows the program's name, as the usage line has it. */
  readonly usage: string;
  readonly help: string;
  /** Carries it out and gives the exit status. Throws `Refused` where it cannot be. */
  readonly run: (args: readonly string[], output: Output) => number | Promise<number>;
}

/** Where a command writes. */
export interface Output {
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
}

/** Nothing disagrees. */
export const AGREES = 0;
/** A check, hand value, recheck or case disagrees, or a check holds only with values beyond their permitted ranges. */
export const DISAGREES = 1;
/** All checks hold, and one of them only by a stated value: with the computed one it would fail or have no value. */
export const BY_STATED = 3;
/** The book or the command cannot be used, or a requested result has no value. */
export const REFUSES = 2;
