import { type Problem, problem } from '../diagnostics/index.ts';
import type { Method } from '../document/index.ts';
import {
  type CheckedFormula,
  describeType,
  parseFormula,
  sameKind,
  type Type,
  unknownType,
} from '../language/index.ts';
import type { UnitRegistry } from '../units/index.ts';
import { type CheckedDraft, checkDraft, type Draft } from './formulas.ts';
import { type MethodPlan, methodWords, withChooser } from './methods.ts';
import type { FormulaColumnItem, FormulaItem, MethodItem, Methods } from './model.ts';
import type { Names } from './names.ts';
import type { Known } from './scope.ts';

/** A line with its methods checked: what is computed for it, with why it has no value, and its methods. */
export interface CheckedMethods extends CheckedDraft {
  readonly methods: Methods;
}

/** What checking the methods of a line needs to know of the book; `reuse` gives an earlier check of the same formula. */
export interface MethodsAround {
  readonly names: Names;
  readonly registry: UnitRegistry;
  readonly known: (id: string) => Known;
  readonly reuse: (draft: Draft) => CheckedFormula | undefined;
}

/**
 * Checks each method of a line as its formula would be, in force or not, and that all give one kind of value. `found` is
 * the check of the formula that is computed: of the method in force, or of all methods in one.
 */
export function checkMethods(
  plan: MethodPlan,
  draft: Draft,
  found: CheckedDraft,
  around: MethodsAround,
): CheckedMethods {
  const { by, byId, chosen, starts, remarks } = plan;
  const alone = plan.methods.map((method, index) => {
    if (index === chosen) return found.checked;
    const own = { ...draft, formula: method.formula };
    return (
      around.reuse(own) ??
      checkDraft(own, parseFormula(method.formula), around.known, around.names, around.registry).checked
    );
  });
  const methods = {
    by,
    ...(byId !== undefined && { byId }),
    list: withKinds(plan, alone, draft, around.registry),
    ...(chosen !== undefined && { chosen }),
    ...(starts && { starts }),
    remarks,
  };
  const { type } = found;
  const refused = plan.refused ?? notText(plan, around);
  if (refused) return { checked: stopped(found.checked, [refused]), type, methods };
  if (plan.waitsOn !== undefined) {
    const references = new Set([plan.waitsOn]);
    return { checked: { ...stopped(found.checked, []), references }, type, methods };
  }
  if (!starts) return { checked: found.checked, type, methods };
  // What is wrong with any of the methods that are computed together is told of that method.
  const failures = methods.list.flatMap(failuresOf).filter(({ severity }) => severity === 'error');
  if (failures.length > 0) return { checked: stopped(found.checked, failures), type, methods };
  const { typed } = found.checked;
  // Taken over from the model before as it is, the check is the same object, and nothing is computed anew.
  if (typed.kind === 'branch' && typed.chosenBy) return { checked: found.checked, type, methods };
  // A place in the formula of all is no place that a person knows.
  const problems = found.checked.problems.map((one) => ({ ...one, from: 0, to: 0, fixes: [] }));
  return {
    checked: { ...found.checked, typed: withChooser(typed), problems },
    type,
    methods,
  };
}

/** What is wrong with a method, told of the line it is one of; the place is one in the method's own formula. */
export function failuresOf({ method, words, problems }: MethodItem): readonly Problem[] {
  return problems.map(({ from, to, severity, message, hints }) => {
    const facts = { method: words, id: method.id, message };
    return { ...problem('method-fails', { from, to }, facts), severity, hints };
  });
}

/** A check of which nothing is computed. */
function stopped(
  { text, syntax, typed: { from, to }, references }: CheckedFormula,
  problems: readonly Problem[],
): CheckedFormula {
  return {
    text,
    syntax,
    whole: true,
    typed: { kind: 'broken', type: unknownType, from, to },
    problems,
    references,
  };
}

/** The methods with what is wrong with each. Where no unit says what they give, all give what the one in force does. */
function withKinds(
  { methods, chosen, inWords }: MethodPlan,
  checks: readonly CheckedFormula[],
  { unit }: Draft,
  registry: UnitRegistry,
): readonly MethodItem[] {
  const isKnown = (index: number): boolean => (checks[index]?.typed.type.kind ?? 'unknown') !== 'unknown';
  const first =
    chosen !== undefined && isKnown(chosen) ? chosen : checks.findIndex((_, index) => isKnown(index));
  const [model, wanted] = [methods[first], checks[first]?.typed.type];
  const wordsOf = (method: Method): string => methodWords(method.for ? { for: method.for.map(inWords) } : {});
  return methods.flatMap((method, index) => {
    const words = wordsOf(method);
    const checked = checks[index];
    if (!checked) return [];
    const { type } = checked.typed;
    if (unit || !wanted || !model || !isKnown(index) || sameKind(type, wanted))
      return [{ method, words, checked, problems: checked.problems }];
    const found = differs(checked, { words: wordsOf(model), type: wanted }, registry);
    return [{ method, words, checked, problems: [...checked.problems, found] }];
  });
}

function differs(
  { typed, text }: CheckedFormula,
  { words, type }: { readonly words: string; readonly type: Type },
  registry: UnitRegistry,
): Problem {
  const facts = {
    is: describeType(typed.type, registry),
    other: words,
    wanted: describeType(type, registry),
  };
  return problem('methods-differ', { from: 0, to: text.length }, facts);
}

/**
 * Why a formula cannot be the method `id` of a line: another gives another kind of value, and no unit says which is meant.
 * Undefined where they agree.
 */
export function methodDiffers(
  { methods, unit }: FormulaItem | FormulaColumnItem,
  id: string,
  checked: CheckedFormula,
  registry: UnitRegistry,
): Problem | undefined {
  if (!methods || unit || checked.typed.type.kind === 'unknown') return undefined;
  const first = methods.chosen === undefined ? [] : methods.list.slice(methods.chosen, methods.chosen + 1);
  const other = [...first, ...methods.list].find(
    (one) => one.method.id !== id && one.checked.typed.type.kind !== 'unknown',
  );
  if (!other || sameKind(checked.typed.type, other.checked.typed.type)) return undefined;
  return differs(checked, { words: other.words, type: other.checked.typed.type }, registry);
}

function notText({ by, byId }: MethodPlan, { known, registry }: MethodsAround): Problem | undefined {
  if (byId === undefined) return undefined;
  const { type, unit } = known(byId);
  if (type.kind === 'text' || type.kind === 'unknown') return undefined;
  return problem('methods-by-not-text', { from: 0, to: 0 }, { by, is: describeType(type, registry, unit) });
}
