import { powerDimension } from '../../units/index.ts';
import { numberType, plainType } from '../type.ts';
import type { FunctionEntry } from './entry.ts';
import { each, number, numbers, plain } from './parameter.ts';

const positive = () => ({ words: 'a logarithm needs a number above zero', argument: 0 });

export const powers: readonly FunctionEntry[] = [
  {
    name: 'SQRT',
    group: 'powers and logarithms',
    parameters: [each('x', number)],
    gives: (types) => {
      const [type] = numbers(types);
      return type ? numberType(powerDimension(type.dimension, { n: 1, d: 2 })) : plainType;
    },
    evaluate: {
      kind: 'each',
      of: (x) => (x < 0 ? Number.NaN : Math.sqrt(x)),
      refuse: () => ({ words: 'a square root needs a number that is not negative', argument: 0 }),
    },
    lower: ([x]) => `SQRT(${x})`,
    help: 'The square root; the dimension is halved with it.',
    example: { formula: 'SQRT(16 (m^2))', unit: 'm', value: 4 },
  },
  {
    name: 'POWER',
    group: 'powers and logarithms',
    parameters: [each('base', number), each('exponent', plain)],
    gives: () => plainType,
    evaluate: { kind: 'special', node: 'power' },
    help: 'The same as base^exponent.',
    example: { formula: 'POWER(8 (m^3); 1/3)', unit: 'm', value: 2 },
  },
  {
    name: 'EXP',
    group: 'powers and logarithms',
    parameters: [each('x', plain)],
    gives: () => plainType,
    evaluate: {
      kind: 'each',
      of: Math.exp,
      refuse: () => ({ words: 'the result is too large to hold', argument: 0 }),
    },
    lower: ([x]) => `EXP(${x})`,
    help: 'e to the power x.',
    example: { formula: 'EXP(0)', value: 1 },
  },
  {
    name: 'LN',
    group: 'powers and logarithms',
    parameters: [each('x', plain)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: (x) => (x > 0 ? Math.log(x) : Number.NaN), refuse: positive },
    lower: ([x]) => `LN(${x})`,
    help: 'The natural logarithm.',
    example: { formula: 'LN(EXP(2))', value: 2 },
  },
  {
    name: 'LOG10',
    group: 'powers and logarithms',
    parameters: [each('x', plain)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: (x) => (x > 0 ? Math.log10(x) : Number.NaN), refuse: positive },
    lower: ([x], _, __, tools) => `(LN(${x})/LN(${tools.constant(10)}))`,
    help: 'The logarithm to base ten.',
    example: { formula: 'LOG10(1000)', value: 3 },
  },
  {
    name: 'LOG',
    group: 'powers and logarithms',
    parameters: [each('x', plain), each('base', plain)],
    gives: () => plainType,
    evaluate: {
      kind: 'each',
      of: (x, base) => (x > 0 && base > 0 && base !== 1 ? Math.log(x) / Math.log(base) : Number.NaN),
      refuse: ([x = 0]) =>
        x > 0 ? { words: 'the base must be above zero and not 1', argument: 1 } : positive(),
    },
    lower: ([x, base]) => `(LN(${x})/LN(${base}))`,
    help: 'The logarithm to a stated base.',
    example: { formula: 'LOG(8; 2)', value: 3 },
  },
];
