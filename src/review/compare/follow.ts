import type { Notebook } from '../../notebook/index.ts';
import type { Causable } from './causes.ts';
import type { Cause, Subject } from './difference.ts';
import { hasOtherRows, type TablePair } from './edited-rows.ts';
import {
  type Followed,
  type FollowedHere,
  followedInColumn,
  followedInLine,
  otherTotal,
  summedColumns,
} from './followed.ts';
import { columnsOf, type LocatedColumn, type LocatedLine, partsOf, placeOf, subjectOf } from './located.ts';
import type { Matching } from './match-books.ts';
import { causeOf, isRecomputed, type OwnChange, type OwnChanges } from './own-changes.ts';
import type { Pair } from './pairs.ts';

/** What followed, and all that causes can be looked for in, both in the order of the new book. */
export interface Following {
  readonly followed: readonly Followed[];
  readonly things: readonly Causable[];
}

/** What followed in all lines, tables and columns that are in both books. */
export function follow(
  matching: Matching,
  tables: readonly TablePair[],
  notebooks: Pair<Notebook>,
  own: OwnChanges,
): Following {
  const lines = new Map(matching.lines.both.map((pair) => [pair.after.row, pair]));
  const tableOf = new Map(tables.map((table) => [table.tables.after, table]));
  const summed = {
    before: summedColumns(notebooks.before),
    after: summedColumns(notebooks.after),
  };
  const found = partsOf(notebooks.after.book).flatMap(({ part }): readonly Following[] => {
    if (part.kind === 'rows')
      return part.rows.flatMap((row) => {
        const pair = lines.get(row);
        return pair ? [followLine(pair, notebooks, own.get(pair.after.id))] : [];
      });
    const table = part.kind === 'table' ? tableOf.get(part) : undefined;
    if (!table) return [];
    return [
      { followed: [], things: [tableThing(table, own)] },
      ...table.columns.map((pair) => followColumn(table, pair, notebooks, own.get(pair.after.id), summed)),
    ];
  });
  return {
    followed: found.flatMap(({ followed }) => followed),
    things: [...found.flatMap(({ things }) => things), ...cameAndWent(matching)],
  };
}

function followLine(
  pair: Pair<LocatedLine>,
  notebooks: Pair<Notebook>,
  change: OwnChange | undefined,
): Following {
  const isInput = [pair.before, pair.after].every(({ row }) => row.kind === 'given' || row.kind === 'choice');
  const isEntered = isInput && (change?.by.has('entry') || change?.by.has('unit')) === true;
  const found = followedInLine(pair, notebooks, isEntered);
  const hasValues =
    !isInput &&
    notebooks.before.result(pair.before.id).status === 'ok' &&
    notebooks.after.result(pair.after.id).status === 'ok';
  return { followed: found.told, things: [thingOf(pair, found, change, hasValues)] };
}

function followColumn(
  table: TablePair,
  pair: Pair<LocatedColumn>,
  notebooks: Pair<Notebook>,
  change: OwnChange | undefined,
  summed: Pair<ReadonlySet<string>>,
): Following {
  const found = followedInColumn(table, pair, notebooks);
  const isSummed = summed.before.has(pair.before.id) || summed.after.has(pair.after.id);
  const total = isSummed ? otherTotal(pair, notebooks) : undefined;
  const changed = found.changed || hasOtherRows(table);
  const isCalculated = pair.before.column.kind !== 'given' && pair.after.column.kind !== 'given';
  return {
    followed: [...found.told, ...(total ? [total] : [])],
    things: [thingOf(pair, { ...found, changed }, change, isCalculated)],
  };
}

function thingOf(
  pair: Pair<LocatedLine> | Pair<LocatedColumn>,
  { changed, byOtherMethod }: FollowedHere,
  change: OwnChange | undefined,
  hasValues: boolean,
): Causable {
  const own = change && causeOf(subjectOf(pair), change, hasValues);
  return {
    before: pair.before.id,
    after: pair.after.id,
    changed,
    ...(own && { own }),
    recomputed: byOtherMethod || (change !== undefined && isRecomputed(change)),
  };
}

function tableThing(table: TablePair, changes: OwnChanges): Causable {
  const { before, after } = { before: placeOf(table.before).id, after: placeOf(table.after).id };
  const change = changes.get(after);
  const own = change && causeOf(subjectOf(table), change, false);
  return { before, after, changed: hasOtherRows(table), ...(own && { own }), recomputed: false };
}

/** Lines and columns of one book only: what was computed from them is computed from something else now. */
function cameAndWent({ parts, lines, columns }: Matching): readonly Causable[] {
  const thing = (subject: Subject, by: 'added' | 'removed'): Causable => {
    const own: Cause = { subject, by: [by] };
    const [before, after] = [subject.before?.id, subject.after?.id];
    return {
      ...(before !== undefined && { before }),
      ...(after !== undefined && { after }),
      changed: true,
      own,
      recomputed: false,
    };
  };
  const added = [...lines.added, ...columns.added, ...parts.added.flatMap(columnsOf)];
  const removed = [...lines.removed, ...columns.removed, ...parts.removed.flatMap(columnsOf)];
  return [
    ...added.map((after) => thing(subjectOf({ after }), 'added')),
    ...removed.map((before) => thing(subjectOf({ before }), 'removed')),
  ];
}
