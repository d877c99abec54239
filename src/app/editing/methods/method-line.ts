import {
  type Book,
  type Calc,
  type CalcColumn,
  type CalcPlace,
  findSheet,
  type Method,
} from '../../../document/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { findPlace } from '../find-place.ts';

/** A calculated line or column: what edits call it, what the model does, and where its names are looked up. */
export interface MethodLine {
  /** The id in the model: `sheet.name`, `sheet.table.column`. */
  readonly id: string;
  readonly place: CalcPlace;
  readonly line: Calc | CalcColumn;
  readonly sheet: string;
  /** Of a column, the id of its table. */
  readonly table?: string;
}

/** The calculated line or column at a place, whichever cell of it that is; undefined for anything else. */
export function methodLineAt(book: Book, place: CellPlace): MethodLine | undefined {
  const found = findPlace(book, place);
  const { sheet, part } = place;
  if (found?.kind === 'row')
    return found.row.kind === 'calc'
      ? {
          id: `${sheet}.${found.row.name}`,
          place: { sheet, part, row: found.row.id },
          line: found.row,
          sheet,
        }
      : undefined;
  if ((found?.kind !== 'column' && found?.kind !== 'cell') || found.column.kind !== 'calc') return undefined;
  const table = `${sheet}.${found.part.name}`;
  const at = { sheet, table: part, column: found.column.id };
  return { id: `${table}.${found.column.name}`, place: at, line: found.column, sheet, table };
}

/** The cell of the page that stands for a line: its value, of a column its formula below the table. */
export function lineCell({ place }: MethodLine): CellPlace {
  return 'row' in place
    ? { sheet: place.sheet, part: place.part, item: place.row, field: 'value' }
    : { sheet: place.sheet, part: place.table, item: place.column, field: 'value' };
}

/** The line as the book has it after an edit; undefined if it is gone. */
export function methodLineOf(book: Book, place: CalcPlace): Calc | CalcColumn | undefined {
  const part = findSheet(book, place.sheet)?.parts.find(
    ({ id }) => id === ('row' in place ? place.part : place.table),
  );
  const lines = part?.kind === 'rows' ? part.rows : part?.kind === 'table' ? part.columns : [];
  const id = 'row' in place ? place.row : place.column;
  const line = lines.find((one) => one.id === id);
  return line?.kind === 'calc' ? line : undefined;
}

/** The method of a line for all options that no other is for. */
export function methodForOthers({ methods = [] }: Calc | CalcColumn): Method | undefined {
  return methods.find((method) => method.for === undefined);
}
