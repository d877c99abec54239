import type { Side, Statement } from './stated.ts';
import { statementAt } from './stated.ts';

/** A line of a block, or a column of a table: what its file says, the cells of a given column as one list of texts. */
export interface Line {
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly label?: string | undefined;
  readonly reference?: string | undefined;
  readonly entry?: string | undefined;
  readonly formula?: string | undefined;
  /** Ways to compute it, one of which is in force: whichever that is has the text of its value. */
  readonly methods?:
    | readonly { readonly id: string; readonly formula: string; readonly reference?: string }[]
    | undefined;
  readonly unit?: string | undefined;
  readonly type?: string | undefined;
  readonly options?: readonly unknown[] | undefined;
  readonly from?: string | undefined;
  readonly cells?: readonly string[] | undefined;
  /** What is stated in place of what a line comes to; of a check by side. */
  readonly stated?: Statement | Readonly<Partial<Record<Side, Statement | undefined>>> | undefined;
  /** What is stated in the rows of a calculated column, nothing where the computed value stands. */
  readonly statedCells?: readonly (Statement | '')[] | undefined;
}

/** A part of a sheet. */
export interface Part {
  readonly id: string;
  readonly kind: string;
  readonly title?: string | undefined;
  readonly text?: string | undefined;
  readonly name?: string | undefined;
  readonly length?: number | undefined;
  readonly rows?: readonly Line[] | undefined;
  readonly columns?: readonly Line[] | undefined;
}

/** A sheet. */
export interface Sheet {
  readonly key: string;
  readonly title: string;
  readonly parts: readonly Part[];
}

/** A book as its file has it, read without the program. */
export interface Book {
  readonly title: Readonly<Record<string, string>>;
  readonly sheets: readonly Sheet[];
}

/** A cell that can be chosen: of a line, of a table (`item` is `head` or `r` and a number), of words, of the title block. */
export interface Place {
  readonly sheet: string;
  readonly part: string;
  readonly item: string;
  readonly field: string;
}

/** The part that stands for the title block in a place. */
const TITLE_BLOCK = 'title block';

/** What kind of text a cell takes. */
export type Takes = 'entry' | 'choice' | 'formula' | 'stated' | 'unit' | 'name' | 'words' | 'prose';

/** A table as its file has it. */
interface FileTable extends Part {
  readonly ids?: { readonly runs: readonly { readonly first: number; readonly count: number }[] };
  readonly columns?: readonly (Line & {
    readonly chunks?: readonly (readonly (string | number | null)[])[];
    readonly stated?: readonly (Statement & { readonly row: number })[];
  })[];
}

/** Reads the text of a book. */
export function readBook(text: string): Book {
  const book = JSON.parse(text) as Book;
  const sheets = book.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts.map((part) => (part.kind === 'table' ? readTable(part as FileTable) : part)),
  }));
  return { ...book, sheets };
}

/** The identities of rows are not seen: what is stated of a row stands where the row stands. */
function readTable({ ids, ...part }: FileTable): Part {
  const { length = 0 } = part;
  const runs = ids?.runs ?? [{ first: 1, count: length }];
  const rows = runs.flatMap(({ first, count }) => Array.from({ length: count }, (_, at) => first + at));
  const columns = part.columns?.map(({ chunks, stated, ...column }): Line => {
    const cells = chunks?.flat().map((cell) => (cell === null ? '' : String(cell)));
    const known = new Map(stated?.map(({ row, entry, reason }) => [row, { entry, reason }]));
    return {
      ...column,
      ...(cells && { cells }),
      ...(column.kind === 'calc' && { statedCells: rows.map((row) => known.get(row) ?? '') }),
    };
  });
  return { ...part, columns };
}

/** A column whose rows are changed: its cells, and what is stated in them. */
export function withRows(column: Line, change: <Cell>(cells: readonly Cell[]) => readonly Cell[]): Line {
  return {
    ...column,
    ...(column.cells && { cells: change(column.cells) }),
    ...(column.statedCells && { statedCells: change(column.statedCells) }),
  };
}

/** Whether two places are one. */
export function isSame(a: Place | undefined, b: Place | undefined): boolean {
  return (
    a !== undefined &&
    b !== undefined &&
    a.sheet === b.sheet &&
    a.part === b.part &&
    a.item === b.item &&
    a.field === b.field
  );
}

/** A place in a few words. */
export function placeWords({ sheet, part, item, field }: Place): string {
  return [sheet, part, item, field].filter((word) => word !== '').join('/');
}

/** The part of a place. */
export function partAt(book: Book, { sheet, part }: Place): Part | undefined {
  return book.sheets.find(({ key }) => key === sheet)?.parts.find(({ id }) => id === part);
}

/** The number of a table's row, counted from 0, that an item names. */
export function rowOf(item: string): number | undefined {
  const found = /^r(\d+)$/.exec(item);
  return found ? Number(found[1]) : undefined;
}

/** The line of a place in a block; of a column's own line the column. */
export function lineAt(book: Book, place: Place): Line | undefined {
  const part = partAt(book, place);
  return [...(part?.rows ?? []), ...(part?.columns ?? [])].find(({ id }) => id === place.item);
}

/** Whether the text of a place is that of one of several methods, so that only the page says of which. */
export function hasMethods(book: Book, place: Place): boolean {
  const line = place.field === 'value' || place.field === 'reference' ? lineAt(book, place) : undefined;
  return (line ?? columnAt(book, place))?.methods !== undefined;
}

/**
 * A book in which one method of a place says `text` for its formula or its reference: the one that says another in `seen`.
 * Where none does, one must have said it before. Else the first is changed, which shows what is wrong.
 */
export function withMethod(book: Book, place: Place, text: string, seen: Book): Book {
  const lineOf = (one: Book) => columnAt(one, place) ?? lineAt(one, place);
  const [own, found] = [lineOf(book)?.methods ?? [], lineOf(seen)?.methods ?? []];
  const what = place.field === 'reference' && lineAt(book, place) ? 'reference' : 'formula';
  const said = what === 'formula' ? formulaOf(text.trim()) : text.trim();
  const other = own.flatMap((one, at) => ((found[at]?.[what] ?? '') === (one[what] ?? '') ? [] : [at]));
  if (other.length === 0 && own.some((one) => (one[what] ?? '') === said)) return book;
  // Where none is in use the line has a reference of its own.
  if (other.length === 0 && what === 'reference') return withText(book, place, text);
  const [meant = 0] = other;
  const changed = (line: Line): Line =>
    line.id === lineOf(book)?.id
      ? { ...line, methods: own.map((one, at) => (at === meant ? { ...one, [what]: said } : one)) }
      : line;
  return withPart(book, place, (part) => ({
    ...part,
    ...(part.rows && { rows: part.rows.map(changed) }),
    ...(part.columns && { columns: part.columns.map(changed) }),
  }));
}

/** The column of a place in a table's heads or rows. */
export function columnAt(book: Book, place: Place): Line | undefined {
  const inTable = place.item === 'head' || rowOf(place.item) !== undefined;
  return inTable ? partAt(book, place)?.columns?.find(({ id }) => id === place.field) : undefined;
}

/** The number of the row, from 0, that a place has in a table; a line may have an id that looks like one. */
export function tableRowAt(book: Book, place: Place): number | undefined {
  return partAt(book, place)?.columns ? rowOf(place.item) : undefined;
}

/** Where what a cell says is written: a calculated cell of a table has it from its column's formula. */
export function writtenAt(book: Book, place: Place): Place {
  const column = columnAt(book, place);
  const isComputed = column && column.kind !== 'given' && statementAt(book, place) === undefined;
  return isComputed ? { ...place, item: 'head' } : place;
}

/** What a place takes; undefined where it takes nothing or is not there. */
export function takenAt(book: Book, place: Place): Takes | undefined {
  if (place.part === TITLE_BLOCK) return 'words';
  const part = partAt(book, place);
  if (!part) return undefined;
  if (part.kind === 'prose') return 'prose';
  if (place.item === '') return 'words';
  const column = columnAt(book, place);
  if (column) {
    if (column.kind !== 'given') return statementAt(book, place) ? 'stated' : 'formula';
    if (place.item === 'head') return 'words';
    return column.options ? 'choice' : 'entry';
  }
  const line = lineAt(book, place);
  if (!line) return undefined;
  if (place.field === 'name') return 'name';
  if (place.field === 'unit') return 'unit';
  if (place.field !== 'value') return 'words';
  if (statementAt(book, place)) return 'stated';
  if (line.formula !== undefined || line.methods) return 'formula';
  return line.kind === 'choice' ? 'choice' : 'entry';
}

/** The text of a place; undefined where there is none to be typed. */
export function textAt(book: Book, place: Place): string | undefined {
  if (place.part === TITLE_BLOCK) return book.title[place.field];
  const part = partAt(book, place);
  if (!part) return undefined;
  const statement = statementAt(book, place);
  if (statement) return statement.entry;
  if (part.kind === 'prose') return part.text ?? '';
  if (place.item === '') return part.title ?? '';
  const column = columnAt(book, place);
  if (column) {
    if (column.kind !== 'given') return column.formula ?? '';
    if (place.item === 'head') return column.label ?? column.name;
    return column.cells?.[rowOf(place.item) ?? -1] ?? '';
  }
  const line = lineAt(book, place);
  if (!line) return undefined;
  if (place.field === 'value') return line.formula ?? line.entry ?? '';
  const text = (line as unknown as Readonly<Record<string, unknown>>)[place.field];
  return typeof text === 'string' ? text : '';
}

/** A book with one part changed; a part that becomes undefined is taken out. */
export function withPart(
  book: Book,
  place: Pick<Place, 'sheet' | 'part'>,
  change: (part: Part) => Part | undefined,
): Book {
  const sheets = book.sheets.map((sheet) => {
    if (sheet.key !== place.sheet) return sheet;
    return {
      ...sheet,
      parts: sheet.parts.flatMap((part) => (part.id === place.part ? (change(part) ?? []) : part)),
    };
  });
  return { ...book, sheets };
}

/** A book in which a place says `text`. */
export function withText(book: Book, place: Place, text: string): Book {
  if (place.part === TITLE_BLOCK) return { ...book, title: { ...book.title, [place.field]: text } };
  return withPart(book, place, (part) => {
    if (part.kind === 'prose') return { ...part, text };
    const short = text.trim();
    if (place.item === '') return { ...part, title: short };
    const column = columnAt(book, place);
    const changed = (line: Line): Line =>
      lineWith(line, place, column ? line.id === column.id : line.id === place.item, short);
    return {
      ...part,
      ...(part.rows && { rows: part.rows.map(changed) }),
      ...(part.columns && { columns: part.columns.map(changed) }),
    };
  });
}

/** A book in which the formula of a line is another; what is stated beside it stays. */
export function withFormula(book: Book, place: Place, text: string): Book {
  return withPart(book, place, (part) => ({
    ...part,
    ...(part.rows && {
      rows: part.rows.map((line) =>
        line.id === place.item ? { ...line, formula: formulaOf(text.trim()) } : line,
      ),
    }),
  }));
}

function lineWith(line: Line, { item, field }: Place, meant: boolean, text: string): Line {
  if (!meant) return line;
  const row = rowOf(item);
  if (row !== undefined && line.cells)
    return { ...line, cells: line.cells.map((cell, at) => (at === row ? text : cell)) };
  if (item === 'head')
    return line.kind === 'given' ? { ...line, label: text } : { ...line, formula: formulaOf(text) };
  if (field !== 'value') return { ...line, [field]: text };
  // A number where no formula stands yet makes the line a given value.
  if (line.kind === 'calc' && line.formula === '' && !line.methods && isValue(text)) {
    const { formula: _, ...kept } = line;
    return { ...kept, kind: 'given', entry: text };
  }
  return line.formula === undefined ? { ...line, entry: text } : { ...line, formula: formulaOf(text) };
}

/** Whether a text is a number alone, with a unit or without one. */
export function isValue(text: string): boolean {
  return /^\s*-?\d+(\.\d+)?( [a-z]+)?\s*$/i.test(text);
}

/** A formula may be begun with an equals sign, as in a spreadsheet; the book has it without. */
function formulaOf(text: string): string {
  return text.replace(/^=\s*/, '');
}

/** Every id of lines, columns and parts. */
export function idsOf(book: Book): ReadonlySet<string> {
  return new Set(
    book.sheets.flatMap(({ key, parts }) =>
      parts.flatMap((part) =>
        [part, ...(part.rows ?? []), ...(part.columns ?? [])].map(({ id }) => `${key}/${id}`),
      ),
    ),
  );
}
