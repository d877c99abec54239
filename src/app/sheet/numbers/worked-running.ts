import type { CallNode, CallSyntax, Syntax } from '../../../language/index.ts';
import type { PartPlace } from '../../../notebook/index.ts';
import { chain } from './chain.ts';
import type { Working } from './working.ts';

/** A running function: what it came to in the row above, and what this row adds. */
export function workRunning(
  typed: CallNode,
  node: CallSyntax,
  place: PartPlace,
  working: Working,
): Syntax | undefined {
  const { row } = place;
  const [arg] = node.args;
  if (row === undefined || !arg) return undefined;
  const here = working.work(arg, place);
  if (row === 0) return here;
  const above = working.notebook.parts.valueOf(typed, { ...place, row: row - 1 });
  if (!above) return undefined;
  const terms = [working.put(above), here];
  working.note(`${typed.fn.name} in row ${row}, the row above: ${working.write(above)}`, place);
  return typed.fn.worked?.as === 'sum' ? chain(terms, '+') : { ...node, args: terms };
}
