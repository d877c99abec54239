import {
  type CallNode,
  type CallSyntax,
  findFunction,
  plainType,
  type Syntax,
  type Typed,
  type WorkedForm,
} from '../../language/index.ts';
import type { Notebook, PartPlace, Value } from '../../notebook/index.ts';
import { areEqual } from '../../units/index.ts';
import { binary, groupSyntax } from './chain.ts';
import { tableAsWritten, tableOf } from './worked-aggregates.ts';
import type { Working } from './working.ts';

type Work = (typed: CallNode, node: CallSyntax, place: PartPlace, working: Working) => Syntax | undefined;

/** Functions that take one row, or what lies between two: what was sought and where it was found. */
const lookups: Readonly<Partial<Record<WorkedForm['as'], Work>>> = {
  row: (typed, node, place, working) => {
    const [column, row] = typed.args;
    const at = row && plainOf(row, place, working.notebook);
    if (column && at !== undefined)
      working.note(`INDEX takes row ${at} of ${tableName(column, place)}`, place);
    return found(typed, place, working, node);
  },
  match: (typed, node, place, working) => {
    noteMatch(typed, place, working);
    return found(typed, place, working, node);
  },
  line: workInterpolation,
  grid: workGrid,
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
  const row = rowMatched(key, keys, kind, place, working.notebook);
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
  notebook: Notebook,
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
  return plainOf(call, place, notebook);
}

function plainOf(part: Typed, place: PartPlace, { parts }: Notebook): number | undefined {
  const value = parts.valueOf(part, place);
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
  const below = rowMatched(x, xs, 'at or below', place, working.notebook);
  const exact = rowMatched(x, xs, 'exact', place, working.notebook);
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
  const rise = groupSyntax(binary(y2, '-', y1));
  const covered = groupSyntax(binary(working.put(sought), '-', x1));
  return binary(y1, '+', binary(binary(rise, '*', covered), '/', groupSyntax(binary(x2, '-', x1))));

  function pair(row: number): string {
    const written = [keys?.at(row - 1), values?.at(row - 1)].flatMap((value: Value | undefined) =>
      value ? [working.write(value)] : [],
    );
    return ` (${written.join('; ')})`;
  }
}

/**
 * Between four points of a grid: the straight lines along the first argument, worked in notes, and between what they come
 * to the one along the second, written out. On a line of the grid, and held beyond its edge, one of the two falls away.
 */
function workGrid(typed: CallNode, node: CallSyntax, place: PartPlace, working: Working): Syntax {
  const [x, y, xs, ys, zs] = typed.args;
  const { parts } = working.notebook;
  const [u, v] = [x && parts.valueOf(x, place), y && parts.valueOf(y, place)];
  const [us, vs, ws] = [xs, ys, zs].map((one) => one && parts.elementsOf(one, place));
  const value = parts.valueOf(typed, place);
  if (!xs || !us || !vs || !ws || u?.kind !== 'number' || v?.kind !== 'number' || value?.kind !== 'number')
    return found(typed, place, working, node);
  const [across, along] = [nearestOf(u.si, us.values), nearestOf(v.si, vs.values)];
  const at = (first: number, second: number): number =>
    us.values.findIndex((one, row) => one === first && vs.values[row] === second);
  const quantity = (si: number, like: Value | undefined): Value =>
    like?.kind === 'number' ? { ...like, si } : { ...value, si };
  /** What the line along the first argument comes to at one of the second; noted where it is worked. */
  const alongFirst = (second: number): Value | undefined => {
    const [low, high] = [at(across.low, second), at(across.high, second)];
    const [z1, z2] = [ws.at(low), ws.at(high)];
    if (low < 0 || high < 0 || z1?.kind !== 'number' || z2?.kind !== 'number') return undefined;
    const where = `${working.write(quantity(second, vs.at(low)))}`;
    if (low === high) {
      working.note(
        `${tableName(xs, place)} at ${working.write(quantity(across.low, us.at(low)))} and ${where}: ${working.write(z1)}`,
        place,
      );
      return z1;
    }
    const share = (u.si - across.low) / (across.high - across.low);
    const comes = quantity(z1.si + (z2.si - z1.si) * share, z1);
    const [x1, x2] = [us.at(low), us.at(high)].map((one) => (one ? working.write(one) : ''));
    working.note(
      `${tableName(xs, place)} at ${where}: ${working.write(z1)} + (${working.write(z2)} − ${working.write(z1)}) (${working.write(u)} − ${x1}) / (${x2} − ${x1}) = ${working.write(comes)}`,
      place,
    );
    return comes;
  };
  const [first, second] = [
    alongFirst(along.low),
    along.high === along.low ? undefined : alongFirst(along.high),
  ];
  if (!first || !second) return found(typed, place, working, node);
  const [y1, y2] = [along.low, along.high].map((si) => working.put(quantity(si, v)));
  if (!y1 || !y2) return found(typed, place, working, node);
  const rise = groupSyntax(binary(working.put(second), '-', working.put(first)));
  const covered = groupSyntax(binary(working.put(v), '-', y1));
  return binary(
    working.put(first),
    '+',
    binary(binary(rise, '*', covered), '/', groupSyntax(binary(y2, '-', y1))),
  );
}

/** The nearest values that are not above and not below one; beyond the ends, and where it is among them, one alone. */
function nearestOf(sought: number, values: Float64Array): { readonly low: number; readonly high: number } {
  const same = values.find((value) => areEqual(value, sought));
  const [below, above] = [
    values.filter((value) => value <= sought),
    values.filter((value) => value >= sought),
  ];
  const low = same ?? (below.length > 0 ? Math.max(...below) : Math.min(...above));
  const high = same ?? (above.length > 0 ? Math.min(...above) : Math.max(...below));
  return { low, high };
}

/**
 * The row, from 0, that a call of a lookup takes in the tables of its columns, or the first of two that it goes between;
 * undefined for any other call, and where it finds none.
 */
export function rowTaken(call: CallNode, place: PartPlace, notebook: Notebook): number | undefined {
  const { worked } = call.fn;
  const [first, second] = call.args;
  if (!first || !second) return undefined;
  const [kind = 'exact'] = call.options;
  const row =
    worked?.as === 'row'
      ? rowAsked(first, second, place, notebook)
      : worked?.as === 'match'
        ? rowMatched(first, second, kind, place, notebook)
        : worked?.as === 'line'
          ? rowMatched(first, second, 'at or below', place, notebook)
          : undefined;
  return row === undefined ? undefined : row - 1;
}

/** The row, from 1, that a call asks a column for; undefined where the column has no such row, and the call no value. */
function rowAsked(column: Typed, row: Typed, place: PartPlace, notebook: Notebook): number | undefined {
  const asked = plainOf(row, place, notebook);
  const rows = notebook.rowsOf(tableOf(column) ?? '') ?? 0;
  return asked !== undefined && Number.isInteger(asked) && asked >= 1 && asked <= rows ? asked : undefined;
}

/** The table a column belongs to, as the sheet of a formula writes it. */
function tableName(column: Typed, place: PartPlace): string {
  return tableAsWritten(tableOf(column) ?? '', place);
}
