import type { BookUnit, Column, Row } from '../document/index.ts';
import { type Notebook, namesOf, optionsOf } from '../notebook/index.ts';

/** What can be set in a book, for scripts that discover it. */
export interface PrintedGiven {
  readonly name: string;
  readonly kind: 'given' | 'choice' | 'table';
  readonly label: string;
  readonly unit?: string;
  readonly value?: string;
  readonly limits?: { readonly min?: string; readonly max?: string };
  readonly optional?: boolean;
  readonly options?: readonly { readonly value: string; readonly label: string }[];
  readonly columns?: readonly PrintedColumn[];
  readonly rows?: number;
  readonly reference?: string;
  readonly note?: string;
}

interface PrintedColumn {
  readonly name: string;
  readonly label: string;
  readonly type: string;
  readonly unit: string;
  readonly optional: boolean;
  readonly limits?: { readonly min?: string; readonly max?: string };
  readonly options?: readonly string[];
  readonly default?: string | number;
}

/** The units a book has of its own, which entries may be given in beside the standard ones. */
export function printUnits({ book }: Notebook): readonly BookUnit[] {
  return book.settings.units;
}

/** Every given, choice and given table of a book, in its order. */
export function printGivens(notebook: Notebook): readonly PrintedGiven[] {
  return [...namesOf(notebook.book).values()].flatMap((part): PrintedGiven[] => {
    if (part.kind === 'row') return printRow(notebook, part.id, part.sheet, part.row);
    if (part.kind !== 'table' || part.table.length === undefined) return [];
    const columns = part.table.columns.flatMap(printColumn);
    const label = part.table.title ?? part.table.name;
    return [{ name: part.id, kind: 'table', label, columns, rows: part.table.length }];
  });
}

function printRow(notebook: Notebook, name: string, sheet: string, row: Row): PrintedGiven[] {
  if (row.kind !== 'given' && row.kind !== 'choice') return [];
  const base = {
    name,
    kind: row.kind,
    label: row.label ?? row.name,
    value: row.entry,
    ...(row.reference && { reference: row.reference }),
    ...(row.note && { note: row.note }),
    optional: row.optional ?? false,
  };
  if (row.kind === 'given')
    return [{ ...base, unit: notebook.unitOf(name).text, ...(row.range && { limits: row.range }) }];
  const labels = new Map(row.options?.map((option) => [option.value, option.label ?? option.value]));
  const options = optionsOf(row, sheet, namesOf(notebook.book)).map((value) => ({
    value,
    label: labels.get(value) ?? value,
  }));
  return [{ ...base, options }];
}

function printColumn(column: Column): PrintedColumn[] {
  if (column.kind !== 'given') return [];
  return [
    {
      name: column.name,
      label: column.label ?? column.name,
      type: column.type ?? 'number',
      unit: column.unit ?? '',
      optional: column.optional ?? false,
      ...(column.range && { limits: column.range }),
      ...(column.options && { options: column.options }),
      ...(column.default !== undefined && { default: column.default }),
    },
  ];
}
