import type { CheckedFormula, Syntax } from '../../../language/index.ts';
import type { Notebook } from '../../../notebook/index.ts';

/** Whether a column (`sheet.table.column`) has its values, and they are all that its formula says. */
export function isListed(notebook: Notebook, id: string): boolean {
  const item = notebook.model.items.get(id);
  return (
    item?.kind === 'formula column' &&
    !item.methods &&
    notebook.column(id).status === 'ok' &&
    listsValues(item.checked)
  );
}

/**
 * Whether the formula of a column only lists the values of its rows, as a table of factors does: one of several constants
 * by the row, with a unit at most. A printed table has them all, so that the formula adds nothing there.
 */
function listsValues({ whole, syntax }: CheckedFormula): boolean {
  return whole && isList(syntax);
}

function isList(node: Syntax): boolean {
  if (node.kind === 'binary' && node.op === '*') return isUnit(node.left) && isList(node.right);
  if (node.kind !== 'call' || node.name.toUpperCase() !== 'CHOOSE') return false;
  const [by, ...values] = node.args;
  return (
    by?.kind === 'call' && by.name.toUpperCase() === 'ROW' && by.args.length === 0 && values.every(isConstant)
  );
}

const isUnit = (node: Syntax): boolean =>
  node.kind === 'group' ? isUnit(node.inner) : node.kind === 'number' && node.value === 1;

function isConstant(node: Syntax): boolean {
  if (node.kind === 'negate' || node.kind === 'percent') return isConstant(node.operand);
  return node.kind === 'number' || node.kind === 'text' || node.kind === 'truth';
}
