import { PLAIN, powerDimension, sameDimension, timesDimension } from '../../units/index.ts';
import { numberType, plainType, type Type } from '../type.ts';
import type { FunctionEntry } from './entry.ts';
import { column, common, each, like, likePoints, number, numbers } from './parameter.ts';

/** The product of the arguments' dimensions; a column with a dimension has a product of no fixed dimension. */
function productType(types: readonly Type[]): Type | string {
  const found = numbers(types);
  const wide = found.some(
    (type) => type.axes.some((axis) => axis.fresh) && !sameDimension(type.dimension, PLAIN),
  );
  if (wide) return 'the product of a whole column has a fixed dimension only if the column is plain';
  return numberType(found.reduce((dimension, type) => timesDimension(dimension, type.dimension), PLAIN));
}

export const arithmetic: readonly FunctionEntry[] = [
  {
    name: 'ABS',
    group: 'arithmetic',
    parameters: [each('x', number)],
    gives: (types) => common(types),
    evaluate: { kind: 'each', of: Math.abs },
    lower: ([x]) => `ABS(${x})`,
    help: 'The size of a number without its sign.',
    example: { formula: 'ABS(-3 kN)', unit: 'kN', value: 3 },
  },
  {
    name: 'SIGN',
    group: 'arithmetic',
    parameters: [each('x', number)],
    gives: () => plainType,
    evaluate: { kind: 'each', of: (x) => (x > 0 ? 1 : x < 0 ? -1 : 0) },
    lower: ([x]) => `SIGN(${x})`,
    help: '1, 0 or -1 as a number is above, at or below zero.',
    example: { formula: 'SIGN(-3 kN)', value: -1 },
  },
  {
    name: 'LESSER',
    group: 'arithmetic',
    parameters: [each('a', likePoints), each('b', likePoints, { repeats: true })],
    gives: (types) => common(types),
    evaluate: { kind: 'each', of: Math.min },
    lower: (each) => `MIN(${each.join(',')})`,
    help: 'The least of its arguments, element by element.',
    example: { formula: 'LESSER(3 m; 9 ft)', unit: 'ft', value: 9 },
  },
  {
    name: 'GREATER',
    group: 'arithmetic',
    parameters: [each('a', likePoints), each('b', likePoints, { repeats: true })],
    gives: (types) => common(types),
    evaluate: { kind: 'each', of: Math.max },
    lower: (each) => `MAX(${each.join(',')})`,
    help: 'The greatest of its arguments, element by element.',
    example: { formula: 'GREATER(0; 2 kip)', unit: 'kip', value: 2 },
  },
  {
    name: 'PRODUCT',
    group: 'arithmetic',
    parameters: [column('factor', number, { repeats: true })],
    gives: productType,
    evaluate: {
      kind: 'gather',
      pooled: true,
      of: ([values]) => {
        let product = 1;
        for (const value of values ?? []) product *= value;
        return product;
      },
    },
    lower: (_, columns, __, tools) => {
      let running = tools.constant(1);
      for (const factor of columns)
        for (let at = 0; at < factor.count; at += 1) running = tools.helper(`${running}*${factor.cell(at)}`);
      return running;
    },
    help: 'The product of its arguments, or of all rows of a plain column.',
    example: { formula: 'PRODUCT(2; 3 m; 4 kN)', unit: 'kN·m', value: 24 },
  },
  {
    name: 'SUMSQ',
    group: 'arithmetic',
    parameters: [column('value', like, { repeats: true })],
    gives: (types) => {
      const type = common(types);
      return type.kind === 'number' ? numberType(powerDimension(type.dimension, { n: 2, d: 1 })) : type;
    },
    evaluate: {
      kind: 'gather',
      pooled: true,
      of: ([values]) => {
        let sum = 0;
        for (const value of values ?? []) sum += value * value;
        return sum;
      },
    },
    lower: (_, columns, __, tools) => {
      const squares = columns.map((part) =>
        tools.column(part.count, (at) => `${part.cell(at)}*${part.cell(at)}`),
      );
      return `SUM(${squares.map((part) => part.range).join(',')})`;
    },
    help: 'The sum of squares.',
    example: { formula: 'SUMSQ(3 m; 4 m)', unit: 'm^2', value: 25 },
  },
];
