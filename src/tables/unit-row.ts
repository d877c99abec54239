import type { UnitRegistry } from '../units/index.ts';
import { ordinarySigns } from './full-width.ts';
import { multipleOf } from './multiples.ts';
import { saysNone } from './nil-words.ts';
import type { TextRow } from './records.ts';
import { statedUnit } from './stated-unit.ts';

/** How many rows below are looked at for numbers. */
const DEPTH = 20;

/** Words that announce units: above a column that has one in each row, or at the start of a row of them. */
const SAYS_UNIT =
  /^\W*(?:units?(?: of measure(?:ment)?)?|uom|u\/?m|u\.\s?m\.?|meas(?:ure)?|einheit(?:en)?|einh\.?|eh|unit[éeà]s?|unidad(?:es)?|ud\.?|eenheid)\W*$/iu;

/** What a row of units has above columns of words. */
const SAYS_WORDS = /^\W*(?:text|texte|texto|txt|string|str|char|words?|name|none|n\/a)\W*$/iu;

const NUMBER = /^[\s$€£(+\-−.,]*[\d½¼¾]/;

/** Whether a text announces units, as a header or in a row of units. */
export function saysUnit(text: string): boolean {
  return SAYS_UNIT.test(text);
}

/**
 * Whether a row under the headers has the units of the columns: units above numbers or blank columns, at least one, and
 * beside them only dashes, the word unit, and words for text above columns without numbers.
 */
export function isUnitRow({ cells }: TextRow, below: readonly TextRow[], registry: UnitRegistry): boolean {
  const filled = cells.flatMap((cell, position) => {
    const written = cell.trim();
    return written === '' ? [] : [{ written, text: unitText(cell), position }];
  });
  // A dash may be the number of an item; a row without the words of its items is none.
  const isNoItem = below[0]?.cells.some((_, position) => {
    const text = unitText(cells[position] ?? '');
    return (
      kindBelow(position, below) === 'words' &&
      (text === '' || text === '-' || saysUnit(text) || SAYS_WORDS.test(text))
    );
  });
  const kinds = filled.map(({ written, text, position }) => {
    const over = kindBelow(position, below);
    if (text === '-') {
      const isUnit = over === 'numbers' || (over === 'nothing' && isBlankBelow(position, below));
      return isUnit && (written !== '-' || isNoItem) ? 'unit' : 'nothing';
    }
    const isOverBare = /^[\d.,\s]+$/.test(below[0]?.cells[position] ?? '');
    if (
      isNoItem &&
      isOverBare &&
      /\p{L}|[$€£]/u.test(text) &&
      multipleOf(`(${text})`, registry) !== undefined
    )
      return 'unit';
    const { unit, choices } = statedUnit(text, registry);
    if ((unit !== undefined || choices.length > 0) && over !== 'words') return 'unit';
    return (saysUnit(text) || SAYS_WORDS.test(text)) && over !== 'numbers' ? 'nothing' : 'other';
  });
  return kinds.includes('unit') && !kinds.includes('other');
}

function isBlankBelow(position: number, below: readonly TextRow[]): boolean {
  return below.every(({ cells }) => (cells[position] ?? '').trim() === '');
}

/** A unit in a row of units, without the brackets that may be around it. */
function unitText(cell: string): string {
  const text = cell.trim();
  const [, inner] = /^[([](.*)[)\]]$/.exec(text) ?? [];
  return (inner ?? text).trim();
}

/** The unit that a cell of a row of units states, `''` where it only says that there is one, or words. */
export function unitStated(cell: string): string {
  const text = unitText(cell);
  return saysUnit(text) || SAYS_WORDS.test(text) ? '' : text;
}

/** What stands below in a column of a text. */
export function kindBelow(position: number, below: readonly TextRow[]): 'numbers' | 'words' | 'nothing' {
  const texts = below
    .slice(0, DEPTH)
    .map(({ cells }) => ordinarySigns(cells[position] ?? '').trim())
    .filter((text) => text !== '' && !saysNone(text) && /[\p{L}\p{N}]/u.test(text));
  if (texts.length === 0) return 'nothing';
  return texts.filter((text) => NUMBER.test(text)).length * 2 >= texts.length ? 'numbers' : 'words';
}
