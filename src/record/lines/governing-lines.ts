import type { Sheet } from '../../document/index.ts';
import { type FormulaItem, type Notebook, referencesOfItem, shareOf } from '../../notebook/index.ts';

/** So many steps back from a check its working is printed: its sides, and what these are computed from. */
const STEPS = 2;

/**
 * The lines of a sheet whose numbers a reviewer follows first, by their ids: the checks that govern it, all that fail and
 * the one nearest to its limit, with the lines and columns of the sheet that their sides are computed from.
 */
export function governingLines(notebook: Notebook, sheet: Sheet): ReadonlySet<string> {
  const { items } = notebook.model;
  const found = new Set(governingChecks(notebook, sheet).map(({ id }) => id));
  let reached = [...found];
  for (let step = 0; step < STEPS; step += 1) {
    reached = reached.flatMap((id) => {
      const item = items.get(id);
      if (item?.kind !== 'formula' && item?.kind !== 'formula column') return [];
      return [...referencesOfItem(item)].filter(
        (next) => items.get(next)?.sheet === sheet.key && !found.has(next),
      );
    });
    for (const id of reached) found.add(id);
  }
  return found;
}

function governingChecks(notebook: Notebook, { parts, key }: Sheet): readonly FormulaItem[] {
  const checks = parts.flatMap((part) =>
    part.kind === 'rows'
      ? part.rows.flatMap(({ kind, name }) => {
          const item = kind === 'check' ? notebook.model.items.get(`${key}.${name}`) : undefined;
          const verdict = item && notebook.verdict(item.id);
          return item?.kind === 'formula' && verdict ? [{ item, verdict }] : [];
        })
      : [],
  );
  const used = ({ verdict }: (typeof checks)[number]): number => shareOf(verdict) ?? 0;
  const holding = checks.filter(({ verdict }) => verdict.holds && shareOf(verdict) !== undefined);
  const nearest = holding.toSorted((a, b) => used(b) - used(a)).slice(0, 1);
  return [...checks.filter(({ verdict }) => !verdict.holds), ...nearest].map(({ item }) => item);
}
