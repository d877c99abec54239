import type { Problem } from '../diagnostics/index.ts';
import type {
  Calc,
  CalcColumn,
  Check,
  Choice,
  Given,
  GivenColumn,
  Method,
  SeriesColumn,
  Table,
} from '../document/index.ts';
import type { CheckedFormula, Type } from '../language/index.ts';
import type { Entry, Unit, UnitRegistry } from '../units/index.ts';
import type { Stated, StatedSides } from './stated.ts';
import type { StatedCells } from './stated-column.ts';

/** One method of a line, checked like any formula. */
export interface MethodItem {
  readonly method: Method;
  /** What it is for, its options in the words that a person reads of them. */
  readonly words: string;
  readonly checked: CheckedFormula;
  /** What is wrong with it, told of its own formula; it stands in nobody's way unless the method is in force. */
  readonly problems: readonly Problem[];
}

/** The methods of a line or column, and how one of them comes to be in force. */
export interface Methods {
  /** The name of what chooses, as written, and its id, where there is such a thing. */
  readonly by: string;
  readonly byId?: string;
  readonly list: readonly MethodItem[];
  /** The one in force for the whole line; absent where a text chooses as values are computed, or none is chosen. */
  readonly chosen?: number;
  /** Where a text chooses: where the formula of each method stands in the one formula that is computed. */
  readonly starts?: readonly number[];
  /** Options and methods that do not meet: warnings. */
  readonly remarks: readonly Problem[];
}

/** What every line and column of the model has. `id` is `sheet.name` or `sheet.table.column`. */
interface ItemBase {
  readonly id: string;
  readonly sheet: string;
  /** The unit column, where it is filled and readable. */
  readonly unit?: Unit;
  /** What is wrong with the unit column, the entry, the options or the permitted range. */
  readonly problems: readonly Problem[];
}

/** A line whose value a person enters. */
export interface InputItem extends ItemBase {
  readonly kind: 'input';
  readonly row: Given | Choice;
  readonly type: Type;
  /** The entry as read; absent where it has a problem. */
  readonly entry?: Entry;
}
/** A calculated line or a check. */
export interface FormulaItem extends ItemBase {
  readonly kind: 'formula';
  readonly row: Calc | Check;
  readonly type: Type;
  /** The formula that is computed, as written: of a line with methods, of the one in force or of all in one. */
  readonly formula: string;
  readonly checked: CheckedFormula;
  /** Of a check, the condition under which it applies. */
  readonly applies?: CheckedFormula;
  /** The value that stands in place of what the formula gives. */
  readonly stated?: Stated;
  /** Of a check, the sides in place of which values stand. */
  readonly sides?: StatedSides;
  /** What is wrong with the formula of a side that is stated. */
  readonly fails?: Problem;
  readonly methods?: Methods;
}
/** A column a person enters. */
export interface InputColumnItem extends ItemBase {
  readonly kind: 'input column';
  readonly table: string;
  readonly column: GivenColumn;
  readonly type: Type;
}
/** A calculated column, or the one that makes the rows of its table. */
export interface FormulaColumnItem extends ItemBase {
  readonly kind: 'formula column';
  readonly table: string;
  readonly column: CalcColumn | SeriesColumn;
  readonly type: Type;
  /** The formula that is computed, as written: of a column with methods, of the one in force or of all in one. */
  readonly formula: string;
  readonly checked: CheckedFormula;
  /** The values that stand in place of single cells. */
  readonly cells?: StatedCells;
  readonly methods?: Methods;
}
export type Item = InputItem | FormulaItem | InputColumnItem | FormulaColumnItem;

/** The ids of all that a line or column is computed from: what its formula names, and what says whether a check applies. */
export function referencesOfItem(item: FormulaItem | FormulaColumnItem): ReadonlySet<string> {
  const { references } = item.checked;
  const applies = item.kind === 'formula' ? item.applies?.references : undefined;
  return applies ? new Set([...references, ...applies]) : references;
}

/** The ids of all that a line or column names: what it is computed from, what chooses its method, what its other methods name. */
export function namesUsed(item: Item): ReadonlySet<string> {
  if (!('checked' in item)) return new Set();
  const { methods } = item;
  const others = methods?.list.flatMap(({ checked }) => [...checked.references]) ?? [];
  return new Set([
    ...referencesOfItem(item),
    ...others,
    ...(methods?.byId === undefined ? [] : [methods.byId]),
  ]);
}

/** A table of the model; `id` is `sheet.table`. */
export interface TableItem {
  readonly id: string;
  readonly sheet: string;
  readonly part: Table;
}

/** A whole book understood: every name with its type, formula and problems, before any number. */
export interface Model {
  readonly registry: UnitRegistry;
  readonly items: ReadonlyMap<string, Item>;
  readonly tables: ReadonlyMap<string, TableItem>;
  /** What chooses between methods, by id. */
  readonly choosing: ReadonlySet<string>;
  /** Problems of the book's own units, datums and currency. */
  readonly problems: readonly Problem[];
}
