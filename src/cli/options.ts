import { parseArgs } from 'node:util';
import { nearest } from '../diagnostics/index.ts';
import { Refused } from './refused.ts';

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
  for (const arg of args) {
    if (arg === '--') break;
    if (!arg.startsWith('--')) continue;
    const name = arg.slice(2).split('=')[0] ?? '';
    if (name in kinds) continue;
    const near = nearest(name, Object.keys(kinds), 1).map((one) => `; did you mean --${one}?`);
    throw new Refused(`${command} takes no option --${name}${near.join('')}`);
  }
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
  try {
    return parseArgs({ args: joined(args, kinds), options, allowPositionals: true, strict: true });
  } catch (error) {
    const said = error instanceof Error ? error.message.split('\n')[0] : String(error);
    throw new Refused(`${command}: ${said}`);
  }
}

/** `--set NAME=-3 kN` and the like as one word, since a value may begin with a minus sign. */
function joined(args: readonly string[], kinds: OptionKinds): string[] {
  const words: string[] = [];
  for (let at = 0; at < args.length; at += 1) {
    const arg = args[at] ?? '';
    const name = arg.slice(2);
    const takesValue = arg.startsWith('--') && (kinds[name] === 'once' || kinds[name] === 'many');
    const value = args[at + 1];
    if (takesValue && value !== undefined) {
      words.push(`${arg}=${value}`);
      at += 1;
    } else if (takesValue) throw new Refused(`${arg} needs a value after it`);
    else words.push(arg);
  }
  return words;
}

/** `NAME=VALUE` split at the first equals sign. */
export function splitAssignment(option: string, text: string): readonly [name: string, value: string] {
  const at = text.indexOf('=');
  const name = text.slice(0, at).trim();
  if (at < 0 || name === '') throw new Refused(`--${option} takes NAME=VALUE, and “${text}” is none`);
  return [name, text.slice(at + 1)];
}
