import { cellsOfColumn } from '../document/index.ts';
import type { Typed } from '../language/index.ts';
import {
  type EngineValue,
  type EngineValues,
  type RecheckCell,
  type RecheckEntry,
  type RecheckProgram,
  tooLarge,
} from '../recheck/index.ts';
import { fromSI, readEntry } from '../units/index.ts';
import type { InputColumnItem, InputItem, Item } from './model.ts';
import type { Notebook } from './notebook.ts';

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
      // The two sides of a check are values of their own where the engine weighs them against one another.
      const { demand, capacity } = notebook.verdict(item.id) ?? {};
      const sides: RecheckCell[] =
        tree.kind === 'compare' && demand && capacity
          ? [
              { kind: 'formula', id: `${item.id}#left`, tree: tree.left },
              { kind: 'formula', id: `${item.id}#right`, tree: tree.right },
            ]
          : [];
      return [{ ...base, kind: 'formula', tree }, ...sides];
    }
    case 'formula column':
      return [{ ...base, kind: 'formula', table: item.table, tree: treeOf(item) }];
  }
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

function valuesOf(notebook: Notebook): EngineValues {
  const line = (id: string): EngineValue => {
    const read = notebook.result(id);
    if (read.status !== 'ok') return undefined;
    const { value } = read;
    return value.kind === 'number' ? value.si : value.kind === 'text' ? value.text : value.truth;
  };
  const side = (id: string, which: 'left' | 'right'): EngineValue => {
    const item = notebook.model.items.get(id);
    const verdict = notebook.verdict(id);
    if (item?.kind !== 'formula' || item.checked.typed.kind !== 'compare') return undefined;
    const turned = item.checked.typed.op.startsWith('>');
    return ((which === 'left') === turned ? verdict?.capacity : verdict?.demand)?.si;
  };
  return (id, row) => {
    const [own = id, which] = id.split('#');
    if (which === 'left' || which === 'right') return side(own, which);
    if (row === undefined) return line(id);
    const column = notebook.column(id);
    if (column.status !== 'ok') return undefined;
    const read = column.reading.at(row);
    return read.status === 'ok' ? read.value : undefined;
  };
}
