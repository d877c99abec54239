import { inCell, type Problem, problem } from '../diagnostics/index.ts';
import { cellOf, cellsOfColumn, optionWords } from '../document/index.ts';
import { partsOf, type Typed } from '../language/index.ts';
import { indexReader, optionReader, type Standing } from './index-of-method.ts';
import { rowsInWords } from './methods.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  type InputColumnItem,
  type InputItem,
  type Item,
  type Model,
  referencesOfItem,
} from './model.ts';

/** Entries that nothing reads as things stand: remarks, of lines and columns that may be left blank. */
export interface UnreadEntries {
  readonly of: (standing: Standing) => readonly Problem[];
}

const NOWHERE = { from: 0, to: 0 };

type Entered = InputItem | InputColumnItem;

/** A method that reads an entry, by its position. */
interface Reader {
  readonly item: FormulaItem | FormulaColumnItem;
  readonly at: number;
  /** Whether it reads the cell of its own row alone. */
  readonly isOfRow: boolean;
}

/** A longer table is not looked through: nobody enters it by hand. */
const MOST_ROWS = 5000;

/** Finds what only methods read once for each model; which of them are in force, each time. */
export function createUnreadEntries(): UnreadEntries {
  let known: { readonly model: Model; readonly readers: ReadonlyMap<string, readonly Reader[]> } | undefined;
  return {
    of: (standing) => {
      const { model } = standing;
      if (known?.model !== model) known = { model, readers: readByMethodsOnly(model) };
      return [...known.readers].flatMap(([id, readers]) => {
        const entered = model.items.get(id);
        return entered && mayBeBlank(entered) ? unreadIn(entered, readers, standing) : [];
      });
    },
  };
}

/** The entries that may be left blank and that only methods read, with these. A picture shows an entry and reads nothing of it. */
function readByMethodsOnly(model: Model): ReadonlyMap<string, readonly Reader[]> {
  const optional = new Map<string, Entered>();
  for (const item of model.items.values()) if (mayBeBlank(item)) optional.set(item.id, item);
  const readers = new Map<string, Reader[]>();
  const always = new Set<string>();
  for (const item of model.items.values()) {
    if (item.kind === 'input' && item.row.kind === 'choice' && item.row.from !== undefined)
      always.add(item.row.from).add(`${item.sheet}.${item.row.from}`);
    if (!('checked' in item)) continue;
    const { methods } = item;
    if (!methods) for (const id of referencesOfItem(item)) always.add(id);
    if (methods?.byId !== undefined) always.add(methods.byId);
    methods?.list.forEach(({ checked }, at) => {
      for (const id of checked.references) {
        const entered = optional.get(id);
        if (!entered) continue;
        const reader = { item, at, isOfRow: isInTable(item, entered) && readsItsRow(checked.typed, id) };
        readers.set(id, [...(readers.get(id) ?? []), reader]);
      }
    });
  }
  return new Map([...readers].filter(([id]) => !always.has(id)));
}

function mayBeBlank(item: Item): item is Entered {
  if (item.kind === 'input') return item.row.kind === 'given' && item.row.optional === true;
  return item.kind === 'input column' && item.column.optional === true;
}

function isInTable(item: FormulaItem | FormulaColumnItem, entered: Entered): boolean {
  return item.kind === 'formula column' && entered.kind === 'input column' && item.table === entered.table;
}

/** Whether a formula reads of a column the cell of its own row alone. */
function readsItsRow(node: Typed, id: string): boolean {
  if (node.kind === 'column') return node.id !== id;
  const isOverRows = node.kind === 'above' || (node.kind === 'call' && node.fn.evaluate.kind === 'scan');
  return isOverRows ? !mentions(node, id) : partsOf(node).every((part) => readsItsRow(part, id));
}

function mentions(node: Typed, id: string): boolean {
  const isIt = (node.kind === 'column' || node.kind === 'cell') && node.id === id;
  return isIt || partsOf(node).some((part) => mentions(part, id));
}

/** What is to be said of one line or column. */
function unreadIn(entered: Entered, readers: readonly Reader[], standing: Standing): readonly Problem[] {
  const said = (rows: readonly number[] | undefined, by: By): Problem =>
    inCell(
      problem('entry-unread', NOWHERE, {
        rows: rows ? rowsInWords(rows) : '',
        row: rows?.[0] === undefined ? null : rows[0] + 1,
        ...by,
      }),
      entered.id,
    );
  if (entered.kind === 'input') {
    const isEntered = entered.entry !== undefined && entered.entry.kind !== 'missing';
    if (!isEntered || readers.some((reader) => isAnywhereInForce(reader, standing))) return [];
    return [said(undefined, chosenBy(readers, standing, undefined))];
  }
  const length = standing.model.tables.get(entered.table)?.part.length ?? 0;
  if (length > MOST_ROWS) return [];
  const filled = [...cellsOfColumn(entered.column).entries()].filter(
    ([, cell]) => cell !== null && cell !== '' && cell !== 0 && cell !== entered.column.default,
  );
  const elsewhere = readers.filter(({ isOfRow }) => !isOfRow);
  if (filled.length === 0 || elsewhere.some((reader) => isAnywhereInForce(reader, standing))) return [];
  const inRow = readers
    .filter(({ isOfRow }) => isOfRow)
    .map((reader) => ({ ...reader, in: inForce(reader, standing) }));
  const groups = new Map<string, { readonly by: By; readonly rows: number[] }>();
  for (const [row] of filled) {
    if (inRow.some(({ at, in: index }) => index(row) === at || index(row) < 0)) continue;
    const by = chosenBy(readers, standing, row);
    const key = `${by.blank} ${by.option}`;
    const group = groups.get(key) ?? { by, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ by, rows }) => said(rows, by));
}

/** What chooses, and what it is: empty where that is not one thing that a person enters. */
interface By {
  readonly by: string[];
  readonly option: string;
  /** Whether nobody entered it: a blank cell counts as that option. */
  readonly blank: boolean;
}

function chosenBy(readers: readonly Reader[], standing: Standing, row: number | undefined): By {
  const near = readers.filter(({ isOfRow }) => isOfRow);
  const methods = (near.length > 0 ? near : readers).flatMap(({ item }) => item.methods ?? []);
  const by = [...new Set(methods.map((one) => one.by))];
  const [byId, ...others] = new Set(methods.map((one) => one.byId));
  const chooser = byId === undefined || others.length > 0 ? undefined : standing.model.items.get(byId);
  if (chooser?.kind !== 'input' && chooser?.kind !== 'input column') return { by, option: '', blank: false };
  const options = chooser.kind === 'input' && chooser.row.kind === 'choice' ? chooser.row.options : undefined;
  const blank = chooser.kind === 'input column' && row !== undefined && cellOf(chooser.column, row) === null;
  return { by, option: optionWords(options, optionReader(standing, chooser.id)(row) ?? ''), blank };
}

function inForce({ item }: Reader, standing: Standing): (row: number | undefined) => number {
  return item.methods ? indexReader(standing, item.methods) : () => -1;
}

/** Whether the method that reads is in force for the line, or in a row of the table, of its formula; or whether that is not known. */
function isAnywhereInForce(reader: Reader, standing: Standing): boolean {
  const { item, at } = reader;
  const index = inForce(reader, standing);
  const isIt = (row: number | undefined): boolean => index(row) === at || index(row) < 0;
  if (item.kind === 'formula' || item.methods?.chosen !== undefined) return isIt(undefined);
  const column = standing.column(item.id);
  if (column.status !== 'ok' || column.reading.length > MOST_ROWS) return true;
  return Array.from({ length: column.reading.length }, (_, row) => row).some(isIt);
}
