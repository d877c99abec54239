import { type Problem, problem } from '../diagnostics/index.ts';
import type { Book } from '../document/index.ts';
import type { Engine } from '../engine/index.ts';
import {
  type CheckedFormula,
  checkFormula,
  NO_AXES,
  onAxes,
  parseFormula,
  type Type,
  type Typed,
} from '../language/index.ts';
import { checkDraft, type Draft } from './formulas.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  type InputItem,
  type Model,
  referencesOfItem,
} from './model.ts';
import { namesOf } from './names.ts';
import { readValue, unitOf, verdictOf } from './read-result.ts';
import type { Value, Verdict } from './result.ts';
import { type Known, scopeOf } from './scope.ts';
import { readUnitColumn } from './unit-column.ts';

/** What a formula would come to: of a column that differs from row to row, what one `row` (from 0) would. */
type TrialOutcome =
  | { readonly kind: 'value'; readonly value: Value; readonly row?: number }
  | { readonly kind: 'verdict'; readonly verdict: Verdict }
  | { readonly kind: 'series'; readonly start: Value; readonly stop: Value; readonly step: Value }
  /** Sound, and without a value: a division by zero, a blank. */
  | { readonly kind: 'no value'; readonly problem: Problem }
  /** The formula has a problem, or its rows follow from one another. */
  | { readonly kind: 'none' };

/** A formula tried in a place of the book where it does not stand (yet). */
export interface Trial {
  readonly checked: CheckedFormula;
  /** Everything wrong with it: what the check found, and a circle it would close. */
  readonly problems: readonly Problem[];
  readonly type: Type;
  readonly outcome: TrialOutcome;
}

/** How a formula is tried: `unit` stands in for the unit column, `row` (from 0) is the one of a column to compute. */
export interface TrialOptions {
  readonly unit?: string;
  readonly row?: number;
}

/** A line or column as the place of a formula that does not stand there (yet). */
export type FormulaPlace = Omit<FormulaItem, 'checked'> | Omit<FormulaColumnItem, 'checked'>;

/** A given line as the place of the formula that would make it a calculated one. */
export function asCalculated({ id, sheet, unit, type, row }: InputItem): FormulaPlace {
  const calc = { id: row.id, kind: 'calc', name: row.name, formula: '' } as const;
  return { kind: 'formula', id, sheet, row: calc, formula: '', type, problems: [], ...(unit && { unit }) };
}

/**
 * Checks a formula in the place of a line or calculated column and computes it against the values as they stand.
 * Nothing changes.
 */
export function tryFormula(
  item: FormulaPlace,
  text: string,
  { unit, row = 0 }: TrialOptions,
  book: Book,
  model: Model,
  engine: Engine,
): Trial {
  const placed = unit === undefined ? item : withUnit(item, unit, model);
  const checked = checkDraft(
    draftOf(placed, text),
    parseFormula(text),
    knownIn(model),
    namesOf(book),
    model.registry,
  ).checked;
  const circle = circleOf(item.id, checked.references, model);
  const loops = circle !== undefined && item.kind === 'formula';
  const whole = { from: 0, to: text.length };
  const problems = loops
    ? [...checked.problems, problem('loop', whole, { path: [...circle] })]
    : checked.problems;
  const type = onAxes(checked.typed.type, NO_AXES);
  const stopped = circle !== undefined || checked.typed.kind === 'broken';
  const outcome: TrialOutcome = stopped
    ? { kind: 'none' }
    : compute({ ...placed, type, checked }, row, model, engine, book.settings.system);
  return { checked, problems, type, outcome };
}

/** The type a formula has in the place of a calculated line or column, whatever its unit column or kind ask of it. */
export function typeInPlace(item: FormulaPlace, text: string, book: Book, model: Model): Type {
  const table = item.kind === 'formula column' ? item.table : undefined;
  const scope = scopeOf(namesOf(book), model.registry, knownIn(model), {
    id: item.id,
    sheet: item.sheet,
    ...(table !== undefined && { table }),
  });
  return checkFormula(text, scope).typed.type;
}

function withUnit<I extends FormulaPlace>(item: I, text: string, model: Model): I {
  const { unit: _, ...without } = item;
  const { unit } = readUnitColumn(text, model.registry);
  return { ...without, ...(unit && { unit }) } as I;
}

function draftOf(item: FormulaPlace, formula: string): Draft {
  const { id, sheet, unit } = item;
  const { kind } = item.kind === 'formula' ? item.row : item.column;
  const table = item.kind === 'formula column' ? { table: item.table } : {};
  return { id, sheet, formula, kind, ...table, ...(unit && { unit }) };
}

function knownIn(model: Model): (id: string) => Known {
  return (id) => {
    const item = model.items.get(id);
    if (!item) return { type: { kind: 'unknown', axes: NO_AXES } };
    return { type: onAxes(item.type, NO_AXES), ...(item.unit && { unit: item.unit }) };
  };
}

/** The way from a line or column through what it would refer to back to itself, if there is one. */
function circleOf(id: string, references: ReadonlySet<string>, model: Model): readonly string[] | undefined {
  const from = new Map<string, string>();
  const waiting = [...references];
  for (const first of references) from.set(first, id);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next === id) return wayTo(id, from);
    for (const source of sourcesOf(next, model)) {
      if (from.has(source)) continue;
      from.set(source, next);
      waiting.push(source);
    }
  }
  return undefined;
}

function sourcesOf(id: string, model: Model): readonly string[] {
  const item = model.items.get(id);
  if (!item) return [];
  const references = 'checked' in item ? [...referencesOfItem(item)] : [];
  if (item.kind !== 'formula column' || item.column.kind === 'series') return references;
  const { table } = item;
  const makers = model.tables.get(table)?.part.columns.filter(({ kind }) => kind === 'series') ?? [];
  return [...references, ...makers.map(({ name }) => `${table}.${name}`)];
}

function wayTo(id: string, from: ReadonlyMap<string, string>): readonly string[] {
  const way = [id];
  for (let at = from.get(id); at !== undefined && at !== id; at = from.get(at)) way.push(at);
  return [...way, id].reverse();
}

function compute(
  item: FormulaItem | FormulaColumnItem,
  row: number,
  model: Model,
  engine: Engine,
  system: 'SI' | 'US',
): TrialOutcome {
  const { typed, text } = item.checked;
  const table = item.kind === 'formula column' ? { table: item.table, row } : {};
  const unit = unitOf(item, model, system);
  const of = (node: Typed) => engine.tryFormula(node, { text, ...(node.kind !== 'series' && table) });
  if (typed.kind === 'series') {
    const [start, stop, step] = [typed.start, typed.stop, typed.step].map((part) => {
      const read = of(part);
      return read.status === 'ok' ? readValue(read.value, unit) : undefined;
    });
    return start && stop && step ? { kind: 'series', start, stop, step } : { kind: 'none' };
  }
  // A table without rows has no row to show.
  if (item.kind === 'formula column' && !engine.rowsOf(item.table)) return { kind: 'none' };
  const read = of(typed);
  if (read.status === 'missing') return { kind: 'none' };
  if (read.status !== 'ok') return { kind: 'no value', problem: read.problem };
  const value = readValue(read.value, unit);
  if (item.kind !== 'formula' || item.row.kind !== 'check' || value.kind !== 'truth')
    return { kind: 'value', value, ...(typed.type.axes.length > 0 && { row }) };
  return { kind: 'verdict', verdict: verdictOf(item, typed, value.truth, of, model, system) };
}
