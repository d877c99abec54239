import { inCell, type Outcome, type Problem } from '../diagnostics/index.ts';
import {
  applyEdit,
  type Book,
  CHUNK_CELLS,
  cellsBetween,
  type Edit,
  optionWords,
  type Touched,
} from '../document/index.ts';
import { type Allowance, createEngine, type Engine, type Pending } from '../engine/index.ts';
import type { Type } from '../language/index.ts';
import type { Unit } from '../units/index.ts';
import { readApplies } from './applies.ts';
import { buildModel, optionsOf } from './build-model.ts';
import { ChangedLines } from './changed-lines.ts';
import { type Dangling, danglingAfter } from './dangling.ts';
import { createEasedChecks } from './eased-checks.ts';
import { firstError } from './first-error.ts';
import { type FormulaParts, formulaParts } from './formula-parts.ts';
import { readChoice, readGiven } from './inputs.ts';
import { loadCells } from './load-column.ts';
import type { FormulaItem, InputColumnItem, InputItem, Item, Model } from './model.ts';
import { namesOf } from './names.ts';
import { createProblemList } from './problem-list.ts';
import { readComputed, readResult, readVerdict, standing, unitOf } from './read-result.ts';
import { createRestingOutOfRange, outOfRangeRemark } from './resting-out-of-range.ts';
import type { ColumnResult, EasedRemark, Result, Verdict } from './result.ts';
import { computedId, type Side } from './stated.ts';
import { readingWithStated } from './stated-column.ts';
import { syncEngine, syncItem } from './sync.ts';
import {
  asCalculated,
  type FormulaPlace,
  type Trial,
  type TrialOptions,
  tryFormula,
  typeInPlace,
} from './try-formula.ts';

/**
 * What an edit did: its inverse, the ids of all lines, columns and tables whose value may have changed, and what was left
 * without something it used.
 */
export interface AppliedEdit {
  readonly inverse: Edit;
  readonly changed: ChangedLines;
  readonly dangling: Dangling;
}

/**
 * A book that computes: the one place that knows document, language and engine. The book and the model are values;
 * `apply` replaces them. What is read is current.
 */
export interface Notebook {
  readonly book: Book;
  readonly model: Model;
  /** Applies an edit and computes what follows from it; a refused edit changes nothing. */
  readonly apply: (edit: Edit) => Outcome<AppliedEdit>;
  /** What is not computed yet; undefined where everything is. */
  readonly pending: Pending | undefined;
  /** Computes more of what is pending, all of it without an allowance; the ids whose value has come or changed. */
  readonly proceed: (allowance?: Allowance) => ChangedLines;
  /** How a line stands. */
  readonly result: (id: string) => Result;
  /**
   * What the formula of a line comes to in place of which a value is stated, or that of a stated side of a check;
   * undefined where nothing is stated.
   */
  readonly computed: (id: string, side?: Side) => Result | undefined;
  /** What the formula of a calculated column comes to of which cells are stated; undefined where none is. */
  readonly computedColumn: (id: string) => ColumnResult | undefined;
  /** What the condition comes to under which a check applies; undefined for one that always does. */
  readonly applies: (id: string) => Result | undefined;
  /** The verdict of a check, if it has one. */
  readonly verdict: (id: string) => Verdict | undefined;
  /**
   * Which stated values ease a check, or are all it holds by; undefined where none does, and of what an edit has changed until
   * `judgeStated` has been called.
   */
  readonly easedBy: (id: string) => EasedRemark | undefined;
  /**
   * Works out which checks stated values ease, if that is not known, as far as an allowance goes. It computes what rests on
   * each stated value twice, so it is not for the moment of an edit. Gives the checks of which something else is to be said
   * than before; undefined while more is left.
   */
  readonly judgeStated: (allowance?: Allowance) => ChangedLines | undefined;
  /** How a column stands. */
  readonly column: (id: string) => ColumnResult;
  /** The rows of a table (`sheet.table`); undefined while the series that makes them has no value. */
  readonly rowsOf: (table: string) => number | undefined;
  /** The unit a line or column is read in. */
  readonly unitOf: (id: string) => Unit;
  /** Everything wrong with the book, in its order: every problem once, then what waits. Warnings too. */
  readonly problems: () => readonly Problem[];
  /**
   * Checks and computes a formula in the place of a given or calculated line or of a calculated column (`id`), as it
   * would be there. Nothing changes.
   */
  readonly tryFormula: (id: string, text: string, options?: TrialOptions) => Trial;
  /** The parts of the formulas of the book, computed where they stand. */
  readonly parts: FormulaParts;
  /** The type a formula has in the place of a calculated line or column, whatever that place asks of it. */
  readonly typeInPlace: (id: string, text: string) => Type;
}

/**
 * Opens a sound book and computes it. With `timeAtOnce` the opening and each edit compute only as long as that allows:
 * what is left is pending, and `proceed` computes it.
 */
export function openNotebook(opened: Book, timeAtOnce?: () => Allowance): Notebook {
  let book = opened;
  let model = buildModel(book);
  const newEngine = (): Engine =>
    createEngine({
      units: model.registry,
      system: book.settings.system,
      labelOf: (id) => labelOf(model.items.get(id)),
      wordsOf: (id, text) => wordsOf(model.items.get(id), text),
    });
  let engine = newEngine();
  syncEngine(engine, model);
  engine.recalculate(timeAtOnce?.());

  const item = (id: string): Item => {
    const found = model.items.get(id);
    if (!found) throw new Error(`the book has no line or column ${id}`);
    return found;
  };
  const line = (id: string): InputItem | FormulaItem => {
    const found = item(id);
    if (found.kind !== 'input' && found.kind !== 'formula') throw new Error(`${id} is a column, not a line`);
    return found;
  };
  const formulaPlace = (id: string): FormulaPlace => {
    const found = item(id);
    if (found.kind === 'formula' || found.kind === 'formula column') return found;
    if (found.kind === 'input' && found.row.kind === 'given') return asCalculated(found);
    throw new Error(`${id} takes no formula`);
  };
  const result = (id: string): Result => readResult(line(id), model, engine, book.settings.system);

  const computed = (id: string, side?: Side): Result | undefined => {
    const found = item(id);
    return found.kind === 'formula'
      ? readComputed(found, side, model, engine, book.settings.system)
      : undefined;
  };

  const problems = createProblemList();
  const resting = createRestingOutOfRange();
  const eased = createEasedChecks();

  const rebuild = (): void => {
    const before = model;
    model = buildModel(book, before);
    if (model.registry === before.registry) {
      problems.forgetWaiting();
      syncEngine(engine, model, before);
    } else {
      problems.forgetAll();
      resting.forgetAll();
      engine = newEngine();
      syncEngine(engine, model);
    }
  };

  const computedColumn = (id: string): ColumnResult | undefined => {
    const found = item(id);
    if (found.kind !== 'formula column' || !found.cells) return undefined;
    const wrong = firstError([...found.problems, ...found.checked.problems]);
    if (wrong) return { status: 'problem', problem: inCell(wrong, id) };
    const reading = engine.readColumn(computedId(id));
    if (reading.problem) {
      const status = reading.pending ? 'waiting' : 'problem';
      return { status, problem: inCell(reading.problem, id) };
    }
    return { status: 'ok', unit: unitOf(found, model, book.settings.system), reading };
  };

  const column = (id: string): ColumnResult => {
    const found = item(id);
    const stopped = standing(found, model);
    if (stopped) return stopped;
    const reading = engine.readColumn(id);
    if (reading.problem) {
      const status = reading.pending || reading.waiting ? 'waiting' : 'problem';
      return { status, problem: inCell(reading.problem, id) };
    }
    const unit = unitOf(found, model, book.settings.system);
    if (found.kind !== 'formula column' || !found.cells) return { status: 'ok', unit, reading };
    const computedOnes = engine.readColumn(computedId(id));
    return { status: 'ok', unit, reading: readingWithStated(reading, computedOnes, found.cells) };
  };

  const withRange = (
    item: Pick<FormulaItem, 'id' | 'sheet'>,
    on: Iterable<string>,
    verdict: Verdict,
  ): Verdict => {
    const outOfRange = outOfRangeRemark(
      item,
      resting.under(on, model, { result, computed, computedColumn, column }),
    );
    return outOfRange ? { ...verdict, outOfRange } : verdict;
  };

  return {
    get book() {
      return book;
    },
    get model() {
      return model;
    },
    apply: (edit) => {
      const applied = applyEdit(book, edit);
      if (!applied.ok) return applied;
      const { touched, inverse } = applied.value;
      const bookBefore = book;
      book = applied.value.book;
      // The settings say in which units and with which dates everything is told.
      if (touched.some((one) => one.kind === 'book')) {
        problems.forgetAll();
        resting.forgetAll();
      }
      const before = model;
      if (!enterOnly(touched, book, model, engine)) rebuild();
      const changed = eased.forget(
        new ChangedLines(engine.recalculate(timeAtOnce?.()), methodsChanged(before, model)),
      );
      problems.forget(changed);
      resting.forget(changed);
      const dangling = danglingAfter({ book: bookBefore, model: before }, { book, model });
      return { ok: true, value: { inverse, changed, dangling } };
    },
    get pending() {
      return engine.pending;
    },
    proceed: (allowance) => {
      const changed = eased.forget(new ChangedLines(engine.recalculate(allowance)));
      problems.forget(changed);
      resting.forget(changed);
      return changed;
    },
    result,
    computed,
    computedColumn,
    applies: (id) => {
      const found = item(id);
      if (found.kind !== 'formula' || !found.applies) return undefined;
      const holds: Result = { status: 'ok', value: { kind: 'truth', truth: true } };
      const idle = readApplies(found, engine) ?? holds;
      return idle.status === 'inapplicable' ? { status: 'ok', value: { kind: 'truth', truth: false } } : idle;
    },
    verdict: (id) => {
      const found = item(id);
      if (found.kind !== 'formula' || found.row.kind !== 'check') return undefined;
      const read = result(id);
      if (read.status !== 'ok' || read.value.kind !== 'truth') return undefined;
      return withRange(
        found,
        [id],
        readVerdict(found, read.value.truth, model, engine, book.settings.system),
      );
    },
    easedBy: (id) => eased.of(id, model),
    judgeStated: (allowance) => eased.judge(model, engine, book.settings.system, allowance),
    column,
    rowsOf: (table) => engine.rowsOf(table),
    unitOf: (id) => unitOf(item(id), model, book.settings.system),
    problems: () => problems.of(model, { result, computed, computedColumn, column }),
    tryFormula: (id, text, options = {}) => {
      const place = formulaPlace(id);
      const tried = tryFormula(place, text, options, book, model, engine);
      if (tried.outcome.kind !== 'verdict') return tried;
      const applies = place.kind === 'formula' ? (place.applies?.references ?? []) : [];
      const verdict = withRange(place, [...tried.checked.references, ...applies], tried.outcome.verdict);
      return { ...tried, outcome: { kind: 'verdict', verdict } };
    },
    parts: formulaParts({
      get model() {
        return model;
      },
      get engine() {
        return engine;
      },
      get system() {
        return book.settings.system;
      },
    }),
    typeInPlace: (id, text) => typeInPlace(formulaPlace(id), text, book, model),
  };
}

/** How a line or column is described. */
function labelOf(item: Item | undefined): string | undefined {
  if (!item) return undefined;
  const { label } = item.kind === 'input' || item.kind === 'formula' ? item.row : item.column;
  return label?.trim() || undefined;
}

/** The words of an option that a choice has. */
function wordsOf(item: Item | undefined, text: string): string | undefined {
  return item?.kind === 'input' && item.row.kind === 'choice'
    ? optionWords(item.row.options, text)
    : undefined;
}

/**
 * The short way of most edits: entries and cells changed and nothing's type did. Brings model and engine along, or
 * says false where the whole book is to be understood anew.
 */
function enterOnly(touched: readonly Touched[], book: Book, model: Model, engine: Engine): boolean {
  const items = model.items as Map<string, Item>;
  for (const { kind } of touched) if (kind !== 'entry' && kind !== 'cells' && kind !== 'review') return false;
  for (const change of touched) {
    if (change.kind === 'review') continue;
    const part = book.sheets
      .find((sheet) => 'sheet' in change && sheet.key === change.sheet)
      ?.parts.find(
        (one) => one.id === (change.kind === 'entry' ? change.part : change.kind === 'cells' && change.table),
      );
    if (change.kind === 'entry' && part?.kind === 'rows') {
      const row = part.rows.find((one) => one.id === change.row);
      const id = `${change.sheet}.${row?.name}`;
      const old = items.get(id);
      // Another choice is another formula of the lines whose methods it chooses.
      if (row?.kind === 'choice' && model.choosing.has(id)) return false;
      if (old?.kind !== 'input' || (row?.kind !== 'given' && row?.kind !== 'choice')) return false;
      const next =
        row.kind === 'given'
          ? readGiven(id, change.sheet, row, model.registry)
          : readChoice(id, change.sheet, row, optionsOf(row, change.sheet, namesOf(book)));
      if (!sameKindOfEntry(old, next)) return false;
      items.set(id, next);
      syncItem(engine, next, model);
    } else if (change.kind === 'cells' && part?.kind === 'table') {
      const column = part.columns.find((one) => one.id === change.column);
      const id = `${change.sheet}.${part.name}.${column?.name}`;
      const old = items.get(id);
      if (old?.kind !== 'input column' || column?.kind !== 'given' || feedsChoice(id, model)) return false;
      const next: InputColumnItem = { ...old, column };
      items.set(id, next);
      const from = change.chunk * CHUNK_CELLS;
      const cells = cellsBetween(column.chunks, from, from + CHUNK_CELLS);
      const { values, failed } = loadCells(cells, next, model.registry, engine.texts);
      engine.patchColumn(id, from, values, { failed });
    } else return false;
  }
  return true;
}

/** The lines and columns with methods that are computed by another formula, though it may give the same value. */
function methodsChanged(before: Model, after: Model): readonly string[] {
  if (before === after) return [];
  return [...after.items.values()].flatMap((item) =>
    'methods' in item && item.methods && before.items.get(item.id) !== item ? [item.id] : [],
  );
}

/** Whether a new entry leaves the type and the unit of its line as they were. */
function sameKindOfEntry(a: InputItem, b: InputItem): boolean {
  if (a.unit && b.unit) return true;
  if (a.type.kind !== b.type.kind) return false;
  if (a.entry?.kind === 'text' && b.entry?.kind === 'text') return true;
  if (a.entry?.kind !== 'number' || b.entry?.kind !== 'number') return false;
  return a.entry.unit.text === b.entry.unit.text;
}

/** Whether a choice takes its options from this column. */
function feedsChoice(id: string, model: Model): boolean {
  for (const item of model.items.values()) {
    if (item.kind !== 'input' || item.row.kind !== 'choice' || item.row.from === undefined) continue;
    if (id === item.row.from || id === `${item.sheet}.${item.row.from}`) return true;
  }
  return false;
}
