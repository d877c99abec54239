import type { Title } from '../../document/index.ts';

/** A cell of the open book: where the person is, and where undo brings them back to. */
export interface CellPlace {
  /** The key of the sheet. */
  readonly sheet: string;
  /** The id of the part. */
  readonly part: string;
  /** The id of a row, `r0`, `r1`… for a row of a table, `head` for a table's heading, empty for prose. */
  readonly item: string;
  /** `reference`, `name`, `label`, `value`, `unit` of a line; the id of a column of a table; `text` of prose. */
  readonly field: string;
  /** The id of the method that is meant, of a line that has several. */
  readonly method?: string;
}

export function samePlace(a: CellPlace | undefined, b: CellPlace | undefined): boolean {
  if (!a || !b) return a === b;
  const same = a.sheet === b.sheet && a.part === b.part && a.item === b.item && a.field === b.field;
  return same && (a.method === b.method || methodFieldOf(a) === undefined);
}

/** What is written of one method of a line, in the list of its methods. */
export type MethodText = 'formula' | 'reference' | 'note';

/** The place of what is written of one method of the line that a cell is of, in the list of its methods. */
export function methodPlace(cell: CellPlace, method: string, field: MethodText): CellPlace {
  return { ...cell, field: METHOD_FIELDS[field], method };
}

/** What of a method a place of the list of methods is; undefined for a cell of a sheet. */
export function methodFieldOf({ field, method }: CellPlace): MethodText | undefined {
  if (method === undefined) return undefined;
  return (Object.keys(METHOD_FIELDS) as MethodText[]).find((one) => METHOD_FIELDS[one] === field);
}

/** Whether a place is none of the page’s cells, but one beside or above them. */
export function isOffPage(place: CellPlace): boolean {
  return titleFieldOf(place) !== undefined || methodFieldOf(place) !== undefined;
}

// No column of a table has an id with a space.
const METHOD_FIELDS: Readonly<Record<MethodText, string>> = {
  formula: 'method formula',
  reference: 'method reference',
  note: 'method note',
};

/** The place of a field of the title block, which stands on all sheets. */
export function titlePlace(field: keyof Title): CellPlace {
  return { sheet: '', part: TITLE_BLOCK, item: '', field };
}

/** The field of the title block that a place is; undefined for a cell of a sheet. */
export function titleFieldOf({ sheet, part, field }: CellPlace): keyof Title | undefined {
  return sheet === '' && part === TITLE_BLOCK ? (field as keyof Title) : undefined;
}

// No part of a book has an id with a space.
const TITLE_BLOCK = 'title block';
