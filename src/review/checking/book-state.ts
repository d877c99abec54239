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
import { namesIn, parseFormula } from '../../language/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  formulaInForce,
  type InputColumnItem,
  type Item,
  type Names,
  type Notebook,
  namesOf,
  resolveName,
} from '../../notebook/index.ts';
import { idInBook } from './subjects.ts';

/**
 * How everything in a book stands that a value can rest on, in words that can be compared: of each line, table or column,
 * by its id, what holds for the whole of it at 0, and what holds for one row at the identity of that row.
 */
export interface BookState {
  /** The book's own units, currency and datums. */
  readonly units: string;
  readonly lines: ReadonlyMap<string, ReadonlyMap<number, string>>;
}

/** Tables up to this length are compared cell by cell, longer ones by the hash of a column. */
const SHORT_TABLE = 500;

/** Cells of given columns are hashed once for as long as they are the same. */
const hasher: Hasher = createHasher();

/** How a book stands now. */
export function bookState(notebook: Notebook): BookState {
  const { book, model } = notebook;
  const names = namesOf(book);
  const lines = new Map<string, ReadonlyMap<number, string>>();
  for (const item of model.items.values()) lines.set(idInBook(item), stateOfItem(notebook, item, names));
  for (const { part } of model.tables.values())
    if (part.length !== undefined) lines.set(part.id, new Map([[0, rowsInWords(part)]]));
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

function stateOfItem(notebook: Notebook, item: Item, names: Names): ReadonlyMap<number, string> {
  switch (item.kind) {
    case 'input': {
      const { row, entry } = item;
      const words = entryInWords(row.entry, row.kind === 'given' ? row.unit : undefined);
      const isNumber = entry?.kind === 'number' || entry?.kind === 'point';
      return new Map([[0, isNumber ? `${words}${VALUE}${entry.si.toPrecision(14)}` : words]]);
    }
    case 'input column':
      return stateOfCells(notebook, item);
    case 'formula':
      return new Map([[0, stateOfLine(notebook, item, names)]]);
    case 'formula column':
      return stateOfColumn(notebook, item, names);
  }
}

/** What parts the words of a number from the number itself, in SI: 36 in and 3 ft are the same. */
const VALUE = '\u2261';

/** The words of a state alone. */
export function wordsOfState(state: string): string {
  return state.split(VALUE, 1)[0] ?? '';
}

/** Whether two states say the same: the same value, where both have one, else the same words. */
export function isSameState(a: string | undefined, b: string | undefined): boolean {
  if (a === b) return true;
  const [x, y] = [a?.split(VALUE)[1], b?.split(VALUE)[1]];
  return x !== undefined && x === y;
}

/** An entry with the unit that a bare number in it would have. */
function entryInWords(entry: string, unit: string | undefined): string {
  return unit === undefined || unit === '' ? entry : `${entry} [${unit}]`;
}

const statedInWords = ({ entry }: Statement, unit: string | undefined): string =>
  `stated ${entryInWords(entry, unit)}`;

function stateOfCells({ model }: Notebook, { table, column }: InputColumnItem): ReadonlyMap<number, string> {
  const { unit = '', default: blank, chunks } = column;
  const whole = [
    `in ${unit === '' ? 'no unit' : unit}`,
    ...(blank === undefined ? [] : [`blank is ${blank}`]),
  ].join(', ');
  const part = model.tables.get(table)?.part;
  if (!part || (part.length ?? 0) > SHORT_TABLE)
    return new Map([[0, `${whole}, cells ${chunks.map(hasher.chunk).join(' ')}`]]);
  const ids = rowIdsOf(part);
  const state = new Map([[0, whole]]);
  for (const [row, cell] of cellsOfColumn(column).entries()) {
    const id = part.length === undefined ? row + 1 : idOfRow(ids, row);
    if (id !== undefined) state.set(id, cell === null ? '' : String(cell));
  }
  return state;
}

function stateOfLine(notebook: Notebook, item: FormulaItem, names: Names): string {
  const { row, sheet } = item;
  if (row.kind === 'calc' && row.stated) return statedInWords(row.stated, row.unit);
  const used = formulaInForce(notebook, item);
  const formula = used ? inIds(row, used.formula, names, sheet) : 'no method in force';
  if (row.kind === 'calc') return formula;
  const applies = row.applies === undefined ? [] : [`applies where ${inIds(row, row.applies, names, sheet)}`];
  const sides = Object.entries(row.stated ?? {}).map(
    ([side, one]) => `${side} ${statedInWords(one, row.unit)}`,
  );
  return [formula, ...applies, ...sides].join('; ');
}

function stateOfColumn(
  notebook: Notebook,
  item: FormulaColumnItem,
  names: Names,
): ReadonlyMap<number, string> {
  const { column, sheet, table } = item;
  const written = (formula: string): string => inIds(column, formula, names, sheet, table);
  const state = new Map<number, string>();
  const rows = notebook.rowsOf(table) ?? 0;
  const part = notebook.model.tables.get(table)?.part;
  const byRow = item.methods !== undefined && item.methods.chosen === undefined;
  if (byRow && rows <= SHORT_TABLE) {
    const ids = part?.length === undefined ? undefined : rowIdsOf(part);
    state.set(0, 'by methods');
    for (let row = 0; row < rows; row += 1) {
      const used = formulaInForce(notebook, item, row);
      state.set(
        ids ? (idOfRow(ids, row) ?? row + 1) : row + 1,
        used ? written(used.formula) : 'no method in force',
      );
    }
  } else if (byRow)
    state.set(0, (item.methods?.list ?? []).map(({ method }) => written(method.formula)).join('; '));
  else {
    const used = formulaInForce(notebook, item, 0);
    state.set(0, used ? written(used.formula) : 'no method in force');
  }
  if (column.kind === 'calc')
    for (const stated of column.stated ?? []) state.set(stated.row, statedInWords(stated, column.unit));
  return state;
}

/** Where names stand in the formulas of a line: found once for as long as the line is the same. */
const spansOfLine = new WeakMap<
  object,
  Map<string, readonly { readonly name: string; readonly from: number; readonly to: number }[]>
>();

/** A formula with the ids of what it names in place of the names, so that another name alone changes nothing. */
function inIds(line: object, formula: string, names: Names, sheet: string, table?: string): string {
  const known = spansOfLine.get(line) ?? new Map();
  spansOfLine.set(line, known);
  const spans = known.get(formula) ?? namesIn(parseFormula(formula).syntax);
  known.set(formula, spans);
  let text = '';
  let at = 0;
  for (const { name, from, to } of spans) {
    const named = resolveName(name, names, sheet, table);
    if (!named) continue;
    const id =
      named.kind === 'row' ? named.row.id : named.kind === 'table' ? named.table.id : named.column.id;
    text += `${formula.slice(at, from)}{${id}}`;
    at = to;
  }
  return text + formula.slice(at);
}

/** Words of a state as a person reads them: with the names that the book has now in place of the ids. */
export function stateInWords(state: string, { book, model }: Notebook): string {
  const known = namesById(model, book);
  const named = wordsOfState(state).replace(
    /\{([^}]+)\}/g,
    (_, id: string) => known.get(id) ?? '(a line that is gone)',
  );
  return named.replace(/^(stated )?(.*) \[(.*)\]$/, (_, stated = '', entry: string, unit: string) =>
    /\p{L}|%|°/u.test(entry) ? `${stated}${entry}` : `${stated}${entry} ${unit}`,
  );
}

function namesById(model: Notebook['model'], book: Book): ReadonlyMap<string, string> {
  const known = namesOfModel.get(model);
  if (known) return known;
  const names = new Map<string, string>();
  for (const named of namesOf(book).values()) {
    const id =
      named.kind === 'row' ? named.row.id : named.kind === 'table' ? named.table.id : named.column.id;
    names.set(id, named.id);
  }
  namesOfModel.set(model, names);
  return names;
}

const namesOfModel = new WeakMap<object, ReadonlyMap<string, string>>();
