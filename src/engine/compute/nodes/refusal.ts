import { type Problem, problem, quoted } from '../../../diagnostics/index.ts';
import type { CallNode, Refusal } from '../../../language/index.ts';
import type { Blamer } from '../blame.ts';

/** The problem of a call whose function refuses its arguments. `values` are those of the arguments, NaN if unknown. */
export function refusalOf(
  node: CallNode,
  refusal: Refusal,
  values: readonly number[],
  blamer: Blamer,
): Problem {
  const { words, argument } = refusal;
  const part = argument === undefined ? undefined : node.args[argument];
  const value = argument === undefined ? undefined : values[argument];
  const asPerson = {
    shown: (si: number) => blamer.shown(si, part ?? node),
    written: (at: number) => {
      const arg = node.args[at];
      return arg ? quoted(blamer.written(arg)) : '';
    },
  };
  const because = typeof words === 'string' ? words : words(asPerson);
  const facts = { function: node.fn.name, because, written: blamer.written(node) };
  if (!part || value === undefined || Number.isNaN(value)) return problem('outside-domain', node, facts);
  const named = { argument: blamer.written(part), value: blamer.shown(value, part) };
  return problem('outside-domain', part, { ...facts, ...named });
}
