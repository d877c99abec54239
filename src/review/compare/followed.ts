import { partsOf, type Typed } from '../../language/index.ts';
import { methodInForce, type Notebook, type Result } from '../../notebook/index.ts';
import { readColumn, sameInRow } from './column-values.ts';
import type { Difference, RowValues, Size, Subject } from './difference.ts';
import type { TablePair } from './edited-rows.ts';
import { type LocatedColumn, type LocatedLine, subjectOf } from './located.ts';
import type { Pair } from './pairs.ts';
import { checkStanding, sameResult, sameStanding, sizeOfValues, valueIn } from './values.ts';

type Causeless<One> = One extends { readonly causes: unknown } ? Omit<One, 'causes'> : never;

/** What followed from other changes, before its causes are known. */
export type Followed = Causeless<Difference>;

/** What followed in a line or column, and whether it, or any of its rows, comes to something else. */
export interface FollowedHere {
  readonly told: readonly Followed[];
  readonly changed: boolean;
  /** Whether another method is in force. */
  readonly byOtherMethod: boolean;
}

/** What a line comes to in both books. `isEdited`: a person entered another value, which is told already. */
export function followedInLine(
  pair: Pair<LocatedLine>,
  notebooks: Pair<Notebook>,
  isEdited: boolean,
): FollowedHere {
  const subject = subjectOf(pair);
  const method = otherMethod(subject, pair, notebooks);
  const [from, to] = [notebooks.before.result(pair.before.id), notebooks.after.result(pair.after.id)];
  const told = (found: Followed | undefined, changed: boolean): FollowedHere => ({
    told: [...(method ? [method] : []), ...(found ? [found] : [])],
    changed,
    byOtherMethod: method !== undefined,
  });
  if (pair.before.row.kind === 'check' && pair.after.row.kind === 'check') {
    const [a, b] = [
      checkStanding(notebooks.before, pair.before.id),
      checkStanding(notebooks.after, pair.after.id),
    ];
    const same = sameStanding(a, b) && sameResult(from, to);
    return told(same ? undefined : { kind: 'check', subject, from: a, to: b }, !same);
  }
  if (sameResult(from, to)) return told(undefined, false);
  if (isEdited) return told(undefined, true);
  return told({ kind: 'result', subject, from, to, ...sized(from, to, notebooks) }, true);
}

function sized(from: Result, to: Result, notebooks: Pair<Notebook>): { readonly size?: Size } {
  const size = sizeOfValues(valueIn(from), valueIn(to), notebooks.after.model.registry);
  return size ? { size } : {};
}

/** That another of the methods of a line or column is in force, told by what each is for. */
function otherMethod(
  subject: Subject,
  { before, after }: Pair<{ readonly id: string }>,
  notebooks: Pair<Notebook>,
): Followed | undefined {
  const [a, b] = [methodInForce(notebooks.before, before.id), methodInForce(notebooks.after, after.id)];
  if (a?.method.id === b?.method.id) return undefined;
  return {
    kind: 'method',
    subject,
    ...(a && { from: a.words }),
    ...(b && { to: b.words }),
  };
}

/** What the rows of a column come to in both books; of an entered column only whether they are others. */
export function followedInColumn(
  table: TablePair,
  pair: Pair<LocatedColumn>,
  notebooks: Pair<Notebook>,
): FollowedHere {
  const [old, next] = [
    readColumn(notebooks.before, pair.before.id),
    readColumn(notebooks.after, pair.after.id),
  ];
  const { rows } = table;
  const others = rows.both.filter((row) => !sameInRow(old, row.before, next, row.after));
  const isGiven = pair.before.column.kind === 'given' && pair.after.column.kind === 'given';
  const otherLength = table.isMade && old.length !== next.length;
  const subject = subjectOf(pair);
  const method = otherMethod(subject, pair, notebooks);
  const told = (found: readonly Followed[]): FollowedHere => ({
    told: [...(method ? [method] : []), ...found],
    changed: others.length > 0 || otherLength,
    byOtherMethod: method !== undefined,
  });
  if (isGiven || (others.length === 0 && !otherLength)) return told([]);
  const { registry } = notebooks.after.model;
  let largest: (RowValues & { readonly size: Size }) | undefined;
  const values = others.map((row): RowValues => {
    const [from, to] = [old.valueAt(row.before), next.valueAt(row.after)];
    const rowName = rows.nameAfter(row.after);
    const one = {
      ...row,
      ...(rowName !== undefined && { rowName }),
      ...(from && { from }),
      ...(to && { to }),
    };
    const size = sizeOfValues(from, to, registry);
    if (size && isLarger(size, largest?.size)) largest = { ...one, size };
    return one;
  });
  const lengths = otherLength ? { lengths: { before: old.length, after: next.length } } : {};
  return told([{ kind: 'values', subject, ...lengths, rows: values, ...(largest && { largest }) }]);
}

function isLarger(a: Size, b: Size | undefined): boolean {
  if (b === undefined) return true;
  const part = ({ relative = Number.POSITIVE_INFINITY }: Size): number => Math.abs(relative);
  return part(a) > part(b) || (part(a) === part(b) && Math.abs(a.absolute.si) > Math.abs(b.absolute.si));
}

/** What a column comes to in all, where some formula sums it. */
export function otherTotal(pair: Pair<LocatedColumn>, notebooks: Pair<Notebook>): Followed | undefined {
  const [from, to] = [totalOf(notebooks.before, pair.before.id), totalOf(notebooks.after, pair.after.id)];
  if (sameResult(from, to)) return undefined;
  return { kind: 'total', subject: subjectOf(pair), from, to, ...sized(from, to, notebooks) };
}

function totalOf(notebook: Notebook, id: string): Result {
  const column = readColumn(notebook, id);
  if (column.holds !== 'number') return { status: 'missing' };
  const si = column.numbers.reduce((sum, one) => sum + one, 0);
  return Number.isNaN(si)
    ? { status: 'missing' }
    : { status: 'ok', value: { kind: 'number', si, unit: column.unit } };
}

/** The ids of the columns that a formula of a book sums as they stand. */
export function summedColumns({ model }: Notebook): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (node: Typed): void => {
    if (node.kind === 'call' && node.fn.name === 'SUM')
      for (const arg of node.args) if (arg.kind === 'column') found.add(arg.id);
    for (const part of partsOf(node)) visit(part);
  };
  for (const item of model.items.values()) if ('checked' in item) visit(item.checked.typed);
  return found;
}
