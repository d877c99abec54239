import type { JsonValue } from '../../diagnostics/index.ts';
import { type Result, type Value, writeUtilisation } from '../../notebook/index.ts';
import { type CheckStanding, type Size, sameValue } from '../../review/index.ts';
import {
  type NumberStyle,
  withTrueMinus,
  writeDecimals,
  writeIn,
  writeNumber,
  writeQuantity,
} from '../../units/index.ts';

/** Two states in words, the old one and the new one. */
export interface Words {
  readonly from: string;
  readonly to: string;
}

/** Two values in words: numbers with so many digits that they do not look alike. */
export function valueWords(from: Value | undefined, to: Value | undefined): Words {
  const styles: readonly NumberStyle[] = [
    {},
    { digits: 6 },
    { digits: 9 },
    { digits: 12 },
    { digits: 'full' },
  ];
  for (const style of styles) {
    const words = { from: writeValue(from, style), to: writeValue(to, style) };
    if (bare(words.from) !== bare(words.to)) return words;
  }
  return { from: writeValue(from, {}), to: writeValue(to, {}) };
}

/** A text without the zeros that only say that more digits follow: 600.0 and 600 look like one number. */
function bare(text: string): string {
  return text.replace(/(\d\.\d*?)0+(?!\d)/g, '$1').replace(/\.(?!\d)/g, '');
}

function writeValue(value: Value | undefined, style: NumberStyle): string {
  if (!value) return 'no value';
  if (value.kind === 'number') return withTrueMinus(writeQuantity(value.si, value.unit, style));
  return value.kind === 'text' ? `“${value.text}”` : value.truth ? 'true' : 'false';
}

/** Two results in words; one without a value says why. */
export function resultWords(from: Result, to: Result): Words {
  const words = valueWords(
    from.status === 'ok' ? from.value : undefined,
    to.status === 'ok' ? to.value : undefined,
  );
  return {
    from: from.status === 'ok' ? words.from : reasonWords(from),
    to: to.status === 'ok' ? words.to : reasonWords(to),
  };
}

function reasonWords(result: Exclude<Result, { status: 'ok' }>): string {
  return result.status === 'missing' ? 'blank' : `no value (${result.problem.message})`;
}

/** ` (+0.05 m/s, +50.0 %)`; nothing where there is no size. Of a value in percent the difference is in points, its part in percent. */
export function sizeWords(size: Size | undefined): string {
  if (!size) return '';
  const { absolute, relative } = size;
  const sign = absolute.si > 0 ? '+' : '';
  const written =
    absolute.unit.text === '%'
      ? `${writeIn(absolute.si, absolute.unit)} percentage points`
      : writeQuantity(absolute.si, absolute.unit);
  const part = relative === undefined ? '' : `, ${partWords(relative)}`;
  return ` (${sign}${withTrueMinus(written)}${part})`;
}

/** A part of a value in percent: one decimal, or the first digits of a small one. */
function partWords(part: number): string {
  const percent = part * 100;
  const number = Math.abs(percent) >= 0.05 ? writeDecimals(percent, 1) : writeNumber(percent, { digits: 2 });
  return `${part > 0 ? '+' : ''}${withTrueMinus(number)} %`;
}

/** Two standings of a check in words: `holds, 88 %`, and demand and capacity where they are others. */
export function checkWords(from: CheckStanding, to: CheckStanding): string {
  const [a, b] = [standingWords(from), standingWords(to)];
  const sides = (['demand', 'capacity'] as const).flatMap((side) => {
    const [before, after] = [from.verdict?.[side], to.verdict?.[side]];
    // Two that differ by no more than rounding are not told apart.
    if (before && after && sameValue(before, after)) return [];
    const words = valueWords(before, after);
    return words.from === words.to ? [] : [`${side} ${words.from} → ${words.to}`];
  });
  const verdict = a === b ? `${a} as before` : `${a} → ${b}`;
  return [verdict, ...sides].join('; ');
}

function standingWords({ word, verdict, because }: CheckStanding): string {
  const said = word === 'fails' ? 'FAILS' : word;
  if (verdict?.utilisation !== undefined)
    return `${said}, ${writeUtilisation(verdict.utilisation, verdict.holds)}`;
  return because === undefined ? said : `${said} (${because})`;
}

/** Two states of a field of the file in words: of long ones only where they differ, with what stands around it. */
export function fieldStates(from: JsonValue | undefined, to: JsonValue | undefined): Words {
  if (isBlank(from) || isBlank(to)) return { from: fieldWords(from), to: fieldWords(to) };
  const [a, b] = [fieldText(from), fieldText(to)];
  if (Math.max(a.length, b.length) <= LONG) return { from: fieldWords(from), to: fieldWords(to) };
  const most = Math.min(a.length, b.length);
  let start = 0;
  while (start < most && a[start] === b[start]) start += 1;
  let end = 0;
  while (end < most - start && a.at(-1 - end) === b.at(-1 - end)) end += 1;
  const cut = (text: string): string => {
    const [first, last] = [Math.max(0, start - AROUND), Math.min(text.length, text.length - end + AROUND)];
    return shortened(`${first > 0 ? '…' : ''}${text.slice(first, last)}${last < text.length ? '…' : ''}`);
  };
  return { from: `“${cut(a)}”`, to: `“${cut(b)}”` };
}

/** The longest text that is shown whole, and how much is shown around what differs in a longer one. */
const LONG = 400;
const AROUND = 40;

/** The beginning of a long text. */
export function shortened(text: string): string {
  return text.length > LONG ? `${text.slice(0, LONG)}…` : text;
}

function isBlank(value: JsonValue | undefined): value is undefined | null | '' {
  return value === undefined || value === null || value === '';
}

/** A method that came or went: its formula, and what is remarked beside it. */
export function methodSays(method: JsonValue | undefined): string {
  if (typeof method !== 'object' || method === null || Array.isArray(method)) return fieldWords(method);
  const { id: _, for: __, formula, ...remarks } = method as Readonly<Record<string, JsonValue>>;
  const said = Object.entries(remarks).map(([field, value]) => `${field} ${fieldWords(value)}`);
  return [`formula ${fieldWords(formula)}`, ...said].join(', ');
}

/** A field of the file in words: texts in quotation marks, lists one after the other. */
function fieldWords(value: JsonValue | undefined): string {
  if (value === undefined) return 'none';
  if (isBlank(value)) return 'blank';
  return typeof value === 'string' ? `“${shortened(value)}”` : shortened(fieldText(value));
}

function fieldText(value: JsonValue): string {
  if (typeof value !== 'object' || value === null) return `${value}`;
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(fieldText).join('; ');
  return Object.entries(value)
    .map(([field, one]) => `${field} ${fieldText(one)}`)
    .join(', ');
}
