import { problem } from '../../diagnostics/index.ts';
import { readUnit } from '../../units/index.ts';
import { findFunction } from '../functions/table.ts';
import { nearNames } from '../near-names.ts';
import type { NameSyntax } from '../syntax.ts';
import { onAxes, sameKind, type Type } from '../type.ts';
import type { CellNode, ColumnNode, Typed } from '../typed.ts';
import { broken, type Context } from './context.ts';

/** A name: a cell, this row's value of a column, or a whole column on its fresh axis. */
export function checkName(node: NameSyntax, context: Context, want?: Type): Typed {
  const { from, to, name } = node;
  const found = context.scope.resolve(name);
  if (!found) return unknownName(node, context, want);
  if (found.kind === 'table') {
    const [column] = found.columns;
    const fixes =
      column === undefined ? [] : [{ label: `${name}.${column}`, from, to, insert: `${name}.${column}` }];
    context.report(problem('table-as-value', { from, to }, { name, columns: [...found.columns] }, fixes));
    return broken(node);
  }
  const { named } = found;
  context.refer(named.id);
  const unit = named.unit && { unit: named.unit };
  if (found.kind === 'column') {
    const type = onAxes(named.type, [{ table: found.table, fresh: true }]);
    return { kind: 'column', type, from, to, id: named.id, name, ...unit } satisfies ColumnNode;
  }
  const type = found.kind === 'row' ? onAxes(named.type, [{ table: found.table, fresh: false }]) : named.type;
  return { kind: 'cell', type, from, to, id: named.id, name, ...unit } satisfies CellNode;
}

function unknownName(node: NameSyntax, context: Context, want?: Type): Typed {
  const { from, to, name } = node;
  const fn = findFunction(name);
  if (fn) {
    const call = `${fn.name}()`;
    context.report(
      problem('function-without-call', { from, to }, { name }, [{ label: call, from, to, insert: call }]),
    );
    return broken(node);
  }
  const candidates = [...context.scope.names()].map((known) => ({
    ...known,
    fits: want !== undefined && sameKind(known.type, want),
  }));
  const near = name === 'π' ? ['PI()'] : nearNames(name, candidates);
  const unit = readUnit(name, context.scope.units).ok;
  const fixes = near.map((insert) => ({ label: insert, from, to, insert }));
  const oneOf = unit ? [{ label: `1 ${name}`, from, to, insert: `1 ${name}` }] : [];
  context.report(problem('name-unknown', { from, to }, { name, near, unit }, [...fixes, ...oneOf]));
  return broken(node);
}
