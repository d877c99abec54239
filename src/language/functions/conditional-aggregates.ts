import { plainType } from '../type.ts';
import type { ChosenValues, FunctionEntry, GatherEvaluator, Lower } from './entry.ts';
import { column, common, like, likePoints, truth } from './parameter.ts';
import { compensatedSum, greatestOf, leastOf, sumsOfBeginnings } from './sample.ts';

/** What the examples are computed over. */
const costs = { 'items.kind': ['pile', 'cap', 'Pile'], 'items.cost': ['5 USD', '7 USD', '11 USD'] };

const noneIs =
  (sought: string): NonNullable<GatherEvaluator['refuse']> =>
  ([conditions]) => ({ sought, rows: conditions?.length ?? 0 });

function chosen(conditions: Float64Array | undefined, values: Float64Array | undefined): Float64Array {
  return values && conditions ? values.filter((_, at) => conditions[at] === 1) : new Float64Array();
}

/** What a function makes of the values chosen by a condition. */
function ofChosen(made: ChosenValues, refuse?: GatherEvaluator['refuse']): GatherEvaluator {
  const of: GatherEvaluator['of'] = ([conditions, values]) =>
    made.of(chosen(conditions, values ?? conditions));
  return { kind: 'gather', of, chosen: made, ...(refuse && { refuse }) };
}

const sum: ChosenValues = { of: compensatedSum, ofBeginnings: sumsOfBeginnings };

const count: ChosenValues = {
  of: (values) => values.length,
  ofBeginnings: (values) => Float64Array.from({ length: values.length + 1 }, (_, at) => at),
};

const average: ChosenValues = {
  of: (values) => (values.length === 0 ? Number.NaN : compensatedSum(values) / values.length),
  // Nothing over no rows is no number.
  ofBeginnings: (values) => sumsOfBeginnings(values).map((total, at) => total / at),
};

/** The least or the greatest value so far; none of no values. */
function extreme(
  of: (values: Float64Array) => number,
  isBetter: (a: number, b: number) => boolean,
): ChosenValues {
  return {
    of: (values) => (values.length === 0 ? Number.NaN : of(values)),
    ofBeginnings: (values) => {
      const best = new Float64Array(values.length + 1).fill(Number.NaN);
      for (let at = 0; at < values.length; at += 1) {
        const [before, value] = [best[at] as number, values[at] as number];
        best[at + 1] = at === 0 || isBetter(value, before) ? value : before;
      }
      return best;
    },
  };
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
    evaluate: ofChosen(sum),
    lower: (each, columns, options, tools) =>
      (columns[0]?.count ?? 0) === 0 ? tools.constant(0) : `SUM(${where(each, columns, options, tools)})`,
    worked: { as: 'sum' },
    help: 'The sum of the values in the rows where a condition holds.',
    example: { formula: 'SUMIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 16 },
  },
  {
    name: 'COUNTIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth)],
    gives: () => plainType,
    evaluate: ofChosen(count),
    lower: howMany,
    worked: { as: 'value' },
    help: 'In how many rows a condition holds.',
    example: { formula: 'COUNTIF(items.cost > 6 USD)', given: costs, value: 2 },
  },
  {
    name: 'AVERAGEIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', likePoints)],
    gives: (types) => common(types.slice(1)),
    evaluate: ofChosen(average, noneIs('mean')),
    lower: ifAny(
      ([count = ''], columns, options, tools) => `SUM(${where([], columns, options, tools)})/${count}`,
    ),
    worked: { as: 'list', name: 'AVERAGE' },
    help: 'The mean of the values in the rows where a condition holds.',
    example: { formula: 'AVERAGEIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 8 },
  },
  {
    name: 'MINIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', likePoints)],
    gives: (types) => common(types.slice(1)),
    evaluate: ofChosen(
      extreme(leastOf, (a, b) => a < b),
      noneIs('least'),
    ),
    lower: ifAny((_, columns, options, tools) => `MIN(${where([], columns, options, tools)})`),
    worked: { as: 'list', name: 'MIN', extreme: 'least' },
    help: 'The least value in the rows where a condition holds.',
    example: { formula: 'MINIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 5 },
  },
  {
    name: 'MAXIF',
    group: 'conditional aggregates',
    parameters: [column('condition', truth), column('value', likePoints)],
    gives: (types) => common(types.slice(1)),
    evaluate: ofChosen(
      extreme(greatestOf, (a, b) => a > b),
      noneIs('greatest'),
    ),
    lower: ifAny((_, columns, options, tools) => `MAX(${where([], columns, options, tools)})`),
    worked: { as: 'list', name: 'MAX', extreme: 'greatest' },
    help: 'The greatest value in the rows where a condition holds.',
    example: { formula: 'MAXIF(items.kind = "pile"; items.cost)', given: costs, unit: 'USD', value: 11 },
  },
];
