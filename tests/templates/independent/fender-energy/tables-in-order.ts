import type { Verdict } from '../program.ts';
import { typeOfHull } from './tables.ts';
import { type Inputs, judgeBelow, type Row } from './values.ts';

/** What the tables of the guidelines must keep among themselves, whatever somebody writes into them. */
export interface TablesInOrder {
  /** By how much the angle factor falls from row to row, the first from 1. */
  readonly falls: readonly number[];
  /** The most that the guideline permits on the hulls of each row, in kPa. */
  readonly permitted: readonly number[];
  readonly checks: Readonly<Record<string, Verdict>>;
}

const permittedOn: Readonly<Record<string, number>> = { container: 400, tanker: 350, 'bulk carrier': 200 };

/** Holds the tables to the order that the guidelines have in them: harder berths are never slower, larger angles never better. */
export function workTablesInOrder({ rows }: Inputs): TablesInOrder {
  const factors = rows('data.angles').map((row) => row.number('AF_t'));
  const falls = factors.map((factor, row) => (row === 0 ? 1 : (factors[row - 1] ?? Number.NaN)) - factor);
  const pressures = rows('data.pressure');
  const permitted = pressures.map((row) => permittedOn[typeOfHull(row.text('ship_kind'))] ?? 700);
  const rising = (names: readonly string[]) => (row: Row) => inTurn(names.map((name) => row.number(name)));
  return {
    falls,
    permitted,
    checks: {
      c_ab: every(rows('data.abnormal').map(rising(['largest', 'smallest']))),
      c_μ: every(rows('data.friction').map(rising(['μ_low', 'μ_high']))),
      c_AF: every(falls.map((fall) => inTurn([0, fall]))),
      c_A1: judgeBelow(Math.min(...factors), 1),
      c_br: every(rows('data.brolsma').map(rising(['a', 'b', 'c', 'd', 'e']))),
      c_IS: every(rows('data.is_speeds').map(rising(['s_5', 's_4', 's_3', 's_2', 's_1']))),
      c_pt: every(pressures.map((row, at) => inTurn([row.number('p_t'), permitted[at] ?? Number.NaN]))),
    },
  };
}

/** Whether none is above the next; undefined where one of them is no number. */
function inTurn(values: readonly number[]): boolean | undefined {
  if (!values.every(Number.isFinite)) return undefined;
  return values.every((value, at) => at === 0 || (values[at - 1] ?? Number.NaN) <= value * (1 + 1e-12));
}

function every(holds: readonly (boolean | undefined)[]): Verdict {
  if (holds.includes(undefined)) return { verdict: 'refused' };
  return { verdict: holds.includes(false) ? 'fails' : 'holds' };
}
