import { fail, nearest, type Outcome, problem, succeed } from '../diagnostics/index.ts';
import {
  type Book,
  type Edit,
  type FoundTable,
  findRow,
  findTable,
  setEntry,
  stateRow,
} from '../document/index.ts';
import { nearNames } from '../language/index.ts';
import type { FormulaColumnItem, FormulaItem, InputColumnItem, InputItem, Model } from './model.ts';
import { spelledName } from './spelled-name.ts';

const nowhere = { from: 0, to: 0 };

/**
 * The edit that enters `entry` at a given or choice named alone or with its sheet. Where the name is that of a calculated
 * line, the entry is stated in its place, for the reason given.
 */
export function setNamed(book: Book, written: string, entry: string, reason: string): Outcome<Edit> {
  const name = spelledName(written);
  const found = book.sheets.flatMap((sheet) => {
    const local = name.startsWith(`${sheet.key}.`) ? name.slice(sheet.key.length + 1) : name;
    const row = findRow(sheet, local);
    return row ? [{ sheet, ...row }] : [];
  });
  const entered = found.filter(({ row }) => row.kind === 'given' || row.kind === 'choice');
  const settable = entered.length > 0 ? entered : found.filter(({ row }) => row.kind === 'calc');
  const [only, second] = settable;
  if (second) {
    const places = settable.map(({ sheet, row }) => `${sheet.key}.${row.name}`);
    return fail(problem('name-on-sheets', nowhere, { name, places }));
  }
  if (only?.row.kind === 'calc') return succeed(stateRow(only.place, { entry, reason }));
  if (only) return succeed(setEntry(only.place, entry));
  if (found.length > 0) return fail(problem('set-calculated', nowhere, { name }));
  const all = book.sheets.flatMap((sheet) =>
    sheet.parts
      .flatMap((part) => (part.kind === 'rows' ? part.rows : []))
      .flatMap((row) =>
        row.kind === 'given' || row.kind === 'choice' ? [row.name, `${sheet.key}.${row.name}`] : [],
      ),
  );
  return fail(problem('set-unknown', nowhere, { name, near: namesNear(name, all) }));
}

/** The table named alone or with its sheet, whose rows are given. */
export function tableNamed(book: Book, written: string): Outcome<FoundTable> {
  const name = spelledName(written);
  const found = book.sheets.flatMap((sheet) => {
    const local = name.startsWith(`${sheet.key}.`) ? name.slice(sheet.key.length + 1) : name;
    return findTable(sheet, local) ?? [];
  });
  const [only, second] = found;
  if (second) {
    const places = found.map(({ place }) => `${place.sheet}.${name}`);
    return fail(problem('name-on-sheets', nowhere, { name, places }));
  }
  if (!only) {
    const all = book.sheets.flatMap((sheet) =>
      sheet.parts.flatMap((part) => (part.kind === 'table' ? [part.name] : [])),
    );
    return fail(problem('table-unknown', nowhere, { name, near: nearest(name, new Set(all)) }));
  }
  if (only.table.length === undefined) return fail(problem('table-computed', nowhere, { name }));
  return succeed(only);
}

/** The line of a name, alone or with its sheet. */
export function lineNamed(model: Model, name: string): Outcome<InputItem | FormulaItem> {
  return named(model, name, (item) => item.kind === 'input' || item.kind === 'formula') as Outcome<
    InputItem | FormulaItem
  >;
}

/** The column of a name, `table.column` or `sheet.table.column`. */
export function columnNamed(model: Model, name: string): Outcome<InputColumnItem | FormulaColumnItem> {
  return named(
    model,
    name,
    (item) => item.kind === 'input column' || item.kind === 'formula column',
  ) as Outcome<InputColumnItem | FormulaColumnItem>;
}

type AnyItem = InputItem | FormulaItem | InputColumnItem | FormulaColumnItem;

function named(model: Model, written: string, fits: (item: AnyItem) => boolean): Outcome<AnyItem> {
  const name = spelledName(written);
  const exact = model.items.get(name);
  if (exact && fits(exact)) return succeed(exact);
  const found = [...model.items.values()].filter((item) => fits(item) && item.id === `${item.sheet}.${name}`);
  const [only, second] = found;
  if (second) return fail(problem('name-on-sheets', nowhere, { name, places: found.map((item) => item.id) }));
  if (only) return succeed(only);
  const all = [...model.items.values()]
    .filter(fits)
    .flatMap((item) => [item.id.slice(item.sheet.length + 1), item.id]);
  return fail(problem('result-unknown', nowhere, { name, near: namesNear(name, all) }));
}

/** Names that may be meant by one that is not there, of which none is wanted more than another. */
function namesNear(name: string, all: readonly string[]): string[] {
  return [
    ...nearNames(
      name,
      [...new Set(all)].map((known) => ({ name: known, fits: false })),
    ),
  ];
}
