import { inCell, problem } from '../diagnostics/index.ts';
import type { Engine } from '../engine/index.ts';
import type { FormulaItem, Item, Model } from './model.ts';
import { readResult, readVerdict } from './read-result.ts';
import { marksFrom } from './resting-on.ts';
import type { EasedRemark } from './result.ts';
import { type Apart, statedApart } from './stated-apart.ts';

/** A check is eased by what takes more than this part of its utilisation away. */
const NOTICED = 0.01;

const NOWHERE = { from: 0, to: 0 };

type System = 'SI' | 'US';

/** How a check stands: idle where it does not apply, nothing where it has no value. */
type Standing = 'idle' | undefined | { readonly holds: boolean; readonly utilisation?: number };

/** What a check owes to the values that are stated: `holds` and would not, is used less, or nothing that counts. */
type Owes = 'holds' | 'less used' | 'slightly less used' | undefined;

/** A check with the stated values it rests on, and those of them without which it stands worse. */
interface Leaning {
  readonly check: FormulaItem;
  readonly on: Apart[];
  readonly worseWithout: Apart[];
  readonly eased: Apart[];
  /** Without any one of these it does not hold. */
  readonly onlyBy: Apart[];
}

/**
 * Says of each check which stated values ease it. They stand far from the computed ones, and with these the check would be
 * used more; or they stand anywhere else than these, and with these the check, which holds, would fail or have no value. For
 * each of them the engine computes what rests on it twice, with the computed value and again with the stated one, in one step;
 * between the steps it holds what it held before. Those that ease a check only together are left out together.
 */
export function* easedByStated(
  model: Model,
  engine: Engine,
  system: System,
): Generator<undefined, ReadonlyMap<string, EasedRemark>> {
  const candidates = [...model.items.values()].flatMap((item) => statedApart(item, model, engine, system));
  if (candidates.length === 0) return new Map();
  const marks = marksFrom([...new Set(candidates.map(({ id }) => id))], model);
  const leanings = [...model.items.values()].filter(isCheck).map((check): Leaning => {
    const on = candidates.filter(({ id, side }) =>
      side ? check.id === id : check.id !== id && marks.get(check.id)?.has(id) === true,
    );
    return { check, on, worseWithout: [], eased: [], onlyBy: [] };
  });
  const judge = (left: readonly Apart[], of: readonly Leaning[]): readonly Owes[] => {
    const standings = () => of.map(({ check }) => standingOf(check, model, engine, system));
    const before = standings();
    const without = computeWithout(left, engine, standings);
    return of.map((_, at) => owed(before[at], without[at]));
  };
  for (const candidate of candidates) {
    const resting = leanings.filter(({ on }) => on.includes(candidate));
    for (const [at, owes] of judge([candidate], resting).entries()) {
      const { worseWithout, eased, onlyBy } = resting[at] as Leaning;
      if (owes) worseWithout.push(candidate);
      if (owes === 'holds') onlyBy.push(candidate);
      if (owes === 'holds' || (owes === 'less used' && candidate.isFar)) eased.push(candidate);
    }
    yield;
  }
  const jointly = function* (left: readonly Apart[], of: readonly Leaning[]): Generator<undefined> {
    for (const [at, owes] of judge(left, of).entries()) {
      const { on, eased, onlyBy } = of[at] as Leaning;
      const its = left.filter((one) => on.includes(one));
      if (owes === 'holds') onlyBy.push(...its);
      else if (owes === 'less used' && eased.length === 0 && its.every(({ isFar }) => isFar))
        eased.push(...its);
    }
    yield;
  };
  for (const [left, of] of groupsOf(leanings)) yield* jointly(left, of);
  // What a check does not rest on changes nothing for it: all are left out at once.
  const open = leanings.filter(({ on, worseWithout, onlyBy }) => {
    return onlyBy.length === 0 && on.length > 1 && on.length > worseWithout.length;
  });
  if (open.length > 0) yield* jointly(candidates, open);
  return new Map(leanings.flatMap(remarkOf));
}

function isCheck(item: Item): item is FormulaItem {
  return item.kind === 'formula' && item.row.kind === 'check';
}

/** Those that no single stated value makes hold, by the two or more without each of which they stand worse. */
function groupsOf(leanings: readonly Leaning[]): Iterable<readonly [readonly Apart[], readonly Leaning[]]> {
  const groups = new Map<string, readonly [readonly Apart[], Leaning[]]>();
  for (const leaning of leanings) {
    const { worseWithout, onlyBy } = leaning;
    if (worseWithout.length < 2 || onlyBy.length > 0) continue;
    const key = JSON.stringify(worseWithout.map(({ id, side }) => [id, side]));
    const known = groups.get(key);
    if (known) known[1].push(leaning);
    else groups.set(key, [worseWithout, [leaning]]);
  }
  return groups.values();
}

/** What is read while stated values are left out. */
function computeWithout<T>(left: readonly Apart[], engine: Engine, read: () => T): T {
  try {
    for (const { leaveOut } of left) leaveOut(engine);
    engine.recalculate();
    return read();
  } finally {
    for (const { putBack } of left) putBack(engine);
    engine.recalculate();
  }
}

function standingOf(check: FormulaItem, model: Model, engine: Engine, system: System): Standing {
  const read = readResult(check, model, engine, system);
  if (read.status === 'inapplicable') return 'idle';
  if (read.status !== 'ok' || read.value.kind !== 'truth') return undefined;
  return readVerdict(check, read.value.truth, model, engine, system);
}

function owed(before: Standing, without: Standing): Owes {
  if (before === undefined || before === 'idle' || without === 'idle') return undefined;
  if (before.holds && without?.holds !== true) return 'holds';
  if (without === undefined) return 'less used';
  if (before.holds !== without.holds) return undefined;
  const [now, then] = [before.utilisation, without.utilisation];
  if (now === undefined || then === undefined || then <= now) return undefined;
  return then * (1 - NOTICED) > now ? 'less used' : 'slightly less used';
}

function remarkOf({
  check: { id, sheet },
  eased,
  onlyBy,
}: Leaning): readonly (readonly [string, EasedRemark])[] {
  const isOnly = onlyBy.length > 0;
  const told = isOnly ? onlyBy : eased;
  const [first] = told;
  if (!first) return [];
  const facts = { by: told.map((one) => one.side ?? one.id), only: isOnly, sheet, ...first.words };
  return [[id, { ...inCell(problem('eased-by-stated', NOWHERE, facts), id), data: facts }]];
}
