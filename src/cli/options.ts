import { parseArgs } from 'node:util';
import { nearest } from '../diagnostics/index.ts';
import { Refused } from './refused.ts';
import { shorten } from './shorten.ts';

/** The options a command takes: with a value once or many times, or alone. */
export type OptionKinds = Readonly<Record<string, 'once' | 'many' | 'alone'>>;

export interface GivenOptions {
  readonly positionals: readonly string[];
  readonly once: (name: string) => string | undefined;
  readonly many: (name: string) => readonly string[];
  readonly alone: (name: string) => boolean;
}

/** Reads a command's options; one it does not take, or one without its value, is refused in a sentence. */
export function readOptions(command: string, args: readonly string[], kinds: OptionKinds): GivenOptions {
  const { values, positionals } = parse(command, args, kinds);
  const list = (name: string): readonly string[] => {
    const value = values[name];
    return Array.isArray(value) ? value.map(String) : typeof value === 'string' ? [value] : [];
  };
  return {
    positionals,
    once: (name) => {
      const found = list(name);
      if (found.length > 1) throw new Refused(`--${name} is given more than once`);
      return found[0];
    },
    many: list,
    alone: (name) => list(name).length > 0 || values[name] === true || Array.isArray(values[name]),
  };
}

function parse(command: string, args: readonly string[], kinds: OptionKinds) {
  const options = Object.fromEntries(
    Object.entries(kinds).map(([name, kind]) => [
      name,
      { type: kind === 'alone' ? ('boolean' as const) : ('string' as const), multiple: true },
    ]),
  );
  return parseArgs({ args: sorted(command, args, kinds), options, allowPositionals: true, strict: true });
}

/**
 * The arguments with `--set NAME=-3 kN` and the like as one word, since a value may begin with a minus sign, and with
 * all that is no option behind a `--`, since a formula may begin with one too.
 */
function sorted(command: string, args: readonly string[], kinds: OptionKinds): string[] {
  const words: string[] = [];
  const positionals: string[] = [];
  for (let at = 0; at < args.length; at += 1) {
    const arg = args[at] ?? '';
    if (arg === '--') {
      positionals.push(...args.slice(at + 1));
      break;
    }
    const [, name, equals] = /^--([a-z][^=]*)(=)?/is.exec(arg) ?? [];
    if (name === undefined) {
      positionals.push(arg);
      continue;
    }
    const kind = kindOf(command, name, kinds);
    if (kind === 'alone' && equals) throw new Refused(`--${name} takes no value`);
    if (kind === 'alone' || equals) words.push(arg);
    else {
      const value = args[at + 1];
      if (value === undefined) throw new Refused(`${arg} needs a value after it`);
      words.push(`${arg}=${value}`);
      at += 1;
    }
  }
  return [...words, '--', ...positionals];
}

function kindOf(command: string, name: string, kinds: OptionKinds): 'once' | 'many' | 'alone' {
  const kind = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
  if (kind !== undefined) return kind;
  const near = nearest(name, Object.keys(kinds), 1).map((one) => `; did you mean --${one}?`);
  throw new Refused(`${command} takes no option --${shorten(name)}${near.join('')}`);
}

/** `NAME=VALUE` split at the first equals sign; `what` says what the value is. */
export function splitAssignment(
  option: string,
  text: string,
  what = 'VALUE',
): readonly [name: string, value: string] {
  const at = text.indexOf('=');
  const name = text.slice(0, at).trim();
  if (at < 0 || name === '')
    throw new Refused(`--${option} takes NAME=${what}, and “${shorten(text)}” is none`);
  return [name, text.slice(at + 1)];
}
