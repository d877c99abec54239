import {
  angleType,
  type FunctionEntry,
  findFunction,
  functionTable,
  numberType,
  type Parameter,
  plainType,
  sameKind,
  type Type,
  textType,
  truthType,
} from '../../src/language/index.ts';
import { readUnit, standardUnits } from '../../src/units/index.ts';
import type { Random } from './random.ts';

/** The kinds of values random formulas work with. */
export type Kind =
  | 'plain'
  | 'length'
  | 'area'
  | 'force'
  | 'angle'
  | 'truth'
  | 'text'
  | 'date'
  | 'elevation'
  | 'temperature';

/** Names a formula may use, by kind: those of single values, and for each table those of its columns. */
export interface Vocabulary {
  readonly single: Readonly<Record<Kind, readonly string[]>>;
  readonly columns: ReadonlyMap<string, Readonly<Partial<Record<Kind, readonly string[]>>>>;
  /** The table whose column the formula is; its columns are then this row's values by their bare names. */
  readonly own?: string;
  /** Columns whose values ascend, with the kind of their values. */
  readonly keys: readonly { readonly table: string; readonly column: string; readonly kind: Kind }[];
  /** The columns of coordinates of a grid in rows. */
  readonly grid: { readonly table: string; readonly x: string; readonly y: string };
  /** Names that may be blank. */
  readonly blank: readonly string[];
  /** Columns some rows of which are blank. */
  readonly gappy: readonly { readonly table: string; readonly column: string; readonly kind: Kind }[];
}

const dimension = (unit: string) => {
  const read = readUnit(unit, standardUnits);
  if (!read.ok) throw new Error(`no unit ${unit}`);
  return read.value.dimension;
};

const types: Readonly<Record<Kind, Type>> = {
  plain: plainType,
  length: numberType(dimension('m')),
  area: numberType(dimension('m^2')),
  force: numberType(dimension('N')),
  angle: angleType,
  truth: truthType,
  text: textType,
  date: { kind: 'point', of: 'date', axes: [] },
  elevation: { kind: 'point', of: 'elevation:MLLW', axes: [] },
  temperature: { kind: 'point', of: 'temperature', axes: [] },
};

const dimensional: readonly Kind[] = ['length', 'area', 'force'];
const numeric: readonly Kind[] = ['plain', ...dimensional, 'angle'];
const points: readonly Kind[] = ['date', 'elevation', 'temperature'];
const all: readonly Kind[] = [...numeric, ...points, 'truth', 'text'];

const literals: Readonly<Record<Kind, readonly string[]>> = {
  plain: ['2', '0.5', '3', '1', '7.25', '0.1', '12', '1.5', '0.004', '60'],
  length: ['12 ft', '3.2 m', '30 in', '450 mm', '0.5 yd'],
  area: ['200 sf', '3.5 (m^2)', '12 (in^2)', '0.01 ha'],
  force: ['12 kip', '30 kN', '4 tf', '250 lbf', '1.5 STf'],
  angle: ['30 deg', '0.4 rad', '75 deg', '5 deg'],
  truth: ['TRUE', 'FALSE'],
  text: ['"clay"', '"Sand"', '"silt "', '"peat"'],
  date: ['DATE(2026; 11; 25)', 'DATE(2027; 2; 28)'],
  elevation: ['(3 ft + deck)', '(deck - 450 mm)'],
  temperature: ['20 degC', '68 degF'],
};

/** A random well-typed formula, written to a depth. `fresh`: inside an aggregate, the table it runs over. */
export interface Writer {
  readonly of: (kind: Kind, depth: number, fresh?: string) => string;
  /** A call of this function with arguments that fit. */
  readonly call: (fn: FunctionEntry, depth: number) => string;
}

export function formulaWriter(words: Vocabulary, random: Random): Writer {
  const { pick, oneIn, below } = random;

  const leaf = (kind: Kind, fresh?: string): string => {
    const columns = fresh === undefined ? undefined : words.columns.get(fresh)?.[kind];
    if (columns && !oneIn(4)) return `${fresh}.${pick(columns)}`;
    const own = words.own === undefined ? undefined : words.columns.get(words.own)?.[kind];
    if (own && oneIn(2)) return pick(own);
    const names = words.single[kind];
    return names.length > 0 && oneIn(2) ? pick(names) : pick(literals[kind]);
  };

  const of = (kind: Kind, depth: number, fresh?: string): string => {
    if (depth <= 0 || oneIn(5)) return leaf(kind, fresh);
    if (oneIn(2)) {
      const call = callOfKind(kind, depth - 1, fresh);
      if (call !== undefined) return call;
    }
    const part = (other: Kind) => of(other, depth - 1, fresh);
    const forms: readonly (() => string)[] = operations[kind](part, random);
    return pick(forms)();
  };

  /** A call that gives a kind; undefined if none was found soon. */
  const callOfKind = (kind: Kind, depth: number, fresh?: string): string | undefined => {
    for (let trial = 0; trial < 12; trial += 1) {
      const fn = pick(functionTable);
      const call = written(fn, depth, fresh, kind);
      if (call !== undefined) return call;
    }
    return undefined;
  };

  /** A call of a function, if it gives the kind wanted. */
  const written = (fn: FunctionEntry, depth: number, fresh?: string, wanted?: Kind): string | undefined => {
    const special = specials[fn.name];
    if (special) return special(depth, fresh, wanted);
    if (fn.evaluate.kind === 'special') return undefined;
    if (fn.evaluate.kind === 'scan' && (words.own === undefined || fresh !== undefined)) return undefined;
    if (fn.evaluate.kind === 'gather' && fresh !== undefined) return undefined;
    const parameters = repeated(fn, below(3));
    const letters = new Map<string, Kind>();
    const kinds = parameters.map((parameter) =>
      onlyPlain.has(fn.name) ? 'plain' : kindFor(parameter, letters, wanted, random),
    );
    const typed = parameters.flatMap(({ takes }, at) =>
      takes.kind === 'option' ? [] : [types[kinds[at] as Kind]],
    );
    const gives = fn.gives(typed);
    if (typeof gives === 'string') return undefined;
    if (wanted !== undefined && !fits(gives, types[wanted])) return undefined;
    const table = pick([...words.columns.keys()]);
    const args = parameters.map((parameter, at) =>
      argument(fn, parameter, kinds[at] as Kind, depth, table, fresh),
    );
    return `${fn.name}(${args.join('; ')})`;
  };

  const argument = (
    fn: FunctionEntry,
    parameter: Parameter,
    kind: Kind,
    depth: number,
    table: string,
    fresh?: string,
  ): string => {
    if (parameter.takes.kind === 'option') return option(fn, parameter, random);
    if (parameter.role === 'column') {
      const known = words.gappy.filter((column) => column.kind === kind);
      if (isPooled(fn) && known.length > 0 && oneIn(6)) {
        const { table: of, column } = pick(known);
        return `KNOWN(${of}.${column})`;
      }
      return isPooled(fn) && oneIn(3) ? of(kind, depth, undefined) : of(kind, depth, table);
    }
    if (fn.evaluate.kind === 'scan') return rowValue(kind, depth);
    const usual = usualArguments[parameter.name];
    if (usual && !oneIn(6)) return pick(usual);
    return of(kind, depth, fresh);
  };

  /** A value that depends on the row, for what runs down the rows. */
  const rowValue = (kind: Kind, depth: number): string => {
    const own = words.columns.get(words.own ?? '')?.[kind];
    if (!own) return of(kind, depth);
    if (!numeric.includes(kind) || oneIn(2)) return pick(own);
    return `${pick(own)} + ${of(kind, depth)}`;
  };

  const any = (wanted: Kind | undefined): Kind => wanted ?? pick(all);
  type Special = (depth: number, fresh?: string, wanted?: Kind) => string | undefined;
  const specials: Readonly<Record<string, Special>> = {
    IF: (depth, fresh, wanted) => {
      const kind = any(wanted);
      return `IF(${of('truth', depth, fresh)}; ${of(kind, depth, fresh)}; ${of(kind, depth, fresh)})`;
    },
    IFS: (depth, fresh, wanted) => {
      const kind = any(wanted);
      const arms = [1, 2].map(() => `${of('truth', depth, fresh)}; ${of(kind, depth, fresh)}`);
      const rest = oneIn(3) ? '' : `; TRUE; ${of(kind, depth, fresh)}`;
      return `IFS(${arms.join('; ')}${rest})`;
    },
    SWITCH: (depth, fresh, wanted) => {
      const kind = any(wanted);
      const subject = pick<Kind>(['text', 'text', 'length', 'truth']);
      const arms = [1, 2].map(() => `${of(subject, 0)}; ${of(kind, depth, fresh)}`);
      const rest = oneIn(3) ? '' : `; ${of(kind, depth, fresh)}`;
      return `SWITCH(${of(subject, depth, fresh)}; ${arms.join('; ')}${rest})`;
    },
    CHOOSE: (depth, fresh, wanted) => {
      const kind = any(wanted);
      const index = oneIn(4) ? of('plain', depth, fresh) : pick(['1', '2', '3', 'n']);
      return `CHOOSE(${index}; ${[1, 2, 3].map(() => of(kind, depth, fresh)).join('; ')})`;
    },
    POWER: (depth, fresh, wanted) => {
      if (wanted !== undefined && wanted !== 'plain' && wanted !== 'area') return undefined;
      if (wanted === 'area') return `POWER(${of('length', depth, fresh)}; 2)`;
      return oneIn(2)
        ? `POWER(${of('plain', depth, fresh)}; ${pick(['2', '0.5', '-1', '1/3', 'n', '1.7'])})`
        : `POWER(ABS(${of('plain', depth, fresh)}); ${of('plain', 0)})`;
    },
    ABOVE: (depth, fresh, wanted) => {
      const own = words.columns.get(words.own ?? '');
      const kind = wanted ?? pick(Object.keys(own ?? { plain: [] }) as Kind[]);
      const names = own?.[kind];
      return names && fresh === undefined ? `ABOVE(${pick(names)}; ${of(kind, depth)})` : undefined;
    },
    ROW: (_, __, wanted) =>
      words.own !== undefined && (wanted === undefined || wanted === 'plain') ? 'ROW()' : undefined,
    ISBLANK: (_, __, wanted) => {
      if (wanted !== undefined && wanted !== 'truth') return undefined;
      const own = words.gappy.filter(({ table }) => table === words.own).map(({ column }) => column);
      return `ISBLANK(${pick([...words.blank, ...own])})`;
    },
    KNOWN: (_, fresh, wanted) => {
      const found = words.gappy.filter(({ kind }) => wanted === undefined || kind === wanted);
      if (fresh !== undefined || found.length === 0) return undefined;
      const { table, column, kind } = pick(found);
      if (wanted === undefined && oneIn(2)) return `COUNT(KNOWN(${table}.${column}))`;
      return numeric.includes(kind) ? `SUM(KNOWN(${table}.${column}))` : undefined;
    },
    LOOKUP: (depth, fresh, wanted) => {
      const { table, column, kind } = pick(words.keys);
      if (fresh === table) return undefined;
      const value = wanted ?? pick(Object.keys(words.columns.get(table) ?? {}) as Kind[]);
      const values = words.columns.get(table)?.[value];
      if (!values) return undefined;
      const how = kind === 'text' ? pick(['exact', 'first']) : pick(['exact', 'at or below', 'at or above']);
      const key = how === 'exact' && oneIn(2) ? `INDEX(${table}.${column}; 2)` : of(kind, depth, fresh);
      return `LOOKUP(${key}; ${table}.${column}; ${table}.${pick(values)}; "${how}")`;
    },
    MATCH: (depth, fresh, wanted) => {
      if (wanted !== undefined && wanted !== 'plain') return undefined;
      const { table, column, kind } = pick(words.keys);
      if (fresh === table) return undefined;
      const how = kind === 'text' ? pick(['exact', 'first']) : pick(['exact', 'at or below', 'at or above']);
      return `MATCH(${of(kind, depth, fresh)}; ${table}.${column}; "${how}")`;
    },
    INTERPOLATE: (depth, fresh, wanted) => {
      const { table, column, kind } = pick(words.keys.filter((key) => key.kind !== 'text'));
      if (fresh === table || (wanted !== undefined && !numeric.includes(wanted))) return undefined;
      const value = wanted ?? pick(numeric);
      const values = words.columns.get(table)?.[value];
      if (!values) return undefined;
      const beyond = pick(['', '; "hold"', '; "refuse"']);
      return `INTERPOLATE(${of(kind, depth, fresh)}; ${table}.${column}; ${table}.${pick(values)}${beyond})`;
    },
    INDEX: (depth, fresh, wanted) => {
      const table = pick([...words.columns.keys()]);
      if (fresh === table) return undefined;
      const kind = wanted ?? pick(Object.keys(words.columns.get(table) ?? {}) as Kind[]);
      if (!words.columns.get(table)?.[kind]) return undefined;
      const place = oneIn(4) ? of('plain', depth, fresh) : pick(['1', '2', '3', 'n']);
      return `INDEX(${of(kind, depth, table)}; ${place})`;
    },
    INTERPOLATE2: (depth, fresh, wanted) => {
      if (fresh === words.grid.table || (wanted !== undefined && !numeric.includes(wanted))) return undefined;
      const { table, x, y } = words.grid;
      const values = words.columns.get(table)?.[wanted ?? pick(numeric)];
      if (!values) return undefined;
      const beyond = pick(['; "hold"', '; "hold"', '']);
      const grid = [x, y, pick(values)].map((column) => `${table}.${column}`).join('; ');
      return `INTERPOLATE2(${of('length', depth, fresh)}; ${of('plain', depth, fresh)}; ${grid}${beyond})`;
    },
    TRIANGINV: (depth, fresh, wanted) => {
      const kind = wanted ?? pick(numeric);
      if (!numeric.includes(kind)) return undefined;
      const [low, up, further] = [1, 2, 3].map(() => of(kind, depth - 1, fresh)) as [string, string, string];
      const mode = oneIn(5) ? up : `${low} + ABS(${up})`;
      const chance = oneIn(6) ? of('plain', depth, fresh) : pick(usualArguments.chance ?? []);
      return `TRIANGINV(${chance}; ${low}; ${mode}; ${low} + ABS(${up}) + ABS(${further}))`;
    },
    SERIES: () => undefined,
  };

  return {
    of,
    call: (fn, depth) => {
      for (let trial = 0; trial < 200; trial += 1) {
        const call = written(fn, depth);
        if (call !== undefined) return call;
      }
      throw new Error(`no call of ${fn.name} was found`);
    },
  };
}

type Part = (kind: Kind) => string;
type Forms = (part: Part, random: Random) => readonly (() => string)[];

const sums =
  (kind: Kind): Forms =>
  (part, { pick }) => [
    () => `(${part(kind)} ${pick(['+', '-'])} ${part(kind)})`,
    () => `(${part(kind)} * ${part('plain')})`,
    () => `(${part(kind)} / ${part('plain')})`,
    () => `(-${part(kind)})`,
  ];
const shifted =
  (kind: Kind, difference: (part: Part) => string): Forms =>
  (part, { pick }) => [() => `(${part(kind)} ${pick(['+', '-'])} ${difference(part)})`];

/** How values of each kind come from operators. */
const operations: Readonly<Record<Kind, Forms>> = {
  plain: (part, random) => [
    ...sums('plain')(part, random),
    () => `(${part('length')} / ${part('length')})`,
    () => `(${part('force')} / ${part('force')})`,
    () => `(${part('plain')} ^ ${random.pick(['2', '0.5', '3', '(-1)', '(1/3)'])})`,
    () => `${random.pick(['12', '2.5'])}%`,
  ],
  length: (part, random) => [
    ...sums('length')(part, random),
    () => `(${part('area')} / ${part('length')})`,
    () => `((${part('area')}) ^ (1/2))`,
    () => `(${part('elevation')} - ${part('elevation')})`,
  ],
  area: (part, random) => [...sums('area')(part, random), () => `(${part('length')} * ${part('length')})`],
  force: sums('force'),
  angle: (part, random) => [...sums('angle')(part, random), () => `(${part('plain')} * 1 deg)`],
  truth: (part, random) => {
    const kind = random.pick<Kind>([...numeric, ...points, 'text']);
    const sign = random.pick(['=', '<>', '<', '<=', '>', '>=']);
    return [
      () => `(${part(kind)} ${sign} ${part(kind)})`,
      () => `(${part('force')} - ${part('force')} ${sign} 0)`,
      () => `(${part('truth')} ${random.pick(['=', '<>'])} ${part('truth')})`,
    ];
  },
  text: (part) => [() => part('text'), () => `IF(${part('truth')}; ${part('text')}; ${part('text')})`],
  date: shifted('date', () => '3 d'),
  elevation: shifted('elevation', (part) => part('length')),
  temperature: shifted('temperature', () => '4 ΔdegF'),
};

/** What some parameters mostly take, by name: most random numbers would be refused. */
const usualArguments: Readonly<Record<string, readonly string[]>> = {
  chance: ['0.5', '0.05', '0.9', '0.31', '0.975'],
  fraction: ['0.5', '0.25', '0', '1', '0.9'],
  digits: ['0', '1', '2', '-1'],
  rank: ['1', '2', 'n'],
};

/** Functions of any number that are written for plain ones here: a unit option, a product of rows of no fixed dimension. */
const onlyPlain = new Set(['TEXT', 'PRODUCT']);

function isPooled(fn: FunctionEntry): boolean {
  return fn.evaluate.kind === 'gather' && fn.evaluate.pooled === true;
}

function repeated(fn: FunctionEntry, extra: number): readonly Parameter[] {
  const first = fn.parameters.findIndex((parameter) => parameter.repeats);
  const kept = fn.parameters.filter((parameter) => !parameter.optional || extra > 0);
  if (first < 0) return kept;
  const group = fn.parameters.slice(first);
  return [...fn.parameters, ...Array.from({ length: extra }, () => group).flat()];
}

function kindFor(
  { takes }: Parameter,
  letters: Map<string, Kind>,
  wanted: Kind | undefined,
  { pick, oneIn }: Random,
): Kind {
  switch (takes.kind) {
    case 'plain':
    case 'option':
      return 'plain';
    case 'angle':
    case 'truth':
    case 'text':
    case 'date':
      return takes.kind;
    case 'number':
      return wanted && numeric.includes(wanted) && oneIn(2) ? wanted : pick(numeric);
    case 'any':
      return pick(all);
    case 'like': {
      const open = [
        ...numeric,
        ...(takes.points ? points : []),
        ...(takes.texts ? (['text', 'truth'] as const) : []),
      ];
      const known = letters.get(takes.letter) ?? (wanted && open.includes(wanted) ? wanted : pick(open));
      letters.set(takes.letter, known);
      return known;
    }
  }
}

function fits(gives: Type, wanted: Type): boolean {
  const angle = (type: Type) => type.kind === 'number' && type.angle;
  return sameKind(gives, wanted) && angle(gives) === angle(wanted);
}

function option(fn: FunctionEntry, { takes, name }: Parameter, { pick }: Random): string {
  if (takes.kind === 'option' && takes.choices) return `"${pick(takes.choices)}"`;
  if (fn.name === 'TEXT') return name === 'unit' ? '""' : '2';
  throw new Error(`${fn.name} has an option nobody knows to write`);
}

/** Whether a function of the language is written in a formula. */
export function functionsIn(formula: string): readonly FunctionEntry[] {
  const names = new Set(Array.from(formula.matchAll(/[A-Z][A-Z0-9]*(?=\()/g), ([name]) => name));
  return [...names].flatMap((name) => findFunction(name) ?? []);
}
