import type { Problem } from '../diagnostics/index.ts';
import { isBareNumber, volumeState } from '../units/index.ts';
import { numberAndUnit } from './number-unit.ts';

/** What a cell that is not read looks like: a letter in place of a digit, a date, commas that group nothing, a doubled mark, a state of a volume. */
export interface CellSlip {
  readonly kind: 'letter' | 'date' | 'commas' | 'marks' | 'state';
  /** The number with its digits, or with single marks, or the state of the volume; `''` for the others. */
  readonly means: string;
}

/** A number in which letters stand for 0 and 1, and a unit maybe behind it. */
const WITH_LETTERS = /^([+\-−]?[\dOolI|][\dOolI|.,]*)(\s+\S.*)?$/u;

const MONTH = '(?:jan|feb|mar|mär|mrz|apr|may|mai|jun|jul|aug|sep|sept|oct|okt|nov|dec|dez)[a-zä]*\\.?';

/** A day and a month, or a month and a year, as spreadsheets make them of 4-3 or 3/4; or a whole date. */
const DATE = new RegExp(
  `^(?:\\d{1,2}[-./ ]${MONTH}(?:[-./ ]\\d{2,4})?|${MONTH}[-./ ]\\d{1,4}|\\d{4}-\\d{2}-\\d{2}(?:[T ].*)?|\\d{1,2}([./])\\d{1,2}\\1\\d{2,4})$`,
  'iu',
);

/** Two commas or more between digits. */
const COMMAS = /^[+\-−]?\d+(?:,\d+){2,}(?:\.\d+)?$/u;

/** Commas between thousands, or between hundreds of thousands as well, which are read. */
const GROUPS = /^[+\-−]?\d{1,3}(?:(?:,\d{3})+|(?:,\d{2})+,\d{3})(?:\.\d+)?$/u;

/** Behind digits the mark for inches twice, as it is written within quotation marks. */
const DOUBLED_MARKS = /^[^"]*[\d½¼¾⅓⅔⅛⅜⅝⅞]""[^"]*$/u;

/** The slip that a cell of numbers, which is not read, looks like; undefined where it looks like none. */
export function slipIn(text: string, trouble: Problem): CellSlip | undefined {
  const [, digits = '', behind = ''] = WITH_LETTERS.exec(text) ?? [];
  // Behind a number an l is a litre.
  if (/\d/.test(digits) && /[OolI|]/.test(digits) && !/\dl$/.test(digits)) {
    const number = digits.replace(/[Oo]/g, '0').replace(/[lI|]/g, '1');
    if (isBareNumber(number)) return { kind: 'letter', means: `${number}${behind}` };
  }
  if (DATE.test(text)) return { kind: 'date', means: '' };
  if (COMMAS.test(text) && !GROUPS.test(text)) return { kind: 'commas', means: '' };
  if (DOUBLED_MARKS.test(text)) return { kind: 'marks', means: text.replaceAll('""', '"') };
  if (trouble.code !== 'unit-unknown' && trouble.code !== 'unit-slip') return undefined;
  const state = volumeState(numberAndUnit(text)?.unit ?? '')?.words;
  return state === undefined ? undefined : { kind: 'state', means: state };
}
