import { plainType } from '../type.ts';
import type { FunctionEntry, LoweredColumn, LoweredOrder, LoweredSearch, LoweringTools } from './entry.ts';
import { lowerBilinear } from './grid-lowering.ts';
import {
  bilinear,
  bilinearRefusal,
  linear,
  linearAlong,
  linearRefusal,
  linearRefusals,
} from './interpolation.ts';
import { matchAmong, matchKinds, matchRefusal, matchRefusals, matchRow } from './keys.ts';
import { any, column, common, each, likeAny, likePoints, option, plain } from './parameter.ts';

/** What the examples are computed over. */
const layers = { 'layers.bottom': ['4 m', '9 m', '15 m'], 'layers.f': ['20 kPa', '35 kPa', '60 kPa'] };

const kinds = option('kind', matchKinds);
/** Texts and truth values are found or not; they have no order to lie between. */
const orderedIfNear: FunctionEntry['prepare'] = (options, [key]) =>
  options[0]?.startsWith('at ') && (key?.kind === 'text' || key?.kind === 'truth')
    ? `${key.kind === 'text' ? 'texts' : 'true and false'} have no order: match them "exact" or "first"`
    : options;
const beyond = option('beyond', ['refuse', 'hold'], { optional: true });

/** Whether every key rises above the one before it, as a formula. */
function isRising(keys: LoweredColumn, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  if (keys.count < 2) return `${one}=${one}`;
  if (keys.count > FEW_KEYS && keys.search) return `${keys.search.rises()}=${one}`;
  const rises = tools.column(
    keys.count - 1,
    (at) => `IF(${tools.compare('<', keys.cell(at), keys.cell(at + 1))},${one},${zero})`,
  );
  return `${tools.helper(`SUM(${rises.range})`)}=${tools.constant(keys.count - 1)}`;
}

/** Among fewer keys counting takes less. */
const FEW_KEYS = 8;

/** The matched row, from 1: searched for among many keys, counted among few and where no search can tell. */
function lowerMatch(key: string, keys: LoweredColumn, kind: string, tools: LoweringTools): string {
  if (keys.count === 0) return tools.refused;
  const search = keys.count > FEW_KEYS ? keys.search : undefined;
  if (!search) return lowerCounted(key, keys, kind, tools);
  if (kind === 'at or below' || kind === 'at or above') return lowerNearest(key, keys, search, kind, tools);
  const order = search.order();
  return order ? lowerSought(key, order, kind, tools) : lowerCounted(key, keys, kind, tools);
}

/** The row of a key: it is the greatest key not above it, or to the tolerance the next one, or it is nowhere. */
function lowerSought(key: string, order: LoweredOrder, kind: string, tools: LoweringTools): string {
  const { gap, holds, beside } = order;
  if (gap !== undefined) return gap;
  const [here, next] = [tools.helper(beside(key, 'here')), tools.helper(beside(key, 'next'))];
  const [isHere, isNext] = [tools.compare('=', here, key), tools.compare('=', next, key)];
  const [row, nextRow] =
    kind === 'first'
      ? [beside(key, 'first'), beside(key, 'next first')]
      : [beside(key, 'only'), beside(key, 'next only')];
  const both = kind === 'first' ? `MIN(${row},${nextRow})` : tools.refused;
  const found = `IF(${isHere},IF(${isNext},${both},${row}),IF(${isNext},${nextRow},${tools.refused}))`;
  return `IF(${holds}=${tools.constant(1)},${tools.helper(found)},${tools.refused})`;
}

/** The row of the greatest key not above, or of the least not below, where the keys rise. */
function lowerNearest(
  key: string,
  keys: LoweredColumn,
  search: LoweredSearch,
  kind: 'at or below' | 'at or above',
  tools: LoweringTools,
): string {
  const [one, count] = [tools.constant(1), tools.constant(keys.count)];
  const below = tools.helper(search.countUpTo(key));
  const other = tools.helper(
    kind === 'at or below' ? `MIN(${below}+${one},${count})` : `MAX(${below},${one})`,
  );
  const isOther = tools.compare('=', tools.helper(keys.pick(other)), key);
  const row = tools.helper(`IF(${isOther},${other},${kind === 'at or below' ? below : `${below}+${one}`})`);
  const isThere = kind === 'at or below' ? `${row}>=${one}` : `${row}<=${count}`;
  return `IF(${isRising(keys, tools)},IF(${isThere},${row},${tools.refused}),${tools.refused})`;
}

/** The matched row, from 1, by counting keys. */
function lowerCounted(key: string, keys: LoweredColumn, kind: string, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
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
  return `IF(${isRising(keys, tools)},${found},${tools.refused})`;
}

/** Of many points the two around x and the line between them; of few, y1 plus as much of each rise as x has covered. */
function lowerLinear(x: string, xs: LoweredColumn, ys: LoweredColumn, tools: LoweringTools): string {
  const [one, zero] = [tools.constant(1), tools.constant(0)];
  if (xs.count < 2) return ys.cell(0);
  const covered = (x1: string, x2: string) => `MAX(${zero},MIN(${one},(${x}-${x1})/(${x2}-${x1})))`;
  if (xs.count > FEW_KEYS && xs.search) {
    const last = tools.constant(xs.count - 1);
    const below = tools.helper(`MAX(${one},MIN(${last},${xs.search.countUpTo(x)}))`);
    const above = `(${below}+${one})`;
    const [x1, x2, y1] = [xs.pick(below), xs.pick(above), ys.pick(below)].map(tools.helper) as [
      string,
      string,
      string,
    ];
    return `(${y1}+${covered(x1, x2)}*(${ys.pick(above)}-${y1}))`;
  }
  const pieces = tools.column(
    xs.count - 1,
    (at) => `${covered(xs.cell(at), xs.cell(at + 1))}*(${ys.cell(at + 1)}-${ys.cell(at)})`,
  );
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
    worked: { as: 'row' },
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
      refuseMany: ([keys], [kind = 'exact']) => {
        const refuse = matchRefusals(need(keys), kind);
        return ([key = Number.NaN]) => refuse(key);
      },
    },
    lower: ([key], [keys], [kind = 'exact'], tools) => lowerMatch(need(key), need(keys), kind, tools),
    worked: { as: 'match' },
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
      refuseMany: ([keys], [kind = 'exact']) => {
        const refuse = matchRefusals(need(keys), kind);
        return ([key = Number.NaN]) => refuse(key);
      },
    },
    lower: ([key], [keys, values], [kind = 'exact'], tools) =>
      need(values).pick(tools.helper(lowerMatch(need(key), need(keys), kind, tools))),
    worked: { as: 'match' },
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
      refuseMany: ([xs]) => {
        const refuse = linearRefusals(need(xs));
        return ([x = Number.NaN]) => refuse(x);
      },
    },
    lower: ([x], [xs, ys], [outside], tools) => {
      const keys = need(xs);
      if (keys.count === 0) return tools.refused;
      const between = lowerLinear(need(x), keys, need(ys), tools);
      const rising = isRising(keys, tools);
      const value = `IF(${rising},${between},${tools.refused})`;
      if (outside === 'hold') return value;
      const tooLow = tools.compare('<', need(x), keys.cell(0));
      const tooHigh = tools.compare('>', need(x), keys.cell(keys.count - 1));
      return `IF(${tooLow},${tools.refused},IF(${tooHigh},${tools.refused},${value}))`;
    },
    worked: { as: 'line' },
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
    worked: { as: 'grid' },
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
