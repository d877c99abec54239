import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import type { Engine } from '../engine/index.ts';
import {
  type CheckedFormula,
  findFunction,
  NO_AXES,
  onAxes,
  type Typed,
  truthType,
} from '../language/index.ts';
import type { FormulaItem, Model } from './model.ts';
import type { Result } from './result.ts';
import { waitsOnOneOf } from './waits-on.ts';

// A place in a condition is none in the formula of its check.
const NOWHERE = { from: 0, to: 0 };

/** The engine's cell for the condition under which a check applies; no name of a book can be this. */
export const appliesId = (id: string): string => `${id}#applies`;

/** What is wrong with the condition of a check, told of the check. */
export function appliesFailures({ problems }: CheckedFormula): readonly Problem[] {
  return problems.map(({ severity, message, hints }) => ({
    ...problem('applies-fails', NOWHERE, { message }),
    severity,
    hints,
  }));
}

/** The formula of a check as it is computed: with a condition, nothing is compared where that does not hold. */
export function whereItApplies({ id, applies }: Pick<FormulaItem, 'id' | 'applies'>, typed: Typed): Typed {
  if (!applies || typed.kind === 'broken') return typed;
  const fn = findFunction('IFS');
  if (!fn) throw new Error('there is no function IFS');
  const { from, to } = typed;
  const type = onAxes(truthType, NO_AXES);
  const when: Typed = { kind: 'cell', id: appliesId(id), name: 'applies', type, from, to };
  return { kind: 'branch', fn, args: [when, typed], arms: [{ when, value: typed }], type, from, to };
}

/** Gives the engine the condition of a check. */
export function syncApplies(engine: Engine, { id, applies }: FormulaItem, model: Model): void {
  if (!applies) return;
  const { typed, text, problems } = applies;
  const wrong = problems.find(({ severity }) => severity === 'error');
  if (typed.kind !== 'broken' && !wrong) engine.setFormula(appliesId(id), typed, { text });
  else {
    engine.setFailed(appliesId(id), inCell(wrong ?? waitsOnOneOf(applies.references, id, model), id), {});
  }
}

/**
 * Why a check has no verdict because of its condition: it does not apply, or nobody can tell. Undefined where it applies,
 * and for a line without a condition.
 */
export function readApplies(
  { id, applies }: FormulaItem,
  engine: Engine,
): Exclude<Result, { status: 'ok' }> | undefined {
  if (!applies) return undefined;
  const read = engine.read(appliesId(id));
  if (read.status === 'missing') return read;
  if (read.status !== 'ok') {
    // What only waits is told where that begins, of a condition as of any formula.
    if (read.status === 'waiting' || read.problem.code === 'waits-on')
      return { status: 'waiting', problem: inCell({ ...read.problem, ...NOWHERE }, id) };
    const { severity, message, hints } = read.problem;
    const told = problem('applies-fails', NOWHERE, { message });
    return { status: read.status, problem: inCell({ ...told, severity, hints }, id) };
  }
  if (read.value === true || read.value === 1) return undefined;
  const found = problem('check-inapplicable', NOWHERE, { condition: applies.text.trim() });
  return { status: 'inapplicable', problem: inCell(found, id) };
}
