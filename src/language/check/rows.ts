import { problem } from '../../diagnostics/index.ts';
import type { FunctionEntry } from '../functions/entry.ts';
import type { CallSyntax, Syntax } from '../syntax.ts';
import { type Axis, onAxes, plainType, truthType, unionAxes } from '../type.ts';
import type { AboveNode, BlankNode, KnownNode, RowNode, SeriesNode, Typed } from '../typed.ts';
import { broken, type Context, written } from './context.ts';
import { alike } from './taking.ts';
import { describe } from './words.ts';

/** `ABOVE(column; first)`: the row before this one of the formula's own table. */
export function checkAbove(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  const [column, first] = checkTwo(node, context);
  if (!column || !first || !inTable(fn, node, context)) return broken(node);
  if (column.type.kind === 'unknown' || first.type.kind === 'unknown') return broken(node);
  if (column.kind !== 'cell' || column.type.axes.length === 0) {
    context.report(
      problem('row-value-wanted', column, { function: fn.name, written: written(context, column) }),
    );
    return broken(node);
  }
  const type = alike(fn, [column, first], context);
  if (!type) return broken(node);
  const axes = unionAxes([column.type.axes, first.type.axes]);
  const { from, to } = node;
  return { kind: 'above', fn, type: onAxes(type, axes), from, to, column, first } satisfies AboveNode;
}

/** `ROW()`. */
export function checkRow(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  const axis = inTable(fn, node, context);
  if (!axis) return broken(node);
  return { kind: 'row', fn, type: onAxes(plainType, [axis]), from: node.from, to: node.to } satisfies RowNode;
}

/** `ISBLANK(name)`. */
export function checkBlank(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  const [part] = node.args;
  if (!part) return broken(node);
  const cell = context.check(part);
  if (cell.type.kind === 'unknown') return broken(node);
  if (cell.kind !== 'cell') {
    const facts = { written: written(context, cell), column: cell.kind === 'column' };
    context.report(problem('blank-of-what', cell, facts));
    return broken(node);
  }
  const type = onAxes(truthType, cell.type.axes);
  return { kind: 'blank', fn, type, from: node.from, to: node.to, cell } satisfies BlankNode;
}

/** `KNOWN(table.column)`; the caller sees to it that it stands inside an aggregate. */
export function checkKnown(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  const [part] = node.args;
  if (!part) return broken(node);
  const column = context.check(part);
  if (column.type.kind === 'unknown') return broken(node);
  if (column.kind !== 'column') {
    const facts = {
      function: fn.name,
      argument: 'the column',
      written: written(context, column),
      is: describe(column, context.scope.units),
      wanted: 'a whole column, table.column',
    };
    context.report(problem('argument-kind', column, facts));
    return broken(node);
  }
  return { kind: 'known', fn, type: column.type, from: node.from, to: node.to, column } satisfies KnownNode;
}

/** `SERIES(start; stop; step)` as the whole formula of the column that makes the rows. */
export function checkSeries(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  const args = node.args.map((arg) => context.check(arg));
  const [start, stop, step] = args;
  const table = context.scope.table;
  const whole = context.text.slice(0, node.from).trim().replace('=', '') === '';
  if (!context.series || table === undefined || !whole) {
    context.report(problem('series-outside', node, {}));
    return broken(node);
  }
  if (!start || !stop || !step || args.some((arg) => arg.type.kind === 'unknown')) return broken(node);
  const odd = args.find((arg) => arg.type.kind !== 'number' || arg.type.axes.length > 0);
  if (odd) {
    const facts = {
      function: fn.name,
      argument: 'each argument',
      written: written(context, odd),
      is: describe(odd, context.scope.units),
      wanted: 'one number',
    };
    context.report(problem('argument-kind', odd, facts));
    return broken(node);
  }
  const type = alike(fn, args, context);
  if (!type) return broken(node);
  const axes: readonly Axis[] = [{ table, fresh: false }];
  const { from, to } = node;
  return { kind: 'series', fn, type: onAxes(type, axes), from, to, start, stop, step } satisfies SeriesNode;
}

function checkTwo(node: CallSyntax, context: Context): readonly [Typed | undefined, Typed | undefined] {
  const check = (part: Syntax | undefined) => part && context.check(part);
  return [check(node.args[0]), check(node.args[1])];
}

function inTable(fn: FunctionEntry, node: CallSyntax, context: Context): Axis | undefined {
  const { table } = context.scope;
  if (table !== undefined) return { table, fresh: false };
  context.report(problem('row-function-outside', node, { function: fn.name }));
  return undefined;
}
