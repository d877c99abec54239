import type { Output } from './command.ts';

/**
 * Prints an object of objects as JSON, the entries of each member in `streamed` one by one as they are made, so that
 * no text holds all of them. The text is that of `JSON.stringify(value, null, 2)`.
 */
export function printJson(
  streamed: Readonly<Record<string, Iterable<readonly [key: string, value: object]>>>,
  rest: object,
  output: Output,
): void {
  output.print('{');
  const members = Object.entries(rest).filter(([, value]) => value !== undefined);
  let left = Object.keys(streamed).length + members.length;
  const comma = (): string => {
    left -= 1;
    return left > 0 ? ',' : '';
  };
  for (const [name, entries] of Object.entries(streamed)) {
    let held: string | undefined;
    for (const [key, value] of entries) {
      output.print(held === undefined ? `  ${JSON.stringify(name)}: {` : `${held},`);
      held = memberLines(key, value, 2);
    }
    if (held !== undefined) output.print(held);
    output.print(held === undefined ? `  ${JSON.stringify(name)}: {}${comma()}` : `  }${comma()}`);
  }
  for (const [key, value] of members) output.print(`${memberLines(key, value, 1)}${comma()}`);
  output.print('}');
}

/** A member of an object, or of an object in an object, as the lines it has there. */
function memberLines(key: string, value: unknown, depth: 1 | 2): string {
  const within = depth === 1 ? { [key]: value } : { '': { [key]: value } };
  const [before, after] = depth === 1 ? ['{\n', '\n}'] : ['{\n  "": {\n', '\n  }\n}'];
  return JSON.stringify(within, null, 2).slice(before.length, -after.length);
}
