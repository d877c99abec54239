import type { Book, Column, Part, Row, Rows, Sheet, Table } from '../../document/index.ts';
import type { Place, Subject } from './difference.ts';
import type { Pair } from './pairs.ts';

/** A sheet and its position. */
export interface LocatedSheet {
  readonly kind: 'sheet';
  readonly sheet: Sheet;
  readonly index: number;
}

/** A part, its sheet, and its position there. */
export interface LocatedPart {
  readonly kind: 'part';
  readonly sheet: Sheet;
  readonly part: Part;
  readonly index: number;
}

/** A line, where it stands, and the id formulas know it by. */
export interface LocatedLine {
  readonly kind: 'line';
  readonly sheet: Sheet;
  readonly part: Rows;
  readonly row: Row;
  readonly index: number;
  readonly id: string;
}

/** A column, its table, and the id formulas know it by. */
export interface LocatedColumn {
  readonly kind: 'column';
  readonly sheet: Sheet;
  readonly table: Table;
  readonly column: Column;
  readonly index: number;
  readonly id: string;
}

export type Located = LocatedSheet | LocatedPart | LocatedLine | LocatedColumn;

/** All sheets of a book. */
export function sheetsOf({ sheets }: Book): readonly LocatedSheet[] {
  return sheets.map((sheet, index) => ({ kind: 'sheet', sheet, index }));
}

/** All parts of a book, in its order. */
export function partsOf({ sheets }: Book): readonly LocatedPart[] {
  return sheets.flatMap((sheet) =>
    sheet.parts.map((part, index): LocatedPart => ({ kind: 'part', sheet, part, index })),
  );
}

/** All lines of a book, in its order. */
export function linesOf(book: Book): readonly LocatedLine[] {
  return partsOf(book).flatMap(({ sheet, part }) =>
    part.kind !== 'rows'
      ? []
      : part.rows.map(
          (row, index): LocatedLine => ({
            kind: 'line',
            sheet,
            part,
            row,
            index,
            id: `${sheet.key}.${row.name}`,
          }),
        ),
  );
}

/** All columns of a table. */
export function columnsOf({ sheet, part }: LocatedPart): readonly LocatedColumn[] {
  if (part.kind !== 'table') return [];
  return part.columns.map((column, index) => {
    const id = `${sheet.key}.${part.name}.${column.name}`;
    return { kind: 'column', sheet, table: part, column, index, id };
  });
}

/** Where something stands, in words and identities. */
export function placeOf(one: Located): Place {
  const { sheet, index } = one;
  switch (one.kind) {
    case 'sheet':
      return { sheet: sheet.key, id: sheet.key, label: sheet.title, index };
    case 'part': {
      const { part } = one;
      const id = part.kind === 'table' ? `${sheet.key}.${part.name}` : part.id;
      return { sheet: sheet.key, id, label: labelOfPart(part), part: part.id, index };
    }
    case 'line':
      return { sheet: sheet.key, id: one.id, label: one.row.label ?? '', part: one.part.id, index };
    case 'column':
      return { sheet: sheet.key, id: one.id, label: one.column.label ?? '', part: one.table.id, index };
  }
}

/** What a reader knows a part by: its title, else what it is. */
function labelOfPart(part: Part): string {
  const words = { rows: 'block of lines', table: 'table', figure: 'sketch', chart: 'chart' } as const;
  if (part.kind === 'prose') return part.role;
  return part.title || words[part.kind];
}

/** What a difference of something that is in both books, or in one of them, is about. */
export function subjectOf({ before, after }: Partial<Pair<Located>>): Subject {
  const one = after ?? before;
  const kind = one?.kind === 'part' && one.part.kind === 'table' ? 'table' : (one?.kind ?? 'part');
  return {
    kind,
    ...(before && { before: placeOf(before) }),
    ...(after && { after: placeOf(after) }),
  };
}
