import type { UnitRegistry } from '../units/index.ts';
import { isNumeric, type TableColumn } from './column.ts';
import { ordinaryHeading } from './full-width.ts';
import { collapseSpaces, headedUnit, headerColumn, unitOfColumn, withoutName } from './headers.ts';
import { isOf, moneySaid, takesMoney } from './money-words.ts';
import { isSameUnit, LONGEST_UNIT, statedUnit } from './stated-unit.ts';
import type { TextColumn } from './text-columns.ts';

const OPENING = '([{';
const CLOSING = ')]}';

/** Where a unit without brackets may begin: behind anything but a letter, a digit or a sign that units are written with. */
const JOINTS = /[^\p{L}\p{N}²³^°%‰$€£µ]+/gu;

/** Signs around a word, which are no part of a unit. */
const AROUND = /(?<!["“”„'‘’<>«»*†‡])["“”„'‘’<>«»*†‡]+(?=\p{L})|(?<=[\p{L}\d²³])["“”'‘’<>«»*†‡]+/gu;

/** What ends as units do, so that it is no part of a name: a power, a word for a unit, an abbreviation. */
const ENDS_AS_UNIT: readonly RegExp[] = [
  /[\p{L}.)](?:[²³]|\^-?\d)\.?$/iu,
  /(?:m|ft|yd|in|mtr|y)\.?\s?[23]\.?$/iu,
  /(?:^|[^\p{L}])(?:cu|sq|cub|cb|cubic|square)[\s.]+\p{L}+\.?$/iu,
  /(?:met(?:er|re)n?s?|mètres?|metros?|feet|foot|yards?|inch(?:es)?|zoll|fu(?:ß|ss)|tons?|tonnen?|lit(?:er|re)s?)$/iu,
  /[^\p{L}](?!(?:qty|nr|nrs|hrs|pct|wk|dwg|bldg)\.?$)[bcdfghj-np-tv-xz]{2,4}\.?$/iu,
  /\sin\s+(?!(?:place|situ|total|stock|all|use|work|plan|section|full|detail)$)\p{L}+$/iu,
];

/** Words in front of a unit that make another one of it. */
const CHANGES_UNIT = /(?:^|[^\p{L}])(?:cubic|square|cub?|sq|per|pro|je)[\s.]*$/iu;

/**
 * The unit of the numbers of a column of a text that was said to go to a column without a word on units: what its
 * header states, in brackets or behind its name, and a row of units below it; `''` where neither does. What is a unit
 * of another kind, what ends as units do and cannot be read, and two units that differ are given as written: they do
 * not read, and so are asked for.
 */
export function unitOfHeader(
  { header, unit, below }: TextColumn,
  column: TableColumn,
  registry: UnitRegistry,
): string {
  if (!isNumeric(column)) return unit;
  const above = namesWhole(header, column, registry) ? '' : statedIn(header, column, registry);
  const [first, second] = [above, below].map((written) => headedUnit(written, column, registry));
  if (first === undefined || second === undefined || second === '') return first ?? '';
  if (first === '' || isSameUnit(first, second, registry, unitOfColumn(column, registry))) return second;
  // Words in brackets may be about anything; a unit above another is a contradiction.
  return readsAs(first, column, registry) === 'nothing' ? second : `${first} or ${second}`;
}

/** What a text states of the numbers of a column, and how it goes with the unit that was said for them. */
export interface Overridden {
  readonly stated: string;
  /** `another`: another unit of its kind; `other-kind`: a unit of another kind; `unread`: none that is known. */
  readonly is: 'another' | 'other-kind' | 'unread';
}

/**
 * What the header of a column of a text, or the row of units below it, states beside the unit that was said for its
 * numbers, where that is not the same.
 */
export function overriddenUnit(
  text: TextColumn,
  said: string,
  column: TableColumn,
  registry: UnitRegistry,
): Overridden | undefined {
  if (!isNumeric(column)) return undefined;
  const stated = unitOfHeader(text, column, registry);
  const inUnit = said === '' ? (column.unit ?? '') : said;
  // Where a column may have any unit, none is the plain number that was said.
  if (inUnit === '' || (inUnit === '-' && column.unit === undefined)) return undefined;
  const bracketed = namesWhole(text.header, column, registry) ? text.below : text.unit;
  const written = bracketed.replace(/^in\s+(?=\S)/iu, '');
  const reading = written === '' || written === '-' ? 'fitting' : readsAs(written, column, registry);
  if (reading === 'other') return { stated: written, is: 'other-kind' };
  // No rate of exchange is implied: an amount in another currency is none in that of the column, whatever was said.
  if (otherMoney(stated, column, registry) !== '') return { stated, is: 'other-kind' };
  if (stated !== '' && readsAs(stated, column, registry) === 'fitting')
    return isSameUnit(stated, inUnit, registry, unitOfColumn(column, registry))
      ? undefined
      : { stated, is: 'another' };
  if (reading === 'nothing' && written !== said) return { stated: written, is: 'unread' };
  return stated === '' || stated === said ? undefined : { stated, is: 'unread' };
}

function namesWhole(header: string, column: TableColumn, registry: UnitRegistry): boolean {
  const named = headerColumn(header, [column], registry);
  return named !== undefined && named.unit === '';
}

type Reading = 'fitting' | 'other' | 'nothing';

/** Whether a text is a unit of the kind of a column (or several such), a unit of another kind, or none. */
function readsAs(written: string, column: TableColumn, registry: UnitRegistry): Reading {
  const fitting = statedUnit(written, registry, unitOfColumn(column, registry));
  if (fitting.unit !== undefined || fitting.choices.length > 0) return 'fitting';
  const any = statedUnit(written, registry);
  return any.unit !== undefined || any.choices.length > 0 ? 'other' : 'nothing';
}

/** The unit that a header states, as written: of several the one that the column can have. */
function statedIn(header: string, column: TableColumn, registry: UnitRegistry): string {
  const named = headerColumn(header, [column], registry)?.unit ?? '';
  if (named !== '' && readsAs(named, column, registry) === 'fitting') return named;
  const text = ordinaryHeading(header).trim();
  const { outside, brackets } = bracketsIn(collapseSpaces(text).replace(/ ?(?:\*\*|\^) ?/g, '^'));
  const distinct = [...new Set(brackets.toReversed())].toReversed();
  const within = distinct.map((one) => clearUnitWithin(one, column, registry) || one);
  const tail = /[)\]}]([^)\]}]*\d[^)\]}]*)$/u.exec(text)?.[1]?.trim();
  const last = within.at(-1) ?? '';
  // What has a digit behind the bracket of a unit may be a multiple of it.
  if (tail !== undefined && readsAs(last, column, registry) === 'fitting') return `${last} ${tail}`;
  const wanted = unitOfColumn(column, registry);
  const unnamed = withoutName(outside, column);
  const behind = unitWithin(unnamed, column, registry);
  const found = [...within.toReversed(), ...(behind === '' ? [] : [behind])];
  const [first, ...more] = found.filter((one) => readsAs(one, column, registry) === 'fitting');
  const money = otherMoney([unnamed, ...within].join(' '), column, registry);
  if (money !== '' && first !== undefined) return `${first} or ${money}`;
  const other = more.find((one) => first !== undefined && !isSameUnit(first, one, registry, wanted));
  if (first !== undefined) return other === undefined ? first : `${other} or ${first}`;
  const ofOtherKind = found.find((one) => readsAs(one, column, registry) === 'other');
  if (money !== '' && !ofOtherKind?.includes(money)) return money;
  if (ofOtherKind !== undefined) return ofOtherKind;
  return behind !== '' || !/[)\]}]$/.test(text) ? behind : (within.at(-1) ?? '');
}

/** Words that stand beside a unit and change nothing of its size, as “long”, “imperial” or “square” do. */
const BESIDE_UNIT = new Set(
  (
    'in net gross neat bank loose solid compacted compact rammed place situ insitu measured total totals abs approx ca ' +
    'about incl excl including excluding with without waste only of the and or as built est estimated calc calculated ' +
    'theoretical design actual final original rev revised unit units ' +
    'netto brutto gesamt lose fest feste fester loser neto bruto brut nette en foisonné suelto banco compacto réel'
  ).split(' '),
);

/** The unit in brackets, where nothing stands beside it that may be a multiple: a number, or a word that is not known. */
function clearUnitWithin(written: string, column: TableColumn, registry: UnitRegistry): string {
  const unit = unitWithin(written, column, registry);
  if (unit === '' || unit === written.trim()) return unit;
  const at = written.lastIndexOf(unit);
  const beside = at < 0 ? '' : `${written.slice(0, at)} ${written.slice(at + unit.length)}`;
  const words = beside.toLowerCase().match(/[\p{L}\p{M}\d.]+/gu) ?? [];
  const isClear = words.every((word) => !/\d/.test(word) && BESIDE_UNIT.has(word.replace(/\.$/, '')));
  return isClear ? unit : '';
}

/** The unit in a text: the longest at its end that reads; one among its words; or else what ends as a unit does. */
function unitWithin(written: string, column: TableColumn, registry: UnitRegistry): string {
  const text = written.replace(AROUND, ' ').trim();
  const joints = [...text.matchAll(JOINTS)].map(({ index, 0: joint }) => index + joint.length);
  const words = [...text.matchAll(/_([\p{L}\d²³^]+)$/gu)].map(({ index }) => index + 1);
  const starts = [0, ...joints.filter((start) => text[start - 1] !== '_'), ...words];
  // Behind “in”, which is no part of it.
  const first = text.length - LONGEST_UNIT - 'in '.length;
  for (const start of starts.filter((one) => one >= first).sort((a, b) => a - b)) {
    const tail = text
      .slice(start)
      .replace(/^in\s+(?=\S)/iu, '')
      .trim();
    if (tail === '' || readsAs(tail, column, registry) === 'nothing') continue;
    const [changed = ''] = CHANGES_UNIT.exec(text.slice(0, start)) ?? [];
    return `${changed}${tail}`.trim();
  }
  if (ENDS_AS_UNIT.some((form) => form.test(text))) return text.split(/\s+/).at(-1) ?? '';
  return unitAmong(text, column, registry);
}

/** A unit of the kind of the column that stands before other words: `Volume m3 net`. */
function unitAmong(text: string, column: TableColumn, registry: UnitRegistry): string {
  const seen = new Set<string>();
  for (const { index, 0: word } of text.matchAll(/[^\s,;:|=()_]+/gu)) {
    if (seen.has(word)) continue;
    seen.add(word);
    if (word.length < 2 || /^in$/i.test(word) || readsAs(word, column, registry) !== 'fitting') continue;
    const before = text.slice(0, index);
    // The size of a thing, as in “length 10 mm plate”, may be no unit of the numbers below.
    const size = /(?<![\p{L}\d])\d+(?:[.,]\d+)?\s*$/u.exec(before)?.[0] ?? '';
    const [changed = ''] = CHANGES_UNIT.exec(before) ?? [];
    return `${size}${changed}${word}`.trim();
  }
  return '';
}

/** What a text says of a currency, above a column of money, that is not the currency of the column. */
function otherMoney(text: string, column: TableColumn, registry: UnitRegistry): string {
  const wanted = unitOfColumn(column, registry);
  if (wanted === undefined || !takesMoney(wanted)) return '';
  return moneySaid(text, registry).find((said) => !isOf(said, wanted, registry)) ?? '';
}

/** What stands in the outer brackets of a text, and the text without them. */
function bracketsIn(text: string): { readonly outside: string; readonly brackets: readonly string[] } {
  const brackets: string[] = [];
  let outside = '';
  let depth = 0;
  let start = 0;
  const signs = [...text];
  for (const [at, sign] of signs.entries()) {
    if (OPENING.includes(sign)) {
      depth += 1;
      if (depth === 1) start = at + 1;
    } else if (CLOSING.includes(sign) && depth > 0) {
      depth -= 1;
      if (depth === 0) brackets.push(signs.slice(start, at).join('').trim());
    } else if (depth === 0) outside += sign;
  }
  return { outside: outside.trim(), brackets };
}
