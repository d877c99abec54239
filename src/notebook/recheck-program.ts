import type { Problem } from '../diagnostics/index.ts';
import { cellsOfColumn } from '../document/index.ts';
import type { CompareNode, Typed } from '../language/index.ts';
import {
  type EngineValue,
  type EngineValues,
  type RecheckCell,
  type RecheckEntry,
  type RecheckProgram,
  tooLarge,
} from '../recheck/index.ts';
import { fromSI, PLAIN_UNIT, readEntry, type Unit } from '../units/index.ts';
import { appliesId, whereItApplies } from './applies.ts';
import { firstError } from './first-error.ts';
import type { FormulaColumnItem, FormulaItem, InputColumnItem, InputItem, Item } from './model.ts';
import type { Notebook } from './notebook.ts';
import type { Result } from './result.ts';
import {
  comparedSides,
  computedId,
  SIDES,
  type Stated,
  type StatedSides,
  sideId,
  sidesOf,
} from './stated.ts';
import { type StatedCells, statedId, statedOrComputed, whereStatedId } from './stated-column.ts';

/** A computed book as the recheck takes it, with the values its engine has. */
export function recheckProgram(notebook: Notebook): { program: RecheckProgram; values: EngineValues } {
  const { model, book } = notebook;
  const tables = Array.from(model.tables.keys(), (id) => {
    const rows = notebook.rowsOf(id);
    return rows === undefined ? { id, rows: 0, failed: true } : { id, rows };
  });
  const cells = [...model.items.values()].flatMap((item) => cellsOf(item, notebook));
  const units = book.settings.units ?? [];
  return { program: { tables, cells, units }, values: valuesOf(notebook) };
}

/** Why a book is too large to be computed a second time, before anything is made ready for it; undefined if it is not. */
export function tooLargeToRecheck({ model, rowsOf }: Notebook): string | undefined {
  const items = [...model.items.values()];
  const columnsOf = (table: string) => items.filter((item) => 'table' in item && item.table === table).length;
  return tooLarge({
    lines: items.filter((item) => !('table' in item)).length,
    tables: Array.from(model.tables.keys(), (id) => ({ rows: rowsOf(id) ?? 0, columns: columnsOf(id) })),
  });
}

function cellsOf(item: Item, notebook: Notebook): readonly RecheckCell[] {
  const base = { id: item.id, unit: notebook.unitOf(item.id) };
  switch (item.kind) {
    case 'input':
      return [{ ...base, kind: 'input', entry: entryOf(item) }];
    case 'input column':
      return [{ ...base, kind: 'column', table: item.table, entries: entriesOf(item, notebook) }];
    case 'formula': {
      const tree = treeOf(item);
      const applies: readonly RecheckCell[] = item.applies
        ? [
            {
              kind: 'formula',
              id: appliesId(item.id),
              unit: PLAIN_UNIT,
              tree: treeOf({ ...item, checked: item.applies }),
            },
          ]
        : [];
      if (item.stated) {
        const entry = statedEntry(item.stated, item.problems);
        return [
          { ...base, kind: 'input', entry },
          { ...base, kind: 'formula', id: computedId(item.id), tree },
        ];
      }
      // What is stated for a check that does not apply is compared with nothing.
      const isIdle = item.applies !== undefined && notebook.result(item.id).status === 'inapplicable';
      if (item.sides && tree.kind === 'compare' && !isIdle)
        return [...checkWithStated(item, item.sides, tree, base), ...applies];
      // The two sides of a check are values of their own where the engine weighs them against one another.
      const { demand, capacity } = notebook.verdict(item.id) ?? {};
      const sides: RecheckCell[] =
        tree.kind === 'compare' && demand && capacity
          ? [
              { kind: 'formula', id: `${item.id}#left`, tree: tree.left },
              { kind: 'formula', id: `${item.id}#right`, tree: tree.right },
            ]
          : [];
      return [{ ...base, kind: 'formula', tree: whereItApplies(item, tree) }, ...applies, ...sides];
    }
    case 'formula column':
      if (item.cells) return columnWithStated(item, item.cells, notebook);
      return [{ ...base, kind: 'formula', table: item.table, tree: treeOf(item) }];
  }
}

/** A column with stated cells: what is computed, what is stated and where are columns of their own. */
function columnWithStated(
  item: FormulaColumnItem,
  cells: StatedCells,
  notebook: Notebook,
): readonly RecheckCell[] {
  const { id, table, checked, type } = item;
  const base = { table, unit: notebook.unitOf(id) };
  const rows = Array.from({ length: notebook.rowsOf(table) ?? 0 }, (_, row) => cells.get(row));
  const entries = rows.map(
    (one): RecheckEntry => (one ? statedEntry(one, item.problems) : { kind: 'missing' }),
  );
  const where = rows.map((one): RecheckEntry => ({ kind: 'truth', value: one !== undefined }));
  const tree = statedOrComputed(id, table, { ...checked.typed, type });
  return [
    { ...base, kind: 'column', id: statedId(id), entries },
    { table, kind: 'column', id: whereStatedId(id), entries: where },
    { ...base, kind: 'formula', id: computedId(id), tree: treeOf(item) },
    { ...base, kind: 'formula', id, tree },
  ];
}

/** A check with a stated side: the sides are cells of their own, and the check compares those. */
function checkWithStated(
  item: FormulaItem,
  stated: StatedSides,
  tree: CompareNode,
  base: { readonly id: string; readonly unit: Unit },
): readonly RecheckCell[] {
  const { id } = item;
  const [demand, capacity] = sidesOf(tree);
  const sides = SIDES.flatMap((side): readonly RecheckCell[] => {
    const computed = side === 'demand' ? demand : capacity;
    if (!computed) return [];
    const one = stated[side];
    const at = { ...base, id: sideId(id, side) };
    if (!one) return [{ ...at, kind: 'formula', tree: computed }];
    const entry = statedEntry(one, []);
    return [
      { ...at, kind: 'input', entry },
      { ...at, kind: 'formula', id: computedId(at.id), tree: computed },
    ];
  });
  return [{ ...base, kind: 'formula', tree: whereItApplies(item, comparedSides(id, tree)) }, ...sides];
}

function statedEntry({ entry, problems }: Stated, others: readonly Problem[]): RecheckEntry {
  if (!entry || [...problems, ...others].some(({ severity }) => severity === 'error'))
    return { kind: 'failed' };
  if (entry.kind === 'number' || entry.kind === 'point')
    return { kind: 'number', written: fromSI(entry.si, entry.unit), unit: entry.unit };
  return entry;
}

function treeOf(item: Extract<Item, { checked: unknown }>): Typed {
  const { typed, problems } = item.checked;
  const failed = [...item.problems, ...problems].some(({ severity }) => severity === 'error');
  return failed ? { kind: 'broken', type: typed.type, from: typed.from, to: typed.to } : typed;
}

function entryOf({ entry, problems }: InputItem): RecheckEntry {
  if (problems.some(({ severity }) => severity === 'error') || !entry)
    return { kind: problems.length > 0 ? 'failed' : 'missing' };
  if (entry.kind === 'number' || entry.kind === 'point')
    return { kind: 'number', written: fromSI(entry.si, entry.unit), unit: entry.unit };
  return entry;
}

function entriesOf(item: InputColumnItem, notebook: Notebook): readonly RecheckEntry[] {
  const column = notebook.column(item.id);
  const cells = cellsOfColumn(item.column);
  if (column.status !== 'ok') return cells.map(() => ({ kind: 'failed' }));
  const { reading } = column;
  return cells.map((written, row): RecheckEntry => {
    const read = reading.at(row);
    if (read.status !== 'ok') return { kind: read.status === 'missing' ? 'missing' : 'failed' };
    if (typeof read.value === 'string') return { kind: 'text', text: read.value };
    if (typeof read.value === 'boolean') return { kind: 'truth', value: read.value };
    const cell = written === null || written === '' ? (item.column.default ?? null) : written;
    if (typeof cell === 'number' && item.unit) return { kind: 'number', written: cell, unit: item.unit };
    const entry = readEntry(`${cell}`, notebook.model.registry, item.unit);
    if (!entry.ok || (entry.value.kind !== 'number' && entry.value.kind !== 'point'))
      throw new Error(`${item.id} has a value in row ${row + 1} and no number`);
    return {
      kind: 'number',
      written: fromSI(entry.value.si, entry.value.unit),
      unit: entry.value.unit,
    };
  });
}

function entryValue({ entry, problems }: Stated): EngineValue {
  if (!entry || firstError(problems)) return undefined;
  return entry.kind === 'text' ? entry.text : entry.kind === 'truth' ? entry.value : entry.si;
}

function engineValueOf(read: Result | undefined): EngineValue {
  if (read?.status !== 'ok') return undefined;
  const { value } = read;
  return value.kind === 'number' ? value.si : value.kind === 'text' ? value.text : value.truth;
}

function valuesOf(notebook: Notebook): EngineValues {
  const line = (id: string): EngineValue => engineValueOf(notebook.result(id));
  const side = (id: string, which: 'left' | 'right'): EngineValue => {
    const item = notebook.model.items.get(id);
    const verdict = notebook.verdict(id);
    if (item?.kind !== 'formula' || item.checked.typed.kind !== 'compare') return undefined;
    const turned = item.checked.typed.op.startsWith('>');
    return ((which === 'left') === turned ? verdict?.capacity : verdict?.demand)?.si;
  };
  return (id, row) => {
    const [own = id, which, more] = id.split('#');
    if (which === 'applies') return engineValueOf(notebook.applies(own));
    if (which === 'left' || which === 'right') return side(own, which);
    if (which === 'demand' || which === 'capacity')
      return more ? engineValueOf(notebook.computed(own, which)) : notebook.verdict(own)?.[which]?.si;
    if (row === undefined) return which === 'computed' ? engineValueOf(notebook.computed(own)) : line(id);
    if (which === 'stated' || which === 'where-stated') {
      const item = notebook.model.items.get(own);
      const cell = item?.kind === 'formula column' ? item.cells?.get(row) : undefined;
      return which === 'stated' ? cell && entryValue(cell) : cell !== undefined;
    }
    const column = which === 'computed' ? notebook.computedColumn(own) : notebook.column(id);
    if (column?.status !== 'ok') return undefined;
    const read = column.reading.at(row);
    return read.status === 'ok' ? read.value : undefined;
  };
}
