import { findSheet, type Row, type Sheet } from '../../document/index.ts';
import {
  type Item,
  type Model,
  type Notebook,
  type Quantity,
  referencesOfItem,
} from '../../notebook/index.ts';
import { behindNumbers } from './decimal-mark.ts';
import { entryView } from './entry-view.ts';
import { displayUnit, formatQuantity, type PrintedQuantity } from './format-quantity.ts';
import { decimalsOfLines } from './shared-decimals.ts';
import type { UnitsView } from './units-view.ts';

/** The number of a line as it stands among its neighbours; `behind` stands unseen behind it, so that decimal marks align. */
export interface AlignedQuantity extends PrintedQuantity {
  readonly behind: string;
}

/** A line whose value is a number. */
interface Numbered {
  readonly row: Row;
  readonly id: string;
  readonly value: Quantity;
}

/** The number of a line as the page shows it; undefined where it has none. */
export function numberOfLine(notebook: Notebook, item: Item, view: UnitsView): AlignedQuantity | undefined {
  const lines = likeLines(notebook, item, view);
  const at = lines.findIndex(({ id }) => id === item.id);
  if (at < 0) return undefined;
  const shown = shownNumbers(notebook, lines, view);
  const behind = behindNumbers(shown.map(({ number }) => number));
  const own = shown[at];
  return own && { ...own, behind: behind[at] ?? '' };
}

/** The ids of the lines that a line shares its decimals with, itself among them. */
export function idsOfLikeLines(notebook: Notebook, item: Item, view: UnitsView): readonly string[] {
  return likeLines(notebook, item, view).map(({ id }) => id);
}

function shownNumbers(
  notebook: Notebook,
  lines: readonly Numbered[],
  view: UnitsView,
): readonly PrintedQuantity[] {
  const { registry } = notebook.model;
  const typed = lines.map(({ row, value }) => {
    const entry = row.kind === 'given' ? entryView(row, value, view, registry) : undefined;
    return entry?.kind === 'plain' ? entry : undefined;
  });
  const computed = lines.filter((_, at) => typed[at] === undefined);
  const [first] = computed;
  const decimals =
    first &&
    decimalsOfLines(
      computed.map(({ value }) => value.si),
      displayUnit(first.value.unit, view, registry),
      computed.map(({ id }) => checked(notebook.model).has(id)),
    );
  const style = decimals === undefined ? {} : { decimals };
  return lines.map(
    ({ value }, at) => typed[at] ?? formatQuantity(value.si, value.unit, view, registry, style),
  );
}

/** Neighbouring lines of one block whose numbers are shown in one unit, this one among them. */
function likeLines(notebook: Notebook, item: Item, view: UnitsView): readonly Numbered[] {
  const rows = blockOf(notebook, item);
  const at = rows.findIndex((row) => `${item.sheet}.${row.name}` === item.id);
  const own = at < 0 ? undefined : numbered(notebook, item.sheet, rows[at]);
  if (!own) return [];
  const { registry } = notebook.model;
  const unit = displayUnit(own.value.unit, view, registry);
  // Counts and ratios are not alike for having no unit.
  if (unit.point !== undefined || unit.text === '' || unit.text === '-') return [own];
  const isLike = (other: Numbered | undefined): other is Numbered =>
    other !== undefined && displayUnit(other.value.unit, view, registry).text === unit.text;
  const lines = [own];
  for (let before = at - 1; before >= 0; before -= 1) {
    const other = numbered(notebook, item.sheet, rows[before]);
    if (!isLike(other)) break;
    lines.unshift(other);
  }
  for (let next = at + 1; next < rows.length; next += 1) {
    const other = numbered(notebook, item.sheet, rows[next]);
    if (!isLike(other)) break;
    lines.push(other);
  }
  return lines;
}

function numbered(notebook: Notebook, sheet: string, row: Row | undefined): Numbered | undefined {
  if (row?.kind !== 'given' && row?.kind !== 'calc') return undefined;
  const id = `${sheet}.${row.name}`;
  const item = notebook.model.items.get(id);
  if (item?.kind !== 'input' && item?.kind !== 'formula') return undefined;
  const result = notebook.result(id);
  return result.status === 'ok' && result.value.kind === 'number'
    ? { row, id, value: result.value }
    : undefined;
}

/** The lines of each block by their names, once for each sheet as it stands. */
const blocks = new WeakMap<Sheet, ReadonlyMap<string, readonly Row[]>>();

function blockOf({ book }: Notebook, { id, sheet: key }: Item): readonly Row[] {
  const sheet = findSheet(book, key);
  if (!sheet) return [];
  let found = blocks.get(sheet);
  if (!found) {
    found = new Map(
      sheet.parts.flatMap((part) =>
        part.kind === 'rows' ? part.rows.map((row) => [`${key}.${row.name}`, part.rows] as const) : [],
      ),
    );
    blocks.set(sheet, found);
  }
  return found.get(id) ?? [];
}

/** The lines that checks compare: a digit taken away from one of them could hide what the check rests on. */
const checkedLines = new WeakMap<Model, ReadonlySet<string>>();

function checked(model: Model): ReadonlySet<string> {
  let found = checkedLines.get(model);
  if (!found) {
    found = new Set(
      [...model.items.values()].flatMap((item) =>
        item.kind === 'formula' && item.row.kind === 'check' ? [...referencesOfItem(item)] : [],
      ),
    );
    checkedLines.set(model, found);
  }
  return found;
}
