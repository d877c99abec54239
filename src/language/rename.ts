import { parseFormula } from './parse.ts';
import { namesIn } from './syntax.ts';

/**
 * A formula with its names replaced: `rename` gives the new spelling of a name, or undefined to leave it. Everything
 * else of the text, spaces included, stays as written.
 */
export function renameInFormula(text: string, rename: (name: string) => string | undefined): string {
  let renamed = '';
  let at = 0;
  for (const { name, from, to } of namesIn(parseFormula(text).syntax)) {
    const replacement = rename(name);
    if (replacement === undefined) continue;
    renamed += text.slice(at, from) + replacement;
    at = to;
  }
  return renamed + text.slice(at);
}
