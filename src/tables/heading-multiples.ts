import type { Unit, UnitRegistry } from '../units/index.ts';
import { isNumeric, type TableColumn } from './column.ts';
import { ordinaryHeading } from './full-width.ts';
import { collapseSpaces, headerColumn, unitOfColumn, withoutName } from './headers.ts';
import { multipleOf, readsFor } from './multiples.ts';
import { LONGEST_UNIT } from './stated-unit.ts';

// What only headings say: a note may have numbers and units for much else, but the numbers below a heading stand under it.

const FRONT = String.raw`(?<=^|[\s([{,;:|=)\]}_–—-])`;
const END = String.raw`(?=\s*(?:$|[()[\]{},;:|]))`;
/** A number as it may stand in front of a unit: whole or not, its thousands apart. */
const NUMBER = String.raw`\d{1,3}(?:[ ,.'’\u00a0\u2009\u202f]000)+(?!\d)|\d+(?:[.,]\d+)?(?:[eE][+\-−]?\d+)?`;
const TEN_POWER = String.raw`10(?:(?:\^|\*\*)\s?(?:[+\-−]?\d+|\([+\-−]?\d+\))|[⁺⁻]?[⁰¹²³⁴-⁹])`;
const ROUND = String.raw`1(?:0{1,2}(?:[ ,.'’\u00a0\u2009\u202f]?000)*|(?:[ ,.'’\u00a0\u2009\u202f]?000)+)`;
/** A unit of one word or more, and what else stands there. */
const UNIT = String.raw`((?:\p{L}|[°\p{Sc}%])[^()[\]{},;:|]{0,${LONGEST_UNIT}})`;

// A table of words, by language as far as they differ.

/** Words for tens, dozens and hundreds. */
const WORDS = [
  String.raw`tens(?!\.)|dozens?|doz\.?|hundreds?`,
  'zehner|dutzend|hunderter?|dizaines?|douzaines?|centaines?|decenas?|docenas?|centenar(?:es)?|centenas?',
  'dezenas?|dúzias?|decin[ae]|dozzin[ae]|centinaia|tiental(?:len)?|dozijn(?:en)?|honderd(?:en|tal(?:len)?)?',
  'tiotal|dussin|hundra(?:tal)?|hundreder?|dusin|tuzin[y]?|dziesiątk[ia]|setk[ia]|десят(?:ков|ки)|сот(?:ен|ни)|дюжин[аы]?',
].join('|');
/** A wave of a hundred years is no hundred of anything. */
const WORDED = new RegExp(
  String.raw`${FRONT}(?:${WORDS})(?=$|[\s()[\]{},;:|./])(?![\s-]?(?:years?|yrs?)\b)`,
  'iu',
);

/** Of a quantity itself, so that a round number behind it does not tell one thing from the next. */
const QUANTITIES =
  'volumes?|vol\\.?|quantit(?:y|ies)|quant\\.?|qty\\.?|amounts?|costs?|prices?|mass|weights?|volumen|menge|masse|kosten|preis|quantité|coût|prix|cantidad|quantità';

/** What a number behind it names or bounds, where it does not multiply. */
const NAMED_OR_BOUND =
  /(?:^|[\s([{,;:|])(?:layers?|zones?|bents?|piers?|items?|types?|areas?|phases?|stages?|sections?|bays?|grades?|class|sheets?|dwg|drawings?|rows?|piles?|beds?|levels?|lots?|blocks?|berths?|dolphins?|stations?|sta|ch|km|no|nr|nos|rev|fig|table|case|run|at|to|from|below|above|over|under|until|till|than|beyond|within|up|down|dia|diameter)\.?\s*$|[<>≤≥~=@#Øø⌀±+x×*]\s*$/iu;

/** Powers of ten, and tens and thousands with their plural, wherever they stand: `V_s 10³ (m3)`, `V_s '000 (m3)`, `100s`. */
const POWER = new RegExp(
  String.raw`(?<![\p{L}\d.,/])${TEN_POWER}(?![\d⁰¹²³⁴-⁹])|${FRONT}(?:['’‘]000(?:['’]?s)?|(?:${ROUND}|000?)['’]?s)(?:\s+of\s|${END})`,
  'u',
);
/** A number with the sign of multiplication in front, and what stands before that: `x1000`, `m3 × 12`; not that of `12 x 12`. */
const SIGNED = new RegExp(
  String.raw`(?:(?<=^|[\s([{,;:|/=)\]}_\d²³])[xX]|[×*·✕])\s?(${NUMBER})(?![\p{L}\d])`,
  'gu',
);
/** A number behind words that multiply or divide by it, or a number in words behind the sign. */
const IN_WORDS = new RegExp(
  String.raw`(?:(?<![\p{L}])(?:times|mult\.?|multipl(?:ied|y)\s+by|multiplier|multiples?\s+of|factor(?:\s+of)?|scaled\s+by|divided\s+by|units?\s+of|lots?\s+of)|÷)\s*(${NUMBER})|${FRONT}[xX×]\s+(?:ten|twelve|twenty|fifty)(?!\p{L})`,
  'giu',
);
/** A number with the sign behind it, and maybe a unit: `1000x`, `(100 × m3)`. */
const SIGN_BEHIND = new RegExp(String.raw`${FRONT}(${NUMBER})\s?[x×*·✕](?:${END}|\s?(?=${UNIT}))`, 'gu');
/** A number and a unit, and the word or sign in front that makes them a measure of counting: `in 10 m3`, `/100 kg`. */
const IN_UNITS = new RegExp(
  String.raw`(?:(?<![\p{L}\d])(in|of|en|em|per|pro|je|par|por|à|na|za|po)\s+|(\/)\s?)(${NUMBER})(?:\s?(?=${UNIT})|${END})`,
  'giu',
);
/** A number and a unit straight behind a bracket, or a round number alone in brackets: `(10 m3)`, `(dozen)`, `(100)`. */
const BRACKETED = new RegExp(String.raw`[([{]\s*(?:(${NUMBER})\s?(?=${UNIT})|${ROUND}\s*[)\]}])`, 'gu');
/** A number and a unit with nothing behind them: `V_s 100 cy`, `volume, 10 m3`. */
const LOOSE = new RegExp(String.raw`${FRONT}(${NUMBER})\s?(?=${UNIT}${END})`, 'gu');
/** The same behind the name of the column, which is no longer there. */
const BEHIND_NAME = new RegExp(String.raw`^[\s,:_–—-]*(${ROUND}|k)${END}`, 'iu');
/** A round number or a letter behind the name of a quantity or the bracket of its unit: `V_s 1000 (m3)`, `volume k`, `(m3) 100`. */
const ROUND_BEHIND = new RegExp(
  String.raw`(?:(?:^|[\s,;])(?:${QUANTITIES})|[)\]}])[\s,:_–—-]*(${ROUND}|k)${END}`,
  'iu',
);

/**
 * The multiple in which a text gives the numbers of a column, as its header or the row of units below it writes it (`1000 m³`,
 * `thousands`, `kUSD`, `x 100`): read in any unit they would be wrong by so many times. What may be a multiple is given, too.
 * Nothing where the words are the column's own name, or where what looks like a multiple is the prefix of a unit.
 */
export function multipleIn(
  { header, below }: { readonly header: string; readonly below: string },
  column: TableColumn,
  registry: UnitRegistry,
): string | undefined {
  if (!isNumeric(column)) return undefined;
  const named = headerColumn(header, [column], registry);
  const heading = collapseSpaces(header);
  const above = named !== undefined && named.unit === '' ? '' : withoutName(heading, column);
  const wanted = unitOfColumn(column, registry);
  const behind = above === heading ? undefined : BEHIND_NAME.exec(ordinaryHeading(above))?.[1];
  if (behind !== undefined) return behind;
  const written = below === '' ? [above] : [above, `(${below})`];
  for (const text of written) {
    const found =
      multipleOf(text, registry, wanted) ?? onlyInHeading(ordinaryHeading(text).trim(), registry, wanted);
    if (found !== undefined) return found;
  }
  return undefined;
}

function onlyInHeading(text: string, registry: UnitRegistry, wanted: Unit | undefined): string | undefined {
  const [told] = WORDED.exec(text) ?? POWER.exec(text) ?? [];
  if (told !== undefined) return told.trim();
  // A long heading may say one unit a thousand times.
  const known = new Map<string, boolean>();
  const fits = (unit: string): boolean => {
    const is = known.get(unit) ?? readsFor(unit, registry, wanted);
    known.set(unit, is);
    return is;
  };
  const unitFirst = (written = ''): string | undefined => {
    const words = written.trim().split(/\s+/).slice(0, MOST_WORDS);
    const parts = words.map((_, at) => words.slice(0, words.length - at).join(' '));
    return parts.find((part) => part !== '' && fits(part));
  };
  return (
    signed(text, fits) ??
    first(text, IN_WORDS, ([whole, number]) =>
      number === undefined || isMany(number) ? whole : undefined,
    ) ??
    first(text, SIGN_BEHIND, ([whole, number, behind]) => {
      const unit = unitFirst(behind);
      return isMany(number) && (behind === undefined || unit !== undefined)
        ? `${whole}${unit ?? ''}`
        : undefined;
    }) ??
    first(text, IN_UNITS, (match) => {
      const unit = unitFirst(match[4]);
      return isCounting(match, unit, text, wanted, fits) ? `${match[0]}${unit ?? match[4] ?? ''}` : undefined;
    }) ??
    first(text, BRACKETED, ([whole, number, behind]) => {
      const unit = unitFirst(behind);
      if (behind === undefined) return whole;
      return isMany(number) && unit !== undefined ? `${whole}${unit}` : undefined;
    }) ??
    first(text, LOOSE, ({ index, 0: whole, 1: number, 2: unit = '' }) => {
      const isLarge = amountOf(number) >= 10 && !NAMED_OR_BOUND.test(text.slice(0, index));
      return isLarge && fits(unit.trim()) ? `${whole}${unit}` : undefined;
    }) ??
    ROUND_BEHIND.exec(text)?.[1]
  );
}

/** No unit has more words: `cubic yards`, `cu. yd.`, `long tons per day`. */
const MOST_WORDS = 4;

/** What the first match says that is a multiple, without the brackets around it. */
function first(
  text: string,
  form: RegExp,
  said: (match: RegExpExecArray) => string | undefined,
): string | undefined {
  for (const match of text.matchAll(form)) {
    const multiple = said(match);
    if (multiple !== undefined) return multiple.replace(/^[([{]\s*|[)\]}]$/g, '').trim();
  }
  return undefined;
}

/** A number behind a sign of multiplication, unless they are the second of two lengths or the name of a section. */
function signed(text: string, fits: (unit: string) => boolean): string | undefined {
  return first(text, SIGNED, ({ index, 0: whole, 1: number }) => {
    const value = amountOf(number);
    // An asterisk or a large X with a small number is a footnote or an axis.
    if (value === 1 || (/^[*X]/.test(whole) && value < 10)) return undefined;
    const before = text.slice(Math.max(0, index - LONGEST_BEFORE), index).trimEnd();
    const token = /[^\s()[\]{},;:|=]*$/u.exec(before)?.[0] ?? '';
    const isSecondLength =
      /(?<![\p{L}\d²³^*])[\d½¼¾⅓⅔⅛⅜⅝⅞][\d.,/½¼¾⅓⅔⅛⅜⅝⅞]*\s?(?:\p{L}{1,3}\.?|["'″′”’]+)?$/u.test(before);
    return !isSecondLength && (fits(token) || !/^\p{Lu}{1,4}\d+$/u.test(token)) ? whole : undefined;
  });
}

/** No words before a sign that say whether it multiplies are longer. */
const LONGEST_BEFORE = 80;

/** Whether a number behind “in”, “per” or a slash counts the unit of a column, or what the unit is by. */
function isCounting(
  { index, 1: word = '', 2: slash, 3: number, 4: behind }: RegExpExecArray,
  unit: string | undefined,
  text: string,
  wanted: Unit | undefined,
  fits: (unit: string) => boolean,
): boolean {
  if (!isMany(number)) return false;
  const before = text.slice(Math.max(0, index - LONGEST_BEFORE), index).trimEnd();
  const token = /[^\s()[\]{},;:|=]*$/u.exec(before)?.[0] ?? '';
  if (slash !== undefined && fits(token)) return true;
  // One number over another is a fraction, a scale or a size.
  if (slash !== undefined && /^\d/.test(token)) return false;
  if (behind === undefined) return isRound(number) && (slash !== undefined || IS_PER.test(word));
  if (unit !== undefined) return true;
  const isRate = wanted === undefined || wanted.dimension.powers.length !== 1;
  return isRate && (slash !== undefined || IS_PER.test(word));
}

const IS_PER = /^(?:per|pro|je|par|por|za|na)$/iu;

/** The value of a number as a heading writes it: its thousands are apart, whatever sign they have. */
function amountOf(number = ''): number {
  return Number(number.replace(/[ ,.'’\u00a0\u2009\u202f](?=000)/g, '').replace(',', '.'));
}

function isMany(number: string | undefined): boolean {
  return amountOf(number) >= 2;
}

function isRound(number: string | undefined): boolean {
  return /^10+$/.test(`${amountOf(number)}`);
}
