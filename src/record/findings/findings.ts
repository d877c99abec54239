import type { Problem } from '../../diagnostics/index.ts';
import {
  type FormulaItem,
  holdsByStated,
  type Notebook,
  toMend,
  type Verdict,
} from '../../notebook/index.ts';
import { groupedSheets } from './grouped-sheets.ts';

/** A check of the book; one without a value has no verdict, and one that does not apply says why. */
export interface FoundCheck {
  readonly item: FormulaItem;
  readonly verdict: Verdict | undefined;
  readonly inapplicable?: Problem;
}

/** What there is to look after in a book; each list in the order of the list of sheets. */
export interface Findings {
  /** What is to be mended; not what only waits, for another line or for its own formula. */
  readonly problems: readonly Problem[];
  /** What has a value, and something to know about it. */
  readonly remarks: readonly Problem[];
  readonly checks: readonly FoundCheck[];
}

// One state of a book has one list of problems: it has the same findings, whoever asks.
const known = new WeakMap<readonly Problem[], Findings>();

/** The findings of a book; looked for once for each state of it. */
export function findingsOf(notebook: Notebook): Findings {
  const state = notebook.problems();
  const before = known.get(state);
  if (before) return before;
  const found = findAll(notebook);
  known.set(state, found);
  return found;
}

/**
 * Whether a check holds only by stated values. It is asked of the notebook each time, which comes to know it at rest; one that
 * rests on values beyond their ranges counts among those.
 */
export function isByStated(notebook: Notebook, { item, verdict }: FoundCheck): boolean {
  return verdict?.outOfRange === undefined && holdsByStated(notebook, item.id);
}

/** The key of the sheet a problem is on; empty for a problem of the whole book. */
export function sheetOf({ cell = '' }: Problem): string {
  return cell.split('.', 1)[0] ?? '';
}

function findAll(notebook: Notebook): Findings {
  const sheets = [...groupedSheets(notebook.book).values()].flat();
  const ranks = new Map(sheets.map(({ key }, rank) => [key, rank]));
  const rank = (sheet: string): number => ranks.get(sheet) ?? -1;
  const problems = notebook.problems().toSorted((a, b) => rank(sheetOf(a)) - rank(sheetOf(b)));
  const checks = [...notebook.model.items.values()].flatMap((item) =>
    item.kind === 'formula' && item.row.kind === 'check'
      ? [{ item, verdict: notebook.verdict(item.id), ...inapplicable(notebook, item) }]
      : [],
  );
  return {
    problems: toMend(notebook, problems),
    remarks: problems.filter(({ severity }) => severity === 'warning'),
    checks: checks.toSorted((a, b) => rank(a.item.sheet) - rank(b.item.sheet)),
  };
}

function inapplicable(notebook: Notebook, { id }: FormulaItem): Pick<FoundCheck, 'inapplicable'> {
  const result = notebook.result(id);
  return result.status === 'inapplicable' ? { inapplicable: result.problem } : {};
}
