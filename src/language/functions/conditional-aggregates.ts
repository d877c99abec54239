import { plainType } from '../type.ts';
import type { FunctionEntry, Lower } from './entry.ts';
import { column, common, like, likePoints, truth } from './parameter.ts';
import { compensatedSum, greatestOf, leastOf } from './sample.ts';

/** What the examples are computed over. */
const costs = { 'items.kind': ['pile', 'cap', 'Pile'], 'items.cost': ['5 USD', '7 USD', '11 USD'] };

const none = () => ({ words: 'the condition holds in no row' });

function chosen(conditions: Float64Array | undefined, values: Float64Array | undefined): Float64Array {
  return values && conditions ? values.filter((_, at) => conditions[at] === 1) : new Float64Array();
}

/** The values where the condition holds, and nothing elsewhere, which SUM, MIN and MAX pass over. */
const where: (...parts: Parameters<Lower>) => string = (_, [conditions, values], __, tools) =>
  tools.column(values?.count ?? 0, (at) => `IF(${conditions?.cell(at)},${values?.cell(at)},"")`).range;

const howMany: Lower = (_, [conditions], __, tools) => {
  const count = conditions?.count ?? 0;
  if (count === 0) return tools.constant(0);
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  return `SUM(${tools.column(count, (at) => `IF(${conditions?.cell(at)},${one},${zero})`).range})`;
};

const ifAny =
  (write: Lower): Lower =>
  (each, columns, options, tools) => {
    if ((columns[0]?.count ?? 0) === 0) return tools.refused;
    const count = tools.helper(howMany(each, columns, options, tools));
    return `IF(${count}=${tools.constant(0)},${tools.refused},${write([count], columns, options, tools)})`;
  };

export const conditionalAggregates: readonly FunctionEntry[] = [
  {
    name: 'SUMIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', like)],
    gives: (types) => common(types.slice(1)),
    evaluate: { kind: 'gather', of: ([conditions, values]) => compensatedSum(chosen(conditions, values)) },
    lower: (each, columns, options, tools) =>
      (columns[0]?.count ?? 0) === 0 ? tools.constant(0) : `SUM(${where(each, columns, options, tools)})`,
    help: 'The sum of the values in the rows where a condition holds.',
    example: { formula: 'SUMIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 16 },
  },
  {
    name: 'COUNTIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth)],
    gives: () => plainType,
    evaluate: {
      kind: 'gather',
      of: ([conditions]) => (conditions ?? new Float64Array()).reduce((count, value) => count + value, 0),
    },
    lower: howMany,
    help: 'In how many rows a condition holds.',
    example: { formula: 'COUNTIF(items.cost > 6 USD)', given: costs, value: 2 },
  },
  {
    name: 'AVERAGEIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', likePoints)],
    gives: (types) => common(types.slice(1)),
    evaluate: {
      kind: 'gather',
      of: ([conditions, values]) => {
        const found = chosen(conditions, values);
        return found.length === 0 ? Number.NaN : compensatedSum(found) / found.length;
      },
      refuse: none,
    },
    lower: ifAny(
      ([count = ''], columns, options, tools) => `SUM(${where([], columns, options, tools)})/${count}`,
    ),
    help: 'The mean of the values in the rows where a condition holds.',
    example: { formula: 'AVERAGEIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 8 },
  },
  {
    name: 'MINIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', likePoints)],
    gives: (types) => common(types.slice(1)),
    evaluate: {
      kind: 'gather',
      of: ([conditions, values]) => {
        const found = chosen(conditions, values);
        return found.length === 0 ? Number.NaN : leastOf(found);
      },
      refuse: none,
    },
    lower: ifAny((_, columns, options, tools) => `MIN(${where([], columns, options, tools)})`),
    help: 'The least value in the rows where a condition holds.',
    example: { formula: 'MINIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 5 },
  },
  {
    name: 'MAXIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', likePoints)],
    gives: (types) => common(types.slice(1)),
    evaluate: {
      kind: 'gather',
      of: ([conditions, values]) => {
        const found = chosen(conditions, values);
        return found.length === 0 ? Number.NaN : greatestOf(found);
      },
      refuse: none,
    },
    lower: ifAny((_, columns, options, tools) => `MAX(${where([], columns, options, tools)})`),
    help: 'The greatest value in the rows where a condition holds.',
    example: { formula: 'MAXIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 11 },
  },
];
