import { type Outcome, type Problem, succeed } from '../../diagnostics/index.ts';
import {
  type Cell,
  type Edit,
  insertTableRows,
  joinEdits,
  setCells,
  type Table,
} from '../../document/index.ts';
import { type Notebook, tryCells } from '../../notebook/index.ts';
import { readTable } from '../../tables/index.ts';
import type { CellPlace } from '../session/place.ts';
import type { UnitsView } from '../session/session.ts';
import { typedOnScreen } from './carried-unit.ts';
import { cellFromText, cellOf } from './cell-content.ts';
import { findPlace } from './find-place.ts';
import { putInLabel } from './put-in.ts';

/** A paste by headers: the edit, and what it left out. */
export interface NamedPaste {
  readonly edit: Edit;
  readonly remarks: readonly Problem[];
}

/**
 * The edit that puts a text with headers, CSV or from a spreadsheet, into the columns it names, from the row of a place
 * on; it grows the table past its end. Undefined where the place is in no table or the first line names none of its
 * columns, which then is an ordinary block of cells. Numbers without a unit are in that of the page's column. Headers
 * that name no column or state a unit it does not read, and rows with too few or too many cells refuse the whole.
 */
export function pasteNamed(
  notebook: Notebook,
  place: CellPlace,
  view: UnitsView,
  text: string,
): Outcome<NamedPaste> | undefined {
  const found = findPlace(notebook.book, place);
  if (found?.kind !== 'cell' || !startsWithHeaders(text, found.part)) return undefined;
  const { part, row } = found;
  const read = readTable(text, part.columns, {
    registry: notebook.model.registry,
    check: tryCells(notebook, `${place.sheet}.${part.name}`),
  });
  if (!read.ok) return { ok: false, problems: read.problems.map(withWhereToSay) };
  const { length, cells, units, problems } = read.value;
  const faults = problems.filter(({ code, severity }) => severity === 'error' && code !== 'cell-unread');
  if (faults.length > 0) return { ok: false, problems: faults };
  const at = { sheet: place.sheet, table: part.id };
  const before = part.length ?? 0;
  const grown = row + length - before;
  const growth = grown > 0 ? [insertTableRows(at, part, before, { length: grown, cells: {} })] : [];
  const filled = Object.entries(cells).flatMap(([name, values]) => {
    const column = part.columns.find((one) => one.name === name);
    if (column?.kind !== 'given') return [];
    const meant = (value: Cell): Cell =>
      value === null || name in units
        ? value
        : cellFromText(typedOnScreen(notebook, { ...place, field: column.id }, view, `${value}`), column);
    return [setCells({ ...at, column: column.id }, row, view === 'written' ? values : values.map(meant))];
  });
  const kept = part.columns.filter(
    (column) =>
      column.kind === 'given' &&
      !(column.name in cells) &&
      Array.from({ length: Math.min(length, before - row) }).some(
        (_, down) => cellOf(column, row + down) !== null,
      ),
  );
  const label = putInLabel('paste', length, Math.max(0, grown), kept.length);
  return succeed({ edit: joinEdits(label, [...growth, ...filled]), remarks: problems });
}

/** What a paste has nowhere to say and the dialog has. */
const ASKED = ['decimal-ambiguous', 'row-total', 'row-note', 'rows-above-headers', 'column-calculated'];

function withWhereToSay(found: Problem): Problem {
  if (!ASKED.includes(found.code)) return found;
  const hint =
    found.code === 'decimal-ambiguous'
      ? '“Paste or open CSV” in the menu of the table asks whether decimals come after a point or a comma'
      : '“Paste or open CSV” in the menu of the table asks for it';
  return { ...found, hints: [hint] };
}

/** Whether there are several lines, and a cell of the first is the name or label of a column, maybe with a unit. */
function startsWithHeaders(text: string, { columns }: Table): boolean {
  const [first = '', second] = text.trim().split(/[\r\n]+/);
  if (second === undefined) return false;
  const called = new Set(columns.flatMap(({ name, label }) => [folded(name), folded(label ?? name)]));
  return first.split(/[\t;,]/).some((cell) => called.has(folded(cell)));
}

function folded(header: string): string {
  return header
    .replace(/^\s*"|"\s*$/g, '')
    .replace(/[([][^()[\]]*[)\]]\s*$/, '')
    .trim()
    .toLowerCase();
}
