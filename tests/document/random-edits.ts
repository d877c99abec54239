import fc from 'fast-check';
import {
  type Book,
  type Cell,
  type Column,
  type Edit,
  insertColumn,
  insertPart,
  insertRow,
  insertSheet,
  insertTableRows,
  joinEdits,
  moveColumn,
  movePart,
  moveRow,
  moveSheet,
  type Part,
  type Row,
  removeColumn,
  removePart,
  removeRow,
  removeSheet,
  removeTableRows,
  replaceTableRows,
  type Sheet,
  setCells,
  setEntry,
  setPartField,
  setRowField,
  setSettings,
  setSheetField,
  setTitle,
  type Table,
} from '../../src/document/index.ts';

/** What chance decides about one edit: which kind, where, and what it puts there. */
export interface Dice {
  readonly kind: number;
  readonly where: readonly [number, number, number];
  readonly text: string;
  readonly cells: readonly Cell[];
}

/** Dice for one edit of any kind. */
export const dice: fc.Arbitrary<Dice> = fc.record({
  kind: fc.nat(1000),
  where: fc.tuple(fc.nat(1000), fc.nat(1000), fc.nat(1000)),
  text: fc.string({ maxLength: 8 }),
  cells: fc.array(
    fc.oneof(
      fc.constant(null),
      fc.integer(),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0),
      fc.string({ maxLength: 5 }),
    ),
    { minLength: 1, maxLength: 1500, size: 'large' },
  ),
});

/** Where an edit may strike: a sheet, a part, and the row or table there, if the book has such. */
interface Target {
  readonly sheet: Sheet;
  readonly part: Part | undefined;
  readonly row: { readonly part: string; readonly index: number; readonly row: Row } | undefined;
  readonly table: Table | undefined;
  readonly column: Column | undefined;
}

type Maker = (target: Target, dice: Dice) => Edit | undefined;

const tableAt = ({ sheet, table }: Target): { sheet: string; table: string } | undefined =>
  table && { sheet: sheet.key, table: table.id };

const rowsOf = (
  { cells }: Dice,
  table: Table,
): { length: number; cells: Record<string, readonly Cell[]> } => ({
  length: cells.length,
  cells: Object.fromEntries(
    table.columns
      .filter(({ kind }) => kind === 'given')
      .map(({ name }, i) => [name, i === 0 ? cells : cells.toReversed()]),
  ),
});

const MAKERS: readonly Maker[] = [
  ({ sheet, row }, { text }) => row && setEntry({ sheet: sheet.key, part: row.part, row: row.row.id }, text),
  ({ sheet, row }, { text, where }) =>
    row &&
    setRowField(
      { sheet: sheet.key, part: row.part, row: row.row.id },
      (['label', 'note', 'reference', 'name', 'unit', 'formula'] as const)[where[2] % 6]!,
      where[1] % 3 === 0 ? undefined : text,
    ),
  ({ sheet, row }) => row && removeRow({ sheet: sheet.key, part: row.part, row: row.row.id }),
  ({ sheet, row }, { where }) =>
    row && moveRow({ sheet: sheet.key, part: row.part, row: row.row.id }, where[2] % (row.index + 2)),
  ({ sheet, row }, { where }) =>
    row &&
    insertRow({ sheet: sheet.key, part: row.part }, where[1] % (row.index + 1), {
      id: `n${where[0]}`,
      kind: 'given',
      name: `n${where[2]}`,
      entry: '',
    }),
  ({ sheet, part }, { text }) => part && setPartField({ sheet: sheet.key, part: part.id }, 'title', text),
  ({ sheet, part }) => part && removePart({ sheet: sheet.key, part: part.id }),
  ({ sheet, part }, { where }) =>
    part && movePart({ sheet: sheet.key, part: part.id }, where[2] % sheet.parts.length),
  ({ sheet }, { where, text }) =>
    insertPart(sheet.key, where[1] % (sheet.parts.length + 1), {
      id: `n${where[0]}`,
      kind: 'prose',
      role: 'text',
      text,
    }),
  ({ sheet }, { where, cells }) =>
    insertPart(sheet.key, where[1] % (sheet.parts.length + 1), {
      id: `n${where[0]}`,
      kind: 'table',
      name: `t${where[2]}`,
      length: Math.min(cells.length, 1024),
      columns: [{ id: `c${where[0]}`, kind: 'given', name: 'x', chunks: [cells.slice(0, 1024)] }],
    }),
  (target, { where, cells }) => {
    const { table, column } = target;
    const at = tableAt(target);
    const length = table?.length ?? 0;
    if (at === undefined || column?.kind !== 'given' || length === 0) return undefined;
    const from = where[2] % length;
    return setCells(
      { ...at, column: column.id },
      from,
      cells.slice(0, Math.max(1, where[1] % (length - from + 1))),
    );
  },
  (target, toss) => {
    const at = tableAt(target);
    return at && target.table && replaceTableRows(at, target.table, rowsOf(toss, target.table));
  },
  (target, toss) => {
    const at = tableAt(target);
    const { table } = target;
    return (
      at &&
      table &&
      insertTableRows(at, table, toss.where[2] % ((table.length ?? 0) + 1), rowsOf(toss, table))
    );
  },
  (target, { where }) => {
    const at = tableAt(target);
    const length = target.table?.length ?? 0;
    const from = where[1] % (length + 1);
    return at && removeTableRows(at, from, where[2] % (length - from + 1));
  },
  (target, { where }) => {
    const at = tableAt(target);
    return (
      at &&
      target.column &&
      moveColumn({ ...at, column: target.column.id }, where[2] % target.table!.columns.length)
    );
  },
  (target) => {
    const at = tableAt(target);
    return at && target.column && removeColumn({ ...at, column: target.column.id });
  },
  (target, { where }) => {
    const at = tableAt(target);
    return (
      at && insertColumn(at, 0, { id: `n${where[0]}`, kind: 'calc', name: `n${where[2]}`, formula: '1' })
    );
  },
  (_, { where }) => insertSheet(0, { key: `s${where[0]}`, title: '', parts: [] }),
  ({ sheet }) => removeSheet(sheet.key),
  ({ sheet }, { where }) => moveSheet(sheet.key, where[2] % 2),
  ({ sheet }, { where, text }) =>
    where[1] % 2 === 0
      ? setSheetField(sheet.key, 'key', `s${where[0]}`)
      : setSheetField(sheet.key, 'group', text),
  (_, { text }) => setTitle('subject', text),
  (_, { text }) => setSettings('datums', [text]),
];

/** The edit of `book` that the dice stand for, or nothing where the book has no place for one. */
function editByChance(book: Book, toss: Dice): Edit | undefined {
  const [a, b, c] = toss.where;
  const sheet = book.sheets[a % book.sheets.length];
  if (sheet === undefined) return undefined;
  const rows = sheet.parts.flatMap((part) =>
    part.kind === 'rows' ? part.rows.map((row, index) => ({ part: part.id, index, row })) : [],
  );
  const tables = sheet.parts.filter((part) => part.kind === 'table');
  const table = tables[b % tables.length];
  const target: Target = {
    sheet,
    part: sheet.parts[b % sheet.parts.length],
    row: rows[b % rows.length],
    table,
    column: table?.columns[c % table.columns.length],
  };
  const make = MAKERS[toss.kind % MAKERS.length];
  return make?.(target, toss);
}

/** One edit by chance, or two of them as one step, made for the book before the first. */
export function stepByChance(book: Book, tosses: readonly Dice[]): Edit | undefined {
  const edits = tosses.flatMap((toss) => editByChance(book, toss) ?? []);
  return edits.length === 0 ? undefined : joinEdits('by chance', edits);
}
