import { powerDimension, timesDimension } from '../../units/index.ts';
import { numberType, plainType, type Type } from '../type.ts';
import type { FunctionEntry, GatherEvaluator, Lower } from './entry.ts';
import { any, column, common, each, like, likePoints, number, numbers, plain } from './parameter.ts';
import { lowerMedian, lowerPercentile, lowerRank } from './ranking.ts';
import {
  compensatedSum,
  greatestOf,
  leastOf,
  percentileOf,
  percentileOfSorted,
  squaredDeviations,
} from './sample.ts';

const few = (least: number) => (sample: readonly Float64Array[]) => ({
  words:
    least === 1
      ? 'there are no rows to take it from'
      : `it needs at least ${least} values, and there are ${sample[0]?.length ?? 0}`,
});

/** A function of one pooled sample that needs at least so many values. */
function ofSample(least: number, of: (values: Float64Array) => number): GatherEvaluator {
  return {
    kind: 'gather',
    pooled: true,
    of: ([values]) => (!values || values.length < least ? Number.NaN : of(values)),
    refuse: few(least),
  };
}

const ranges = (columns: Parameters<Lower>[1]) => columns.map((part) => part.range).join(',');
const countOf = (columns: Parameters<Lower>[1]) => columns.reduce((count, part) => count + part.count, 0);

const mean: Lower = (_, columns, __, tools) =>
  countOf(columns) === 0 ? tools.refused : `(SUM(${ranges(columns)})/${tools.constant(countOf(columns))})`;

/** Sum of squared deviations over `count - less`. */
const variance =
  (less: 0 | 1): Lower =>
  (each, columns, options, tools) => {
    const count = countOf(columns) - less;
    if (count <= 0) return tools.refused;
    const middle = tools.helper(mean(each, columns, options, tools));
    const squares = columns.map((part) =>
      tools.column(part.count, (at) => `(${part.cell(at)}-${middle})*(${part.cell(at)}-${middle})`),
    );
    return `(SUM(${ranges(squares)})/${tools.constant(count)})`;
  };

const squared = (types: readonly Type[]): Type => {
  const type = common(types);
  return type.kind === 'number' ? numberType(powerDimension(type.dimension, { n: 2, d: 1 })) : type;
};

const needsRows =
  (write: Lower): Lower =>
  (each, columns, options, tools) =>
    countOf(columns) === 0 ? tools.refused : write(each, columns, options, tools);

const rank = { words: 'the rank must be a whole number from 1 to the number of values', argument: 1 };

export const aggregates: readonly FunctionEntry[] = [
  {
    name: 'SUM',
    group: 'aggregates',
    parameters: [column('value', like, { repeats: true })],
    gives: (types) => common(types),
    evaluate: { kind: 'gather', pooled: true, of: ([values]) => (values ? compensatedSum(values) : 0) },
    lower: (_, columns, __, tools) =>
      countOf(columns) === 0 ? tools.constant(0) : `SUM(${ranges(columns)})`,
    worked: { as: 'sum' },
    help: 'The sum of all values; of no rows, zero.',
    example: { formula: 'SUM(layers.t)', given: { 'layers.t': ['4 m', '5 m', '6 m'] }, unit: 'm', value: 15 },
  },
  {
    name: 'AVERAGE',
    group: 'aggregates',
    parameters: [column('value', likePoints, { repeats: true })],
    gives: (types) => common(types),
    evaluate: ofSample(1, (values) => compensatedSum(values) / values.length),
    lower: mean,
    help: 'The arithmetic mean.',
    example: { formula: 'AVERAGE(1 m; 2 m; 6 m)', unit: 'm', value: 3 },
  },
  {
    name: 'MIN',
    group: 'aggregates',
    parameters: [column('value', likePoints, { repeats: true })],
    gives: (types) => common(types),
    evaluate: ofSample(1, leastOf),
    lower: needsRows((_, columns) => `MIN(${ranges(columns)})`),
    worked: { as: 'list', extreme: 'least' },
    help: 'The least value.',
    example: { formula: 'MIN(3 m; 9 ft)', unit: 'ft', value: 9 },
  },
  {
    name: 'MAX',
    group: 'aggregates',
    parameters: [column('value', likePoints, { repeats: true })],
    gives: (types) => common(types),
    evaluate: ofSample(1, greatestOf),
    lower: needsRows((_, columns) => `MAX(${ranges(columns)})`),
    worked: { as: 'list', extreme: 'greatest' },
    help: 'The greatest value.',
    example: { formula: 'MAX(3 m; 9 ft)', unit: 'm', value: 3 },
  },
  {
    name: 'COUNT',
    group: 'aggregates',
    parameters: [column('value', any, { repeats: true })],
    gives: () => plainType,
    evaluate: { kind: 'gather', pooled: true, of: ([values]) => values?.length ?? 0 },
    // Adding nothing of the values leaves the count without a value where one of them has none.
    lower: (_, columns, __, tools) =>
      countOf(columns) === 0
        ? tools.constant(0)
        : `${tools.constant(countOf(columns))}+${tools.constant(0)}*SUM(${ranges(columns)})`,
    worked: { as: 'value' },
    help: 'How many values there are; with KNOWN, how many are filled in.',
    example: { formula: 'COUNT(piles.L)', given: { 'piles.L': ['20 m', '22 m', '21 m'] }, value: 3 },
  },
  {
    name: 'MEDIAN',
    group: 'aggregates',
    parameters: [column('value', likePoints, { repeats: true })],
    gives: (types) => common(types),
    evaluate: ofSample(1, (values) => percentileOf(values, 0.5)),
    lower: lowerMedian,
    help: 'The middle value, or the mean of the two in the middle.',
    example: { formula: 'MEDIAN(1; 2; 9; 4)', value: 3 },
  },
  {
    name: 'VAR',
    group: 'aggregates',
    parameters: [column('value', like, { repeats: true })],
    gives: squared,
    evaluate: ofSample(2, (values) => squaredDeviations(values) / (values.length - 1)),
    lower: variance(1),
    help: 'The variance of a sample, over n - 1.',
    example: { formula: 'VAR(2; 4; 4; 4; 5; 5; 7; 9)', value: 32 / 7 },
  },
  {
    name: 'VARP',
    group: 'aggregates',
    parameters: [column('value', like, { repeats: true })],
    gives: squared,
    evaluate: ofSample(1, (values) => squaredDeviations(values) / values.length),
    lower: variance(0),
    help: 'The variance of a whole population, over n.',
    example: { formula: 'VARP(2; 4; 4; 4; 5; 5; 7; 9)', value: 4 },
  },
  {
    name: 'STDEV',
    group: 'aggregates',
    parameters: [column('value', like, { repeats: true })],
    gives: (types) => common(types),
    evaluate: ofSample(2, (values) => Math.sqrt(squaredDeviations(values) / (values.length - 1))),
    lower: (...parts) => `SQRT(${variance(1)(...parts)})`,
    help: 'The standard deviation of a sample, over n - 1.',
    example: { formula: 'STDEV(1 m; 3 m)', unit: 'm', value: Math.SQRT2 },
  },
  {
    name: 'STDEVP',
    group: 'aggregates',
    parameters: [column('value', like, { repeats: true })],
    gives: (types) => common(types),
    evaluate: ofSample(1, (values) => Math.sqrt(squaredDeviations(values) / values.length)),
    lower: (...parts) => `SQRT(${variance(0)(...parts)})`,
    help: 'The standard deviation of a whole population, over n.',
    example: { formula: 'STDEVP(2; 4; 4; 4; 5; 5; 7; 9)', value: 2 },
  },
  {
    name: 'PERCENTILE',
    group: 'aggregates',
    parameters: [column('value', likePoints), each('fraction', plain)],
    gives: (types) => common(types.slice(0, 1)),
    evaluate: {
      kind: 'gather',
      of: ([values], [fraction = Number.NaN]) =>
        values && values.length > 0 && fraction >= 0 && fraction <= 1
          ? percentileOf(values, fraction)
          : Number.NaN,
      search: ([values]) => {
        const sorted = values?.slice().sort() ?? new Float64Array();
        return ([fraction = Number.NaN]) =>
          sorted.length > 0 && fraction >= 0 && fraction <= 1
            ? percentileOfSorted(sorted, fraction)
            : Number.NaN;
      },
      refuse: ([values]) =>
        values && values.length > 0
          ? { words: 'the fraction lies between 0 and 1', argument: 1 }
          : { words: 'there are no rows to take it from' },
    },
    lower: lowerPercentile,
    help: 'The value below which a fraction of the sorted sample lies, between two values linearly.',
    example: {
      formula: 'PERCENTILE(tests.R; 0.25)',
      given: { 'tests.R': ['4 MN', '1 MN', '3 MN', '2 MN'] },
      unit: 'MN',
      value: 1.75,
    },
  },
  {
    name: 'LARGE',
    group: 'aggregates',
    parameters: [column('value', likePoints), each('rank', plain)],
    gives: (types) => common(types.slice(0, 1)),
    evaluate: {
      kind: 'gather',
      of: ([values], [k = 0]) => {
        const sorted = values?.slice().sort();
        return Number.isInteger(k) ? (sorted?.[sorted.length - k] ?? Number.NaN) : Number.NaN;
      },
      search: ([values]) => {
        const sorted = values?.slice().sort() ?? new Float64Array();
        return ([k = 0]) => (Number.isInteger(k) ? (sorted[sorted.length - k] ?? Number.NaN) : Number.NaN);
      },
      refuse: () => rank,
    },
    lower: lowerRank('greatest'),
    help: 'The k-th greatest value.',
    example: {
      formula: 'LARGE(tests.R; 2)',
      given: { 'tests.R': ['4 MN', '1 MN', '3 MN'] },
      unit: 'MN',
      value: 3,
    },
  },
  {
    name: 'SMALL',
    group: 'aggregates',
    parameters: [column('value', likePoints), each('rank', plain)],
    gives: (types) => common(types.slice(0, 1)),
    evaluate: {
      kind: 'gather',
      of: ([values], [k = 0]) =>
        Number.isInteger(k) ? (values?.slice().sort()[k - 1] ?? Number.NaN) : Number.NaN,
      search: ([values]) => {
        const sorted = values?.slice().sort() ?? new Float64Array();
        return ([k = 0]) => (Number.isInteger(k) ? (sorted[k - 1] ?? Number.NaN) : Number.NaN);
      },
      refuse: () => rank,
    },
    lower: lowerRank('least'),
    help: 'The k-th least value.',
    example: {
      formula: 'SMALL(tests.R; 2)',
      given: { 'tests.R': ['4 MN', '1 MN', '3 MN'] },
      unit: 'MN',
      value: 3,
    },
  },
  {
    name: 'SUMPRODUCT',
    group: 'aggregates',
    parameters: [column('a', number), column('b', number, { repeats: true })],
    gives: (types) =>
      numberType(
        numbers(types)
          .map((type) => type.dimension)
          .reduce(timesDimension),
      ),
    evaluate: {
      kind: 'gather',
      of: (columns) => {
        const [first] = columns;
        if (!first) return 0;
        return compensatedSum(first.map((_, at) => columns.reduce((p, part) => p * (part[at] as number), 1)));
      },
    },
    lower: (_, columns, __, tools) => {
      const count = columns[0]?.count ?? 0;
      if (count === 0) return tools.constant(0);
      const products = tools.column(count, (at) => columns.map((part) => part.cell(at)).join('*'));
      return `SUM(${products.range})`;
    },
    help: 'The sum of products, row by row.',
    example: {
      formula: 'SUMPRODUCT(items.n; items.price)',
      given: { 'items.n': ['2', '3'], 'items.price': ['10 USD', '4 USD'] },
      unit: 'USD',
      value: 32,
    },
  },
];
