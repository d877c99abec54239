import type { Unit, UnitRegistry } from '../units/index.ts';
import { ordinaryHeading } from './full-width.ts';
import { readsAsMoney, takesMoney } from './money-words.ts';
import { statedUnit } from './stated-unit.ts';

/** A power of ten: `1000`, `1 000 000`, `10^3`, `10³`, `1E6`, `'000`, with a sign of multiplication or without. */
const POWER = String.raw`(?:[x×*·]\s?)?(?:1(?:[ ,.'’\u00a0\u2009\u202f]?000)+|10(?:(?:\^|\*\*)\(?\+?[2-9]\)?|[²³⁴-⁹])|1[eE]\+?[2-9]|['’‘]?000)(?:['’]?s)?`;

// A table of words, by language as far as they differ.

/** Words for a thousand and a million, in the languages that takeoffs come in. */
const WORD = [
  String.raw`thousands?|thous\.?|th?sds?\.?|ths\.?|millions?|mill\.|mln\.?|mio\.?|mm(?=\s*(?:usd|\$))|billions?|lakhs?|crores?`,
  String.raw`in\s+(?:tens|dozens|hundreds)|milliard(?:s|en)?|mrd\.?`,
  String.raw`tausend|tsd\.?|millionen`,
  String.raw`milliers?|miles\s+de|mila|migliaia|millares|milh(?:ar|ares|ão|ões)|mill(?:ón|ones)|milion[ie]|millón`,
  'duizend(?:tal)?|miljoen|tusen|tusind|miljoner|millioner|tuhatta?|miljoonaa',
  String.raw`tys\.?|tis[ií]ce?|tis\.|ezer|тыс\.?|тис\.?|млн\.?|хил\.?|χιλ\.?|milyon|nghìn|ribu|juta`,
  '[千万萬]|百[万萬]|ألف|آلاف|مليون|هزار|אלפי',
].join('|');

/** What is a multiple straight before a unit alone; elsewhere it means other things. */
const WORD_BEFORE_UNIT = String.raw`(?:tens|dozens?|hundreds?)(?:\s+of)?|ten|twelve|twenty|fifty|lacs?|thou|mil|mii|bin|[kM]|[eE][2-9]`;

const BEFORE = String.raw`(?<=^|[\s([{,;:|/=])`;
const AFTER = String.raw`(?=$|[\s)\]},;:.|/])`;

/** A flood of a thousand years is no thousand of anything. */
const WORDED = new RegExp(String.raw`${BEFORE}(?:${WORD})${AFTER}(?![\s-]?(?:years?|yrs?)\b)`, 'iu');

/**
 * Straight behind a bracket, divided by, or at the end with its sign: `V_s (1000)`, `cost [x1000 USD]`, `V_s / 1000`,
 * `all quantities x 1000`; a scale of 1/1000 is none.
 */
const APART = new RegExp(
  String.raw`(?:(?<=[([{]\s*(?:in\s+)?)|(?<!(?:^|[^\p{L}\d])\d+\s?)/\s?)${POWER}${AFTER}|(?<=\p{L}\s)(?=[x×*])${POWER}(?=$|[)\]},;:.])`,
  'iu',
);

/** Before a unit: `volume, 1000 m3`, `Tm³`, `kUSD`, `hm³`, `千m3`, `lakh m3`. */
const BEFORE_UNIT = new RegExp(
  String.raw`${BEFORE}(?:(${POWER}\s?|(?:${WORD_BEFORE_UNIT})\s)|(da|MM|[TkKMGht十百千万萬]))(?=(\p{L}|[°\p{Sc}])([^\s)\]},;]*))`,
  'gu',
);

/** Behind a unit: `m³ x 1000`, `m3'000`, `m3·10³`. */
const BEHIND_UNIT = new RegExp(String.raw`([\p{L}°\p{Sc}][\p{L}\d²³^.]*?)\s?(${POWER})${AFTER}`, 'gu');

/** Letters for a multiple behind a unit of money, or in brackets behind any: `$k`, `CHF k`, `USD m`, `m3 (k)`. */
const LETTER = '(?:[kKMBT]|mm?|MM|mn|bn|th)';
const BEHIND_MONEY = new RegExp(String.raw`(\p{Lu}{3}|\p{L}{0,3}\p{Sc})[\s.'’]?${LETTER}${AFTER}`, 'gu');
const IN_BRACKETS = new RegExp(
  String.raw`([\p{L}°\p{Sc}][\p{L}\d²³^.]*)\s?[([{]\s*(?:in\s+)?(${LETTER})\s*[)\]}]`,
  'gu',
);

/** Letters that are no multiple before a unit of letters, outside of brackets: they begin words. */
const WRITTEN_AS_UNIT = /[²³\d\p{Sc}]|^\p{Lu}{3}$/u;

/**
 * The multiple that a text says, as it is written there. `wanted` is the unit of the numbers that it may be about; without
 * it they may have any.
 */
export function multipleOf(written: string, registry: UnitRegistry, wanted?: Unit): string | undefined {
  const text = ordinaryHeading(written);
  const [told] = WORDED.exec(text) ?? APART.exec(text) ?? [];
  if (told !== undefined) return told.trim();
  for (const { index, 0: multiple, 1: apart, 3: first = '', 4: rest = '' } of text.matchAll(BEFORE_UNIT)) {
    const unit = `${first}${rest}`;
    if (!readsFor(unit, registry, wanted)) continue;
    const whole = `${multiple}${unit}`;
    if (apart !== undefined) return whole;
    const isLoose = !/[([{]\s*$/.test(text.slice(0, index)) && !WRITTEN_AS_UNIT.test(unit);
    if (!isLoose && !/^min$/i.test(whole) && !readsFor(whole, registry, wanted)) return whole;
  }
  for (const form of [BEHIND_UNIT, IN_BRACKETS])
    for (const [whole, unit = '', sign = ''] of text.matchAll(form))
      if (readsFor(unit, registry, wanted) && ![whole, sign].some((one) => readsFor(one, registry, wanted)))
        return whole;
  if (wanted === undefined || takesMoney(wanted))
    for (const [whole, unit = ''] of text.matchAll(BEHIND_MONEY))
      if (readsAsMoney(unit, registry) && !readsFor(whole, registry, wanted)) return whole;
  return undefined;
}

/** Whether a text is a unit of the kind of a column, or may be several such; for money in any currency. */
export function readsFor(text: string, registry: UnitRegistry, wanted: Unit | undefined): boolean {
  if (takesMoney(wanted) && readsAsMoney(text, registry)) return true;
  const { unit, choices } = statedUnit(text, registry, wanted);
  return unit !== undefined || choices.length > 0;
}
