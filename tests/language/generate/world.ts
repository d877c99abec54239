import type { Engine } from '../../../src/engine/index.ts';
import {
  numberType,
  type Resolution,
  type Scope,
  type Type,
  textType,
  truthType,
  typeOfUnit,
} from '../../../src/language/index.ts';
import { dateToSI, extendUnits, standardUnits, toSI } from '../../../src/units/index.ts';
import { angle, date, dimensions, plain, unitOf, unitsOf } from './quantities.ts';

/** A name random formulas may use, with its value or values in SI. */
export interface WorldName {
  readonly name: string;
  readonly type: Type;
  /** The table of a column; `name` is then its bare name. */
  readonly table?: string;
  readonly values: readonly (number | string | boolean)[];
  /** Whether the values of a column rise from row to row. */
  readonly rising?: boolean;
}

const registry = extendUnits(standardUnits, { datums: ['MLLW', 'NAVD88'] });
if (!registry.ok) throw new Error('the datums of the random formulas are refused');
const units = registry.value;

const inUnit = (text: string, ...xs: readonly number[]) => xs.map((x) => toSI(x, unitOf(text)));
const day = (y: number, m: number, d: number): number => {
  const seconds = dateToSI({ year: y, month: m, day: d });
  if (seconds === undefined) throw new Error(`no day ${y}-${m}-${d}`);
  return seconds;
};

function column(
  table: string,
  name: string,
  type: Type,
  values: WorldName['values'],
  rising = false,
): WorldName {
  return { name, type, table, values, rising };
}

const ofUnit = (text: string): Type => ({ ...typeOfUnit(unitOf(text)) });

/** Two numbers of every dimension, and values of every other kind. */
const scalars: readonly WorldName[] = [
  ...dimensions.flatMap((dimension, at) => {
    const [first = '', second = ''] = unitsOf(dimension);
    const type = numberType(dimension);
    return [
      { name: `x_${at}`, type, values: inUnit(first, 2.5 + at / 7) },
      { name: `y_${at}`, type, values: inUnit(second, 1.25 + at / 3) },
    ];
  }),
  { name: 'α_1', type: angle, values: [0.7] },
  { name: 'α_2', type: angle, values: [0.3] },
  { name: 'T_air', type: ofUnit('degC'), values: inUnit('degC', 21) },
  { name: 'T_sea', type: ofUnit('degF'), values: inUnit('degF', 48) },
  { name: 'z_deck', type: ofUnit('ft MLLW'), values: inUnit('ft MLLW', 14) },
  { name: 'z_mud', type: ofUnit('ft MLLW'), values: inUnit('ft MLLW', -31) },
  { name: 'z_old', type: ofUnit('m NAVD88'), values: [2.1] },
  { name: 'start', type: date, values: [day(2026, 11, 25)] },
  { name: 'finish', type: date, values: [day(2027, 3, 1)] },
  { name: 'soil', type: textType, values: ['Clay '] },
  { name: 'crew', type: textType, values: ['night'] },
  { name: 'wet', type: truthType, values: [true] },
  { name: 'new', type: truthType, values: [false] },
];

const columns: readonly WorldName[] = [
  column('layers', 'top', ofUnit('m'), inUnit('ft', 0, 12, 30, 41), true),
  column('layers', 'thick', ofUnit('m'), inUnit('ft', 12, 18, 11, 25)),
  column('layers', 'f', ofUnit('kPa'), inUnit('psf', 500, 1200, 1800, 900)),
  column('layers', 'P', ofUnit('kN'), inUnit('kip', 40, 15, 70, 33)),
  column('layers', 'n', plain, [3, 1, 4, 1.5]),
  column('layers', 'β', angle, [0.2, 0.5, 0.4, 0.9]),
  column('layers', 'kind', textType, ['clay', 'sand', 'Clay', 'rock']),
  column('layers', 'firm', truthType, [true, false, true, true]),
  column('layers', 'temp', ofUnit('degC'), inUnit('degC', 8, 9.5, 11, 14), true),
  column('layers', 'z', ofUnit('ft MLLW'), inUnit('ft MLLW', -40, -28, -10, 0), true),
  column('layers', 'bored', date, [day(2026, 1, 5), day(2026, 1, 9), day(2026, 2, 2), day(2026, 2, 3)], true),
  column('rates', 'size', plain, [0.5, 2, 7], true),
  column('rates', 'mass', ofUnit('kg'), inUnit('ST', 1.5, 4, 9), true),
  column('rates', 'cost', ofUnit('USD'), [120, 80, 310]),
  column('rates', 'price', ofUnit('USD/m^3'), inUnit('USD/cy', 12, 9, 15)),
  column('rates', 'L_r', ofUnit('m'), [4, 9, 2]),
  column('rates', 'gear', textType, ['tug', 'crane', 'barge']),
  column('rates', 'own', truthType, [false, true, false]),
  column('rates', 'free', date, [day(2026, 12, 24), day(2026, 12, 25), day(2027, 1, 1)], true),
  column('rates', 'warm', ofUnit('degC'), inUnit('degC', 20, 12, 31)),
  column('rates', 'z_r', ofUnit('ft MLLW'), inUnit('ft MLLW', 3, -6, 9)),
];

/** Every name random formulas may use. */
export const worldNames: readonly WorldName[] = [...scalars, ...columns];
/** The tables of the world with their numbers of rows. */
export const worldTables: ReadonlyMap<string, number> = new Map([
  ['layers', 4],
  ['rates', 3],
]);

/** The names as a formula of the sheet `w` sees them, in a column of `table` if there is one. */
export function worldScope(table?: string): Scope {
  const known = new Map<string, Resolution>();
  for (const each of worldNames) {
    const named = { id: idOf(each), type: each.type };
    if (each.table === undefined) known.set(each.name, { kind: 'cell', named });
    else {
      const of = `w.${each.table}`;
      known.set(`${each.table}.${each.name}`, { kind: 'column', named, table: of });
      if (each.table === table) known.set(each.name, { kind: 'row', named, table: of });
    }
  }
  const names = [...known].map(([name, found]) => ({
    name,
    type: found.kind === 'table' ? plain : found.named.type,
  }));
  return {
    units,
    resolve: (name) => known.get(name),
    names: () => names,
    ...(table !== undefined && { table: `w.${table}` }),
  };
}

/** Gives an engine the values of the world. */
export function fillWorld(engine: Engine): void {
  for (const [table, rows] of worldTables) engine.setTableLength(`w.${table}`, rows);
  for (const each of worldNames) {
    if (each.table === undefined) {
      const [value] = each.values;
      if (typeof value === 'string') engine.setInputText(idOf(each), value);
      else if (value !== undefined) engine.setInput(idOf(each), value);
      continue;
    }
    const codes = each.values.map((value) =>
      typeof value === 'string' ? engine.texts.codeOf(value) : Number(value),
    );
    const { kind } = each.type;
    const holds = kind === 'text' || kind === 'truth' ? kind : 'number';
    engine.setColumn(idOf(each), `w.${each.table}`, Float64Array.from(codes), { holds });
  }
}

function idOf({ name, table }: WorldName): string {
  return table === undefined ? `w.${name}` : `w.${table}.${name}`;
}
