import { fail, type Outcome, problem, succeed } from '../diagnostics/index.ts';
import type { TakenColumn } from './mapping.ts';
import type { Delimiter, TextRow } from './records.ts';

/** What stands in front of the decimals of a number. */
export type Decimal = 'point' | 'comma';

const NUMBERS = /\d[\d.,]*\d/g;

/** What a number tells of its decimals: a point, a comma, either of them, or nothing. */
type Sign = Decimal | 'either' | undefined;

/** Each pattern with what it tells; the first that matches counts. */
const SIGNS: readonly (readonly [pattern: RegExp, sign: Sign])[] = [
  [/^[1-9]\d{0,2}[.,]\d{3}$/, 'either'],
  [/^\d+\.\d+$/, 'point'],
  [/^\d+,\d+$/, 'comma'],
  [/^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/, 'point'],
  [/^\d{1,3}(?:\.\d{3})+(?:,\d+)?$/, 'comma'],
];

interface Seen {
  readonly text: string;
  readonly column: string;
  readonly row: number;
  readonly line: number;
}

/**
 * Which sign the numbers of a text have in front of their decimals. What was stated holds, and a number that
 * contradicts it is refused. Else the numbers that can be read one way only decide. A number that can be read two
 * ways (`1,200`) is refused beside decimal commas, and also where the delimiter is a semicolon and no number decides;
 * otherwise its comma parts thousands, as in an entry typed by hand.
 *
 * @param rows the rows of data
 */
export function decimalOf(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  delimiter: Delimiter,
  stated: Decimal | undefined,
): Outcome<Decimal> {
  const seen = firstSigns(rows, taken);
  if (stated !== undefined) {
    const against = seen[stated === 'point' ? 'comma' : 'point'];
    return against === undefined ? succeed(stated) : contradicted(against, stated);
  }
  const { point, comma, either } = seen;
  if (point !== undefined && comma !== undefined) {
    const facts = { point: point.text, pointLine: point.line, comma: comma.text, commaLine: comma.line };
    return fail(problem('decimal-mixed', { from: 0, to: 0 }, facts));
  }
  const doubtful = comma !== undefined || (point === undefined && delimiter === ';');
  if (either !== undefined && doubtful) return ambiguous(either);
  return succeed(comma === undefined ? 'point' : 'comma');
}

/** A cell whose numbers have decimal commas, written with decimal points and no signs between thousands. */
export function withPoints(cell: string): string {
  return cell.replace(NUMBERS, (number) => number.replaceAll('.', '').replace(',', '.'));
}

function firstSigns(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
): Partial<Record<NonNullable<Sign>, Seen>> {
  const seen: Partial<Record<NonNullable<Sign>, Seen>> = {};
  for (const [i, { line, cells }] of rows.entries()) {
    for (const { position, column } of taken) {
      const text = cells[position] ?? '';
      if (!text.includes(',') && !text.includes('.')) continue;
      for (const number of text.match(NUMBERS) ?? []) {
        const sign = SIGNS.find(([pattern]) => pattern.test(number))?.[1];
        if (sign !== undefined) seen[sign] ??= { text: text.trim(), column: column.name, row: i + 1, line };
      }
    }
  }
  return seen;
}

function ambiguous(seen: Seen): Outcome<never> {
  const parted = seen.text.includes(',');
  const joined = seen.text.replace(/[.,]/, '');
  const facts = {
    ...seen,
    point: parted ? joined : seen.text,
    comma: parted ? seen.text.replace(',', '.') : joined,
  };
  return fail(problem('decimal-ambiguous', { from: 0, to: 0 }, facts));
}

function contradicted(seen: Seen, stated: Decimal): Outcome<never> {
  return fail(problem('decimal-contradicted', { from: 0, to: 0 }, { ...seen, stated }));
}
