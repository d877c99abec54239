import type { JsonValue } from '../../diagnostics/index.ts';
import type { Cell } from '../../document/index.ts';
import type { Quantity, Result, Value, Verdict } from '../../notebook/index.ts';

/** Where something stands in one of the two books. */
export interface Place {
  /** The key of its sheet. */
  readonly sheet: string;
  /**
   * What it goes by: a sheet's key; `sheet.name` of a line, a table or a column, also of the rows and cells in it; the
   * identity of another part.
   */
  readonly id: string;
  /** Its description or title in words; empty where it has none. */
  readonly label: string;
  /** The part that a line stands in, by its identity; of a column its table's. */
  readonly part?: string;
  /** Its position among those around it, counted from 0; of a row or cell its row. */
  readonly index: number;
  /** What the row of a row or cell is called: its cell in the column by which rows are told apart. */
  readonly rowName?: string;
}

/** What a difference is about: without `before` it was added, without `after` it was removed. */
export interface Subject {
  readonly kind: 'sheet' | 'part' | 'line' | 'table' | 'column' | 'row' | 'cell';
  readonly before?: Place;
  readonly after?: Place;
}

/** How far one number is from another. */
export interface Size {
  /** The new value less the old one, in the unit that the new one is shown in. */
  readonly absolute: Quantity;
  /** The same as a part of the magnitude of the old one; absent where that is zero or a place on a scale. */
  readonly relative?: number;
}

/** What a person changed that a result depends on; without a subject it is of the book itself. */
export interface Cause {
  readonly subject?: Subject;
  /** The fields that were changed, `cells` or `rows` of a column or table, `added` or `removed`. */
  readonly by: readonly string[];
  /** Of `cells`, how many were changed, and the name of the row where it is one and rows have names. */
  readonly cells?: number;
  readonly rowName?: string;
}

/** The causes of a change, in the order of the book; `more` where only the first of them are listed. */
export interface Causes {
  readonly list: readonly Cause[];
  readonly more: boolean;
}

/** How a check stands. */
export interface CheckStanding {
  readonly word:
    | 'holds'
    | 'holds, beyond range'
    | 'holds only by a stated value'
    | 'fails'
    | 'does not apply'
    | 'no value';
  /** Absent where it has no verdict. */
  readonly verdict?: Verdict;
  /** Why it has none. */
  readonly because?: string;
}

/** One row of a column whose value is another, counted from 0 in either book; without a value where it has none. */
export interface RowValues {
  readonly before: number;
  readonly after: number;
  readonly rowName?: string;
  readonly from?: Value;
  readonly to?: Value;
}

/** A cell of a row that was added or removed. */
export interface RowCell {
  readonly column: string;
  readonly cell: Cell;
}

/** One difference between two books, as plain data. What follows from others has its causes. */
export type Difference =
  /** A field of the title block, the settings, or what the book says of itself, as `title.revision`. */
  | { readonly kind: 'book'; readonly field: string; readonly from?: JsonValue; readonly to?: JsonValue }
  /** Something is there in the new book only, or in the old one only; `says` is its formula, entry or words. */
  | {
      readonly kind: 'added' | 'removed';
      readonly subject: Subject;
      readonly says?: string;
      readonly cells?: readonly RowCell[];
    }
  /** It stands elsewhere: `within` the same part or sheet among those that are in both books, else in another one. */
  | { readonly kind: 'moved'; readonly subject: Subject; readonly within: boolean }
  /**
   * One field is another; `name` and `key` are renamings. `method`: it is a field of one of the line's methods, which is for
   * what `methodWords` say; the field `method` is all of one that came or went. `writing`:
   * only the way a formula is written, not what it says. `names`: the formula is as it was, and a name in it stands for something else.
   */
  | {
      readonly kind: 'field';
      readonly subject: Subject;
      readonly field: string;
      readonly method?: string;
      readonly methodWords?: string;
      readonly from?: JsonValue;
      readonly to?: JsonValue;
      readonly only?: 'writing' | 'names';
      readonly size?: Size;
    }
  /** A cell of a given column is another. */
  | {
      readonly kind: 'cell';
      readonly subject: Subject;
      readonly from: Cell;
      readonly to: Cell;
      readonly size?: Size;
    }
  /** Another method is in force, each told by what it is for; undefined where none is. */
  | {
      readonly kind: 'method';
      readonly subject: Subject;
      readonly from?: string;
      readonly to?: string;
      readonly causes: Causes;
    }
  /** A line comes to something else. */
  | {
      readonly kind: 'result';
      readonly subject: Subject;
      readonly from: Result;
      readonly to: Result;
      readonly size?: Size;
      readonly causes: Causes;
    }
  /** A check stands otherwise, or is otherwise near its limit. */
  | {
      readonly kind: 'check';
      readonly subject: Subject;
      readonly from: CheckStanding;
      readonly to: CheckStanding;
      readonly causes: Causes;
    }
  /**
   * Rows of a calculated column come to something else; `largest` is the largest change as a part of the old value.
   * `lengths`: the number of rows, where a series makes them and makes another number.
   */
  | {
      readonly kind: 'values';
      readonly subject: Subject;
      readonly lengths?: { readonly before: number; readonly after: number };
      readonly rows: readonly RowValues[];
      readonly largest?: RowValues & { readonly size: Size };
      readonly causes: Causes;
    }
  /** A column comes to something else in all, of those that a formula sums. */
  | {
      readonly kind: 'total';
      readonly subject: Subject;
      readonly from: Result;
      readonly to: Result;
      readonly size?: Size;
      readonly causes: Causes;
    };

/** How the rows of a table were told apart: by their identities, by what stands in a text column, or by their places. */
export interface RowMatching {
  readonly table: Subject;
  readonly by: 'identity' | 'key' | 'position';
  /** The column in either book, where it is by one. */
  readonly key?: { readonly before: string; readonly after: string };
}

/** What is different between two books. */
export interface BookComparison {
  /**
   * First what a person changed: of the book, of sheets, parts, lines, columns, rows and cells, each in the order of the new
   * book and removed ones last; then what followed from it.
   */
  readonly differences: readonly Difference[];
  /** Of each table of which rows differ. */
  readonly tables: readonly RowMatching[];
}
