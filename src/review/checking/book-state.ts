import {
  type Book,
  cellsOfColumn,
  createHasher,
  type Hasher,
  idOfRow,
  rowIdsOf,
  type Statement,
  type Table,
} from '../../document/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  formulaInForce,
  type InputColumnItem,
  type Item,
  itemId,
  type Names,
  type Notebook,
  namesOf,
  resolveName,
} from '../../notebook/index.ts';
import { areEqual, type Entry } from '../../units/index.ts';
import { spelledFormula } from '../spelled-formula.ts';
import { idInBook } from './subjects.ts';

/**
 * How everything in a book stands that a value can rest on, in words that can be compared: of each line, table or column,
 * by its id, what holds for the whole of it at 0, and what holds for one row at the identity of that row.
 */
export interface BookState {
  /** The book's own units, currency and datums. */
  readonly units: string;
  readonly lines: ReadonlyMap<string, Rows>;
}

/** How a line, a column or one row of it stands: in words, and where it is an entry by the number it comes to, in SI. */
export interface Standing {
  readonly is: string;
  readonly si?: number;
}

/** The standings of one line, table or column: of the whole at 0, of its rows by their identities. */
export type Rows = ReadonlyMap<number, Standing>;

/** Whether two standings are the same: by their numbers where both have one, else in words. */
export function isSame(a: Standing | undefined, b: Standing | undefined): boolean {
  if (a?.si !== undefined && b?.si !== undefined) return areEqual(a.si, b.si);
  return a?.is === b?.is;
}

const inWords = (is: string): Standing => ({ is });
const NO_METHOD = inWords('no method in force');
const wholeOf = (standing: Standing): Rows => new Map([[0, standing]]);

/** Tables up to this length are compared cell by cell, longer ones by the hash of a column. */
const SHORT_TABLE = 500;

/** Cells of given columns are hashed once for as long as they are the same. */
const hasher: Hasher = createHasher();

/** How a book stands now. */
export function bookState(notebook: Notebook): BookState {
  const { book, model } = notebook;
  const names = namesOf(book);
  const lines = new Map<string, Rows>();
  for (const item of model.items.values()) lines.set(idInBook(item), stateOfItem(notebook, item, names));
  for (const { part } of model.tables.values())
    if (part.length !== undefined) lines.set(part.id, wholeOf(inWords(rowsInWords(part))));
  return { units: unitsInWords(book), lines };
}

function unitsInWords({ settings: { units, currency, datums } }: Book): string {
  const own = units.map(({ symbol, definition }) => `${symbol} = ${definition}`);
  return [`money in ${currency}`, ...own, ...datums.map((datum) => `levels above ${datum}`)].join('; ');
}

function rowsInWords(part: Table): string {
  return rowIdsOf(part)
    .runs.map(({ first, count }) => (count === 1 ? `${first}` : `${first}–${first + count - 1}`))
    .join(', ');
}

function stateOfItem(notebook: Notebook, item: Item, names: Names): Rows {
  switch (item.kind) {
    case 'input': {
      const { row, entry } = item;
      const is = entryInWords(row.entry, row.kind === 'given' ? row.unit : undefined);
      return wholeOf({ is, ...numberOf(entry) });
    }
    case 'input column':
      return stateOfCells(notebook, item);
    case 'formula':
      return wholeOf(stateOfLine(notebook, item, names));
    case 'formula column':
      return stateOfColumn(notebook, item, names);
  }
}

/** An entry with the unit that a bare number in it would have. */
function entryInWords(entry: string, unit: string | undefined): string {
  return unit === undefined || unit === '' ? entry : `${entry} [${unit}]`;
}

/** The number an entry comes to, if it is one. */
function numberOf(entry: Entry | undefined): { readonly si?: number } {
  return entry?.kind === 'number' || entry?.kind === 'point' ? { si: entry.si } : {};
}

const statedInWords = ({ entry }: Statement, unit: string | undefined): string =>
  `stated ${entryInWords(entry, unit)}`;

function stateOfCells({ model }: Notebook, { table, column }: InputColumnItem): Rows {
  const { unit = '', default: blank, chunks } = column;
  const whole = [
    `in ${unit === '' ? 'no unit' : unit}`,
    ...(blank === undefined ? [] : [`blank is ${blank}`]),
  ].join(', ');
  const part = model.tables.get(table)?.part;
  if (!part || (part.length ?? 0) > SHORT_TABLE)
    return wholeOf(inWords(`${whole}, cells ${chunks.map(hasher.chunk).join(' ')}`));
  const ids = rowIdsOf(part);
  const state = new Map([[0, inWords(whole)]]);
  for (const [row, cell] of cellsOfColumn(column).entries()) {
    const id = part.length === undefined ? row + 1 : idOfRow(ids, row);
    if (id !== undefined) state.set(id, inWords(cell === null ? '' : String(cell)));
  }
  return state;
}

function stateOfLine(notebook: Notebook, item: FormulaItem, names: Names): Standing {
  const { row, sheet } = item;
  if (row.kind === 'calc' && row.stated)
    return { is: statedInWords(row.stated, row.unit), ...numberOf(item.stated?.entry) };
  const used = formulaInForce(notebook, item);
  const formula = used ? inIds(row, used.formula, names, sheet) : NO_METHOD.is;
  if (row.kind === 'calc') return inWords(formula);
  const applies = row.applies === undefined ? [] : [`applies where ${inIds(row, row.applies, names, sheet)}`];
  const sides = Object.entries(row.stated ?? {}).map(
    ([side, one]) => `${side} ${statedInWords(one, row.unit)}`,
  );
  return inWords([formula, ...applies, ...sides].join('; '));
}

function stateOfColumn(notebook: Notebook, item: FormulaColumnItem, names: Names): Rows {
  const { column, sheet, table } = item;
  const written = (formula: string): Standing => inWords(inIds(column, formula, names, sheet, table));
  const state = new Map<number, Standing>();
  const rows = notebook.rowsOf(table) ?? 0;
  const part = notebook.model.tables.get(table)?.part;
  const byRow = item.methods !== undefined && item.methods.chosen === undefined;
  if (byRow && rows <= SHORT_TABLE) {
    const ids = part?.length === undefined ? undefined : rowIdsOf(part);
    state.set(0, inWords('by methods'));
    for (let row = 0; row < rows; row += 1) {
      const used = formulaInForce(notebook, item, row);
      state.set(ids ? (idOfRow(ids, row) ?? row + 1) : row + 1, used ? written(used.formula) : NO_METHOD);
    }
  } else if (byRow)
    state.set(
      0,
      inWords((item.methods?.list ?? []).map(({ method }) => written(method.formula).is).join('; ')),
    );
  else {
    const used = formulaInForce(notebook, item, 0);
    state.set(0, used ? written(used.formula) : NO_METHOD);
  }
  if (column.kind === 'calc')
    for (const stated of column.stated ?? [])
      state.set(stated.row, inWords(statedInWords(stated, column.unit)));
  return state;
}

/** A formula with the ids of what it names in place of the names, so that another name alone changes nothing. */
function inIds(line: object, formula: string, names: Names, sheet: string, table?: string): string {
  return spelledFormula(line, formula, (name) => {
    const named = resolveName(name, names, sheet, table);
    return named && `{${itemId(named)}}`;
  });
}

/** Words of a state as a person reads them: with the names that the book has now in place of the ids. */
export function stateInWords(state: string, { book, model }: Notebook): string {
  const known = namesById(model, book);
  const named = state.replace(/\{([^}]+)\}/g, (_, id: string) => known.get(id) ?? '(a line that is gone)');
  return named.replace(/^(stated )?(.*) \[(.*)\]$/, (_, stated = '', entry: string, unit: string) =>
    /\p{L}|%|°/u.test(entry) ? `${stated}${entry}` : `${stated}${entry} ${unit}`,
  );
}

function namesById(model: Notebook['model'], book: Book): ReadonlyMap<string, string> {
  const known = namesOfModel.get(model);
  if (known) return known;
  const names = new Map<string, string>();
  for (const named of namesOf(book).values()) names.set(itemId(named), named.id);
  namesOfModel.set(model, names);
  return names;
}

const namesOfModel = new WeakMap<object, ReadonlyMap<string, string>>();
