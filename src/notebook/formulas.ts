import { type Problem, problem } from '../diagnostics/index.ts';
import type { Check } from '../document/index.ts';
import {
  type CheckedFormula,
  checkFormula,
  NO_AXES,
  namesIn,
  onAxes,
  type ParsedFormula,
  parseFormula,
  type Type,
  truthType,
  typeOfUnit,
  unknownType,
} from '../language/index.ts';
import type { Unit, UnitRegistry } from '../units/index.ts';
import { withoutFailingSide } from './check-sides.ts';
import { type Names, resolveName } from './names.ts';
import { type Known, scopeOf } from './scope.ts';

/** A formula of the book before it is checked. */
export interface Draft {
  readonly id: string;
  readonly sheet: string;
  /** `sheet.table` of a column. */
  readonly table?: string;
  readonly formula: string;
  readonly unit?: Unit;
  readonly kind: 'calc' | 'check' | 'series';
  /** The value stated in place of the computed one, as typed, and its type where it tells one by itself. */
  readonly stated?: { readonly entry: string; readonly type?: Type };
  /** Where a check applies. */
  readonly applies?: string;
  /** The sides of a check that are stated. */
  readonly sides?: NonNullable<Check['stated']>;
}

export interface CheckedDraft {
  readonly checked: CheckedFormula;
  readonly type: Type;
  /** The condition under which a check applies. */
  readonly applies?: CheckedFormula;
  /** What is wrong with a side of a check that is stated, so that it stands in nobody’s way. */
  readonly fails?: Problem;
}

/**
 * Checks every formula. A filled unit column settles a line's type before its formula is read; the type of a line
 * with a blank unit column follows from its formula, so those are checked after what they refer to. Lines that
 * depend on one another in a circle and leave their units blank have no type and say so.
 */
export function checkFormulas(
  drafts: readonly Draft[],
  inputs: ReadonlyMap<string, Known>,
  names: Names,
  registry: UnitRegistry,
  reuse: (draft: Draft, known: (id: string) => Known) => CheckedDraft | undefined,
): { readonly checked: ReadonlyMap<string, CheckedDraft>; readonly known: (id: string) => Known } {
  const byId = new Map(drafts.map((draft) => [draft.id, draft]));
  const parsed = new Map<string, ParsedFormula>();
  const done = new Map<string, CheckedDraft>();
  const settled = (id: string): Known => {
    const input = inputs.get(id);
    if (input) return input;
    const draft = byId.get(id);
    const type = draft && (declaredType(draft) ?? done.get(id)?.type);
    return { type: onAxes(type ?? unknownType, NO_AXES), ...(draft?.unit && { unit: draft.unit }) };
  };
  const parse = (draft: Draft): ParsedFormula => {
    const known = parsed.get(draft.id) ?? parseFormula(draft.formula);
    parsed.set(draft.id, known);
    return known;
  };
  const open = (draft: Draft): string[] =>
    namesIn(parse(draft).syntax).flatMap(({ name }) => {
      const id = resolveName(name, names, draft.sheet, draft.table)?.id;
      const other = id === undefined ? undefined : byId.get(id);
      return other && !declaredType(other) && !done.has(other.id) ? [other.id] : [];
    });
  const settle = (draft: Draft): void => {
    const again = reuse(draft, settled);
    done.set(draft.id, again ?? checkDraft(draft, parse(draft), settled, names, registry));
  };

  for (const draft of drafts) {
    if (declaredType(draft) || done.has(draft.id)) continue;
    // A walk in depth on a stack of its own: chains of thousands of lines are allowed.
    const path: { draft: Draft; waiting: string[] }[] = [{ draft, waiting: open(draft) }];
    const onPath = new Set([draft.id]);
    while (path.length > 0) {
      const top = path[path.length - 1];
      if (!top) break;
      const next = top.waiting.pop();
      const nextDraft = next === undefined ? undefined : byId.get(next);
      if (!nextDraft) {
        settle(top.draft);
        path.pop();
        onPath.delete(top.draft.id);
      } else if (onPath.has(nextDraft.id)) {
        const from = path.findIndex((step) => step.draft === nextDraft);
        const circle = path.slice(from).map((step) => step.draft);
        for (const member of circle) done.set(member.id, inCircle(member, circle, parse(member), names));
        for (const left of path.splice(from)) onPath.delete(left.draft.id);
      } else if (!done.has(nextDraft.id)) {
        path.push({ draft: nextDraft, waiting: open(nextDraft) });
        onPath.add(nextDraft.id);
      }
    }
  }
  for (const draft of drafts) if (!done.has(draft.id)) settle(draft);
  return { checked: done, known: settled };
}

/** The type a formula's place gives it before the formula is read. */
function declaredType(draft: Draft): Type | undefined {
  if (draft.kind === 'check') return truthType;
  return draft.unit ? typeOfUnit(draft.unit) : draft.stated?.type;
}

/** Checks one formula in its place, whose unit column it must fit. */
export function checkDraft(
  draft: Draft,
  parsed: ParsedFormula,
  known: (id: string) => Known,
  names: Names,
  registry: UnitRegistry,
): CheckedDraft {
  const scope = scopeOf(names, registry, known, draft);
  const checked = checkFormula(parsed, scope, {
    ...(draft.unit && { unit: draft.unit }),
    ...(draft.kind === 'check' && { kind: 'truth' as const }),
    series: draft.kind === 'series',
  });
  const rest = draft.sides && withoutFailingSide(checked, draft.sides, scope, draft.unit);
  const applies =
    draft.applies === undefined
      ? {}
      : { applies: checkFormula(parseFormula(draft.applies), scope, { kind: 'truth', series: false }) };
  return { type: declaredType(draft) ?? onAxes(checked.typed.type, NO_AXES), checked, ...applies, ...rest };
}

function inCircle(draft: Draft, circle: readonly Draft[], parsed: ParsedFormula, names: Names): CheckedDraft {
  const at = circle.indexOf(draft);
  const turned = [...circle.slice(at), ...circle.slice(0, at), draft].map((member) => member.id);
  const whole = { from: 0, to: draft.formula.length };
  const references = namesIn(parsed.syntax).flatMap(
    ({ name }) => resolveName(name, names, draft.sheet, draft.table)?.id ?? [],
  );
  const checked: CheckedFormula = {
    text: parsed.text,
    syntax: parsed.syntax,
    whole: parsed.problems.length === 0,
    typed: { kind: 'broken', type: unknownType, ...whole },
    problems: [...parsed.problems, problem('loop', whole, { path: turned })],
    references: new Set(references),
  };
  return { checked, type: unknownType };
}
