import { type Book, type Calc, type CalcColumn, foldedOption, type Method } from '../document/index.ts';
import type { CheckedFormula } from '../language/index.ts';
import { optionsOf } from './build-model.ts';
import { indexReader } from './index-of-method.ts';
import { indexFor } from './methods.ts';
import type { FormulaColumnItem, FormulaItem, MethodItem, Model } from './model.ts';
import { namesOf, resolveName } from './names.ts';
import type { Notebook } from './notebook.ts';

/** The formula a line or a cell of a column is computed by, with what is said of it. */
export interface FormulaInForce {
  /** As written. */
  readonly formula: string;
  readonly checked: CheckedFormula;
  readonly reference?: string;
  readonly note?: string;
  /** The method it belongs to, if it is one. */
  readonly method?: MethodItem;
}

/** The method in force of a line, or of a column in a row (from 0), and the rows of a column it is used for. */
export interface MethodUse {
  readonly item: MethodItem;
  /** The rows, from 0; all of them where a choice decides for the whole column. */
  readonly rows: readonly number[];
}

/**
 * The method of a line that is in force, or of a column in a row (from 0); undefined for a line of one formula, and as
 * long as what chooses has no value or one that no method is for.
 */
export function methodInForce(notebook: Notebook, id: string, row?: number): MethodItem | undefined {
  const methods = methodsOf(notebook.model, id);
  return methods?.list[indexReader(notebook, methods)(row)];
}

/**
 * What a line is computed by, or a column in a row (from 0). Of a line of which no method is in force, undefined: it
 * has no value either.
 */
export function formulaInForce(
  notebook: Notebook,
  item: FormulaItem | FormulaColumnItem,
  row?: number,
): FormulaInForce | undefined {
  const source = item.kind === 'formula' ? item.row : item.column;
  if (!item.methods) return { formula: item.formula, checked: item.checked, ...remarksOf(source) };
  const used = methodInForce(notebook, item.id, row);
  if (!used) return undefined;
  const { method, checked } = used;
  return { formula: method.formula, checked, ...remarksOf(source), ...remarksOf(method), method: used };
}

/** The method that a choice of the book has in force; undefined where something else than a choice decides. */
export function methodByChoice(
  book: Book,
  { by = '', methods = [] }: Calc | CalcColumn,
  sheet: string,
  table?: string,
): Method | undefined {
  const names = namesOf(book);
  const source = resolveName(by, names, sheet, table === undefined ? undefined : `${sheet}.${table}`);
  if (source?.kind !== 'row' || source.row.kind !== 'choice') return undefined;
  const { entry } = source.row;
  const options = optionsOf(source.row, source.sheet, names).map(foldedOption);
  return options.includes(foldedOption(entry)) ? methods[indexFor(methods, entry)] : undefined;
}

/** The methods of a column that are used, in the order of its methods, each with its rows. */
export function methodsUsed(notebook: Notebook, item: FormulaColumnItem): readonly MethodUse[] {
  const { methods } = item;
  if (!methods) return [];
  const rows = methods.list.map((): number[] => []);
  const length = notebook.rowsOf(item.table) ?? 0;
  const indexIn = indexReader(notebook, methods);
  for (let row = 0; row < length; row += 1) rows[indexIn(row)]?.push(row);
  return methods.list.flatMap((one, at) => {
    const own = rows[at] ?? [];
    return own.length > 0 ? [{ item: one, rows: own }] : [];
  });
}

function methodsOf(model: Model, id: string) {
  const item = model.items.get(id);
  return item?.kind === 'formula' || item?.kind === 'formula column' ? item.methods : undefined;
}

function remarksOf({
  reference,
  note,
}: Pick<Method, 'reference' | 'note'>): Pick<Method, 'reference' | 'note'> {
  return { ...(reference !== undefined && { reference }), ...(note !== undefined && { note }) };
}
