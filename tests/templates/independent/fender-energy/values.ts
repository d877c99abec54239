import type { Cell, Drawn, Verdict } from '../program.ts';

/** What was drawn, read as numbers and texts. A number that is not there is NaN, which all that rests on it becomes too. */
export interface Inputs {
  readonly number: (name: string) => number;
  readonly text: (name: string) => string;
  /** The rows of a table; those of the template's table where none were drawn. */
  readonly rows: (name: string) => readonly Row[];
}

/** One row of a table. */
export interface Row {
  readonly number: (column: string) => number;
  readonly text: (column: string) => string;
}

/** Reads what was drawn, with the tables the template is shipped with behind it. */
export function readInputs(drawn: Drawn, shipped: Drawn['tables']): Inputs {
  const line = (name: string): Cell => {
    const cell = drawn.lines[name];
    if (cell === undefined) throw new Error(`${name} was not drawn`);
    return cell;
  };
  return {
    number: (name) => asNumber(line(name)),
    text: (name) => String(line(name)),
    rows: (name) =>
      (drawn.tables[name] ?? shipped[name] ?? []).map((cells) => ({
        number: (column) => asNumber(cells[column] ?? null),
        text: (column) => String(cells[column] ?? ''),
      })),
  };
}

function asNumber(cell: Cell): number {
  return typeof cell === 'number' ? cell : Number.NaN;
}

/** A quotient; NaN where there is nothing to divide by. */
export function ratio(dividend: number, divisor: number): number {
  return divisor === 0 ? Number.NaN : dividend / divisor;
}

/** A number where it is above zero, NaN where it is not. */
export function aboveZero(value: number): number {
  return value > 0 ? value : Number.NaN;
}

/** Degrees of an angle in radians. */
export function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}

/** Radians of an angle in degrees. */
export function radians(angle: number): number {
  return (angle * Math.PI) / 180;
}

/** Holds where the demand is within the capacity; refused where one of the two has no value. */
export function judge(demand: number, capacity: number): Verdict {
  if (!(Number.isFinite(demand) && Number.isFinite(capacity))) return { verdict: 'refused' };
  return {
    verdict: demand <= capacity ? 'holds' : 'fails',
    ...(demand > 0 && capacity > 0 && { utilisation: demand / capacity }),
  };
}

/** Verdicts on a rubber fender: none of them applies where an absorber stands in its place. */
export function ofRubber<K extends string>(
  { text }: Inputs,
  verdicts: Readonly<Record<K, Verdict>>,
): Readonly<Record<K, Verdict>> {
  if (text('absorber.used') === 'none') return verdicts;
  const idle = Object.keys(verdicts).map((name) => [name, { verdict: 'does not apply' }] as const);
  return Object.fromEntries(idle) as Readonly<Record<K, Verdict>>;
}

/** One where there is any of it, none where there is nothing. */
export function some(quantity: number): number {
  return Number.isNaN(quantity) ? Number.NaN : Number(quantity > 0);
}

/** Holds where there is any of it. */
export function someOf(quantity: number): Verdict {
  if (Number.isNaN(quantity)) return { verdict: 'refused' };
  return { verdict: quantity > 0 ? 'holds' : 'fails' };
}

/** Holds where the demand is below the capacity: what just reaches it fails. */
export function judgeBelow(demand: number, limit: number): Verdict {
  const judged = judge(demand, limit);
  return demand < limit || judged.verdict === 'refused' ? judged : { ...judged, verdict: 'fails' };
}

/** A result as it is given: null for a number that is none. */
export function asCell(value: number | string | null): Cell {
  return typeof value === 'number' && !Number.isFinite(value) ? null : value;
}

/** Straight between the points of a curve, by rising x; NaN outside them. */
export function straightBetween(points: readonly (readonly [x: number, y: number])[], x: number): number {
  for (const [index, [right, above]] of points.entries()) {
    if (x === right) return above;
    const before = points[index - 1];
    if (before === undefined) {
      if (x < right) return Number.NaN;
      continue;
    }
    const [left, below] = before;
    if (x < right) return below + ((above - below) * (x - left)) / (right - left);
  }
  return Number.NaN;
}
