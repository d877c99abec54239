import type { CallNode, CallSyntax, Syntax } from '../../language/index.ts';
import { type PartPlace, statedIn } from '../../notebook/index.ts';
import { chain } from './chain.ts';
import type { Working } from './working.ts';

/** Says where a value is stated in the row above that it does not go on from what is stated, but from what is computed. */
function statedAbove(typed: CallNode, { item, checked, row = 0 }: PartPlace, working: Working): string {
  if (item.kind !== 'formula column' || checked.typed !== typed) return '';
  const stated = statedIn(working.notebook, item).find((one) => one.row === row - 1)?.value;
  return stated ? `, as computed: it does not go on from the ${working.write(stated)} stated there` : '';
}

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
  working.note(
    `${typed.fn.name} in row ${row}, the row above: ${working.write(above)}${statedAbove(typed, place, working)}`,
    place,
  );
  return typed.fn.worked?.as === 'sum' ? chain(terms, '+') : { ...node, args: terms };
}
