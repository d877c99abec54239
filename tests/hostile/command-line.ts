import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Command } from '../../src/cli/command.ts';
import { calc } from '../../src/cli/commands/calc.ts';
import { evaluate } from '../../src/cli/commands/eval.ts';
import { recheck } from '../../src/cli/commands/recheck.ts';
import { Refused } from '../../src/cli/refused.ts';
import { type Random, randomFrom } from '../recheck/random.ts';
import { bookWith } from './book-with.ts';
import { type HostileText, hostileText } from './texts.ts';

/** An input that did harm, and how. */
export interface Harm {
  readonly door: string;
  readonly way: string;
  /** Of a long text its beginning. */
  readonly text: string;
  readonly harm: string;
}

/** Longer than this no input may keep the program busy, in milliseconds of a core. */
const LONGEST = 1000;

type Door = (
  text: string,
  random: Random,
  file: (name: string, contents: string) => string,
) => readonly [Command, readonly string[]];

const doors: Readonly<Record<string, Door>> = {
  formula: (text) => [
    evaluate,
    [text, '--given', 'a=2', '--given', 't.n=[1, 2, 3]', '--given', 'u.n=[4, 5]'],
  ],
  'formula, short': (text) => [evaluate, [text.slice(0, 200), '--json']],
  entry: (text) => [evaluate, ['a', '--given', `a=${text}`]],
  given: (text) => [evaluate, ['1', '--given', text]],
  unit: (text) => [evaluate, ['1 m', '--unit', text]],
  get: (text, random, file) => [calc, [file('book.json', bookWith('3', random)), '--get', text]],
  set: (text, random, file) => [
    calc,
    [file('book.json', bookWith('3', random)), '--set', `a=${text}`, '--json'],
  ],
  'set name': (text, random, file) => [
    calc,
    [file('book.json', bookWith('3', random)), '--set', `${text}=1`],
  ],
  table: (text, random, file) => [
    calc,
    [file('book.json', bookWith('3', random)), '--table', `s.t=${file('table.csv', text)}`, '--json'],
  ],
  columns: (text, random, file) => [
    calc,
    [
      file('book.json', bookWith('3', random)),
      '--table',
      `s.t=${file('table.csv', 'n\n1\n')}`,
      '--columns',
      text,
    ],
  ],
  file: (text, _, file) => [calc, [file('book.json', text)]],
  book: (text, random, file) => [calc, [file('book.json', bookWith(text, random)), '--json']],
  recheck: (text, random, file) => [recheck, [file('book.json', bookWith(text, random))]],
  name: (text) => [calc, [text]],
};

/**
 * Puts so many hostile texts through the doors of the command line, in this process, and gives what did harm: an
 * exception, a second of work, a number that is none, an object that every object inherits from changed.
 */
export async function huntCommandLine(
  count: number,
  seed: number,
  onHarm: (harm: Harm) => void = () => undefined,
): Promise<readonly Harm[]> {
  const random = randomFrom(seed);
  const folder = mkdtempSync(join(tmpdir(), 'quaybook-hostile-'));
  const file = (name: string, contents: string): string => {
    writeFileSync(join(folder, name), contents);
    return join(folder, name);
  };
  const found: Harm[] = [];
  const names = Object.keys(doors);
  const prototypes = namesOfPrototypes();
  for (let at = 0; at < count; at += 1) {
    const hostile = hostileText(random);
    const door = random.pick(names);
    const [command, args] = (doors[door] as Door)(hostile.text, random, file);
    for (const harm of await harmsOf(command, args)) tell(door, hostile, harm);
    if (namesOfPrototypes() !== prototypes) tell(door, hostile, 'a prototype was changed');
  }
  rmSync(folder, { recursive: true });
  return found;

  function tell(door: string, { way, text }: HostileText, harm: string): void {
    const one = {
      door,
      way,
      text: text.length > 120 ? `${text.slice(0, 120)}… (${text.length})` : text,
      harm,
    };
    found.push(one);
    onHarm(one);
  }
}

function namesOfPrototypes(): string {
  return [Object, Array, String, Number, Function]
    .map((of) => Object.getOwnPropertyNames(of.prototype).join())
    .join(';');
}

async function harmsOf(command: Command, args: readonly string[]): Promise<readonly string[]> {
  const harms: string[] = [];
  let said = '';
  const take = (text: string): void => {
    said += `${text}\n`;
  };
  const before = process.cpuUsage();
  try {
    await command.run(args, { print: take, complain: take });
  } catch (error) {
    if (!(error instanceof Refused)) harms.push(`exception: ${String(error).slice(0, 300)}`);
    else if (
      /undefined|NaN|\[object/.test(error.message) &&
      !args.some((arg) => /undefined|NaN|\[object/.test(arg))
    )
      harms.push(`words: ${error.message.slice(0, 300)}`);
  }
  const { user, system } = process.cpuUsage(before);
  const spent = (user + system) / 1000;
  if (spent > LONGEST) harms.push(`busy for ${Math.round(spent)} ms`);
  if (/"value": null, *"unit": "[^"]+", *"text": "(NaN|Infinity)/.test(said))
    harms.push('a value that is no number');
  return harms;
}
