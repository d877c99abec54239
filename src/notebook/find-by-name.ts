import { fail, nearest, type Outcome, problem, succeed } from '../diagnostics/index.ts';
import {
  type Book,
  type Edit,
  type FoundRow,
  type FoundTable,
  findRow,
  findTable,
  setEntry,
  stateRow,
  stateSide,
} from '../document/index.ts';
import { nearNames } from '../language/index.ts';
import type { FormulaColumnItem, FormulaItem, InputColumnItem, InputItem, Model } from './model.ts';
import { spelledName } from './spelled-name.ts';
import { SIDES, type Side } from './stated.ts';

const nowhere = { from: 0, to: 0 };

/** A line that a value can be entered for, or stated in place of what it, or one `side` of a check, comes to. */
export interface Settable extends FoundRow {
  readonly id: string;
  readonly side?: Side;
}

/**
 * The line of a name, alone or with its sheet, that a value can be entered for or stated in place of. A given or a choice
 * comes before a calculated line of the same name; `check.demand` and `check.capacity` are the sides of a check.
 */
export function settableNamed(book: Book, written: string): Outcome<Settable> {
  const name = spelledName(written);
  const found = linesCalled(book, name);
  const entered = found.filter(({ row }) => row.kind === 'given' || row.kind === 'choice');
  const settable = [
    entered,
    found.filter(({ row }) => row.kind === 'calc'),
    SIDES.flatMap((side) => sidesCalled(book, name, side)),
  ].find((some) => some.length > 0);
  const [only, second] = settable ?? [];
  if (second) {
    const places = settable?.map(({ id, side }) => (side ? `${id}.${side}` : id)) ?? [];
    return fail(problem('name-on-sheets', nowhere, { name, places }));
  }
  if (only) return succeed(only);
  if (found.length > 0) return fail(problem('set-check', nowhere, { name }));
  return fail(problem('set-unknown', nowhere, { name, near: namesNear(name, settableNames(book)) }));
}

/**
 * The edit that enters `entry` at a given or choice named alone or with its sheet. Where the name is that of a calculated
 * line or of a side of a check, the entry is stated in its place, for the reason given.
 */
export function setNamed(book: Book, written: string, entry: string, reason: string): Outcome<Edit> {
  const found = settableNamed(book, written);
  if (!found.ok) return found;
  const { place, row, side } = found.value;
  if (row.kind === 'check' && side) return succeed(stateSide(place, row, side, { entry, reason }));
  return succeed(row.kind === 'calc' ? stateRow(place, { entry, reason }) : setEntry(place, entry));
}

function linesCalled(book: Book, name: string): readonly Settable[] {
  return book.sheets.flatMap((sheet) => {
    const local = name.startsWith(`${sheet.key}.`) ? name.slice(sheet.key.length + 1) : name;
    const row = findRow(sheet, local);
    return row ? [{ id: `${sheet.key}.${row.row.name}`, ...row }] : [];
  });
}

function sidesCalled(book: Book, name: string, side: Side): readonly Settable[] {
  if (!name.endsWith(`.${side}`)) return [];
  return linesCalled(book, name.slice(0, -side.length - 1))
    .filter(({ row }) => row.kind === 'check')
    .map((one) => ({ ...one, side }));
}

function settableNames(book: Book): readonly string[] {
  return book.sheets.flatMap((sheet) =>
    sheet.parts
      .flatMap((part) => (part.kind === 'rows' ? part.rows : []))
      .flatMap((row) => (row.kind === 'check' ? [] : [row.name, `${sheet.key}.${row.name}`])),
  );
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
