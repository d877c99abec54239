import {
  type Book,
  type Case,
  type Cases,
  type Edit,
  type Equivalent,
  findColumn,
  findRow,
  findSheet,
  findTable,
  setColumnField,
  setFormula,
  setMethodField,
} from '../../document/index.ts';
import {
  type FormulaColumnItem,
  type FormulaItem,
  type Item,
  type Model,
  type Notebook,
  openNotebook,
} from '../../notebook/index.ts';
import { AskedWitnesses } from './asked-witnesses.ts';
import { type Computation, computationsOf } from './computations.ts';
import { judge } from './judge.ts';
import { type Mutant, mutantsOf } from './mutants.ts';
import { prepareCase } from './prepare-case.ts';
import { type EnteredCase, enteredCase, expectsOf, type Witness, witnessesOf } from './witnesses.ts';

/**
 * What makes a wrong formula of a right one: a number one percent larger, a point moved, a truth turned. A method that is
 * nothing but zero becomes one of the line's unit, for no part of it is another number.
 */
function spoiled(item: FormulaItem | FormulaColumnItem, formula: string, isZero = false): string {
  const { type, unit } = item;
  if (isZero) return `1 ${unit && unit.text !== '-' ? unit.text : ''}`;
  switch (type.kind) {
    case 'number':
      return `(${formula}) * 1.01`;
    case 'point':
      return `(${formula}) + 0.1 ${type.of === 'temperature' ? 'K' : type.of === 'date' ? 'd' : 'm'}`;
    case 'truth':
      return `NOT(${formula})`;
    case 'text':
      return `(${formula}) & "?"`;
    case 'unknown':
      throw new Error(`${item.id} has no type`);
  }
}

/** A changed formula of a template that no case tells from the right one. */
export interface Survivor {
  /** What it is a formula of: a line or column, with what the method is for. */
  readonly of: string;
  readonly change: string;
  readonly is: string;
}

/** What the cases of a template notice of changes to its formulas. */
export interface MutationReport {
  readonly made: number;
  readonly noticed: number;
  /** Those that are listed as no different, with the reason, and that no case notices. */
  readonly equivalent: number;
  readonly survivors: readonly Survivor[];
  /** Those that are listed, and that were not made or are noticed. */
  readonly stale: readonly Equivalent[];
}

/** How changes are made: every way there is, or each value a little larger alone, which takes a fraction of the time. */
export type Changes = 'all' | 'values';

/**
 * Changes each formula of a template in turn, of one with methods that of each method, and runs the cases that can tell
 * until one does. What is no formula of the line's dimension any more is not counted: the checker refuses it.
 *
 * @param every 1 for all formulas, 4 for each fourth
 */
export function mutateTemplate(
  book: Book,
  cases: Cases,
  changes: Changes,
  equivalents: readonly Equivalent[] = [],
  every = 1,
): MutationReport {
  const shipped = openNotebook(book);
  // Where nothing rests on a formula, its changes are still made, for one that is refused does not count.
  const nobody: Witness = {
    entered: { notebook: openNotebook(book), expected: [], dependents: new Map() },
    expected: [],
  };
  const enter = enteredWhenAsked(book);
  const listed = new Map(equivalents.map((one) => [`${one.of}: ${one.is}`, one]));
  const used = new Set<Equivalent>();
  const survivors: Survivor[] = [];
  let [made, noticed] = [0, 0];
  const asked = computationsOf(shipped).filter((_, at) => at % every === 0);
  for (const computation of asked) {
    const isOwn = (example: Case): boolean => expectsOf(shipped.model, example, computation);
    const ordered = [...cases.cases.filter(isOwn), ...cases.cases.filter((one) => !isOwn(one))];
    const witnesses = new AskedWitnesses(witnessesOf(enter(ordered), computation), nobody);
    const formula = formulaOf(shipped, computation);
    const changed = new Set<EnteredCase>();
    for (const mutant of mutantsFor(shipped, computation, changes)) {
      const found = whoNotices(witnesses, computation, mutant, changed);
      if (found === 'refused') continue;
      made += 1;
      if (found) {
        noticed += 1;
        witnesses.askFirst(found);
        continue;
      }
      const survivor = { of: computation.name, change: mutant.change, is: mutant.formula };
      const known = listed.get(`${survivor.of}: ${survivor.is}`);
      if (known) used.add(known);
      else survivors.push(survivor);
    }
    for (const entered of changed) putRight(entered, computation, formula);
  }
  const stale = equivalents.filter((one) => !used.has(one));
  return { made, noticed, equivalent: used.size, survivors, stale };
}

/** Enters cases as they are asked for, each once. */
function enteredWhenAsked(book: Book): (examples: readonly Case[]) => Generator<EnteredCase> {
  const known = new Map<Case, EnteredCase>();
  return function* enter(examples) {
    for (const example of examples) {
      let entered = known.get(example);
      if (entered === undefined) {
        const notebook = prepareCase(book, example);
        if (!notebook.ok) throw new Error(`the case ${example.id} cannot be entered`);
        entered = enteredCase(notebook.value, example);
        known.set(example, entered);
      }
      yield entered;
    }
  };
}

/**
 * The first that notices a changed formula; none, or that the formula is refused. The change is left in each that was asked,
 * which is added to those `changed`, for the next takes its place.
 */
function whoNotices(
  witnesses: Iterable<Witness>,
  computation: Computation,
  mutant: Mutant,
  changed: Set<EnteredCase>,
): Witness | 'refused' | undefined {
  for (const one of witnesses) {
    const { notebook } = one.entered;
    changed.add(one.entered);
    if (!notebook.apply(editOf(notebook, computation, mutant.formula)).ok) return 'refused';
    if (hasProblem(notebook, computation)) return 'refused';
    if (one.expected.some((expected) => !judge(notebook, expected).agrees)) return one;
  }
  return undefined;
}

function putRight({ notebook }: EnteredCase, computation: Computation, formula: string): void {
  if (!notebook.apply(editOf(notebook, computation, formula)).ok)
    throw new Error(`${computation.name} cannot be put right again`);
}

function hasProblem(notebook: Notebook, { id, method }: Computation): boolean {
  const item = notebook.model.items.get(id);
  if (item?.kind !== 'formula' && item?.kind !== 'formula column') return true;
  const own = item.methods?.list.find((one) => one.method.id === method);
  const problems = own ? [...own.problems, ...own.checked.problems] : item.checked.problems;
  return problems.some(({ severity }) => severity === 'error');
}

function formulaOf({ model }: Notebook, { id, method }: Computation): string {
  const item = model.items.get(id);
  if (item?.kind !== 'formula' && item?.kind !== 'formula column')
    throw new Error(`there is no formula ${id}`);
  return item.methods?.list.find((one) => one.method.id === method)?.method.formula ?? item.formula;
}

/** The mutants of one formula. Of a check none has a value made larger: both its sides are results, or its utilisation. */
function mutantsFor({ model }: Notebook, { id, method }: Computation, changes: Changes): readonly Mutant[] {
  const item = model.items.get(id);
  if (item?.kind !== 'formula' && item?.kind !== 'formula column')
    throw new Error(`there is no formula ${id}`);
  const own = item.methods?.list.find((one) => one.method.id === method);
  const formula = own ? own.method.formula : item.formula;
  const typed = own?.checked.typed;
  const isZero = typed?.kind === 'number' && typed.si === 0;
  const isCheck = item.kind === 'formula' && item.row.kind === 'check';
  const larger: Mutant = { change: 'value', formula: spoiled(item, formula, isZero) };
  if (changes === 'values') return isCheck ? [] : [larger];
  const others = mutantsOf(formula, (name) => columnBeside(model, item, name));
  return isCheck ? others : [larger, ...others];
}

/** The next column of the same dimension in the table of a column that a formula names. */
function columnBeside(model: Model, from: Item, name: string): string | undefined {
  const table = from.kind === 'formula column' ? [`${from.table}.${name}`] : [];
  const id = [...table, `${from.sheet}.${name}`, name].find((one) => model.items.has(one));
  const column = id === undefined ? undefined : model.items.get(id);
  if (column?.kind !== 'input column' && column?.kind !== 'formula column') return undefined;
  const fellows = [...model.items.values()]
    .filter((one) => one.kind === 'input column' || one.kind === 'formula column')
    .filter(
      (one) =>
        one.table === column.table &&
        one.type.kind === 'number' &&
        column.type.kind === 'number' &&
        one.id !== from.id &&
        one.type.dimension.key === column.type.dimension.key,
    );
  const at = fellows.indexOf(column);
  const next = fellows[(at + 1) % fellows.length];
  if (at < 0 || !next || next === column) return undefined;
  return `${name.slice(0, name.length - (column.id.length - column.table.length - 1))}${next.id.slice(next.table.length + 1)}`;
}

/** The edit that puts a formula in place of that of a line, a column or one of its methods. */
function editOf(notebook: Notebook, { id, method }: Computation, formula: string): Edit {
  const item = notebook.model.items.get(id);
  const sheet = item && findSheet(notebook.book, item.sheet);
  if (sheet && item?.kind === 'formula') {
    const row = findRow(sheet, item.row.name);
    if (row && method === undefined) return setFormula(row.place, formula);
    if (row) return setMethodField(row.place, method ?? '', 'formula', formula);
  }
  if (sheet && item?.kind === 'formula column') {
    const table = findTable(sheet, item.table.slice(sheet.key.length + 1));
    const column = table && findColumn(table.table, item.column.name);
    const place = table && column && { ...table.place, column: column.id };
    if (place && method === undefined) return setColumnField(place, 'formula', formula);
    if (place) return setMethodField(place, method ?? '', 'formula', formula);
  }
  throw new Error(`there is no calculated line or column ${id}`);
}
