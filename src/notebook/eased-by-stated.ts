import { inCell, problem } from '../diagnostics/index.ts';
import type { Engine } from '../engine/index.ts';
import { areEqual, writeQuantity } from '../units/index.ts';
import type { FormulaColumnItem, FormulaItem, Item, Model } from './model.ts';
import { readResult, readVerdict, unitOf } from './read-result.ts';
import { marksFrom } from './resting-on.ts';
import type { EasedRemark } from './result.ts';
import { computedId, SIDES, type Side, type Stated, sideId } from './stated.ts';
import { whereStatedId } from './stated-column.ts';

/** A stated value within so much of the computed one is what rounding, or another table, makes of it. */
const NEAR = 1.2;
/** A check is eased by what takes more than this part of its utilisation away. */
const NOTICED = 0.01;

const NOWHERE = { from: 0, to: 0 };

type System = 'SI' | 'US';

/** A value that stands well apart from the computed one, and how to compute without it for a moment. */
interface Apart {
  readonly id: string;
  /** Of a side of a check, that check: nothing else rests on it. */
  readonly side?: Side;
  readonly words: { readonly stated: string; readonly computed: string };
  readonly leaveOut: (engine: Engine) => void;
  readonly putBack: (engine: Engine) => void;
}

/**
 * Says of each check which stated values ease it: they stand more than a fifth apart from the computed ones, and with these the
 * check would be used more, fail, or have no value. For each of them the engine computes what rests on it twice, with the
 * computed value and again with the stated one, in one step; between the steps it holds what it held before.
 */
export function* easedByStated(
  model: Model,
  engine: Engine,
  system: System,
): Generator<undefined, ReadonlyMap<string, EasedRemark>> {
  const candidates = [...model.items.values()].flatMap((item) => apartIn(item, model, engine, system));
  const found = new Map<string, Apart[]>();
  if (candidates.length === 0) return new Map();
  const marks = marksFrom([...new Set(candidates.map(({ id }) => id))], model);
  const checks = [...model.items.values()].filter(isCheck);
  for (const candidate of candidates) {
    const resting = checks.filter((check) =>
      candidate.side
        ? check.id === candidate.id
        : check.id !== candidate.id && marks.get(check.id)?.has(candidate.id),
    );
    const before = resting.map((check) => standingOf(check, model, engine, system));
    const without = computeWithout(candidate, engine, () =>
      resting.map((check) => standingOf(check, model, engine, system)),
    );
    for (const [at, check] of resting.entries()) {
      if (!isEased(before[at], without[at])) continue;
      const known = found.get(check.id);
      if (known) known.push(candidate);
      else found.set(check.id, [candidate]);
    }
    yield;
  }
  return new Map(checks.flatMap((check) => remarkOf(check, found.get(check.id) ?? [])));
}

function isCheck(item: Item): item is FormulaItem {
  return item.kind === 'formula' && item.row.kind === 'check';
}

/** What is read while a stated value is left out. */
function computeWithout<T>(candidate: Apart, engine: Engine, read: () => T): T {
  try {
    candidate.leaveOut(engine);
    engine.recalculate();
    return read();
  } finally {
    candidate.putBack(engine);
    engine.recalculate();
  }
}

/** How a check stands: idle where it does not apply, nothing where it has no value. */
type Standing = 'idle' | undefined | { readonly holds: boolean; readonly utilisation?: number };

function standingOf(check: FormulaItem, model: Model, engine: Engine, system: System): Standing {
  const read = readResult(check, model, engine, system);
  if (read.status === 'inapplicable') return 'idle';
  if (read.status !== 'ok' || read.value.kind !== 'truth') return undefined;
  return readVerdict(check, read.value.truth, model, engine, system);
}

function isEased(before: Standing, without: Standing): boolean {
  if (before === undefined || before === 'idle' || without === 'idle') return false;
  if (without === undefined) return true;
  if (before.holds !== without.holds) return before.holds;
  const [now, then] = [before.utilisation, without.utilisation];
  return now !== undefined && then !== undefined && then * (1 - NOTICED) > now;
}

function remarkOf(
  { id, sheet }: FormulaItem,
  by: readonly Apart[],
): readonly (readonly [string, EasedRemark])[] {
  const [first] = by;
  if (!first) return [];
  const facts = { by: by.map((one) => one.side ?? one.id), sheet, ...first.words };
  return [[id, { ...inCell(problem('eased-by-stated', NOWHERE, facts), id), data: facts }]];
}

function apartIn(item: Item, model: Model, engine: Engine, system: System): readonly Apart[] {
  if (item.kind === 'formula column')
    return item.cells ? apartInColumn(item, item.cells, model, engine, system) : [];
  if (item.kind !== 'formula') return [];
  const of = (id: string, stated: Stated | undefined, side?: Side): readonly Apart[] => {
    const { entry } = stated ?? {};
    if (entry?.kind !== 'number') return [];
    const unit = side ? entry.unit : unitOf(item, model, system);
    if (unit.point !== undefined) return [];
    const read = engine.read(computedId(id));
    const computed = read.status === 'ok' && typeof read.value === 'number' ? read.value : undefined;
    if (computed !== undefined && isNear(entry.si, computed)) return [];
    const words = {
      stated: writeQuantity(entry.si, unit),
      computed: computed === undefined ? '' : writeQuantity(computed, unit),
    };
    return [
      {
        id: item.id,
        ...(side && { side }),
        words,
        leaveOut: (one) => one.setInput(id, computed ?? { missing: true }),
        putBack: (one) => one.setInput(id, entry.si),
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
  const computed = engine.readColumn(computedId(id));
  if (item.type.kind !== 'number' || computed.problem) return [];
  const apart = [...cells].flatMap(([row, { entry }]) => {
    if (entry?.kind !== 'number') return [];
    const read = computed.at(row);
    const below = read.status === 'ok' && typeof read.value === 'number' ? read.value : undefined;
    if (below !== undefined && isNear(entry.si, below)) return [];
    return [{ row, stated: entry.si, below }];
  });
  const [first] = apart;
  if (!first) return [];
  const flags = (rows: readonly number[]): Float64Array => {
    const where = new Float64Array(length);
    for (const row of rows) where[row] = 1;
    return where;
  };
  const set = (one: Engine, rows: readonly number[]): void =>
    one.setColumn(whereStatedId(id), table, flags(rows), { holds: 'truth' });
  const leftOut = new Set(apart.map(({ row }) => row));
  return [
    {
      id,
      words: {
        stated: writeQuantity(first.stated, unit),
        computed: first.below === undefined ? '' : writeQuantity(first.below, unit),
      },
      leaveOut: (one) =>
        set(
          one,
          [...cells.keys()].filter((row) => !leftOut.has(row)),
        ),
      putBack: (one) => set(one, [...cells.keys()]),
    },
  ];
}

function isNear(stated: number, computed: number): boolean {
  if (areEqual(stated, computed)) return true;
  if (stated * computed <= 0) return false;
  const ratio = Math.abs(stated / computed);
  return ratio <= NEAR && ratio >= 1 / NEAR;
}
