import { type Problem, problem } from '../diagnostics/index.ts';
import { firstError } from './first-error.ts';
import type { FormulaColumnItem, FormulaItem, Item, Model } from './model.ts';

/**
 * The first problem a line or column has of its own, before any computing. Where a value is stated, what is wrong with
 * the formula stands in nobody's way.
 */
export function ownProblem(item: Item): Problem | undefined {
  const found = firstError(item.problems);
  if (found || !('checked' in item)) return found;
  if (item.kind === 'formula' && item.stated) return firstError(item.stated.problems);
  // Single cells stand where a formula fails; the others say why they have no value.
  if (item.kind === 'formula column' && item.cells) return undefined;
  const { demand, capacity } = (item.kind === 'formula' && item.sides) || {};
  return firstError([...item.checked.problems, ...(demand?.problems ?? []), ...(capacity?.problems ?? [])]);
}

/** A formula with no problem of its own and no type waits on something that has one: what it names, and where that begins. */
export function waitsOn({ id, checked }: FormulaItem | FormulaColumnItem, model: Model): Problem {
  return waitsOnOneOf(checked.references, id, model);
}

/** What a formula of these references waits on, one of them, and the first cause behind it; `id` is the line it belongs to. */
export function waitsOnOneOf(references: ReadonlySet<string>, id: string, model: Model): Problem {
  const on = withoutType(references, model) ?? id;
  const seen = new Set([id]);
  let origin = on;
  let because = '';
  // What has no type and no problem of its own waits in its turn.
  for (let at: string | undefined = on; at !== undefined && !seen.has(at); ) {
    seen.add(at);
    origin = at;
    const item = model.items.get(at);
    because = (item && ownProblem(item)?.message) ?? '';
    const isBroken: boolean = item !== undefined && 'checked' in item && item.checked.typed.kind === 'broken';
    at =
      because === '' && isBroken && item && 'checked' in item
        ? withoutType(item.checked.references, model)
        : undefined;
  }
  return problem('waits-on', { from: 0, to: 0 }, { on, origin, because });
}

function withoutType(references: ReadonlySet<string>, model: Model): string | undefined {
  const all = [...references];
  return all.find((id) => model.items.get(id)?.type.kind === 'unknown') ?? all[0];
}
