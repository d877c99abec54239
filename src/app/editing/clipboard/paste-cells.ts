import { fail, type Outcome, type Problem, problem, succeed } from '../../../diagnostics/index.ts';
import {
  type CalcColumn,
  type Cell,
  cellOf,
  type Edit,
  type GivenColumn,
  idOfRowOrNext,
  insertTableRows,
  joinEdits,
  type Statement,
  setCells,
  stateCells,
  type Table,
} from '../../../document/index.ts';
import { type Notebook, tryCells, tryEntry } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import { columnWords, type Fate } from '../../../tables/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { COPIED_FROM, carryStatement } from '../cells/carry-reason.ts';
import { carryUnit, unitOfBareNumbers } from '../cells/carry-unit.ts';
import { cellContent, cellFromText } from '../cells/cell-content.ts';
import { enterText } from '../cells/cell-edits.ts';
import { putText } from '../cells/put-text.ts';
import { statementIn } from '../cells/state-target.ts';
import { findPlace } from '../find-place.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';
import type { Block, Extent } from './block.ts';
import { blockAccount } from './block-account.ts';
import { headingOf, isOfOthers, othersFilled, reasonsToConfirm } from './other-columns.ts';
import { pasteOntoCalculated } from './paste-stated.ts';
import { whatBecomes } from './what-becomes.ts';

const nowhere = { from: 0, to: 0 };

/**
 * The edit that puts a block of cells into a table, from the cell at a place on, or from the first row on where the
 * place is a heading. The block stays a rectangle within its table, which gets the rows it lacks; where more cells are
 * selected the block is repeated over them. A number comes with its unit to a column that has another. What reaches
 * beyond the last column, or a calculated one with anything but what was calculated itself, refuses the whole. `account` tells in the edit’s label what became of its cells.
 */
export function pasteIntoTable(
  notebook: Notebook,
  place: CellPlace,
  pasted: Block,
  over: Extent = { rows: 1, columns: 1 },
  account = '',
): Outcome<Edit> {
  const found = findPlace(notebook.book, place);
  if (found?.part.kind !== 'table' || (found.kind !== 'cell' && found.kind !== 'column'))
    return fail(problem('edit-place-unfit', nowhere, { path: place.item, expected: 'a cell of a table' }));
  const { part, column } = found;
  const row = found.kind === 'cell' ? found.row : 0;
  const { cells, units, stated } = repeated(pasted, over);
  const first = part.columns.indexOf(column);
  const width = Math.max(...cells.map((one) => one.length));
  const targets = part.columns.slice(first, first + width);
  if (targets.length < width) {
    const facts = { columns: width, room: targets.length, table: part.name };
    return fail(problem('paste-too-wide', nowhere, facts));
  }
  const known = new Set(pasted.calculated);
  const narrow = pasted.cells[0]?.length ?? 1;
  const given = targets.some(({ kind }) => kind === 'given');
  const calculated = targets.findIndex(
    ({ kind }, right) => kind !== 'given' && !(given && known.has(right % narrow)),
  );
  const refused = targets[calculated];
  if (refused) {
    const facts = { position: calculated + 1, column: columnWords(refused) };
    return fail(problem('paste-calculated', nowhere, facts));
  }
  const at = { sheet: place.sheet, table: part.id };
  const length = part.length ?? 0;
  const grown = row + cells.length - length;
  const growth = grown > 0 ? [insertTableRows(at, part, length, { length: grown, cells: {} })] : [];
  const put = targets.flatMap((target, right) => {
    if (target.kind !== 'given') return [];
    const values = cells.map((one, down) => cellIn(target, row + down, one[right], units?.[down]?.[right]));
    return [{ target, values }];
  });
  const filled = put.map(({ target, values }) => setCells({ ...at, column: target.id }, row, values));
  const fresh = {
    length: cells.length,
    cells: Object.fromEntries([
      ...put.map(({ target, values }) => [target.name, values] as const),
      // What is stated in these comes along.
      ...targets.flatMap(({ kind, name }) => (kind === 'calc' && stated ? [[name, []] as const] : [])),
    ]),
  };
  const kept = targets.flatMap((target, right) =>
    target.kind === 'calc' && stated
      ? statedAgain(at, part, target, row, { cells, units, stated }, right)
      : [],
  );
  const one = cells.length === 1 && width === 1;
  const id = `${place.sheet}.${part.name}`;
  const check = tryCells(notebook, id);
  const fateAt = (down: number, right: number): Fate => {
    const target = targets[right];
    if (target?.kind !== 'given') return 'out';
    // Of two columns of one name nobody can say which of them takes a cell.
    if (notebook.model.items.get(`${id}.${target.name}`)?.kind !== 'input column') return 'marked';
    const value = cellIn(target, row + down, cells[down]?.[right], units?.[down]?.[right]);
    return check(target.name, value) === undefined ? 'taken' : 'marked';
  };
  const { open, blanked } = whatBecomes(part, fresh, { kind: 'from', row }, 'stay');
  const label = one
    ? 'paste a cell'
    : insertionLabel('paste', cells.length, {
        fresh: Math.max(0, grown),
        open,
        blanked,
        kept: isOfOthers(part, fresh, row) ? othersFilled(part, fresh, row).map(headingOf) : [],
        account: account === '' ? blockAccount(pasted.cells, cells, fateAt) : account,
      });
  return succeed(
    joinEdits(label, [...growth, ...filled, ...kept, ...reasonsToConfirm(at, part, fresh, row)]),
  );
}

/** What was stated in the cells of a column where they were copied is stated in those they are pasted onto. */
function statedAgain(
  at: { readonly sheet: string; readonly table: string },
  table: Table,
  column: CalcColumn,
  from: number,
  { cells, units, stated }: Pick<Block, 'cells' | 'stated'> & { readonly units: Block['units'] | undefined },
  right: number,
): readonly Edit[] {
  const changes = new Map<number, Statement>();
  for (const [down, row] of cells.entries()) {
    const reason = stated?.[down]?.[right];
    const text = row[right];
    if (typeof reason !== 'string' || text === undefined) continue;
    const entry = carryUnit(text, units?.[down]?.[right] ?? undefined, column.unit);
    const id = idOfRowOrNext(table, from + down);
    const before = column.stated?.find((one) => one.row === id);
    changes.set(id, carryStatement(before && statementIn(before), { entry, reason }, COPIED_FROM));
  }
  return changes.size === 0 ? [] : [stateCells({ ...at, column: column.id }, column, changes)];
}

/** A row of the block that ends before the others leaves what is there. */
function cellIn(
  column: GivenColumn,
  row: number,
  text: string | undefined,
  unit: string | null | undefined,
): Cell {
  if (text === undefined) return cellOf(column, row);
  const numeric = (column.type ?? 'number') === 'number';
  return cellFromText(carryUnit(text, unit ?? undefined, numeric ? column.unit : undefined), column);
}

/**
 * The edit that puts a block of cells onto lines: `targets` are the cells it goes to, row by row. A block that does not
 * fill them evenly, that brings a text where another kind of thing stands, or a value in a unit of another kind than
 * its line has, refuses the whole; so does one that would rename a line among others: a symbol alone is renamed wherever
 * it is used.
 */
export function pasteOntoLines(
  notebook: Notebook,
  targets: readonly (readonly (CellPlace | undefined)[])[],
  pasted: Block,
  view: UnitsView = 'written',
): Outcome<Edit> {
  const { book } = notebook;
  const over = { rows: targets.length, columns: Math.max(...targets.map((row) => row.length)) };
  const { cells, units, stated } = repeated(pasted, over);
  const alone = cells.length === 1 && cells[0]?.length === 1;
  const edits: Edit[] = [];
  const marked = new Set<string>();
  const noPlace = (text: string) =>
    fail(problem('paste-no-place', nowhere, { rows: cells.length, columns: cells[0]?.length ?? 1, text }));
  if (over.rows > cells.length || targets.some((row, down) => row.length > (cells[down]?.length ?? 0)))
    return noPlace(cells[0]?.[0] ?? '');
  for (const [down, row] of cells.entries()) {
    for (const [right, text] of row.entries()) {
      const target = targets[down]?.[right];
      if (!target || cellContent(book, target).kind === undefined) return noPlace(text);
      const unit = units?.[down]?.[right] ?? undefined;
      const { kind, text: held } = cellContent(book, target);
      if (kind === 'name' && text.trim() === held) continue;
      const onto = pasteOntoCalculated(notebook, target, view, text, unit, stated?.[down]?.[right]);
      if (onto) {
        if (!onto.ok) return onto;
        edits.push(onto.value);
        continue;
      }
      const put = carryUnit(text, unit, unitOfBareNumbers(book, target));
      const unfit = unitUnfit(notebook, target, put);
      if (unfit) return fail(unfit);
      if (isMarked(notebook, target, put)) marked.add(`${down} ${right}`);
      const edit = alone ? putText(notebook, target, put) : enterText(book, target, put);
      if (!edit.ok) return edit;
      edits.push(edit.value);
    }
  }
  const account = blockAccount(pasted.cells, cells, (down, right) =>
    marked.has(`${down} ${right}`) ? 'marked' : 'taken',
  );
  const label =
    edits.length === 1 ? 'paste a cell' : insertionLabel('paste', edits.length, { what: 'cell', account });
  return succeed(joinEdits(label, edits));
}

/** The problem with a value in a unit of another kind than the line has that it is pasted on. */
function unitUnfit(notebook: Notebook, place: CellPlace, entry: string): Problem | undefined {
  return entryProblems(notebook, place, entry)?.find(({ code }) => UNIT_UNFIT.includes(code));
}

/** Whether a line of a unit does not take what is put into its value as it stands. */
function isMarked(notebook: Notebook, place: CellPlace, entry: string): boolean {
  return entry.trim() !== '' && (entryProblems(notebook, place, entry)?.length ?? 0) > 0;
}

/** What a given line of a unit says to an entry; undefined at any other place. */
function entryProblems(notebook: Notebook, place: CellPlace, entry: string): readonly Problem[] | undefined {
  const { sheet, field } = place;
  const found = findPlace(notebook.book, place);
  if (found?.kind !== 'row' || found.row.kind !== 'given' || field !== 'value') return undefined;
  const id = `${sheet}.${found.row.name}`;
  if (found.row.unit === undefined || notebook.model.items.get(id)?.kind !== 'input') return undefined;
  return tryEntry(notebook, id, entry).problems;
}

const UNIT_UNFIT: readonly string[] = [
  'entry-unit-mismatch',
  'entry-mass-force',
  'entry-currency',
  'entry-money',
  'unit-disagrees',
];

/** A block repeated over a selection that it divides; otherwise as it is. */
function repeated({ cells, units, stated }: Block, { rows, columns }: Extent): Block {
  const height = cells.length;
  const width = cells[0]?.length ?? 0;
  const even = cells.every((row) => row.length === width);
  const [down, right] = [rows / height, columns / width];
  if (!even || down * right <= 1 || !Number.isInteger(down) || !Number.isInteger(right))
    return { cells, ...(units && { units }), ...(stated && { stated }) };
  const tile = <T>(block: readonly (readonly T[])[]): readonly (readonly T[])[] =>
    Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, (_, column) => block[row % height]?.[column % width] as T),
    );
  return {
    cells: tile(cells),
    ...(units && { units: tile(units) }),
    ...(stated && { stated: tile(stated) }),
  };
}
