/** A source of chance: the same seed always gives the same draws. */
export interface Chance {
  /** A whole number from 0 to below n. */
  readonly below: (n: number) => number;
  readonly pick: <T>(items: readonly T[]) => T;
  /** True once in n times. */
  readonly oneIn: (n: number) => boolean;
}

/** Draws by mulberry32, a generator of 32-bit state. */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const draw = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (n: number): number => Math.floor(draw() * n);
  return { below, pick: (items) => items[below(items.length)] as never, oneIn: (n) => below(n) === 0 };
}

/** What a scalar or a column holds in the model of a book the tests edit. */
export type Content =
  | { readonly kind: 'given'; readonly values: readonly (number | string | null)[] }
  | { readonly kind: 'formula'; readonly formula: string }
  | { readonly kind: 'absent' };

/** The tables with their columns of numbers; `k` is a column of texts in two, `z` makes the rows of `p`. */
export const TABLES = { t: ['x', 'y', 'v', 'w'], u: ['x', 'y', 'v'], p: ['q', 'r'] } as const;
export type TableName = keyof typeof TABLES;
export const TEXTS = ['clay', 'Clay ', 'sand', 'silt', 'SAND'] as const;
export const TEXT_COLUMNS = ['t.k', 'u.k'] as const;

/** Everything of the book, so that what comes later mostly refers to what comes before. */
export const NAMES: readonly string[] = [
  ...['a', 'b', 't.k', 'u.k', 't.x', 'u.x', 'p.z', 'c', 't.y', 'u.y', 'p.q', 'd', 'e'],
  ...['t.v', 'f', 'u.v', 'p.r', 't.w', 'g'],
];

/** What a formula may refer to: what comes before it, now and then anything. */
interface Sight {
  readonly scalars: readonly string[];
  /** Whole columns of numbers. */
  readonly columns: readonly string[];
  /** Bare columns of the formula's own table, if it has one. */
  readonly own: readonly string[];
  readonly above: readonly string[];
}

/** The table a name is a column of. */
export function tableOf(name: string): TableName | undefined {
  return name.includes('.') ? (name.slice(0, name.indexOf('.')) as TableName) : undefined;
}

function sightOf(name: string, chance: Chance): Sight {
  const seen = chance.oneIn(12) ? NAMES : NAMES.slice(0, NAMES.indexOf(name));
  const table = tableOf(name);
  const columns = seen.filter((other) => other.includes('.') && !other.endsWith('.k'));
  const bare = (names: readonly string[]) =>
    names.filter((other) => table && tableOf(other) === table).map((other) => other.slice(2));
  return {
    scalars: seen.filter((other) => !other.includes('.')),
    columns: columns.filter((other) => tableOf(other) !== table || chance.oneIn(3)),
    own: bare(columns),
    above: table === undefined ? [] : TABLES[table],
  };
}

/** A random formula of a line or column, all of plain numbers. Now and then it makes a loop. */
export function randomFormula(name: string, chance: Chance): string {
  return formula(sightOf(name, chance), chance, 3);
}

/** A random SERIES; now and then one that makes no rows. */
export function randomSeries(chance: Chance): string {
  const stop = chance.oneIn(4) ? chance.pick(['a', 'b', 'd']) : `${chance.below(12)}`;
  return `SERIES(${chance.below(3)}; ${stop}; ${chance.pick(['1', '0.5', '2.5', '3', '1', '2', '0', 'a'])})`;
}

function formula(sight: Sight, chance: Chance, depth: number): string {
  const inner = () => formula(sight, chance, depth - 1);
  const row = sight.above.length > 0;
  if (depth === 0 || chance.oneIn(5)) {
    const leaves = [...sight.own, ...sight.own, ...sight.scalars, literal(chance)];
    return chance.pick(row ? [...leaves, 'ROW()'] : leaves);
  }
  if (row && chance.oneIn(4)) {
    const column = chance.pick(sight.above);
    if (chance.oneIn(2)) return `ABOVE(${column}; ${literal(chance)})`;
    const running = chance.pick(['RUNNINGSUM', 'RUNNINGMAX', 'RUNNINGMIN']);
    const argument = sight.own.length > 0 ? chance.pick(sight.own) : 'ROW()';
    return `${running}(${argument} * ${literal(chance)})`;
  }
  return sight.columns.length > 0 && chance.oneIn(3)
    ? gathered(sight, chance, inner)
    : combined(sight, chance, inner);
}

function literal(chance: Chance): string {
  return chance.pick(['0', '1', '2', '0.5', '3', '(-1)', '10']);
}

function combined(sight: Sight, chance: Chance, inner: () => string): string {
  const compare = () => `${inner()} ${chance.pick(['<', '<=', '=', '<>', '>', '>='])} ${inner()}`;
  const blank = [...sight.own, ...sight.scalars];
  const forms: readonly (() => string)[] = [
    () => `(${inner()} ${chance.pick(['+', '-', '*', '/'])} ${inner()})`,
    () => `(${inner()} ${chance.pick(['+', '*'])} ${inner()})`,
    () => `(-(${inner()}))`,
    () => `SQRT(ABS(${inner()}))`,
    () => `SQRT(${inner()})`,
    () => `(${inner()})^2`,
    () => `IF(${compare()}; ${inner()}; ${inner()})`,
    () => `IFS(${compare()}; ${inner()}; ${compare()}; ${inner()}; TRUE; ${inner()})`,
    () => `IFS(${compare()}; ${inner()}; ${compare()}; ${inner()})`,
    () => `IF(AND(${compare()}; NOT(${compare()})); ${inner()}; ${inner()})`,
    () => `${chance.pick(['MIN', 'MAX', 'LESSER', 'GREATER', 'SUM'])}(${inner()}; ${inner()})`,
    () => `ROUND(${inner()}; 1)`,
    () => (blank.length > 0 ? `IF(ISBLANK(${chance.pick(blank)}); ${inner()}; ${inner()})` : inner()),
  ];
  return chance.pick(forms)();
}

/** An aggregate or lookup over whole columns. */
function gathered(sight: Sight, chance: Chance, inner: () => string): string {
  const column = () => chance.pick(sight.columns);
  const first = column();
  const beside = chance.pick(sight.columns.filter((other) => tableOf(other) === tableOf(first)));
  const text = `"${chance.pick(TEXTS)}"`;
  const keys = tableOf(first) === 'p' ? undefined : `${tableOf(first)}.k`;
  const seesSeries = sight.columns.includes('p.z');
  const forms: readonly (() => string)[] = [
    () => `${chance.pick(['SUM', 'MIN', 'MAX', 'COUNT', 'AVERAGE'])}(${column()})`,
    () => `${chance.pick(['SUM', 'COUNT', 'MAX'])}(KNOWN(${column()}))`,
    () => `SUM(${first} * ${beside} + ${inner()})`,
    () => `SUM(${first} * (${beside} - ${first}))`,
    () => `SUMPRODUCT(${first}; ${beside})`,
    () => `COUNTIF(${first} > ${inner()})`,
    () => `INDEX(${first}; ${chance.below(4) + 1})`,
    () => `SUM(LESSER(${inner()}; ${first}) * ${beside})`,
    () => (keys ? `SUMIF(${keys} = ${text}; ${first})` : `MAX(${first})`),
    () => (keys ? `LOOKUP(${text}; ${keys}; ${first}; "first")` : `MIN(${first})`),
    () => (seesSeries ? `INTERPOLATE(${inner()}; p.z; p.z * 2; "hold")` : `COUNT(${first})`),
    () => (seesSeries && keys ? `SUM(INTERPOLATE(${first}; p.z; p.z; "hold") * 2)` : `SUM(${first})`),
  ];
  return chance.pick(forms)();
}
