import { plainType } from '../type.ts';
import type { FunctionEntry, LoweredColumn, LoweringTools } from './entry.ts';
import { lowerBilinear } from './grid-lowering.ts';
import { bilinear, bilinearRefusal, linear, linearAlong, linearRefusal } from './interpolation.ts';
import { matchAmong, matchKinds, matchRefusal, matchRow } from './keys.ts';
import { any, column, common, each, likeAny, likePoints, option, plain } from './parameter.ts';
import { firstAbove, firstNotBelow } from './sorted-keys.ts';

/** What the examples are computed over. */
const layers = { 'layers.bottom': ['4 m', '9 m', '15 m'], 'layers.f': ['20 kPa', '35 kPa', '60 kPa'] };

const kinds = option('kind', matchKinds);
/** Texts and truth values are found or not; they have no order to lie between. */
const orderedIfNear: FunctionEntry['prepare'] = (options, [key]) =>
  options[0]?.startsWith('at ') && (key?.kind === 'text' || key?.kind === 'truth')
    ? `${key.kind === 'text' ? 'texts' : 'true and false'} have no order: match them "exact" or "first"`
    : options;
const beyond = option('beyond', ['refuse', 'hold'], { optional: true });

/** How many keys rise above the one before them, as a cell; all but the first must. */
function lowerRises(keys: LoweredColumn, tools: LoweringTools): string {
  if (keys.count < 2) return tools.constant(0);
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  const rises = tools.column(
    keys.count - 1,
    (at) => `IF(${tools.compare('<', keys.cell(at), keys.cell(at + 1))},${one},${zero})`,
  );
  return tools.helper(`SUM(${rises.range})`);
}

/** Among fewer keys counting takes less. */
const FEW_KEYS = 8;

/**
 * A match of a key that is expected at a place of the keys in ascending order: the keys around that place prove that it
 * is there, and that it is nowhere else. `give` is the formula's value, for the matched row from 0. Undefined where the
 * key is expected nowhere, or twice where that is refused.
 */
function lowerExpected(
  key: string,
  keys: LoweredColumn,
  kind: string,
  give: (row: number) => string,
  tools: LoweringTools,
): string | undefined {
  const expected = tools.expected(0);
  if (expected === undefined || keys.count <= FEW_KEYS || (kind !== 'exact' && kind !== 'first'))
    return undefined;
  const order = keys.sorted?.();
  if (!order) return undefined;
  const from = firstNotBelow(order.keys, expected);
  const to = firstAbove(order.keys, expected);
  if (to <= from || (kind === 'exact' && to - from > 1)) return undefined;
  const places = [
    ...[...new Set([from, to - 1])].map((place) => ({ place, op: '=' as const })),
    ...(from > 0 ? [{ place: from - 1, op: '<' as const }] : []),
    ...(to < keys.count ? [{ place: to, op: '>' as const }] : []),
  ];
  const row = order.rows.subarray(from, to).reduce((first, other) => Math.min(first, other));
  // Cells of their own, so that the formula is the same on all rows and is read once.
  const near = tools.column(places.length + 1, (at) => {
    const proof = places[at];
    return proof ? keys.cell(order.rows[proof.place] as number) : give(row);
  });
  const proofs = places.map(({ op }, at) => tools.compare(op, near.cell(at), key));
  return [`(${order.ascends}=${tools.constant(1)})`, ...proofs].reduceRight(
    (proved, proof) => `IF(${proof},${proved},${tools.refused})`,
    near.cell(places.length),
  );
}

/** The matched row, from 1, by counting keys. */
function lowerMatch(key: string, keys: LoweredColumn, kind: string, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  if (keys.count === 0) return tools.refused;
  const count = (op: '=' | '<=' | '>=') =>
    `SUM(${tools.column(keys.count, (at) => `IF(${tools.compare(op, keys.cell(at), key)},${one},${zero})`).range})`;
  const rows = (miss: string) =>
    tools.column(
      keys.count,
      (at) => `IF(${tools.compare('=', keys.cell(at), key)},${tools.constant(at + 1)},${miss})`,
    ).range;
  if (kind === 'exact') return `IF(${tools.helper(count('='))}=${one},SUM(${rows(zero)}),${tools.refused})`;
  if (kind === 'first') return `IF(${tools.helper(count('='))}>=${one},MIN(${rows('""')}),${tools.refused})`;
  const hits = tools.helper(count(kind === 'at or below' ? '<=' : '>='));
  const row = kind === 'at or below' ? hits : `${tools.constant(keys.count + 1)}-${hits}`;
  const found = `IF(${hits}>=${one},${row},${tools.refused})`;
  return `IF(${lowerRises(keys, tools)}=${tools.constant(keys.count - 1)},${found},${tools.refused})`;
}

/** y1 plus, of every piece, as much of its rise as x has covered. */
function lowerLinear(x: string, xs: LoweredColumn, ys: LoweredColumn, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  if (xs.count < 2) return ys.cell(0);
  const pieces = tools.column(xs.count - 1, (at) => {
    const [x1, x2, y1, y2] = [xs.cell(at), xs.cell(at + 1), ys.cell(at), ys.cell(at + 1)];
    return `MAX(${zero},MIN(${one},(${x}-${x1})/(${x2}-${x1})))*(${y2}-${y1})`;
  });
  return `(${ys.cell(0)}+SUM(${pieces.range}))`;
}

function rowOf(values: Float64Array, row: number): number {
  return Number.isInteger(row) ? (values[row - 1] ?? Number.NaN) : Number.NaN;
}

function need<T>(part: T | undefined): T {
  if (part === undefined) throw new Error('an argument is missing that was counted');
  return part;
}

export const lookup: readonly FunctionEntry[] = [
  {
    name: 'INDEX',
    group: 'lookup and interpolation',
    parameters: [column('column', any, { picked: true }), each('row', plain)],
    gives: (types) => need(types[0]),
    evaluate: {
      kind: 'gather',
      of: ([values], [row = 0]) => rowOf(need(values), row),
      search:
        ([values]) =>
        ([row = 0]) =>
          rowOf(need(values), row),
      refuse: ([values], [row = 0]) => ({
        words: `row ${row} is asked for, and the rows are 1 to ${values?.length ?? 0}`,
        argument: 1,
      }),
    },
    lower: ([row = ''], [values], _, tools) => {
      const { count, pick } = need(values);
      if (count === 0) return tools.refused;
      const inside = `MIN(${row}-${tools.constant(1)},${tools.constant(count)}-${row})>=${tools.constant(0)}`;
      return `IF(${row}=INT(${row}),IF(${inside},${pick(row)},${tools.refused}),${tools.refused})`;
    },
    help: 'The value of a column in a row counted from 1.',
    example: { formula: 'INDEX(layers.f; 2)', given: layers, unit: 'kPa', value: 35 },
  },
  {
    name: 'MATCH',
    group: 'lookup and interpolation',
    parameters: [each('key', likeAny), column('keys', likeAny), kinds],
    prepare: orderedIfNear,
    gives: () => plainType,
    evaluate: {
      kind: 'gather',
      of: ([keys], [key = Number.NaN], [kind = 'exact']) => matchRow(key, need(keys), kind) + 1,
      search: ([keys], [kind = 'exact']) => {
        const match = matchAmong(need(keys), kind);
        return ([key = Number.NaN]) => match(key) + 1;
      },
      refuse: ([keys], [key = Number.NaN], [kind = 'exact']) => matchRefusal(key, need(keys), kind),
    },
    lower: ([key], [keys], [kind = 'exact'], tools) =>
      lowerExpected(need(key), need(keys), kind, (row) => tools.constant(row + 1), tools) ??
      lowerMatch(need(key), need(keys), kind, tools),
    help: 'The row, from 1, in which a key stands; the kind of match is always stated.',
    example: { formula: 'MATCH(9 m; layers.bottom; "exact")', given: layers, value: 2 },
  },
  {
    name: 'LOOKUP',
    group: 'lookup and interpolation',
    parameters: [
      each('key', likeAny),
      column('keys', likeAny),
      column('values', { kind: 'like', letter: 'b', points: true, texts: true }, { picked: true }),
      kinds,
    ],
    prepare: orderedIfNear,
    gives: (types) => need(types[2]),
    evaluate: {
      kind: 'gather',
      of: ([keys, values], [key = Number.NaN], [kind = 'exact']) =>
        values?.[matchRow(key, need(keys), kind)] ?? Number.NaN,
      search: ([keys, values], [kind = 'exact']) => {
        const match = matchAmong(need(keys), kind);
        return ([key = Number.NaN]) => values?.[match(key)] ?? Number.NaN;
      },
      refuse: ([keys], [key = Number.NaN], [kind = 'exact']) => matchRefusal(key, need(keys), kind),
    },
    lower: ([key], [keys, values], [kind = 'exact'], tools) =>
      lowerExpected(need(key), need(keys), kind, need(values).cell, tools) ??
      need(values).pick(tools.helper(lowerMatch(need(key), need(keys), kind, tools))),
    help: 'The value beside a key; the kind of match is always stated.',
    example: {
      formula: 'LOOKUP(6 m; layers.bottom; layers.f; "at or above")',
      given: layers,
      unit: 'kPa',
      value: 35,
    },
  },
  {
    name: 'INTERPOLATE',
    group: 'lookup and interpolation',
    parameters: [
      each('x', likePoints),
      column('xs', likePoints),
      column('ys', { kind: 'like', letter: 'b', points: true }),
      beyond,
    ],
    gives: (types) => common(types.slice(2)),
    evaluate: {
      kind: 'gather',
      of: ([xs, ys], [x = Number.NaN], [outside]) => linear(x, need(xs), need(ys), outside === 'hold'),
      search: ([xs, ys], [outside]) => {
        const along = linearAlong(need(xs), need(ys), outside === 'hold');
        return ([x = Number.NaN]) => along(x);
      },
      refuse: ([xs], [x = Number.NaN]) => linearRefusal(x, need(xs)),
    },
    lower: ([x], [xs, ys], [outside], tools) => {
      const keys = need(xs);
      if (keys.count === 0) return tools.refused;
      const between = lowerLinear(need(x), keys, need(ys), tools);
      const rising = `${lowerRises(keys, tools)}=${tools.constant(keys.count - 1)}`;
      const value = `IF(${rising},${between},${tools.refused})`;
      if (outside === 'hold') return value;
      const tooLow = tools.compare('<', need(x), keys.cell(0));
      const tooHigh = tools.compare('>', need(x), keys.cell(keys.count - 1));
      return `IF(${tooLow},${tools.refused},IF(${tooHigh},${tools.refused},${value}))`;
    },
    help: 'Straight lines between the points xs, ys; beyond the ends refused, or held if so stated.',
    example: { formula: 'INTERPOLATE(6 m; layers.bottom; layers.f)', given: layers, unit: 'kPa', value: 26 },
  },
  {
    name: 'INTERPOLATE2',
    group: 'lookup and interpolation',
    parameters: [
      each('x', { kind: 'like', letter: 'a' }),
      each('y', { kind: 'like', letter: 'c' }),
      column('xs', { kind: 'like', letter: 'a' }),
      column('ys', { kind: 'like', letter: 'c' }),
      column('zs', { kind: 'like', letter: 'b' }),
      beyond,
    ],
    gives: (types) => common(types.slice(4)),
    evaluate: {
      kind: 'gather',
      of: ([xs, ys, zs], [x = Number.NaN, y = Number.NaN], [outside]) =>
        bilinear({ x, y }, { xs: need(xs), ys: need(ys), zs: need(zs) }, outside === 'hold'),
      refuse: ([xs, ys, zs], [x = Number.NaN, y = Number.NaN], [outside]) =>
        bilinearRefusal({ x, y }, { xs: need(xs), ys: need(ys), zs: need(zs) }, outside === 'hold'),
    },
    lower: ([x, y], [xs, ys, zs], [outside], tools) =>
      lowerBilinear(
        { x: need(x), y: need(y), xs: need(xs), ys: need(ys), zs: need(zs) },
        outside === 'hold',
        tools,
      ),
    help: 'Between the four nearest points of a grid given row by row: x, y and the value there.',
    example: {
      formula: 'INTERPOLATE2(5 m; 20 deg; grid.d; grid.a; grid.C)',
      given: {
        'grid.d': ['0 m', '0 m', '10 m', '10 m'],
        'grid.a': ['0 deg', '40 deg', '0 deg', '40 deg'],
        'grid.C': ['1', '3', '5', '11'],
      },
      value: 5,
    },
  },
];
