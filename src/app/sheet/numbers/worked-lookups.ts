import {
  type CallNode,
  type CallSyntax,
  findFunction,
  plainType,
  type Syntax,
  type Typed,
  type WorkedForm,
} from '../../../language/index.ts';
import type { PartPlace, Value } from '../../../notebook/index.ts';
import { binary, grouped } from './chain.ts';
import { tableAsWritten, tableOf } from './worked-aggregates.ts';
import type { Working } from './working.ts';

type Work = (typed: CallNode, node: CallSyntax, place: PartPlace, working: Working) => Syntax | undefined;

/** Functions that take one row, or what lies between two: what was sought and where it was found. */
const lookups: Readonly<Partial<Record<WorkedForm['as'], Work>>> = {
  row: (typed, node, place, working) => {
    const [column, row] = typed.args;
    const at = row && plainOf(row, place, working);
    if (column && at !== undefined)
      working.note(`INDEX takes row ${at} of ${tableName(column, place)}`, place);
    return found(typed, place, working, node);
  },
  match: (typed, node, place, working) => {
    noteMatch(typed, place, working);
    return found(typed, place, working, node);
  },
  line: workInterpolation,
  grid: (typed, node, place, working) => {
    const [x, y, xs, ys] = typed.args;
    if (x && y && xs && ys)
      working.note(
        `${tableName(xs, place)}: ${[bracketed(x, xs, place, working), bracketed(y, ys, place, working)].join(', ')}`,
        place,
      );
    return found(typed, place, working, node);
  },
};

/** A lookup as it is worked by hand; undefined for any other call. */
export function workLookup(
  typed: CallNode,
  node: CallSyntax,
  place: PartPlace,
  working: Working,
): Syntax | undefined {
  return typed.fn.worked && lookups[typed.fn.worked.as]?.(typed, node, place, working);
}

/** What a call comes to in its place; the call where it has no value, for that its columns say nothing. */
function found(typed: Typed, place: PartPlace, working: Working, node: Syntax): Syntax {
  const value = working.notebook.parts.valueOf(typed, place);
  return value ? working.put(value) : node;
}

/** Says which key was sought and in which row it was found. */
function noteMatch(typed: CallNode, place: PartPlace, working: Working): void {
  const [key, keys] = typed.args;
  if (!key || !keys) return;
  const { parts } = working.notebook;
  const [kind = 'exact'] = typed.options;
  const sought = parts.valueOf(key, place);
  const row = rowMatched(key, keys, kind, place, working);
  if (!sought || row === undefined) return;
  const there = parts.elementsOf(keys, place)?.at(row - 1);
  const near = kind.startsWith('at ') && there ? ` (${kind}: ${working.write(there)})` : '';
  working.note(`${working.write(sought)} found in row ${row} of ${tableName(keys, place)}${near}`, place);
}

/** The row, from 1, that the language's own MATCH gives. */
function rowMatched(
  key: Typed,
  keys: Typed,
  kind: string,
  place: PartPlace,
  working: Working,
): number | undefined {
  const fn = findFunction('MATCH');
  if (!fn) throw new Error('the function table has no MATCH');
  const { axes } = key.type;
  const { from, to } = keys;
  const call: CallNode = {
    kind: 'call',
    fn,
    type: { ...plainType, axes },
    from,
    to,
    args: [key, keys],
    options: [kind],
  };
  return plainOf(call, place, working);
}

function plainOf(part: Typed, place: PartPlace, working: Working): number | undefined {
  const value = working.notebook.parts.valueOf(part, place);
  return value?.kind === 'number' ? value.si : undefined;
}

/** A straight line between two rows, written out; at a row and beyond the ends that row's value. */
function workInterpolation(typed: CallNode, node: CallSyntax, place: PartPlace, working: Working): Syntax {
  const [x, xs, ys] = typed.args;
  const [written] = node.args;
  const sought = x && working.notebook.parts.valueOf(x, place);
  const keys = xs && working.notebook.parts.elementsOf(xs, place);
  const values = ys && working.notebook.parts.elementsOf(ys, place);
  if (!x || !xs || !sought || !keys || !values || !written) return found(typed, place, working, node);
  const table = tableName(xs, place);
  const below = rowMatched(x, xs, 'at or below', place, working);
  const exact = rowMatched(x, xs, 'exact', place, working);
  const last = keys.values.length;
  if (exact !== undefined || below === undefined || below === last) {
    const row = exact ?? below ?? 1;
    const held = exact === undefined ? 'held at' : 'at';
    working.note(`${working.write(sought)}: ${held} row ${row} of ${table}${pair(row)}`, place);
    return found(typed, place, working, node);
  }
  working.note(
    `${working.write(sought)} between row ${below}${pair(below)} and row ${below + 1}${pair(below + 1)} of ${table}`,
    place,
  );
  const at = (of: typeof keys, row: number): Syntax | undefined => {
    const value = of.at(row - 1);
    return value && working.put(value);
  };
  const [x1, x2, y1, y2] = [at(keys, below), at(keys, below + 1), at(values, below), at(values, below + 1)];
  if (!x1 || !x2 || !y1 || !y2) return found(typed, place, working, node);
  const rise = grouped(binary(y2, '-', y1));
  const covered = grouped(binary(working.put(sought), '-', x1));
  return binary(y1, '+', binary(binary(rise, '*', covered), '/', grouped(binary(x2, '-', x1))));

  function pair(row: number): string {
    const written = [keys?.at(row - 1), values?.at(row - 1)].flatMap((value: Value | undefined) =>
      value ? [working.write(value)] : [],
    );
    return ` (${written.join('; ')})`;
  }
}

/** A value sought between the nearest ones of a column that are not above and not below it. */
function bracketed(key: Typed, keys: Typed, place: PartPlace, working: Working): string {
  const sought = working.notebook.parts.valueOf(key, place);
  const all = working.notebook.parts.elementsOf(keys, place);
  if (sought?.kind !== 'number' || !all) return '';
  let [low, high] = [-1, -1];
  for (const [row, value] of all.values.entries()) {
    if (value <= sought.si && (low < 0 || value > (all.values[low] ?? 0))) low = row;
    if (value >= sought.si && (high < 0 || value < (all.values[high] ?? 0))) high = row;
  }
  const ends = [
    ...new Set([all.at(low), all.at(high)].flatMap((value) => (value ? [working.write(value)] : []))),
  ];
  return ends.length === 2
    ? `${working.write(sought)} between ${ends.join(' and ')}`
    : `${working.write(sought)} at ${ends.join('')}`;
}

/** The table a column belongs to, as the sheet of a formula writes it. */
function tableName(column: Typed, place: PartPlace): string {
  return tableAsWritten(tableOf(column) ?? '', place);
}
