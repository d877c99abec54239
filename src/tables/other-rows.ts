import { type Problem, problem } from '../diagnostics/index.ts';
import type { Ledger } from './account.ts';
import type { Consents } from './reading.ts';
import { isBlankRow, type TextRow } from './records.ts';
import type { RowKind } from './row-kinds.ts';
import type { TableText } from './table-text.ts';
import { rowsAbove } from './text-columns.ts';

const NOWHERE = { from: 0, to: 0 };

/** How a kind of rows is asked for, and by which word of a person it is answered. */
interface Question {
  readonly code: 'row-total' | 'row-sum' | 'row-all' | 'row-note' | 'row-numbering' | 'row-unnamed';
  readonly answer: 'totals' | 'sums' | 'notes' | 'unnamed';
}

const QUESTIONS: Readonly<Record<Exclude<RowKind, 'called'>, Question>> = {
  total: { code: 'row-total', answer: 'totals' },
  sum: { code: 'row-sum', answer: 'sums' },
  all: { code: 'row-all', answer: 'totals' },
  note: { code: 'row-note', answer: 'notes' },
  numbering: { code: 'row-numbering', answer: 'notes' },
  unnamed: { code: 'row-unnamed', answer: 'unnamed' },
};

/** Whether a row becomes one of the table: an item of it, or what was not said to be left out. */
export function isKept(kind: RowKind | undefined, consents: Consents): boolean {
  return kind === undefined || kind === 'called' || consents[QUESTIONS[kind].answer] !== 'out';
}

/** Rows above the headers are left out by consent, else refused. */
export function aboveHeaders(text: TableText, { notes }: Consents, ledger: Ledger): readonly Problem[] {
  const above = rowsAbove(text);
  for (const { at } of above) ledger.writeRow(at, notes === 'out' ? 'out' : 'refused');
  return above.length === 0 || notes === 'out'
    ? []
    : [problem('rows-above-headers', NOWHERE, { ...rowFacts(above), header: text.top.line })];
}

/** Rows that are no plain items and on which nothing was said, kind by kind. */
export function unansweredRows(
  rows: readonly TextRow[],
  kinds: ReadonlyMap<TextRow, RowKind>,
  consents: Consents,
  ledger: Ledger,
): readonly Problem[] {
  return Object.entries(QUESTIONS).flatMap(([wanted, { code, answer }]) => {
    const open = [...kinds].flatMap(([row, kind]) => (kind === wanted ? [row] : []));
    if (open.length === 0 || consents[answer] !== undefined) return [];
    for (const { at } of open) ledger.writeRow(at, 'refused');
    const isFirst = rows[0] !== undefined && open[0]?.at === rows[0].at;
    return [problem(code, NOWHERE, { ...rowFacts(open), ...(isFirst && { first: true }) })];
  });
}

/** Rows that are left out as was said and are no sums: what they say may be about the others. */
export function notesLeftOut(
  kinds: ReadonlyMap<TextRow, RowKind>,
  consents: Consents,
  text: TableText,
  headed: boolean,
): readonly TextRow[] {
  const out = [...kinds].flatMap(([row, kind]) => (kind === 'note' && !isKept(kind, consents) ? [row] : []));
  const above = headed && consents.notes === 'out' ? rowsAbove(text) : [];
  return [...above, ...out, ...text.rows.filter(({ line }) => text.skipped.has(line))];
}

/** Items whose names begin like those of totals: they are taken, and told. */
export function calledTotals(kinds: ReadonlyMap<TextRow, RowKind>): readonly Problem[] {
  const rows = [...kinds].flatMap(([row, kind]) => (kind === 'called' ? [row] : []));
  return rows.length === 0 ? [] : [problem('row-called-total', NOWHERE, rowFacts(rows))];
}

/** What was left out as was said, and rows with nothing in them. */
export function leftOutRows(
  kinds: ReadonlyMap<TextRow, RowKind>,
  blank: readonly TextRow[],
  consents: Consents,
  text: TableText,
  headed: boolean,
): readonly Problem[] {
  const out = [...kinds].flatMap(([row, kind]) => (isKept(kind, consents) ? [] : [row]));
  const above = headed ? rowsAbove(text) : [];
  const skipped = text.rows.filter((row) => text.skipped.has(row.line) && !isBlankRow(row));
  const rows = [...above, ...out, ...skipped].sort((a, b) => a.at - b.at);
  return [
    ...(rows.length > 0 ? [problem('rows-left-out', NOWHERE, rowFacts(rows))] : []),
    ...(blank.length > 0 ? [problem('row-blank', NOWHERE, { lines: blank.map(({ line }) => line) })] : []),
  ];
}

/** So many rows are quoted where several are told of together. */
const ROWS_QUOTED = 3;

/** What is told of rows together: their lines, and what the first of them say. */
function rowFacts(rows: readonly TextRow[]): { readonly lines: readonly number[]; readonly text: string } {
  const words = rows.slice(0, ROWS_QUOTED).map(({ cells }) =>
    cells
      .map((cell) => cell.trim())
      .filter((cell) => cell !== '')
      .join(', '),
  );
  return { lines: rows.map(({ line }) => line), text: words.join(' / ') };
}
