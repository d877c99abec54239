import type { Table } from '../../../document/index.ts';
import type { NewRows } from './new-rows.ts';
import { firstRowOf, type Where } from './where.ts';

/** Something that is found of new rows for a table, which all of them are gone through for. */
type Finding<Rest extends readonly string[], Found> = (
  table: Table,
  rows: NewRows,
  where: Where,
  ...rest: Rest
) => Found;

/** The same, which asked once more of the same rows, table and place gives what it found last. */
export function rememberLast<Rest extends readonly string[], Found>(
  find: Finding<Rest, Found>,
): Finding<Rest, Found> {
  const last = new WeakMap<
    NewRows,
    { readonly table: Table; readonly asked: string; readonly found: Found }
  >();
  return (table, rows, where, ...rest) => {
    const asked = [where.kind, firstRowOf(where), ...rest].join(' ');
    const known = last.get(rows);
    if (known?.table === table && known.asked === asked) return known.found;
    const found = find(table, rows, where, ...rest);
    last.set(rows, { table, asked, found });
    return found;
  };
}
