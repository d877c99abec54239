import type { Syntax } from '../../language/index.ts';
import type { FormulaItem, Side } from '../../notebook/index.ts';

/** Whether a formula has numbers to put in: one that is a number or a name alone says nothing new. */
export function hasNumbers(node: Syntax): boolean {
  return node.kind !== 'number' && node.kind !== 'text' && node.kind !== 'error' && node.kind !== 'truth';
}

/** Whether a side of a check is worked out within it: neither a line, a number nor stated. */
export function isSideWorked({ checked: { syntax, typed }, sides }: FormulaItem): boolean {
  if (syntax.kind !== 'comparison' || typed.kind !== 'compare') return hasNumbers(syntax);
  const turned = typed.op === '>=' || typed.op === '>';
  const [left, right] = turned ? (['capacity', 'demand'] as const) : (['demand', 'capacity'] as const);
  const isWorked = (side: Syntax, of: Side): boolean =>
    !sides?.[of] && side.kind !== 'name' && hasNumbers(side);
  return isWorked(syntax.left, left) || isWorked(syntax.right, right);
}
