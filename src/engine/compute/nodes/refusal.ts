import { type Problem, problem, quoted } from '../../../diagnostics/index.ts';
import type { CallNode, Refusal, UnmetCondition } from '../../../language/index.ts';
import type { CauseFinder } from '../cause.ts';
import { namedValues } from './named-values.ts';

/** The problem of a call whose function refuses its arguments. `values` are those of the arguments, NaN if unknown. */
export function refusalOf(
  node: CallNode,
  refusal: Refusal,
  values: readonly number[],
  finder: CauseFinder,
): Problem {
  if ('sought' in refusal) return noRowMeets(node, refusal, finder);
  const { words, argument } = refusal;
  const part = argument === undefined ? undefined : node.args[argument];
  const value = argument === undefined ? undefined : values[argument];
  const asPerson = {
    shown: (si: number) => finder.shown(si, part ?? node),
    written: (at: number) => {
      const arg = node.args[at];
      return arg ? quoted(finder.written(arg)) : '';
    },
  };
  const because = typeof words === 'string' ? words : words(asPerson);
  const facts = { function: node.fn.name, because, written: finder.written(node) };
  if (!part || value === undefined || Number.isNaN(value)) return problem('outside-domain', node, facts);
  const named = { argument: finder.written(part), value: finder.shown(value, part) };
  return problem('outside-domain', part, { ...facts, ...named });
}

/** What was looked for and the condition that no row meets, with what the names in it stand for. */
function noRowMeets(node: CallNode, { sought, rows }: UnmetCondition, finder: CauseFinder): Problem {
  const [condition, value] = node.args;
  return problem('no-row-meets', node, {
    function: node.fn.name,
    sought,
    of: value ? finder.called(value) : '',
    condition: condition ? finder.written(condition) : '',
    rows,
    values: namedValues(node.args.slice(0, 1), finder),
  });
}
