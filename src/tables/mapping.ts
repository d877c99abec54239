import { type Problem, problem } from '../diagnostics/index.ts';
import { type UnitRegistry, volumeState } from '../units/index.ts';
import { columnWords, isNumeric, type TableColumn } from './column.ts';
import { overriddenUnit } from './header-unit.ts';
import { headedUnit, headerColumn, type NamedHeader, unitOfColumn } from './headers.ts';
import { multipleIn } from './heading-multiples.ts';
import { statedUnit } from './stated-unit.ts';
import type { TableText } from './table-text.ts';
import { columnFacts, type TextColumn, textColumns } from './text-columns.ts';

/**
 * Where a column of a text goes: to a column of the table, in a unit (`''`: as that column has it; `assumed`: as the page
 * shows it, where neither the text nor a person said one); nowhere but for
 * the units it states, row by row, for the numbers that go to a column; or nowhere, and if it was said (`unitless`)
 * even though its texts look like units, or because the table calculates it anew (`calculated`).
 */
export type Destination =
  | { readonly kind: 'column'; readonly name: string; readonly unit: string; readonly assumed?: true }
  | { readonly kind: 'unit'; readonly of: string }
  | { readonly kind: 'out'; readonly unitless?: true; readonly calculated?: true };

/** What the columns of a text go to. */
export interface Mapping {
  /** Whether a row names the columns; otherwise it is data like the others. */
  readonly headed: boolean;
  /** By the position of the column, counted from 0; what is not here is still to be settled. */
  readonly goes: ReadonlyMap<number, Destination>;
}

/** A column of a text that is taken, and the unit of its plain numbers (`''`: that of the column; `-`: none). */
export interface TakenColumn {
  readonly position: number;
  readonly header: string;
  readonly column: TableColumn;
  readonly unit: string;
  /** Whether neither the text nor a person said this unit. */
  readonly assumed?: true;
  /** The position of the column that has the unit of each row, if one does. */
  readonly unitsAt?: number;
}

/** A column of a text that has the unit of each row for the numbers of another. */
interface UnitColumn {
  readonly text: TextColumn;
  /** The column of the table that the numbers go to. */
  readonly of: string;
}

/** What is made of the columns of a text: taken, left out as was said, or refused, and why. */
export interface SortedColumns {
  readonly taken: readonly TakenColumn[];
  readonly out: readonly TextColumn[];
  readonly units: readonly UnitColumn[];
  /** The positions of columns left out of which it was said that their texts are no units of numbers. */
  readonly unitless: ReadonlySet<number>;
  /** The positions of columns left out because the table calculates them anew. */
  readonly calculated: ReadonlySet<number>;
  readonly refused: readonly TextColumn[];
  readonly warnings: readonly Problem[];
  readonly problems: readonly Problem[];
}

const NOWHERE = { from: 0, to: 0 };

/**
 * The mapping that the headers of a text say themselves, by names and labels; it never guesses. A text that has all
 * columns that are given, as a table that was saved has, may have calculated ones beside them: these stay out.
 */
export function namedMapping(text: TableText, columns: readonly TableColumn[]): Mapping {
  const goes = new Map<number, Destination>();
  for (const { position, header, unit } of textColumns(text, true)) {
    const named = headerColumn(header, columns, text.registry);
    if (named === undefined) continue;
    goes.set(position, {
      kind: 'column',
      name: named.column.name,
      unit: oneUnit(named, unit, text.registry),
    });
  }
  const kinds = new Map(columns.map(({ name, kind }) => [name, kind]));
  const named = new Set([...goes.values()].map((to) => (to.kind === 'column' ? to.name : '')));
  const isWhole = columns.every(({ name, kind }) => kind !== 'given' || named.has(name));
  for (const [position, to] of goes) {
    if (isWhole && to.kind === 'column' && kinds.get(to.name) !== 'given')
      goes.set(position, { kind: 'out', unitless: true, calculated: true });
  }
  return { headed: true, goes };
}

/** The unit of a header and that of a row of units below it, which have to be one; else both, which read as none. */
function oneUnit({ column, unit }: NamedHeader, below: string, registry: UnitRegistry): string {
  const stated = headedUnit(below, column, registry);
  if (unit === '' || stated === '' || stated === unit) return unit || stated;
  return headedUnit(unit, column, registry) === stated ? stated : `${unit} or ${stated}`;
}

/**
 * Sorts the columns of a text. Two that go to one column, values for a column that is calculated, units for columns
 * without numbers or of another kind, and nothing to take are refused, for values would go astray; so are columns that
 * go nowhere yet.
 *
 * @param unsettled the problem with columns that go nowhere yet
 */
export function sortColumns(
  found: readonly TextColumn[],
  columns: readonly TableColumn[],
  goes: ReadonlyMap<number, Destination>,
  registry: UnitRegistry,
  unsettled: (open: readonly [TextColumn, ...TextColumn[]]) => Problem,
): SortedColumns {
  const taken: TakenColumn[] = [];
  const out: TextColumn[] = [];
  const open: TextColumn[] = [];
  const refused: TextColumn[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const firsts = new Map<TableColumn, TextColumn>();
  const stated = new Map<string, TextColumn>();
  const unitless = new Set<number>();
  const calculated = new Set<number>();
  for (const one of found) {
    const to = goes.get(one.position);
    if (to === undefined) open.push(one);
    else if (to.kind === 'out') {
      out.push(one);
      if (to.unitless) unitless.add(one.position);
      if (to.calculated) calculated.add(one.position);
    } else if (to.kind === 'unit') {
      const first = stated.get(to.of);
      if (first === undefined) stated.set(to.of, one);
      else {
        refused.push(one);
        const facts = { first: columnFacts(first), second: columnFacts(one), column: `unit of ${to.of}` };
        problems.push(problem('column-twice', NOWHERE, facts));
      }
    } else {
      const column = columnNamed(to.name, columns);
      const unit = headedUnit(to.unit.trim(), column, registry);
      const wrong = wrongDestination(one, column, unit, firsts.get(column), columns, registry);
      firsts.set(column, one);
      if (wrong === undefined) {
        const { position, header } = one;
        taken.push({ position, header, column, unit, ...(to.assumed && { assumed: true }) });
        warnings.push(...overriddenProblem(one, unit, column, registry));
      } else {
        problems.push(wrong);
        refused.push(one);
      }
    }
  }
  const units: UnitColumn[] = [];
  for (const [of, one] of stated) {
    const at = taken.findIndex(({ column }) => column.name === of && isNumeric(column));
    const numbers = taken[at];
    if (numbers !== undefined) {
      taken[at] = { ...numbers, unitsAt: one.position };
      units.push({ text: one, of });
      continue;
    }
    refused.push(one);
    problems.push(problem('column-unit-alone', NOWHERE, { ...columnFacts(one), column: of }));
  }
  const [next, ...others] = open;
  if (next !== undefined) problems.unshift(unsettled([next, ...others]));
  const asSaid = out.filter(({ position }) => !calculated.has(position));
  const anew = out.filter(({ position }) => calculated.has(position));
  if (anew.length > 0)
    warnings.unshift(problem('columns-calculated-anew', NOWHERE, { columns: anew.map(columnFacts) }));
  if (asSaid.length > 0)
    warnings.unshift(problem('column-left-out', NOWHERE, { columns: asSaid.map(columnFacts) }));
  if (taken.length === 0 && problems.length === 0) problems.push(problem('table-nothing-taken', NOWHERE, {}));
  return { taken, out, units, unitless, calculated, refused: [...open, ...refused], warnings, problems };
}

function wrongDestination(
  one: TextColumn,
  column: TableColumn,
  unit: string,
  first: TextColumn | undefined,
  columns: readonly TableColumn[],
  registry: UnitRegistry,
): Problem | undefined {
  if (first !== undefined) {
    const facts = { first: columnFacts(first), second: columnFacts(one), column: column.name };
    return problem('column-twice', NOWHERE, facts);
  }
  if (column.kind !== 'given') {
    const givens = columns.filter(({ kind }) => kind === 'given').map(columnWords);
    return problem('column-calculated', NOWHERE, {
      ...columnFacts(one),
      column: columnWords(column),
      givens,
    });
  }
  const multiple = multipleIn(one, column, registry);
  if (multiple !== undefined)
    return problem('column-multiple', NOWHERE, { ...columnFacts(one), multiple, column: column.name });
  const overridden = overriddenUnit(one, unit, column, registry);
  if (overridden?.is === 'other-kind') {
    const facts = { ...columnFacts(one), stated: overridden.stated, column: column.name };
    return problem('column-unit-other-kind', NOWHERE, { ...facts, wants: column.unit ?? '' });
  }
  if (unit === '' || (unit === '-' && !isNumeric(column))) return undefined;
  if (!isNumeric(column)) {
    const facts = { ...columnFacts(one), unit, column: column.name, type: column.type ?? 'number' };
    return problem('column-unit-misplaced', NOWHERE, facts);
  }
  return unitProblem(one, column, unit, registry);
}

/** That the numbers of a column are read in another unit than its header states, as was said. */
function overriddenProblem(
  one: TextColumn,
  unit: string,
  column: TableColumn,
  registry: UnitRegistry,
): readonly Problem[] {
  const overridden = overriddenUnit(one, unit, column, registry);
  if (overridden === undefined || overridden.is === 'other-kind') return [];
  const { stated, is } = overridden;
  const said = unit === '' ? (column.unit ?? '') : unit;
  const facts = { ...columnFacts(one), stated, said, column: column.name };
  return [problem(is === 'another' ? 'column-unit-overridden' : 'column-unit-set-aside', NOWHERE, facts)];
}

/** What is wrong with a unit stated for a column: it is none, or of another kind, or can be read two ways. */
function unitProblem(
  one: TextColumn,
  column: TableColumn,
  unit: string,
  registry: UnitRegistry,
): Problem | undefined {
  const wanted = unitOfColumn(column, registry);
  if (unit === '-') {
    const isPlain = wanted === undefined || (wanted.dimension.key === '' && !wanted.angle);
    if (isPlain) return undefined;
  } else if (statedUnit(unit, registry, wanted).unit !== undefined) return undefined;
  const choices = unit === '-' ? [] : statedUnit(unit, registry, wanted).choices;
  const state = volumeState(unit)?.words ?? '';
  const facts = { ...columnFacts(one), unit, column: column.name, wants: column.unit ?? '', choices, state };
  return problem('column-unit-unread', NOWHERE, facts);
}

function columnNamed(name: string, columns: readonly TableColumn[]): TableColumn {
  const column = columns.find((one) => one.name === name);
  if (column === undefined) throw new Error(`a mapping names the column ${name}, which the table lacks`);
  return column;
}
