import type { Problem } from '../../diagnostics/index.ts';
import type { Prose } from '../../document/index.ts';
import type { FormulaItem, Notebook, Verdict } from '../../notebook/index.ts';
import type { CellPlace } from '../session/place.ts';
import { placeOfId } from '../session/places.ts';

/** A check of the book; without a verdict, `why` says what it waits for or lacks. */
export interface ListedCheck {
  readonly item: FormulaItem;
  readonly place: CellPlace | undefined;
  readonly verdict?: Verdict;
  readonly why?: string;
}

/** A problem with the line or column it is of; book-wide ones have no place. */
export interface ListedProblem {
  readonly problem: Problem;
  readonly sheet: string;
  /** The name as its own sheet writes it; empty for a problem of the whole book. */
  readonly name: string;
  readonly place: CellPlace | undefined;
}

/** Words of the book that somebody has to look after. */
export interface ListedWords {
  readonly text: string;
  readonly place: CellPlace;
}

/** All checks, in the order of the book. */
export function listChecks(notebook: Notebook): readonly ListedCheck[] {
  return [...notebook.model.items.values()].flatMap((item): readonly ListedCheck[] => {
    if (item.kind !== 'formula' || item.row.kind !== 'check') return [];
    const place = placeOfId(notebook, item.id);
    const verdict = notebook.verdict(item.id);
    if (verdict) return [{ item, place, verdict }];
    const result = notebook.result(item.id);
    return [{ item, place, why: 'problem' in result ? result.problem.message : 'blank' }];
  });
}

/** All problems but those that only wait for another one. */
export function listProblems(notebook: Notebook): readonly ListedProblem[] {
  return notebook.problems().flatMap((problem) => {
    if (problem.code === 'waits-on') return [];
    const id = problem.cell ?? '';
    const [sheet = '', ...name] = id.split('.');
    return [{ problem, sheet, name: name.join('.'), place: placeOfId(notebook, id) }];
  });
}

/** All prose of a role that says something. */
export function listProse(notebook: Notebook, role: Prose['role']): readonly ListedWords[] {
  return notebook.book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) =>
      part.kind === 'prose' && part.role === role && part.text.trim() !== ''
        ? [{ text: part.text, place: { sheet: key, part: part.id, item: '', field: 'text' } }]
        : [],
    ),
  );
}
