import { isMoney, readUnit, type Unit, type UnitRegistry } from '../units/index.ts';
import { statedUnit } from './stated-unit.ts';

// A table of words, by language as far as they differ.

/** Words for a hundredth of a currency, which the registry has no units of. */
const PARTS =
  /^(?:¢|cents?|cts?|pence|rappen|centimes?|cént(?:imos|s)|centavos?|öre|øre|groszy|gr|коп(?:\.|еек|ейки)?|paise|kuruş|分|角)$/iu;

/** What may say a currency among other words: no spaces, brackets or slashes. */
const TOKENS = /[^\s,;:|=()[\]{}_/"“”]+/gu;

/** A sign of money that is written straight behind a word, as scripts without spaces have it: 単価円. */
const BEHIND_WORD = /(?<=[\u3040-\u30ff\u4e00-\u9fff\uac00-\ud7a3])(?:[円元圓원]|\p{Sc})$/u;

/** The country of a dollar, set apart from its sign. */
const DOLLAR_OF =
  /(?<![\p{L}\d])(?:\$\s(?:ca|can|cdn|au|aus|nz|hk|sg|mx|mn|tt|bb|jm|fj|nam)|(?:ca|can|cdn|au|aus|nz|hk|sg|mx|mn|tt|bb|jm|fj|nam)\s\$)(?![\p{L}\d])/iu;

/** Whether a column takes amounts of money or prices. */
export function takesMoney(wanted: Unit | undefined): boolean {
  return wanted !== undefined && isMoney(wanted);
}

/** Whether a text is a unit of money in all its readings. */
export function readsAsMoney(text: string, registry: UnitRegistry): boolean {
  const { unit, choices } = statedUnit(text, registry);
  const readings = unit === undefined ? choices : [unit];
  return (
    readings.length > 0 &&
    readings.every((one) => {
      const read = readUnit(one, registry);
      return read.ok && isMoney(read.value);
    })
  );
}

/**
 * What a text says of a currency, word by word, as it is written: its code, its sign with what is written together with it
 * (`C$`, `$k`), its name, or a part of it as cents are.
 */
export function moneySaid(text: string, registry: UnitRegistry): readonly string[] {
  const [ofCountry] = DOLLAR_OF.exec(text) ?? [];
  const tokens = [...text.matchAll(TOKENS)].flatMap(([token]) => {
    const [behind] = BEHIND_WORD.exec(token) ?? [];
    if (behind !== undefined) return [behind];
    if (/\p{Sc}/u.test(token) || PARTS.test(token)) return [token];
    const word = token.replace(/[.!?*†‡]+$/u, '');
    return (
      [token, word]
        .filter((one) => one.length > 1 || /[^\0-\xff]/.test(one))
        .find((one) => readsAsMoney(one, registry)) ?? []
    );
  });
  return ofCountry === undefined ? tokens : [ofCountry, ...tokens];
}

/** Whether what a text says of a currency can be the one of a unit of money. */
export function isOf(said: string, { dimension }: Unit, registry: UnitRegistry): boolean {
  const { unit, choices } = statedUnit(said, registry);
  const own = new Set(dimension.powers.map(([base]) => base));
  return (unit === undefined ? choices : [unit]).some((one) => {
    const read = readUnit(one, registry);
    return read.ok && own.has(read.value.dimension.key);
  });
}
