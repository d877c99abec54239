import type { Cell, Column } from '../../document/index.ts';
import { cellOf } from '../../document/index.ts';
import type { ColumnResult, Notebook } from '../../notebook/index.ts';
import { entryInPrint, numberInPrint, type Unit, type UnitRegistry, writeNumber } from '../../units/index.ts';
import { behindNumbers } from './decimal-mark.ts';
import { displayUnit, formatQuantity, quantityText } from './format-quantity.ts';
import { isCarried } from './is-carried.ts';
import { isOneNumber } from './one-number.ts';
import { printedRowsWords, sumOf } from './printed-rows.ts';
import { sharedDecimals } from './shared-decimals.ts';
import type { UnitsView } from './units-view.ts';
import { unlistedKeys } from './unlisted-keys.ts';

/** One cell of a table as the page shows it. */
export interface CellView {
  readonly text: string;
  /** What stands unseen behind it, so that the decimal marks of a column stand below one another. */
  readonly behind?: string;
  readonly state: 'entered' | 'computed' | 'stated' | 'blank' | 'bad' | 'waits';
}

/** A column ready to be shown row by row, with the unit its heading names. */
export interface ColumnView {
  readonly column: Column;
  readonly unit: string;
  readonly at: (row: number) => CellView;
}

/** The decimal marks of a column of so many rows are aligned; in a longer one nobody sees all of them. */
const MOST_ALIGNED = 400;

/** How a column of a table shows its rows. */
export function columnView(notebook: Notebook, id: string, column: Column, view: UnitsView): ColumnView {
  const result = notebook.column(id);
  const { registry } = notebook.model;
  const item = notebook.model.items.get(id);
  const cells = item?.kind === 'formula column' ? item.cells : undefined;
  const unit = result.status === 'ok' ? result.unit : notebook.unitOf(id);
  const shown = displayUnit(unit, view, registry);
  // What is typed stands as it was typed: only of results are the decimals ours to choose, and of what holds them.
  const ours = column.kind !== 'given' || view !== 'written' || isHeld(column);
  const decimals = ours ? sharedDecimals(result, shown) : undefined;
  const unlisted = unlistedKeys(notebook, id);
  const plainView = (row: number): CellView => {
    const own = cellView(result, column, row, { unit, view, registry, decimals });
    if (unlisted.has(row)) return { ...own, state: 'bad' };
    return cells?.has(row) && own.state === 'computed' ? { ...own, state: 'stated' } : own;
  };
  const length = result.status === 'ok' && result.reading.holds === 'number' ? result.reading.length : 0;
  const behind =
    length > MOST_ALIGNED ? [] : behindNumbers(Array.from({ length }, (_, row) => plainView(row).text));
  return {
    column,
    unit: shown.text === '-' || shown.text === 'date' ? '' : shown.text,
    at: (row) => {
      const own = plainView(row);
      const isBare = own.state !== 'stated' && own.state !== 'bad';
      return isBare && behind[row] ? { ...own, behind: behind[row] } : own;
    },
  };
}

interface Style {
  readonly unit: Unit;
  readonly view: UnitsView;
  readonly registry: UnitRegistry;
  readonly decimals: number | undefined;
}

function cellView(
  result: ColumnResult,
  column: Column,
  row: number,
  { unit, view, registry, decimals }: Style,
): CellView {
  const typed = column.kind === 'given' ? cellOf(column, row) : undefined;
  if (result.status !== 'ok' || row >= result.reading.length) {
    if (typed !== undefined) return { text: own(typed), state: typed === null ? 'blank' : 'entered' };
    return { text: '', state: result.status === 'problem' ? 'bad' : 'waits' };
  }
  const { reading } = result;
  const value = reading.values[row] ?? Number.NaN;
  if (Number.isNaN(value)) {
    if (typed !== undefined && typed !== null && typed !== '') return { text: own(typed), state: 'bad' };
    const status = reading.statusAt(row);
    if (status === 'missing') return { text: '', state: 'blank' };
    return { text: '', state: status === 'problem' ? 'bad' : 'waits' };
  }
  if (typed !== undefined && view === 'written') {
    const blank = typed === null || typed === '';
    const held = isHeld(column) && isCarried(`${typed ?? ''}`);
    return { text: blank || held ? read() : own(typed), state: blank ? 'blank' : 'entered' };
  }
  return { text: read(), state: typed === undefined ? 'computed' : 'entered' };

  function own(cell: Cell): string {
    return column.kind === 'given' && column.type === 'text' ? `${cell ?? ''}` : typedText(cell, unit);
  }

  function read(): string {
    if (reading.holds === 'text') return reading.textAt(row) ?? '';
    if (reading.holds === 'truth') return value === 1 ? 'true' : 'false';
    return formatQuantity(value, unit, view, registry, decimals === undefined ? {} : { decimals }).number;
  }
}

/** Whether a column holds the values of one that did not come along with it. */
function isHeld(column: Column): boolean {
  return column.kind === 'given' && column.toLink !== undefined;
}

/** A cell with its digits as typed, without the unit that its column says already. */
function typedText(cell: Cell, unit: Unit): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return numberInPrint(writeNumber(cell, { digits: 'full' }));
  if (unit.point === 'date') return cell;
  if (unit.text === '' || unit.text === '-' || !cell.endsWith(` ${unit.text}`)) return entryInPrint(cell);
  const number = cell.slice(0, -unit.text.length).trimEnd();
  return entryInPrint(isOneNumber(number) ? number : cell);
}

/**
 * The sum of a numeric column as its heading's unit has it, with the decimals of its cells; where these add to something
 * else as they are rounded, to what. Undefined where a row has no value.
 */
export function columnSum(notebook: Notebook, id: string, view: UnitsView): string | undefined {
  const result = notebook.column(id);
  if (result.status !== 'ok' || result.reading.holds !== 'number' || result.reading.gaps > 0)
    return undefined;
  if (result.unit.point !== undefined) return undefined;
  const { registry } = notebook.model;
  const { values, length } = result.reading;
  const decimals = sharedDecimals(result, displayUnit(result.unit, view, registry));
  const style = decimals === undefined ? {} : { decimals };
  const sum = { si: sumOf(length, (row) => values[row] ?? 0), unit: result.unit, ...style };
  const total = quantityText(formatQuantity(sum.si, result.unit, view, registry, style));
  const words = printedRowsWords(notebook, id, view, sum);
  return words === undefined ? total : `${total}, ${words}`;
}
