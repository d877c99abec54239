import type { JsonValue } from '../../diagnostics/index.ts';
import type { Path } from '../json/path.ts';
import type { IdRun } from '../row-ids.ts';
import type { Cell } from '../schema/columns.ts';
import type { RowIds } from '../schema/parts.ts';

/**
 * One change of a book, as JSON data. `at` leads from the book to a place by field names; in `sheets` a step is a
 * sheet's key, in `origins`, `parts`, `rows`, `columns` and `methods` an id, in any other list an index.
 *
 * - `set` gives a field, or a whole item of a list, a new value; without `value` an optional field goes away.
 * - `insert` puts an item into the list at `at`, in front of position `index`.
 * - `remove` takes the item at `at` out of its list.
 * - `move` puts the item at `at` elsewhere in its list, at position `to` of the list without it.
 * - `cells` overwrites cells of the given column at `at`, from row `from` (counted from 0) on.
 * - `splice` takes `remove` rows out of the table at `at` from row `from` on and puts `insert` rows in their place;
 *   `cells` holds their cells by the id of a given column, and columns it leaves out are blank there.
 */
export type Patch =
  | { readonly kind: 'set'; readonly at: Path; readonly value?: JsonValue }
  | { readonly kind: 'insert'; readonly at: Path; readonly index: number; readonly value: JsonValue }
  | { readonly kind: 'remove'; readonly at: Path }
  | { readonly kind: 'move'; readonly at: Path; readonly to: number }
  | { readonly kind: 'cells'; readonly at: Path; readonly from: number; readonly values: readonly Cell[] }
  | {
      readonly kind: 'splice';
      readonly at: Path;
      readonly from: number;
      readonly remove: number;
      readonly insert: number;
      readonly cells: Readonly<Record<string, readonly Cell[]>>;
      /** Identities for the rows put in; fresh ones if absent. */
      readonly ids?: readonly IdRun[];
      /** The identities of all rows after it, where it takes another back: `null` for a table that says none. */
      readonly back?: RowIds | null;
    };

/** What a person does in one step, with the words for it in the history ("change an entry"). */
export interface Edit {
  readonly label: string;
  readonly patches: readonly Patch[];
}

/** Several edits as one step. */
export function joinEdits(label: string, edits: readonly Edit[]): Edit {
  return { label, patches: edits.flatMap(({ patches }) => patches) };
}
