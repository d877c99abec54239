import type { CallNode, CallSyntax, Syntax, Typed, WorkedForm } from '../../language/index.ts';
import { type PartPlace, rowsInWords } from '../../notebook/index.ts';
import { areEqual } from '../../units/index.ts';
import { chain } from './chain.ts';
import type { Working } from './working.ts';

/** So many terms are written. */
const FIRST_TERMS = 3;

/** So many rows that count are listed by their numbers. */
const MOST_LISTED = 40;

/** An aggregate with its first terms in place of whole columns, and how many more there are. */
export function workAggregate(
  typed: CallNode,
  node: CallSyntax,
  place: PartPlace,
  working: Working,
): Syntax | undefined {
  const { evaluate, worked: form = { as: 'list' } } = typed.fn;
  const value = working.notebook.parts.valueOf(typed, place);
  const isConditional = evaluate.kind === 'gather' && evaluate.chosen !== undefined;
  const chosen = isConditional ? rowsChosen(node, place, working) : undefined;
  if (isConditional && !chosen) return undefined;
  if (chosen) working.note(chosenWords(node, chosen, place), place);
  if (form.as === 'value') return value && working.put(value);
  const args = chosen ? node.args.slice(1) : node.args;
  const terms: Syntax[] = [];
  for (const arg of args) {
    const own = termsOf(arg, chosen?.rows, form, place, working);
    if (!own) return undefined;
    terms.push(...own);
  }
  // Nothing adds to nothing, and of nothing there is no greatest.
  if (terms.length === 0) return value && working.put(value);
  if (form.as === 'sum') return chain(terms, '+');
  return { ...node, name: form.name ?? node.name, args: terms };
}

interface Chosen {
  readonly rows: readonly number[];
  readonly of: number;
  readonly table: string;
}

/** The rows in which the condition of a call holds. */
function rowsChosen(
  { args: [condition] }: CallSyntax,
  place: PartPlace,
  working: Working,
): Chosen | undefined {
  const typed = condition && working.typedOf(condition);
  const table = typed && tableOf(typed);
  const holds = table === undefined ? undefined : working.notebook.parts.elementsOf(typed as Typed, place);
  if (!holds || table === undefined) return undefined;
  const rows = [...holds.values.keys()].filter((row) => holds.values[row] === 1);
  return { rows, of: holds.values.length, table };
}

function chosenWords({ name }: CallSyntax, { rows, of, table }: Chosen, place: PartPlace): string {
  const which = rows.length > 0 && rows.length <= MOST_LISTED ? `: ${rowsInWords(rows)}` : '';
  return `${name.toUpperCase()} counts ${rows.length} of ${of} rows of ${tableAsWritten(table, place)}${which}`;
}

/** The table over whose rows a part runs; undefined for one that runs over none, or over pairs of rows. */
export function tableOf({ type: { axes } }: Typed): string | undefined {
  const fresh = axes.filter((axis) => axis.fresh);
  return fresh.length === 1 ? fresh[0]?.table : undefined;
}

/** A table (`sheet.table`) as a formula of its own sheet and of another writes it. */
export function tableAsWritten(table: string, { item: { sheet } }: PartPlace): string {
  return table.startsWith(`${sheet}.`) ? table.slice(sheet.length + 1) : table;
}

/** The first terms of an argument, one a row; undefined where they cannot be told apart. */
function termsOf(
  arg: Syntax,
  chosen: readonly number[] | undefined,
  { extreme }: WorkedForm,
  place: PartPlace,
  working: Working,
): readonly Syntax[] | undefined {
  const typed = working.typedOf(arg);
  if (!typed) return [arg];
  if (typed.type.axes.every((axis) => !axis.fresh)) return [working.work(arg, place)];
  const table = tableOf(typed);
  if (table === undefined) return undefined;
  const known = typed.kind === 'known';
  const term = known && arg.kind === 'call' ? (arg.args[0] ?? arg) : arg;
  const length = working.notebook.rowsOf(table) ?? 0;
  const elements = known || extreme ? working.notebook.parts.elementsOf(typed, place) : undefined;
  const all = chosen ?? Array.from({ length }, (_, row) => row);
  const rows = elements && known ? all.filter((row) => !Number.isNaN(elements.values[row])) : all;
  const tied = extreme && elements ? extremeRows(rows, elements.values, extreme) : [];
  const [governing] = tied;
  if (governing !== undefined && extreme && rows.length > 1) {
    const value = elements?.at(governing);
    if (value)
      working.note(
        `${extreme} in ${rowsInWords(tied)} of ${tableAsWritten(table, place)}: ${working.write(value)}`,
        place,
      );
  }
  const shown = rowsShown(rows, governing);
  const terms = shown.map((row) => working.work(term, { ...place, element: { table, at: row } }));
  const more = rows.length - shown.length;
  return more > 0 ? [...terms, working.say(`… ${more} more`)] : terms;
}

/** The first rows and the one that governs; all of them where only one would be left out. */
function rowsShown(rows: readonly number[], governing: number | undefined): readonly number[] {
  const first = rows.slice(0, FIRST_TERMS);
  const shown = governing === undefined || first.includes(governing) ? first : [...first, governing];
  return rows.length - shown.length === 1 ? rows : shown;
}

/** The rows with the greatest or the least value, equal ones together, in their order. */
export function extremeRows(
  rows: Iterable<number>,
  values: Float64Array,
  extreme: 'greatest' | 'least',
): readonly number[] {
  let best = Number.NaN;
  const known = [...rows].filter((row) => !Number.isNaN(values[row] ?? Number.NaN));
  for (const row of known) {
    const value = values[row] ?? Number.NaN;
    if (Number.isNaN(best) || (extreme === 'greatest' ? value > best : value < best)) best = value;
  }
  return known.filter((row) => areEqual(values[row] ?? Number.NaN, best));
}
