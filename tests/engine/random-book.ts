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

export const SCALARS = ['a', 'b', 'c', 'd', 'e', 'f', 'g'] as const;
/** The tables with their columns of numbers; `k` is a column of texts in both, `z` makes the rows of `p`. */
export const TABLES = { t: ['x', 'y', 'v', 'w'], u: ['x', 'y', 'v'], p: ['q', 'r'] } as const;
export type TableName = keyof typeof TABLES;
export const TEXTS = ['clay', 'Clay ', 'sand', 'silt', 'SAND'] as const;

/** A random formula of a scalar, all of plain numbers. It may refer to anything, so loops happen. */
export function scalarFormula(chance: Chance, depth = 3): string {
  if (depth === 0 || chance.oneIn(5)) return chance.oneIn(4) ? literal(chance) : chance.pick(SCALARS);
  const inner = () => scalarFormula(chance, depth - 1);
  return chance.oneIn(3) ? gathered(chance, inner, () => '') : combined(chance, inner);
}

/** A random formula of a column of a table. */
export function columnFormula(chance: Chance, table: TableName, depth = 3): string {
  const own = TABLES[table];
  if (depth === 0 || chance.oneIn(5)) {
    if (chance.oneIn(5)) return chance.pick([literal(chance), ...SCALARS, 'ROW()']);
    return chance.pick(own);
  }
  const inner = () => columnFormula(chance, table, depth - 1);
  switch (chance.below(7)) {
    case 0:
      return `ABOVE(${chance.pick(own)}; ${literal(chance)})`;
    case 1:
      return `${chance.pick(['RUNNINGSUM', 'RUNNINGMAX', 'RUNNINGMIN'])}(${chance.pick(own)} * ${literal(chance)})`;
    case 2:
      return gathered(chance, inner, () => chance.pick(own));
    default:
      return combined(chance, inner);
  }
}

/** A random SERIES; now and then one that makes no rows. */
export function seriesFormula(chance: Chance): string {
  const stop = chance.oneIn(4) ? chance.pick(SCALARS) : `${chance.below(12)}`;
  return `SERIES(${chance.below(3)}; ${stop}; ${chance.pick(['1', '0.5', '2.5', '3', '0', 'a'])})`;
}

function literal(chance: Chance): string {
  return chance.pick(['0', '1', '2', '0.5', '3', '-1', '10']).replace('-1', '(-1)');
}

function combined(chance: Chance, inner: () => string): string {
  const compare = () => `${inner()} ${chance.pick(['<', '<=', '=', '<>', '>', '>='])} ${inner()}`;
  const rest: readonly (() => string)[] = [
    () => `(${inner()} ${chance.pick(['+', '-', '*', '/'])} ${inner()})`,
    () => `(${inner()} ${chance.pick(['+', '*'])} ${inner()})`,
    () => `(-(${inner()}))`,
    () => `SQRT(${inner()})`,
    () => `(${inner()})^2`,
    () => `IF(${compare()}; ${inner()}; ${inner()})`,
    () => `IFS(${compare()}; ${inner()}; ${compare()}; ${inner()})`,
    () => `IF(AND(${compare()}; NOT(${compare()})); ${inner()}; ${inner()})`,
    () => `${chance.pick(['MIN', 'MAX', 'LESSER', 'GREATER', 'SUM'])}(${inner()}; ${inner()})`,
    () => `ROUND(${inner()}; 1)`,
  ];
  return chance.pick(rest)();
}

/** An aggregate or lookup over a column of some table; `own` gives a bare column of the formula's own table. */
function gathered(chance: Chance, inner: () => string, own: () => string): string {
  const table = chance.pick(['t', 'u', 'p'] as const);
  const column = () => `${table}.${chance.pick(TABLES[table])}`;
  const other = `u.${chance.pick(TABLES.u)}`;
  const mine = own();
  const rest: readonly (() => string)[] = [
    () => `${chance.pick(['SUM', 'MIN', 'MAX', 'COUNT', 'AVERAGE'])}(${column()})`,
    () => `${chance.pick(['SUM', 'COUNT', 'MAX'])}(KNOWN(${column()}))`,
    () => `SUM(${column()} * ${column()} + ${inner()})`,
    () => `SUM(t.${chance.pick(TABLES.t)} * ${other})`,
    () => `SUMIF(t.k = "${chance.pick(TEXTS)}"; t.${chance.pick(TABLES.t)})`,
    () => `COUNTIF(${column()} > ${inner()})`,
    () => `INDEX(${column()}; ${chance.below(4) + 1})`,
    () => `LOOKUP("${chance.pick(TEXTS)}"; u.k; u.${chance.pick(TABLES.u)}; "first")`,
    () => `INTERPOLATE(${inner()}; p.z; p.${chance.pick(TABLES.p)}; "hold")`,
    () => `SUM(LESSER(${mine === '' ? inner() : mine}; ${column()}) * ${column()})`,
    () => `SUM(INTERPOLATE(t.${chance.pick(TABLES.t)}; p.z; p.z; "hold") * 2)`,
    () => `IF(ISBLANK(${mine === '' ? chance.pick(SCALARS) : mine}); ${inner()}; ${inner()})`,
  ];
  return chance.pick(rest)();
}
