import { fail, type Outcome, type Problem, problem, succeed } from '../diagnostics/index.ts';
import { isNumeric, type TableColumn } from './column.ts';
import { headerColumn, unitAsWritten } from './headers.ts';
import type { TableText } from './table-text.ts';
import { columnFacts, type TextColumn, textColumns } from './text-columns.ts';

/** Where a column of a text goes: to a column of the table, in a unit (`''`: as that column has it), or nowhere. */
export type Destination =
  | { readonly kind: 'column'; readonly name: string; readonly unit: string }
  | { readonly kind: 'out' };

/** What the columns of a text go to. */
export interface Mapping {
  /** Whether the first row names the columns; otherwise it is data like the others. */
  readonly headed: boolean;
  /** By the position of the column, counted from 0; what is not here is still to be settled. */
  readonly goes: ReadonlyMap<number, Destination>;
}

/** A column of a text that is taken, and the unit of its plain numbers (`''`: that of the column). */
export interface TakenColumn {
  readonly position: number;
  readonly column: TableColumn;
  readonly unit: string;
}

/** What is taken of a text, and what there is to know about it. */
export interface Taken {
  readonly taken: readonly TakenColumn[];
  readonly warnings: readonly Problem[];
}

const NOWHERE = { from: 0, to: 0 };

/** The mapping that the headers of a text say themselves, by names and labels; it never guesses. */
export function namedMapping(text: TableText, columns: readonly TableColumn[]): Mapping {
  const goes = new Map<number, Destination>();
  for (const { position, header } of textColumns(text, true)) {
    const named = headerColumn(header, columns);
    if (named) goes.set(position, { kind: 'column', name: named.column.name, unit: named.unit });
  }
  return { headed: true, goes };
}

/**
 * What is taken of the columns of a text. Two that go to one column, units for columns without numbers, and nothing
 * to take are refused, for values would go astray; so are columns that go nowhere yet.
 *
 * @param unsettled the problem with columns that go nowhere yet
 */
export function takenColumns(
  found: readonly TextColumn[],
  columns: readonly TableColumn[],
  goes: ReadonlyMap<number, Destination>,
  unsettled: (open: readonly [TextColumn, ...TextColumn[]]) => Problem,
): Outcome<Taken> {
  const taken: TakenColumn[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const open: TextColumn[] = [];
  const out: TextColumn[] = [];
  const firsts = new Map<TableColumn, TextColumn>();
  for (const one of found) {
    const to = goes.get(one.position);
    if (to === undefined) open.push(one);
    else if (to.kind === 'out') out.push(one);
    else {
      const column = columnNamed(to.name, columns);
      const unit = unitAsWritten(to.unit);
      const first = firsts.get(column);
      firsts.set(column, one);
      if (first !== undefined) {
        const facts = { first: columnFacts(first), second: columnFacts(one), column: column.name };
        problems.push(problem('column-twice', NOWHERE, facts));
      } else if (column.kind !== 'given') {
        warnings.push(problem('column-calculated', NOWHERE, { column: column.name }));
      } else if (unit !== '' && !isNumeric(column)) {
        const facts = { ...columnFacts(one), unit, column: column.name, type: column.type ?? 'number' };
        problems.push(problem('column-unit-misplaced', NOWHERE, facts));
      } else taken.push({ position: one.position, column, unit });
    }
  }
  const [next, ...others] = open;
  if (next !== undefined) problems.unshift(unsettled([next, ...others]));
  if (out.length > 0) warnings.push(problem('column-left-out', NOWHERE, { columns: out.map(columnFacts) }));
  if (taken.length === 0 && problems.length === 0) problems.push(problem('table-nothing-taken', NOWHERE, {}));
  const [first, ...more] = problems;
  return first === undefined ? succeed({ taken, warnings }) : fail(first, ...more);
}

function columnNamed(name: string, columns: readonly TableColumn[]): TableColumn {
  const column = columns.find((one) => one.name === name);
  if (column === undefined) throw new Error(`a mapping names the column ${name}, which the table lacks`);
  return column;
}
