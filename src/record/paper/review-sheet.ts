import type { Column, Part, Row, Sheet } from '../../document/index.ts';
import { type Notebook, shareOf, statedIn, takersOf } from '../../notebook/index.ts';
import { findingsOf } from '../findings/findings.ts';
import { governingLines } from '../lines/governing-lines.ts';

/** A sheet with what is read first of it, and how much of its working that leaves out. */
export interface ReviewSheet {
  readonly sheet: Sheet;
  readonly leftOut: { readonly lines: number; readonly columns: number };
}

/**
 * A sheet as its reviewer reads it first: what is entered, stated or told of; the working of the checks that govern; and the
 * results, which are what a check with a utilisation is made of, or nothing takes. Left out are entries that may be blank
 * and are, other working, checks that do not apply, and where `checksListed` says that all are listed beside the sheet those
 * that do not govern; of a sheet of factors the columns from which no governing line takes. Words and figures stay.
 */
export function reviewSheet(notebook: Notebook, sheet: Sheet, checksListed: boolean): ReviewSheet {
  const isKept = keeper(notebook, sheet, checksListed);
  const parts = sheet.parts.flatMap((part) => keptPart(sheet.key, part, isKept));
  return {
    sheet: { ...sheet, parts },
    leftOut: {
      lines: countOf(sheet.parts, 'rows') - countOf(parts, 'rows'),
      columns: countOf(sheet.parts, 'table') - countOf(parts, 'table'),
    },
  };
}

/** Says of a line or column, by its id, whether its reviewer reads it. */
type IsKept = (id: string, source: Row | Column) => boolean;

function keeper(notebook: Notebook, sheet: Sheet, checksListed: boolean): IsKept {
  const { items } = notebook.model;
  const { problems, remarks, checks } = findingsOf(notebook);
  const told = new Set([...problems, ...remarks].map(({ cell }) => cell));
  const applying = new Set(checks.filter((one) => !one.inapplicable).map(({ item }) => item.id));
  // A check that only counts or asks has its sides in the list of checks, and nothing behind them to be read.
  const used = new Set(
    checks.flatMap(({ item, verdict }) => (verdict && (shareOf(verdict) ?? 0) > 0 ? [item.id] : [])),
  );
  const governing = new Set(notebook.book.sheets.flatMap((one) => [...governingLines(notebook, one)]));
  const takers = takersOf(notebook.model);
  const isTakenBy = (some: ReadonlySet<string>, id: string): boolean =>
    (takers.get(id) ?? []).some((taker) => some.has(taker));
  const ofFactors = isOfFactors(sheet);
  return (id, source) => {
    const item = items.get(id);
    if (told.has(id) || governing.has(id) || (item && statedIn(notebook, item).length > 0)) return true;
    if (source.kind === 'check') return applying.has(id) && !checksListed;
    if ('chunks' in source) return !isBlank(source) && (!ofFactors || isTakenBy(governing, id));
    if (source.kind === 'given' || source.kind === 'choice')
      return source.entry.trim() !== '' || source.optional !== true;
    return item?.kind === 'formula' && ((takers.get(id) ?? []).length === 0 || isTakenBy(used, id));
  };
}

/**
 * Whether a sheet holds factors for others to look up: nothing but words and tables in which nothing is computed, each from a
 * source that it names. A list of quantities is entered for the job, and names none.
 */
function isOfFactors({ parts }: Sheet): boolean {
  return parts.every(
    (part) =>
      part.kind === 'prose' ||
      (part.kind === 'table' &&
        part.columns.every(({ kind }) => kind === 'given') &&
        part.columns.some(({ reference }) => (reference ?? '').trim() !== '')),
  );
}

function isBlank({ chunks }: Extract<Column, { readonly kind: 'given' }>): boolean {
  return chunks.every((chunk) => chunk.every((cell) => cell === null || cell === ''));
}

function keptPart(sheet: string, part: Part, isKept: IsKept): readonly Part[] {
  if (part.kind === 'rows') {
    const rows = part.rows.filter((row) => isKept(`${sheet}.${row.name}`, row));
    return rows.length === 0 ? [] : [{ ...part, rows }];
  }
  if (part.kind !== 'table') return [part];
  const kept = new Set(
    part.columns.filter((column) => isKept(`${sheet}.${part.name}.${column.name}`, column)),
  );
  // What makes the rows tells them apart.
  const columns = part.columns.filter((column) => kept.has(column) || column.kind === 'series');
  return kept.size === 0 ? [] : [{ ...part, columns }];
}

/** How many lines the blocks of a sheet have, or columns its tables. */
function countOf(parts: readonly Part[], kind: 'rows' | 'table'): number {
  return parts.reduce((sum, part) => {
    if (part.kind !== kind) return sum;
    return sum + (part.kind === 'rows' ? part.rows.length : part.columns.length);
  }, 0);
}
