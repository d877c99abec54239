import type { Problem } from '../diagnostics/index.ts';
import type { Statement } from '../document/index.ts';
import {
  type EasedRemark,
  type FormulaColumnItem,
  type InputColumnItem,
  type Item,
  type Notebook,
  type Result,
  type Side,
  type Stated,
  type StatedCells,
  statedValues,
  type Value,
  type Verdict,
} from '../notebook/index.ts';
import { failureWords } from '../record/index.ts';
import { PLAIN_UNIT, type Unit, writeQuantity } from '../units/index.ts';
import { type PrintedMethod, printMethods } from './methods.ts';
import { numberIn } from './number-in.ts';

/**
 * How a result stands on the command line. `out-of-range`: a check holds, and rests on values beyond their permitted ranges;
 * `by-stated`: it holds, and with the computed values in place of stated ones would not.
 */
export type Status =
  | 'ok'
  | 'pass'
  | 'by-stated'
  | 'out-of-range'
  | 'fail'
  | 'problem'
  | 'waiting'
  | 'inapplicable';

/** One result as `--json` prints it: `value` in the row's own unit. */
export interface PrintedResult {
  readonly value?: number | string | boolean;
  /** The rows of a column; null where a row has no value. */
  readonly values?: readonly (number | string | boolean | null)[];
  readonly unit: string;
  readonly text: string;
  readonly status: Status;
  /** The condition under which a check applies. */
  readonly applies?: string;
  readonly utilisation?: number;
  /** The lines and columns beyond their permitted ranges on which a check rests. */
  readonly out_of_range?: readonly string[];
  /** Of a check, the lines and columns whose stated values ease it, or its stated side. */
  readonly eased_by?: readonly string[];
  /** Whether without them the check would not hold; there wherever `eased_by` is. */
  readonly holds_only_by_stated?: boolean;
  /** Of a check that fails, what it asks, the rows that govern it, and what to do. */
  readonly says?: readonly string[];
  readonly demand?: number;
  readonly capacity?: number;
  /** What the known rows come to where an aggregate has missing ones; no formula can read it. */
  readonly known_part?: number;
  readonly known_rows?: number;
  /** What stands in place of what the formula comes to, and why; of a check by its sides, of a column by its rows. */
  readonly stated?:
    | PrintedStatement
    | { readonly demand?: PrintedStatement; readonly capacity?: PrintedStatement }
    | readonly PrintedStatedCell[];
  /** What the formula comes to where a value is stated, in the same unit; null where it has none. */
  readonly computed?: number | string | boolean | null;
  /** Of a line with methods, the one in force. */
  readonly method?: PrintedMethod;
  /** Of a column with methods, each that is used. */
  readonly methods?: readonly PrintedMethod[];
}

/** A stated value as typed, with its reason and, of a side of a check, what would be computed. */
interface PrintedStatement {
  readonly entry: string;
  readonly reason: string;
  /** What the reason was given for, where it is still to be confirmed for this value. */
  readonly reason_for?: string;
  readonly computed?: number | string | boolean | null;
}

/** A stated cell of a column: `row` from 1. */
export interface PrintedStatedCell extends PrintedStatement {
  readonly row: number;
}

/** A stated value of the list `--json` has of them all. */
export interface PrintedStatedValue extends PrintedStatement {
  readonly name: string;
  readonly side?: Side;
  /** Of a column, the row from 1. */
  readonly row?: number;
  readonly value: number | string | boolean | null;
  readonly computed: number | string | boolean | null;
  /** Stated less computed, in `difference_unit`. */
  readonly difference?: number;
  readonly difference_unit?: string;
  readonly unit: string;
  /** What is to be remarked of the two values. */
  readonly open?: readonly string[];
  /** The lines and columns whose formulas name it. */
  readonly feeds: readonly string[];
}

/** The stated values of a book as `--json` lists them. */
export function printStated(notebook: Notebook): readonly PrintedStatedValue[] {
  return statedValues(notebook).map(
    ({ id, side, row, statement, value, computed, difference, apart, feeds }) => ({
      name: id,
      ...(side && { side }),
      ...(row !== undefined && { row: row + 1 }),
      ...printStatement(statement),
      value: printValue(value),
      computed: printComputed(computed),
      ...(difference && {
        difference: numberIn(difference.si, difference.unit),
        difference_unit: difference.unit.text,
      }),
      unit: value?.kind === 'number' ? value.unit.text : notebook.unitOf(id).text,
      ...(apart.length > 0 && { open: apart.map(({ message }) => message) }),
      feeds,
    }),
  );
}

/** A line or column as it is printed. */
export function printResult(notebook: Notebook, item: Item): PrintedResult {
  const applies = item.kind === 'formula' && item.applies ? { applies: item.applies.text } : {};
  const says = failureWords(notebook, item, 'written');
  return {
    ...printValues(notebook, item),
    ...(says.length > 0 && { says }),
    ...applies,
    ...printMethods(notebook, item),
  };
}

function printValues(notebook: Notebook, item: Item): PrintedResult {
  if (item.kind === 'input column') return printColumn(notebook, item);
  if (item.kind === 'formula column') {
    const column = printColumn(notebook, item);
    return item.cells ? { ...column, stated: printCells(notebook, item, item.cells) } : column;
  }
  const line = printLine(notebook, item.id);
  if (item.kind === 'input') return line;
  if (item.stated)
    return {
      ...line,
      stated: printStatement(item.stated.statement),
      computed: printComputed(notebook.computed(item.id)),
    };
  if (!item.sides) return line;
  const { demand, capacity } = item.sides;
  const side = (which: Side, { statement }: Stated): PrintedStatement => ({
    ...printStatement(statement),
    computed: printComputed(notebook.computed(item.id, which)),
  });
  const stated = {
    ...(demand && { demand: side('demand', demand) }),
    ...(capacity && { capacity: side('capacity', capacity) }),
  };
  return { ...line, stated };
}

function printStatement({ entry, reason, reasonFor }: Statement): PrintedStatement {
  return { entry, reason, ...(reasonFor !== undefined && { reason_for: reasonFor }) };
}

function printCells(
  notebook: Notebook,
  { id }: FormulaColumnItem,
  cells: StatedCells,
): readonly PrintedStatedCell[] {
  const unit = notebook.unitOf(id);
  const whole = notebook.computedColumn(id);
  return [...cells].map(([row, { statement }]) => {
    const read = whole?.status === 'ok' ? whole.reading.at(row) : undefined;
    const computed =
      read?.status !== 'ok' ? null : typeof read.value === 'number' ? valueIn(read.value, unit) : read.value;
    return { row: row + 1, ...printStatement(statement), computed };
  });
}

function printComputed(read: Result | undefined): number | string | boolean | null {
  return printValue(read?.status === 'ok' ? read.value : undefined);
}

function printValue(value: Value | undefined): number | string | boolean | null {
  if (!value) return null;
  if (value.kind === 'number') return valueIn(value.si, value.unit);
  return value.kind === 'text' ? value.text : value.truth;
}

function printLine(notebook: Notebook, id: string): PrintedResult {
  const read = notebook.result(id);
  if (read.status !== 'ok') return withoutValue(notebook, id, read);
  const { value } = read;
  if (value.kind === 'text') return { value: value.text, unit: '', text: value.text, status: 'ok' };
  if (value.kind === 'number')
    return {
      value: valueIn(value.si, value.unit),
      unit: value.unit.text,
      text: writeQuantity(value.si, value.unit),
      status: 'ok',
    };
  const verdict = notebook.verdict(id);
  if (!verdict) return { value: value.truth, unit: '', text: value.truth ? 'TRUE' : 'FALSE', status: 'ok' };
  const { demand, capacity, utilisation, outOfRange } = verdict;
  const eased = notebook.easedBy(id);
  return {
    value: verdict.holds,
    unit: demand?.unit.text ?? '',
    text: [verdict.holds ? 'holds' : 'fails', outOfRange?.message, eased?.message].filter(Boolean).join(', '),
    status: statusOf(verdict, eased),
    ...(outOfRange && { out_of_range: outOfRange.data.on }),
    ...(eased && { eased_by: eased.data.by, holds_only_by_stated: eased.data.only }),
    ...(utilisation !== undefined && { utilisation: numberIn(utilisation, PLAIN_UNIT) }),
    ...(demand && { demand: numberIn(demand.si, demand.unit) }),
    ...(capacity && { capacity: numberIn(capacity.si, capacity.unit) }),
  };
}

function statusOf({ holds, outOfRange }: Verdict, eased: EasedRemark | undefined): Status {
  if (!holds) return 'fail';
  if (outOfRange) return 'out-of-range';
  return eased?.data.only ? 'by-stated' : 'pass';
}

/** An SI number as it is printed: in its unit, a date as ISO text. */
function valueIn(si: number, unit: Unit): number | string {
  return unit.point === 'date' ? writeQuantity(si, unit) : numberIn(si, unit);
}

function withoutValue(
  notebook: Notebook,
  id: string,
  read: Exclude<Result, { status: 'ok' }>,
): PrintedResult {
  const unit = notebook.unitOf(id);
  if (read.status === 'missing') return { unit: unit.text, text: '', status: 'problem' };
  return {
    unit: unit.text,
    text: read.problem.message,
    status: read.status,
    ...knownPart(read.problem, unit),
  };
}

function knownPart({ data }: Problem, unit: Unit): Pick<PrintedResult, 'known_part' | 'known_rows'> {
  const { known_part, known_rows } = data;
  if (typeof known_part !== 'number' || typeof known_rows !== 'number') return {};
  return { known_part: numberIn(known_part, unit), known_rows };
}

function printColumn(notebook: Notebook, item: InputColumnItem | FormulaColumnItem): PrintedResult {
  const whole = notebook.column(item.id);
  const unit = notebook.unitOf(item.id);
  if (whole.status !== 'ok') {
    // A column whose table has no rows yet waits on the series that makes them.
    const status = whole.problem.code === 'waiting-on-rows' ? 'waiting' : whole.status;
    return { unit: unit.text, text: whole.problem.message, status };
  }
  const { reading } = whole;
  const values = Array.from({ length: reading.length }, (_, row) => {
    const read = reading.at(row);
    if (read.status !== 'ok') return null;
    return typeof read.value === 'number' ? valueIn(read.value, unit) : read.value;
  });
  const empty = item.kind === 'formula column' ? values.indexOf(null) : -1;
  const status = empty < 0 ? 'ok' : reading.statusAt(empty) === 'waiting' ? 'waiting' : 'problem';
  const text = `${values.length} ${values.length === 1 ? 'row' : 'rows'}`;
  return { values, unit: unit.text, text, status };
}
