import { fail, type Outcome, problem, succeed } from '../diagnostics/index.ts';
import { columnLetters } from './column.ts';
import { ordinarySigns } from './full-width.ts';
import type { TakenColumn } from './mapping.ts';
import type { TextRow } from './records.ts';

/** What stands in front of the decimals of a number. */
export type Decimal = 'point' | 'comma';

/** A run of digits with signs within it; spaces and apostrophes only between groups of three digits. */
const NUMBERS =
  /\d{1,3}(?:[ '’´`\u00a0\u2007\u2009\u202f]\d{3})+(?!\d)(?:[.,]\d*)?|\d(?:[\d.,]*\d)?|[.,]\d+/g;

/** A number with one point and no other sign: where a decimal point is known it tells nothing more. */
const ONE_POINT = /^\s*-?\d+\.\d+\s*$/;

/** What a number tells of its decimals: a point, a comma, either of them, or nothing. */
type Sign = Decimal | 'either' | undefined;

/** Each pattern with what it tells; the first that matches counts. */
const SIGNS: readonly (readonly [pattern: RegExp, sign: Sign])[] = [
  [/^[1-9]\d{0,2}[.,]\d{3}$/, 'either'],
  [/^[^.,]*\.\d+$/, 'point'],
  [/^[^.,]*,\d+$/, 'comma'],
  [/^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/, 'point'],
  [/^\d{1,2}(?:,\d{2})+,\d{3}(?:\.\d+)?$/, 'point'],
  [/^\d{1,3}(?:\.\d{3})+(?:,\d+)?$/, 'comma'],
];

interface Seen {
  readonly text: string;
  readonly column: string;
  readonly letter: string;
  readonly line: number;
}

/** The cells whose numbers tell how decimals are written: the first of each kind, and all that can be read two ways. */
interface Told {
  readonly first: Partial<Record<NonNullable<Sign>, Seen>>;
  readonly either: readonly (readonly [row: number, position: number])[];
}

/**
 * Which sign the numbers of a text have in front of their decimals. What was stated holds, and a number that
 * contradicts it is refused. Else the numbers that can be read one way only decide. Where none does, a number that can
 * be read two ways (`1,250`) is refused, whatever parts the cells: it is a thousand times the other reading.
 *
 * @param rows the rows of data
 * @param doubt is told each cell that can be read two ways, where that is why the text is refused
 */
export function decimalOf(
  rows: readonly TextRow[],
  taken: readonly TakenColumn[],
  stated: Decimal | undefined,
  doubt: (row: number, position: number) => void,
): Outcome<Decimal> {
  const { first, either } = signsOf(rows, taken);
  if (stated !== undefined) {
    const against = first[stated === 'point' ? 'comma' : 'point'];
    return against === undefined ? succeed(stated) : contradicted(against, stated);
  }
  const { point, comma } = first;
  if (point !== undefined && comma !== undefined) {
    const facts = { point: point.text, pointLine: point.line, comma: comma.text, commaLine: comma.line };
    return fail(problem('decimal-mixed', { from: 0, to: 0 }, facts));
  }
  if (first.either !== undefined && point === undefined && comma === undefined) {
    for (const [row, position] of either) doubt(row, position);
    return ambiguous(first.either, either.length - 1);
  }
  return succeed(comma === undefined ? 'point' : 'comma');
}

/** Points between groups of three digits only; those of 12.03.2024 are none between thousands. */
const POINTED_THOUSANDS = /^\d{1,3}(?:\.\d{3})+(?:,\d*)?$/;

/**
 * A cell whose numbers have decimal commas, written with decimal points and no signs between thousands. What has points
 * elsewhere than between thousands, as a date has, stays as it is.
 */
export function withPoints(cell: string): string {
  return cell.replace(NUMBERS, (number) => {
    if (number.includes('.') && !POINTED_THOUSANDS.test(number)) return number;
    return number.replaceAll('.', '').replace(',', '.');
  });
}

function signsOf(rows: readonly TextRow[], taken: readonly TakenColumn[]): Told {
  const first: Partial<Record<NonNullable<Sign>, Seen>> = {};
  const either: (readonly [number, number])[] = [];
  for (const { at, line, cells } of rows) {
    for (const { position, column } of taken) {
      const written = cells[position] ?? '';
      // Most cells of a long table say again what is known.
      if (first.point !== undefined && ONE_POINT.test(written)) continue;
      const text = ordinarySigns(written);
      if (!text.includes(',') && !text.includes('.')) continue;
      // Arabic print has a sign that stands in front of decimals only.
      const told = signsIn(text).map((sign) => (written.includes('\u066b') ? 'point' : sign));
      for (const sign of told) {
        first[sign] ??= { text: text.trim(), column: column.name, letter: columnLetters(position), line };
        if (sign === 'either') either.push([at, position]);
      }
    }
  }
  return { first, either };
}

function signsIn(text: string): readonly NonNullable<Sign>[] {
  return [...text.matchAll(NUMBERS)].flatMap(({ 0: number, index }) => {
    const sign = SIGNS.find(([pattern]) => pattern.test(number))?.[1];
    if (sign !== 'either') return sign ?? [];
    // A dash stands in place of pennies: behind a comma it tells that points part thousands.
    const [, pennies] = /^([.,])[-–—−]/.exec(text.slice(index + number.length)) ?? [];
    if (pennies !== undefined) return pennies === ',' ? 'comma' : 'point';
    // No one parts thousands in front of a power of ten.
    const scientific = /^[eE][+-]?\d|^ *[·×x*] *10/.test(text.slice(index + number.length));
    return scientific ? (number.includes('.') ? 'point' : 'comma') : 'either';
  });
}

function ambiguous(seen: Seen, more: number): Outcome<never> {
  const parted = seen.text.includes(',');
  const joined = seen.text.replace(/[.,]/, '');
  const facts = {
    ...seen,
    more,
    point: parted ? joined : seen.text,
    comma: parted ? seen.text.replace(',', '.') : joined,
  };
  return fail(problem('decimal-ambiguous', { from: 0, to: 0 }, facts));
}

function contradicted(seen: Seen, stated: Decimal): Outcome<never> {
  return fail(problem('decimal-contradicted', { from: 0, to: 0 }, { ...seen, stated }));
}
