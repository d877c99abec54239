import { type Problem, problem } from '../../diagnostics/index.ts';
import { PLAIN, sameDimension, type Unit } from '../../units/index.ts';
import { type ParsedFormula, parseFormula } from '../parse.ts';
import type { Scope } from '../scope.ts';
import type { Syntax } from '../syntax.ts';
import { type Type, textType, truthType } from '../type.ts';
import { partsOf, type Typed } from '../typed.ts';
import { typeOfUnit } from '../unit-type.ts';
import { checkBinary, checkNegate, checkPercent } from './arithmetic.ts';
import { checkCall, checkRoot } from './calls.ts';
import { checkComparison } from './comparison.ts';
import { broken, type Context } from './context.ts';
import { checkNumber } from './literals.ts';
import { checkName } from './names.ts';
import { checkRaised } from './power.ts';
import { describe, describeType, massAndForce } from './words.ts';

/** A formula with its types found and everything wrong with it said. */
export interface CheckedFormula {
  readonly text: string;
  readonly syntax: Syntax;
  /** Whether all of the text could be read; else the tree lacks what could not. */
  readonly whole: boolean;
  /** The typed tree; its type is `unknown` if anything is wrong with it. */
  readonly typed: Typed;
  readonly problems: readonly Problem[];
  /** Every cell and column the formula names, found even where it has problems. */
  readonly references: ReadonlySet<string>;
}

/** What the place of a formula asks of its result. */
export interface Expected {
  /** The unit column, where it is filled; of a comparison, what its two sides are read in. */
  readonly unit?: Unit;
  /** A kind the result must have. */
  readonly kind?: 'truth';
  /** Whether the formula makes the rows of its table. */
  readonly series?: boolean;
}

/**
 * Finds the type of every part of a formula before any number is computed. Never throws on what a person can write.
 * A problem of an unknown name or a broken part is said once and poisons no further.
 */
export function checkFormula(
  source: string | ParsedFormula,
  scope: Scope,
  expected: Expected = {},
): CheckedFormula {
  const parsed = typeof source === 'string' ? parseFormula(source) : source;
  const problems: Problem[] = [...parsed.problems];
  const references = new Set<string>();
  const context: Context = {
    text: parsed.text,
    scope,
    series: expected.series === true,
    whole: parsed.problems.length === 0,
    report: (found) => report(found, problems),
    refer: (id) => references.add(id),
    check: (node, want) => visit(node, context, want),
  };
  const want = expected.unit && expected.kind === undefined ? typeOfUnit(expected.unit) : undefined;
  const typed = visit(parsed.syntax, context, want);
  checkResult(typed, expected, context);
  const failed = problems.some((found) => found.severity === 'error');
  return {
    text: parsed.text,
    syntax: parsed.syntax,
    whole: context.whole,
    typed: failed ? broken(typed) : typed,
    problems,
    references,
  };
}

/**
 * Adds a problem. An unknown name is told once, where it stands first; a name after a number is a product without its
 * sign, not a unit that needs a space.
 */
function report(found: Problem, problems: Problem[]): void {
  const at = problems.findIndex((known) =>
    found.code === 'name-unknown'
      ? known.code === found.code && known.data.name === found.data.name
      : found.code === 'unwritten-product' && known.code === 'unit-needs-space' && known.from === found.from,
  );
  const said = problems[at];
  if (!said) problems.push(found);
  else if (found.code !== 'name-unknown' || found.from < said.from) problems[at] = found;
}

function visit(node: Syntax, context: Context, want?: Type): Typed {
  const { from, to } = node;
  switch (node.kind) {
    case 'number':
      return checkNumber(node, context);
    case 'text':
      return { kind: 'text', type: textType, from, to, text: node.value };
    case 'truth':
      return { kind: 'truth', type: truthType, from, to, value: node.value };
    case 'name':
      return checkName(node, context, want);
    case 'call':
      return checkCall(node, context);
    case 'group':
      return visit(node.inner, context, want);
    case 'negate':
      return checkNegate(node, context, want);
    case 'percent':
      return checkPercent(node, context);
    case 'root':
      return checkRoot(node, context);
    case 'power':
      return checkRaised(node, context);
    case 'binary':
      return checkBinary(node, context, want);
    case 'comparison':
      return checkComparison(node, context);
    case 'error':
      return broken(node);
  }
}

function checkResult(typed: Typed, expected: Expected, context: Context): void {
  const { type } = typed;
  if (type.kind === 'unknown') return;
  const own = context.scope.table;
  if (type.axes.some((axis) => axis.fresh || axis.table !== own)) {
    const column = firstColumn(typed) ?? typed;
    const name = context.text.slice(column.from, column.to);
    context.report(problem('whole-column', column, { name, truth: type.kind === 'truth' }));
    return;
  }
  if (expected.unit) {
    const measured = expected.kind === 'truth' ? measuredSide(typed) : typed;
    if (measured) checkUnit(measured, measured !== typed, expected.unit, context);
  }
  if (expected.kind === 'truth' && type.kind !== 'truth') {
    const is = describe(typed, context.scope.units);
    const text = context.text.slice(typed.from, typed.to);
    context.report(
      problem('unit-disagrees', typed, {
        written: text,
        side: false,
        is,
        unit: '',
        unitIs: 'true or false: a comparison',
      }),
    );
  }
}

/** The side of a comparison of quantities that says what is compared; a bare zero has any unit. */
function measuredSide(typed: Typed): Typed | undefined {
  if (typed.kind !== 'compare') return undefined;
  return [typed.left, typed.right].find(({ type }) => type.kind === 'number' && !type.zero);
}

function firstColumn(typed: Typed): Typed | undefined {
  if (typed.kind === 'column') return typed;
  for (const part of partsWithFreshAxes(typed)) {
    const found = firstColumn(part);
    if (found) return found;
  }
  return undefined;
}

function partsWithFreshAxes(typed: Typed): readonly Typed[] {
  return partsOf(typed).filter((part) => part.type.axes.some((axis) => axis.fresh));
}

function checkUnit(typed: Typed, side: boolean, unit: Unit, context: Context): void {
  const { type } = typed;
  const wanted = typeOfUnit(unit);
  if (fitsUnit(type, wanted, unit)) return;
  const units = context.scope.units;
  const facts = {
    written: context.text.slice(typed.from, typed.to),
    side,
    is: describe(typed, units),
    unit: unit.text,
    unitIs: describeType(wanted, units, unit),
  };
  context.report(problem(massAndForce(type, wanted) ? 'unit-mass-force' : 'unit-disagrees', typed, facts));
}

/** An angle may be read as the plain number of radians; a plain number is no angle. */
function fitsUnit(type: Type, wanted: Type, unit: Unit): boolean {
  if (type.kind === 'number' && type.zero) return wanted.kind === 'number';
  if (type.kind === 'number' && wanted.kind === 'number')
    return sameDimension(type.dimension, wanted.dimension) && (type.angle || !wanted.angle);
  if (type.kind === 'point' && wanted.kind === 'point') return type.of === wanted.of;
  // Text and truth have no unit; a line of theirs leaves the column blank.
  return (
    (type.kind === 'text' || type.kind === 'truth') &&
    sameDimension(unit.dimension, PLAIN) &&
    unit.text === ''
  );
}
