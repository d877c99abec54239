import { nearest, type Problem, problem } from '../../diagnostics/index.ts';
import { isTameDimension } from '../../units/index.ts';
import type { FunctionEntry, Parameter } from '../functions/entry.ts';
import { signatureOf } from '../functions/signature.ts';
import { findFunction, functionTable } from '../functions/table.ts';
import type { CallSyntax, RootSyntax, Syntax } from '../syntax.ts';
import { type Axes, onAxes, rowAxes, sameAxis, type Type, unionAxes } from '../type.ts';
import type { CallNode, KnownNode, Typed } from '../typed.ts';
import { checkBranch } from './branches.ts';
import { broken, type Context, written } from './context.ts';
import { overOneTable } from './one-table.ts';
import { checkPower } from './power.ts';
import { checkAbove, checkBlank, checkKnown, checkRow, checkSeries } from './rows.ts';
import { alike, takes } from './taking.ts';

/** A call of a function of the table. */
export function checkCall(node: CallSyntax, context: Context): Typed {
  const fn = findFunction(node.name);
  if (!fn) {
    for (const arg of node.args) context.check(arg);
    context.report(unknownFunction(node, context));
    return broken(node);
  }
  if (!countFits(fn, node, context)) {
    for (const arg of node.args) context.check(arg);
    return broken(node);
  }
  if (fn.evaluate.kind === 'special') {
    switch (fn.evaluate.node) {
      case 'branch':
        return checkBranch(fn, node, context);
      case 'above':
        return checkAbove(fn, node, context);
      case 'row':
        return checkRow(fn, node, context);
      case 'blank':
        return checkBlank(fn, node, context);
      case 'known':
        return checkKnownOutside(fn, node, context);
      case 'series':
        return checkSeries(fn, node, context);
      case 'power':
        return checkPowerCall(node, context);
    }
  }
  return checkOrdinary(fn, node, node.args, context);
}

function unknownFunction(node: CallSyntax, context: Context): Problem {
  const { name, nameSpan } = node;
  if (context.scope.resolve(name)) {
    const instead = `${name} * ${written(context, { from: nameSpan.to, to: node.to }).trim()}`;
    const fix = { label: instead, from: node.from, to: node.to, insert: instead };
    return problem('name-as-function', nameSpan, { name, instead }, [fix]);
  }
  const near = nearest(
    name.toUpperCase(),
    functionTable.map((entry) => entry.name),
  );
  const fixes = near.map((insert) => ({ label: insert, ...nameSpan, insert }));
  return problem('function-unknown', nameSpan, { name, near }, fixes);
}

/** `√x` is SQRT. */
export function checkRoot(node: RootSyntax, context: Context): Typed {
  const fn = findFunction('SQRT');
  if (!fn) throw new Error('the function table has no SQRT');
  return checkOrdinary(fn, node, [node.operand], context);
}

/** `POWER(a; b)` is `a^b`. */
function checkPowerCall(node: CallSyntax, context: Context): Typed {
  const { from, to } = node;
  const [base, exponent] = node.args;
  return base && exponent ? checkPower({ kind: 'power', from, to, base, exponent }, context) : broken(node);
}

/** The parameter an argument belongs to, counting repeated groups; undefined beyond the last. */
function parameterAt(fn: FunctionEntry, index: number): Parameter | undefined {
  const repeating = fn.parameters.findIndex((parameter) => parameter.repeats);
  if (repeating < 0 || index < repeating) return fn.parameters[index];
  const group = fn.parameters.length - repeating;
  return fn.parameters[repeating + ((index - repeating) % group)];
}

function countFits(fn: FunctionEntry, node: CallSyntax, context: Context): boolean {
  const given = node.args.length;
  const needed = fn.parameters.filter((parameter) => !parameter.optional).length;
  const repeating = fn.parameters.some((parameter) => parameter.repeats);
  if (given >= needed && (repeating || given <= fn.parameters.length)) return true;
  if (!context.whole) return false;
  const most = fn.parameters.length;
  const count = repeating ? `at least ${needed}` : needed === most ? `${needed}` : `${needed} to ${most}`;
  const wanted = most === 0 ? 'no arguments' : `${count} ${/\b1$/.test(count) ? 'argument' : 'arguments'}`;
  const facts = { function: fn.name, signature: signatureOf(fn), given, wanted };
  context.report(problem('argument-count', node, facts));
  return false;
}

function checkKnownOutside(fn: FunctionEntry, node: CallSyntax, context: Context): Typed {
  checkKnown(fn, node, context);
  context.report(problem('known-outside', node, { written: written(context, node) }));
  return broken(node);
}

/** A call whose arguments are values: elementwise, gathered, or down the rows. */
function checkOrdinary(
  fn: FunctionEntry,
  node: { readonly from: number; readonly to: number },
  parts: readonly Syntax[],
  context: Context,
): Typed {
  const args: Typed[] = [];
  const options: string[] = [];
  const letters = new Map<string, Typed[]>();
  let fits = true;
  for (const [index, part] of parts.entries()) {
    const parameter = parameterAt(fn, index);
    if (!parameter) throw new Error(`${fn.name} has no parameter ${index}`);
    if (parameter.takes.kind === 'option') {
      const option = readOption(fn, parameter, part, context);
      if (option === undefined) fits = false;
      else options.push(option);
      continue;
    }
    const arg = checkArgument(fn, part, letters, parameter, context);
    fits = takes(fn, parameter, arg, context) && fits;
    args.push(arg);
    if (parameter.takes.kind === 'like') {
      const known = letters.get(parameter.takes.letter) ?? [];
      letters.set(parameter.takes.letter, [...known, arg]);
    }
  }
  if (!fits) return broken(node);
  for (const group of letters.values()) if (!alike(fn, group, context)) return broken(node);
  const axes = axesOfCall(fn, node, args, context);
  if (!axes) return broken(node);
  const types = args.map((arg) => arg.type);
  const prepared = fn.prepare ? fn.prepare(options, types, context.scope.units) : options;
  const gives = fn.gives(types);
  if (typeof prepared === 'string' || typeof gives === 'string') {
    const because = typeof prepared === 'string' ? prepared : (gives as string);
    context.report(problem('function-refuses', node, { function: fn.name, because }));
    return broken(node);
  }
  if (gives.kind === 'number' && !isTameDimension(gives.dimension)) {
    context.report(problem('dimension-too-high', node, { written: written(context, node) }));
    return broken(node);
  }
  const { from, to } = node;
  return {
    kind: 'call',
    fn,
    type: onAxes(gives, axes),
    from,
    to,
    args,
    options: prepared,
  } satisfies CallNode;
}

function checkArgument(
  fn: FunctionEntry,
  part: Syntax,
  letters: ReadonlyMap<string, readonly Typed[]>,
  parameter: Parameter,
  context: Context,
): Typed {
  const pooled = fn.evaluate.kind === 'gather' && fn.evaluate.pooled === true;
  if (pooled && parameter.role === 'column' && part.kind === 'call') {
    const inner = findFunction(part.name);
    if (inner?.evaluate.kind === 'special' && inner.evaluate.node === 'known' && part.args.length === 1)
      return checkKnown(inner, part, context) satisfies KnownNode | Typed;
  }
  const want: Type | undefined =
    parameter.takes.kind === 'like' ? letters.get(parameter.takes.letter)?.[0]?.type : undefined;
  return context.check(part, want);
}

/** Options are literal, so that the reader sees which one is meant. */
function readOption(
  fn: FunctionEntry,
  parameter: Parameter,
  part: Syntax,
  context: Context,
): string | undefined {
  const choices = parameter.takes.kind === 'option' ? parameter.takes.choices : undefined;
  const literal =
    part.kind === 'text'
      ? part.value
      : part.kind === 'number' && !part.unit && !choices
        ? `${part.value}`
        : undefined;
  if (literal !== undefined && (!choices || choices.includes(literal))) return literal;
  const { from, to } = part;
  const fixes = (choices ?? []).map((choice) => ({ label: `"${choice}"`, from, to, insert: `"${choice}"` }));
  const facts = {
    function: fn.name,
    argument: parameter.name,
    written: literal ?? written(context, part),
    choices: [...(choices ?? [])],
  };
  context.report(problem('option-wanted', part, facts, fixes));
  return undefined;
}

function axesOfCall(
  fn: FunctionEntry,
  node: { readonly from: number; readonly to: number },
  args: readonly Typed[],
  context: Context,
): Axes | undefined {
  const all = unionAxes(args.map((arg) => arg.type.axes));
  switch (fn.evaluate.kind) {
    case 'each':
    case 'text':
    case 'special':
      return all;
    case 'scan': {
      const table = context.scope.table;
      const [arg] = args;
      if (table === undefined || !arg) {
        context.report(problem('row-function-outside', node, { function: fn.name }));
        return undefined;
      }
      if (arg.type.axes.some((axis) => axis.fresh || axis.table !== table) || arg.type.axes.length === 0) {
        context.report(
          problem('row-value-wanted', arg, { function: fn.name, written: written(context, arg) }),
        );
        return undefined;
      }
      return all;
    }
    case 'gather': {
      const roles = args.map((_, index) => argumentRole(fn, index));
      const gathered = unionAxes(
        args.filter((_, index) => roles[index] === 'column').map((arg) => arg.type.axes),
      ).filter((axis) => axis.fresh);
      if (!overOneTable(fn, node, args, gathered, context)) return undefined;
      const clash = args.find(
        (arg, index) =>
          roles[index] === 'each' &&
          arg.type.axes.some((axis) => gathered.some((other) => sameAxis(axis, other))),
      );
      if (clash) {
        context.report(
          problem('same-table-twice', clash, { function: fn.name, written: written(context, clash) }),
        );
        return undefined;
      }
      return gathered.length === 0
        ? rowOnlyAxes(all)
        : all.filter((axis) => !gathered.some((other) => sameAxis(axis, other)));
    }
  }
}

/** The role of an argument counted without the options. */
function argumentRole(fn: FunctionEntry, index: number): 'each' | 'column' {
  const kept = fn.parameters.filter((parameter) => parameter.role !== 'option');
  const repeating = kept.findIndex((parameter) => parameter.repeats);
  const at =
    repeating < 0 || index < repeating
      ? index
      : repeating + ((index - repeating) % (kept.length - repeating));
  const role = kept[at]?.role;
  return role === 'column' ? 'column' : 'each';
}

function rowOnlyAxes(axes: Axes): Axes {
  return axes.some((axis) => axis.fresh) ? axes : rowAxes(axes);
}
