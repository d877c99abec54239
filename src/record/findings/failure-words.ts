import { type FormulaItem, type Item, type Notebook, rowsInWords } from '../../notebook/index.ts';
import { type RowsBehind, rowsBehind } from '../numbers/rows-behind.ts';
import { comparedSides, failsBy } from '../values/compared-sides.ts';
import { labelOf } from '../values/names.ts';
import type { UnitsView } from '../values/units-view.ts';

/** So many rows are called by their names. */
const NAMED = 6;

/**
 * What there is to say of a check that fails, a line each: what it asks with its two sides and by how much they are apart, the
 * rows that govern it, and what to do. Nothing for any other line.
 */
export function failureWords(notebook: Notebook, item: Item, units: UnitsView): readonly string[] {
  if (item.kind !== 'formula' || item.row.kind !== 'check') return [];
  const verdict = notebook.verdict(item.id);
  if (!verdict || verdict.holds) return [];
  const sides = comparedSides(notebook, item, units);
  const by = failsBy(verdict, units, notebook.model.registry);
  const compared = sides ? `: ${sides.left} ${sides.sign} ${sides.right} does not hold` : '';
  const reference = item.row.reference ? `  [${item.row.reference}]` : '';
  const behind = rowsBehind(notebook, item);
  return [
    `${labelOf(item)}${compared}${by === undefined ? '' : `, by ${by}`}${reference}`,
    ...(behind ? [rowWords(notebook, item, behind)] : []),
    ...(item.row.note ? [item.row.note] : []),
  ];
}

/** Which rows they are, in which table, and what takes them. */
function rowWords(notebook: Notebook, check: FormulaItem, { table, rows, reader, does }: RowsBehind): string {
  const names = namesOfRows(notebook, table);
  const named = names
    ? rows.slice(0, NAMED).flatMap((row) => {
        const name = names(row);
        return name === undefined ? [] : [`“${name}”`];
      })
    : [];
  const called = named.length === 0 ? '' : ` (${named.join(', ')})`;
  const one = rows.length === 1;
  const verb = does === 'gives' ? (one ? 'gives' : 'give') : one ? 'is counted in' : 'are counted in';
  const takes = reader === check ? '' : ` ${verb} “${labelOf(reader)}”`;
  return `${rowsInWords(rows)} of ${table}${called}${takes}`;
}

/** The texts of the first column of a table that has texts. */
function namesOfRows(notebook: Notebook, table: string): ((row: number) => string | undefined) | undefined {
  for (const { id, type, ...item } of notebook.model.items.values()) {
    const isColumn = item.kind === 'input column' || item.kind === 'formula column';
    if (!isColumn || item.table !== table || type.kind !== 'text') continue;
    const column = notebook.column(id);
    if (column.status !== 'ok') continue;
    return (row) => {
      const read = column.reading.at(row);
      return read.status === 'ok' ? String(read.value) : undefined;
    };
  }
  return undefined;
}
