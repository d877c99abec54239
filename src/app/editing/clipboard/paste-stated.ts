import { fail, type Outcome, problem, succeed } from '../../../diagnostics/index.ts';
import { type Edit, joinEdits, statedInWords } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import type { UnitsView } from '../../../record/index.ts';
import type { CellPlace } from '../../view-model/place.ts';
import { carryUnit } from '../cells/carry-unit.ts';
import { enterFormula, enterText } from '../cells/cell-edits.ts';
import { targetsAt } from '../cells/state-target.ts';
import { isValue, stateEntry, statementOf, typedStatement } from '../cells/state-value.ts';
import { findPlace } from '../find-place.ts';
import { insertionLabel } from '../lines/describe-insertion.ts';
import type { Block, Extent } from './block.ts';
import { gatherCells } from './gather-cells.ts';

const nowhere = { from: 0, to: 0 };

/**
 * The edit that pastes a text onto a calculated line or a check: a value is stated, a formula takes the place of the one
 * there and leaves what is stated. `stated` is the reason of a value that was stated where it was copied.
 */
export function pasteOntoCalculated(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  text: string,
  unit: string | undefined,
  stated: string | null | undefined,
): Outcome<Edit> | undefined {
  const { book } = notebook;
  const [first] = targetsAt(book, place);
  if (!first || first.kind === 'cell') return undefined;
  if (text.trim() === '') return enterText(book, place, '');
  const value = carryUnit(text, unit, unitOf(first));
  const isStated = typeof stated === 'string';
  const read =
    isStated || isValue(notebook, value) ? typedStatement(notebook, place, view, value) : undefined;
  if (read) return read.ok ? succeed(stateEntry(read.value, stated ?? undefined)) : read;
  return enterFormula(book, place, text);
}

/** Whether a block is one column of values for the cells of a calculated column, each of which is stated. */
export function isStatedColumn(notebook: Notebook, place: CellPlace, block: Block): boolean {
  const found = findPlace(notebook.book, place);
  const isNarrow = block.cells.every((row) => row.length === 1);
  // Cells that were computed where they were copied are computed here too.
  const wasComputed = block.calculated?.includes(0) && !block.stated?.some(([reason]) => reason !== null);
  return isNarrow && !wasComputed && found?.kind === 'cell' && targetsAt(notebook.book, place).length > 0;
}

/**
 * The edit that states a column of values in the cells of a calculated column from a place on, repeated where more cells
 * are selected. A blank one leaves its cell as it is; a value that cannot be read, and rows beyond the last, refuse all.
 */
export function pasteStated(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  block: Block,
  over: Extent,
): Outcome<Edit> {
  const found = findPlace(notebook.book, place);
  const [first] = targetsAt(notebook.book, place);
  if (found?.kind !== 'cell' || first?.kind !== 'cell')
    return fail(problem('edit-place-unfit', nowhere, { path: place.item, expected: 'a calculated cell' }));
  const height = block.cells.length;
  const count = over.columns === 1 && over.rows > height && over.rows % height === 0 ? over.rows : height;
  const rows = found.part.length ?? 0;
  const noPlace = problem('paste-no-place', nowhere, {
    rows: height,
    columns: 1,
    text: block.cells[0]?.[0] ?? '',
  });
  if (over.columns > 1 || found.row + count > rows) return fail(noPlace);
  const gathered = gatherCells(notebook.book);
  const replaced: string[] = [];
  let stated = 0;
  for (let down = 0; down < count; down += 1) {
    const at = { ...place, item: `r${found.row + down}` };
    const text = block.cells[down % height]?.[0] ?? '';
    const reason = block.stated?.[down % height]?.[0];
    if (text.trim() === '' || (block.stated && typeof reason !== 'string')) continue;
    const value = carryUnit(text, block.units?.[down % height]?.[0] ?? undefined, unitOf(first));
    const read = typedStatement(notebook, at, view, value);
    if (!read) continue;
    if (!read.ok) return read;
    const { target, entry } = read.value;
    if (target.kind === 'cell' && target.statement && target.statement.entry !== entry)
      replaced.push(
        statedInWords(found.part, { column: target.column, row: target.index, statement: target.statement }),
      );
    gathered.take(at, statementOf(target, entry, reason ?? undefined));
    stated += 1;
  }
  const account = [
    `stated in ${found.column.name}${stated < count ? `, ${count - stated} left as ${count - stated === 1 ? 'it was' : 'they were'}` : ''}`,
    ...(replaced.length > 0 ? [`stated there before: ${replaced.join(', ')}`] : []),
  ].join('; ');
  return succeed(joinEdits(insertionLabel('paste', stated, { what: 'cell', account }), gathered.edits()));
}

function unitOf(target: ReturnType<typeof targetsAt>[number]): string | undefined {
  return target.kind === 'cell' ? target.column.unit : target.row.unit;
}
