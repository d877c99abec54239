import { quoted } from '../../diagnostics/index.ts';
import { readUnit, writeDecimals } from '../../units/index.ts';
import { plainType, sameKind, textType } from '../type.ts';
import { typeOfUnit } from '../unit-type.ts';
import type { FunctionEntry, TextEvaluator } from './entry.ts';
import { each, number, option, plain, text } from './parameter.ts';

const codes = 'texts stand as codes in the recheck';

function onText(of: (text: string, ...rest: number[]) => string | number | undefined): TextEvaluator {
  return {
    kind: 'text',
    of: ([first, ...rest]) => of(`${first}`, ...rest.map(Number)),
    refuse: () => ({ words: 'the place and the length are whole numbers, the place from 1', argument: 1 }),
  };
}

const countable = (n: number) => Number.isInteger(n) && n >= 0;

export const texts: readonly FunctionEntry[] = [
  {
    name: 'TEXT',
    group: 'text',
    parameters: [each('value', number), option('unit'), option('decimals')],
    prepare: ([unit = '', decimals = ''], [type], units) => {
      const read = readUnit(unit, units);
      if (!read.ok) return read.problems[0]?.message ?? `there is no unit ${quoted(unit)}`;
      const unmarked = type?.kind === 'number' && !type.angle && read.value.angle;
      if (!type || unmarked || !sameKind(type, typeOfUnit(read.value)))
        return `the value is not in ${unit === '' ? 'plain numbers' : quoted(unit)}`;
      if (!/^(\d|1[0-2])$/.test(decimals)) return 'the decimals are a whole number from 0 to 12';
      return [unit, decimals, `${read.value.factor}`];
    },
    gives: () => textType,
    evaluate: {
      kind: 'text',
      of: ([value], [unit = '', decimals = '0', factor = '1']) =>
        `${writeDecimals(Number(value) / Number(factor), Number(decimals))} ${unit}`.trim(),
    },
    noRecheck: codes,
    help: 'A number as text, in a stated unit with stated decimals.',
    example: { formula: 'TEXT(3 ft; "m"; 2)', value: '0.91 m' },
  },
  {
    name: 'LEN',
    group: 'text',
    parameters: [each('text', text)],
    gives: () => plainType,
    evaluate: onText((value) => [...value].length),
    noRecheck: codes,
    help: 'How many characters a text has.',
    example: { formula: 'LEN("wharf")', value: 5 },
  },
  {
    name: 'LEFT',
    group: 'text',
    parameters: [each('text', text), each('count', plain)],
    gives: () => textType,
    evaluate: onText((value, count = Number.NaN) =>
      countable(count) ? [...value].slice(0, count).join('') : undefined,
    ),
    noRecheck: codes,
    help: 'The first characters of a text.',
    example: { formula: 'LEFT("wharf"; 2)', value: 'wh' },
  },
  {
    name: 'RIGHT',
    group: 'text',
    parameters: [each('text', text), each('count', plain)],
    gives: () => textType,
    evaluate: onText((value, count = Number.NaN) => {
      const characters = [...value];
      return countable(count) ? characters.slice(Math.max(0, characters.length - count)).join('') : undefined;
    }),
    noRecheck: codes,
    help: 'The last characters of a text.',
    example: { formula: 'RIGHT("wharf"; 2)', value: 'rf' },
  },
  {
    name: 'MID',
    group: 'text',
    parameters: [each('text', text), each('from', plain), each('count', plain)],
    gives: () => textType,
    evaluate: onText((value, from = Number.NaN, count = Number.NaN) =>
      countable(from) && from >= 1 && countable(count)
        ? [...value].slice(from - 1, from - 1 + count).join('')
        : undefined,
    ),
    noRecheck: codes,
    help: 'Characters of a text from a place counted from 1.',
    example: { formula: 'MID("wharf"; 2; 3)', value: 'har' },
  },
  {
    name: 'UPPER',
    group: 'text',
    parameters: [each('text', text)],
    gives: () => textType,
    evaluate: onText((value) => value.toUpperCase()),
    noRecheck: codes,
    help: 'A text in capital letters.',
    example: { formula: 'UPPER("wharf")', value: 'WHARF' },
  },
  {
    name: 'LOWER',
    group: 'text',
    parameters: [each('text', text)],
    gives: () => textType,
    evaluate: onText((value) => value.toLowerCase()),
    noRecheck: codes,
    help: 'A text in small letters.',
    example: { formula: 'LOWER("Wharf")', value: 'wharf' },
  },
  {
    name: 'TRIM',
    group: 'text',
    parameters: [each('text', text)],
    gives: () => textType,
    evaluate: onText((value) => value.trim().replace(/\s+/g, ' ')),
    noRecheck: codes,
    help: 'A text without outer and doubled spaces.',
    example: { formula: 'TRIM("  old  wharf ")', value: 'old wharf' },
  },
];
