import type { Problem } from '../diagnostics/index.ts';
import {
  type CheckedFormula,
  type CompareNode,
  checkFormula,
  NO_AXES,
  onAxes,
  type Scope,
  type Typed,
  truthType,
} from '../language/index.ts';
import type { Unit } from '../units/index.ts';
import type { Side } from './stated.ts';

/** The formula of a check of which one side cannot be computed: the comparison that is left, and what is wrong there. */
export interface FailingSide {
  readonly checked: CheckedFormula;
  /** Absent where the side only waits on another line. */
  readonly fails?: Problem;
}

/**
 * The comparison of a check whose formula fails in one side alone, and that side is stated: the other is compared with
 * the stated value, of its kind. Undefined where the comparison itself or a side that counts is not sound.
 */
export function withoutFailingSide(
  whole: CheckedFormula,
  stated: Readonly<Partial<Record<Side, unknown>>>,
  scope: Scope,
  unit: Unit | undefined,
): FailingSide | undefined {
  const { syntax } = whole;
  if (whole.typed.kind !== 'broken' || syntax.kind !== 'comparison') return undefined;
  if (syntax.op === '=' || syntax.op === '<>') return undefined;
  if (syntax.left.kind === 'comparison' || syntax.right.kind === 'comparison') return undefined;
  const [left, right] = [syntax.left, syntax.right].map(({ from, to }) =>
    // Blanks in front, so that what is said of the side says where it stands in the formula.
    checkFormula(' '.repeat(from) + whole.text.slice(from, to), scope, unit ? { unit } : {}),
  );
  if (!left || !right || isSound(left) === isSound(right)) return undefined;
  const [failing, sound] = isSound(left) ? [right, left] : [left, right];
  // The side that is asked to be greater is the capacity.
  const isCapacity = (failing === left) === syntax.op.startsWith('>');
  const { type } = sound.typed;
  if (!stated[isCapacity ? 'capacity' : 'demand'] || (type.kind === 'number' && type.zero)) return undefined;
  const { from, to } = failing === left ? syntax.left : syntax.right;
  const broken: Typed = { kind: 'broken', type: onAxes(type, NO_AXES), from, to };
  const typed: CompareNode = {
    kind: 'compare',
    op: syntax.op,
    type: truthType,
    from: syntax.from,
    to: syntax.to,
    left: failing === left ? broken : left.typed,
    right: failing === right ? broken : right.typed,
  };
  const fails = failing.problems.find(({ severity }) => severity === 'error');
  return { checked: { ...whole, typed, problems: [] }, ...(fails && { fails }) };
}

function isSound({ typed, problems }: CheckedFormula): boolean {
  return typed.kind !== 'broken' && !problems.some(({ severity }) => severity === 'error');
}
