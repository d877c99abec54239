import type { Engine } from '../engine/index.ts';
import { areEqual, type Unit, writeQuantity } from '../units/index.ts';
import type { FormulaColumnItem, Item, Model } from './model.ts';
import { unitOf } from './read-result.ts';
import { computedId, SIDES, type Side, type Stated, sideId } from './stated.ts';
import { whereStatedId } from './stated-column.ts';

/**
 * A stated value up to this many times the computed one, or as many times below it, is what rounding, or another table, makes
 * of it: a fifth. Beyond that it stands *far* from the computed one.
 */
const FAR = 1.2;

type System = 'SI' | 'US';
type Read = number | string | boolean;

/** A value that stands apart from the computed one, and how to compute without it for a moment. */
export interface Apart {
  readonly id: string;
  /** Of a side of a check, that check: nothing else rests on it. */
  readonly side?: Side;
  /** Whether it is further from the computed one than `FAR`; a text or a level has no size to be far by. */
  readonly isFar: boolean;
  readonly words: { readonly stated: string; readonly computed: string };
  readonly leaveOut: (engine: Engine) => void;
  readonly putBack: (engine: Engine) => void;
}

/** What is stated in a line, or on the sides of a check, and is not what is computed there; the cells of a column are one. */
export function statedApart(item: Item, model: Model, engine: Engine, system: System): readonly Apart[] {
  if (item.kind === 'formula column')
    return item.cells ? apartInColumn(item, item.cells, model, engine, system) : [];
  if (item.kind !== 'formula') return [];
  const of = (id: string, stated: Stated | undefined, side?: Side): readonly Apart[] => {
    const { entry } = stated ?? {};
    if (entry === undefined) return [];
    const unit = side && 'unit' in entry ? entry.unit : unitOf(item, model, system);
    const given = statedValueOf(entry);
    const read = engine.read(computedId(id));
    const computed = read.status === 'ok' ? read.value : undefined;
    if (isSame(given, computed)) return [];
    return [
      {
        id: item.id,
        ...(side && { side }),
        isFar: isFar(given, computed, unit),
        words: wordsOf(given, computed, unit),
        leaveOut: (one) => setValue(one, id, computed),
        putBack: (one) => setValue(one, id, given),
      },
    ];
  };
  if (item.stated) return of(item.id, item.stated);
  return SIDES.flatMap((side) => of(sideId(item.id, side), item.sides?.[side], side));
}

/** All the stated cells of a column that stand apart, together. */
function apartInColumn(
  item: FormulaColumnItem,
  cells: ReadonlyMap<number, Stated>,
  model: Model,
  engine: Engine,
  system: System,
): readonly Apart[] {
  const { id, table } = item;
  const unit = unitOf(item, model, system);
  const length = model.tables.get(table)?.part.length ?? 0;
  const column = engine.readColumn(computedId(id));
  if (column.problem) return [];
  const apart = [...cells].flatMap(([row, { entry }]) => {
    if (entry === undefined) return [];
    const given = statedValueOf(entry);
    const read = column.at(row);
    const computed = read.status === 'ok' ? read.value : undefined;
    if (isSame(given, computed)) return [];
    return [{ row, given, computed, isFar: isFar(given, computed, unit) }];
  });
  const first = apart.find((one) => one.isFar) ?? apart[0];
  if (!first) return [];
  const set = (one: Engine, rows: readonly number[]): void => {
    const where = new Float64Array(length);
    for (const row of rows) where[row] = 1;
    one.setColumn(whereStatedId(id), table, where, { holds: 'truth' });
  };
  const leftOut = new Set(apart.map(({ row }) => row));
  const left = [...cells.keys()].filter((row) => !leftOut.has(row));
  return [
    {
      id,
      isFar: first.isFar,
      words: wordsOf(first.given, first.computed, unit),
      leaveOut: (one) => set(one, left),
      putBack: (one) => set(one, [...cells.keys()]),
    },
  ];
}

function statedValueOf(entry: NonNullable<Stated['entry']>): Read {
  if ('si' in entry) return entry.si;
  return entry.kind === 'text' ? entry.text : entry.value;
}

function setValue(engine: Engine, id: string, value: Read | undefined): void {
  if (typeof value === 'string') engine.setInputText(id, value);
  else engine.setInput(id, value ?? { missing: true });
}

function wordsOf(given: Read, computed: Read | undefined, unit: Unit): Apart['words'] {
  const words = (value: Read): string =>
    typeof value === 'number'
      ? writeQuantity(value, unit)
      : typeof value === 'string'
        ? value
        : String(value).toUpperCase();
  return { stated: words(given), computed: computed === undefined ? '' : words(computed) };
}

function isSame(given: Read, computed: Read | undefined): boolean {
  return typeof given === 'number' && typeof computed === 'number'
    ? areEqual(given, computed)
    : given === computed;
}

function isFar(given: Read, computed: Read | undefined, unit: Unit): boolean {
  if (typeof given !== 'number' || unit.point !== undefined) return false;
  if (typeof computed !== 'number' || given * computed <= 0) return true;
  const ratio = Math.abs(given / computed);
  return ratio > FAR || ratio < 1 / FAR;
}
