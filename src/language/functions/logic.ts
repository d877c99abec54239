import { textType, truthType } from '../type.ts';
import type { FunctionEntry } from './entry.ts';
import { any, common, each, likeAny, plain, truth } from './parameter.ts';

export const logic: readonly FunctionEntry[] = [
  {
    name: 'IF',
    group: 'logic',
    parameters: [each('condition', truth), each('then', likeAny), each('otherwise', likeAny)],
    gives: (types) => common(types.slice(1)),
    evaluate: { kind: 'special', node: 'branch' },
    help: 'One of two values; only the one chosen is computed.',
    example: { formula: 'IF(3 m > 9 ft; 5 kN; 2 kip)', unit: 'kN', value: 5 },
  },
  {
    name: 'IFS',
    group: 'logic',
    parameters: [each('condition', truth, { repeats: true }), each('then', likeAny)],
    gives: (types) => common(types.filter((_, at) => at % 2 === 1)),
    evaluate: { kind: 'special', node: 'branch' },
    help: 'The value after the first condition that holds; a last condition TRUE is for all else.',
    example: {
      formula: 'IFS(n < 2; "few"; n < 5; "some"; TRUE; "many")',
      given: { n: '3' },
      value: 'some',
    },
  },
  {
    name: 'SWITCH',
    group: 'logic',
    parameters: [each('subject', likeAny), each('case', likeAny, { repeats: true }), each('then', any)],
    gives: (types) => types[2] ?? textType,
    evaluate: { kind: 'special', node: 'branch' },
    help: 'The value after the case that equals the subject; a last lone value is for all else.',
    example: {
      formula: 'SWITCH(soil; "clay"; 0.5; "sand"; 0.8; 1)',
      given: { soil: 'sand' },
      value: 0.8,
    },
  },
  {
    name: 'CHOOSE',
    group: 'logic',
    parameters: [each('index', plain), each('value', likeAny, { repeats: true })],
    gives: (types) => common(types.slice(1)),
    evaluate: { kind: 'special', node: 'branch' },
    help: 'The value at a position, counted from 1; only the one chosen is computed.',
    example: { formula: 'CHOOSE(2; 5 m; 6 m; 7 m)', unit: 'm', value: 6 },
  },
  {
    name: 'AND',
    group: 'logic',
    parameters: [each('condition', truth, { repeats: true })],
    gives: () => truthType,
    evaluate: { kind: 'each', of: (...conditions) => conditions.reduce((all, one) => all * one, 1) },
    // Each condition is looked at, so that one without a value leaves the whole without one.
    lower: (conditions, _, __, tools) => {
      const [one, zero] = [tools.constant(1), tools.constant(0)];
      return `(MIN(${conditions.map((condition) => `IF(${condition},${one},${zero})`).join(',')})=${one})`;
    },
    help: 'Whether every condition holds, element by element; all conditions are computed.',
    example: { formula: 'AND(1 m < 2 m; 3 < 4)', value: true },
  },
  {
    name: 'OR',
    group: 'logic',
    parameters: [each('condition', truth, { repeats: true })],
    gives: () => truthType,
    evaluate: {
      kind: 'each',
      of: (...conditions) => 1 - conditions.reduce((none, one) => none * (1 - one), 1),
    },
    lower: (conditions, _, __, tools) => {
      const [one, zero] = [tools.constant(1), tools.constant(0)];
      return `(MAX(${conditions.map((condition) => `IF(${condition},${one},${zero})`).join(',')})=${one})`;
    },
    help: 'Whether at least one condition holds, element by element; all conditions are computed.',
    example: { formula: 'OR(1 m > 2 m; 3 < 4)', value: true },
  },
  {
    name: 'XOR',
    group: 'logic',
    parameters: [each('a', truth), each('b', truth)],
    gives: () => truthType,
    evaluate: { kind: 'each', of: (a, b) => Number(a !== b) },
    lower: ([a, b], _, __, tools) => {
      const [one, zero] = [tools.constant(1), tools.constant(0)];
      return `(IF(${a},${one},${zero})<>IF(${b},${one},${zero}))`;
    },
    help: 'Whether exactly one of two conditions holds.',
    example: { formula: 'XOR(TRUE; TRUE)', value: false },
  },
  {
    name: 'NOT',
    group: 'logic',
    parameters: [each('condition', truth)],
    gives: () => truthType,
    evaluate: { kind: 'each', of: (a) => 1 - a },
    lower: ([a], _, __, tools) => `(IF(${a},${tools.constant(0)},${tools.constant(1)})=${tools.constant(1)})`,
    help: 'Whether a condition does not hold.',
    example: { formula: 'NOT(1 m > 2 m)', value: true },
  },
  {
    name: 'ISBLANK',
    group: 'logic',
    parameters: [each('cell', any)],
    gives: () => truthType,
    evaluate: { kind: 'special', node: 'blank' },
    help: 'Whether a cell is blank; the one look at a missing value that is no problem.',
    example: { formula: 'IF(ISBLANK(stated); 2 m; stated)', given: { stated: '3 m' }, unit: 'm', value: 3 },
  },
];
