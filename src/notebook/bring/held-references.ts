import type { Choice, Fresh, Given, GivenColumn, Part, Table } from '../../document/index.ts';
import type { NamedPart } from '../names.ts';
import type { Notebook } from '../notebook.ts';
import { filledTo, heldColumn, heldNothing, heldRow } from './held-value.ts';

/** Where something that is held stands, and what it is called there: a line `name`, a column `table.name`. */
export interface HeldAt {
  readonly sheet: string;
  readonly name: string;
}

/** Lines and tables that hold, for sheets or lines that are brought elsewhere, what does not come along. */
export interface HeldReferences {
  /** What holds the value of a line or column; `sheet` is the one that needs it first, where it then stands. */
  readonly hold: (part: Exclude<NamedPart, { kind: 'table' }>, sheet: string) => HeldAt;
  /** The same for a name that stands for nothing, and could come to mean something elsewhere. */
  readonly holdNothing: (written: string, sheet: string) => HeldAt;
  /** The parts that a sheet has to have in front for what is held on it. */
  readonly partsOn: (sheet: string) => readonly Part[];
  /** What is held on a sheet, by the ids of the lines and columns that stand for it there: as `sheet.name` where it was. */
  readonly standing: (sheet: string) => ReadonlyMap<string, string>;
}

/** The title above what is held. */
const HELD_TITLE = 'From sheets that did not come along';

interface HeldTable {
  readonly id: string;
  readonly name: string;
  readonly rows: number;
  readonly title: string | undefined;
  readonly columns: GivenColumn[];
}

/** Holds nothing yet. `freshOn` gives ids and names that are free on a sheet where it comes to stand. */
export function heldReferences(source: Notebook, freshOn: (sheet: string) => Fresh): HeldReferences {
  const held = new Map<string, HeldAt>();
  const rows = new Map<string, (Given | Choice)[]>();
  const tables = new Map<string, Map<string, HeldTable>>();
  const standing = new Map<string, Map<string, string>>();
  const from = source.book.title.subject || source.book.title.project;

  const toLink = (name: string, key: string): string => {
    const title = source.book.sheets.find((sheet) => sheet.key === key)?.title || key;
    return `${name} on “${short(title)}”${from === '' ? '' : ` of “${short(from)}”`}`;
  };
  const standFor = (sheet: string, id: string, name: string): void => {
    const known = standing.get(sheet) ?? new Map<string, string>();
    standing.set(sheet, known.set(id, name));
  };
  const asRow = (sheet: string, row: Given | Choice): HeldAt => {
    rows.set(sheet, [...(rows.get(sheet) ?? []), row]);
    return { sheet, name: row.name };
  };
  const holdColumn = (part: Extract<NamedPart, { kind: 'column' }>, first: string): HeldAt => {
    const tableId = `${part.sheet}.${part.table.name}`;
    // All columns of one table stay together, for formulas take them row by row.
    const sheet = [...tables].find(([, known]) => known.has(tableId))?.[0] ?? first;
    const fresh = freshOn(sheet);
    const onSheet = tables.get(sheet) ?? new Map<string, HeldTable>();
    tables.set(sheet, onSheet);
    const table = onSheet.get(tableId) ?? {
      id: fresh.id('p'),
      name: fresh.name(part.table.name),
      rows: source.rowsOf(tableId) ?? 0,
      title: part.table.title,
      columns: [],
    };
    onSheet.set(tableId, table);
    const name = fresh.name(part.column.name);
    const as = {
      id: fresh.id('k'),
      name,
      toLink: toLink(`${part.table.name}.${part.column.name}`, part.sheet),
    };
    standFor(sheet, as.id, part.id);
    table.columns.push(filledTo(heldColumn(source, part, as), table.rows));
    return { sheet, name: `${table.name}.${name}` };
  };
  const once = (id: string, make: () => HeldAt): HeldAt => {
    const at = held.get(id) ?? make();
    held.set(id, at);
    return at;
  };

  return {
    hold: (part, sheet) =>
      once(part.id, () => {
        if (part.kind === 'column') return holdColumn(part, sheet);
        const fresh = freshOn(sheet);
        const { name } = part.row;
        const as = { id: fresh.id('r'), name: fresh.name(name), toLink: toLink(name, part.sheet) };
        standFor(sheet, as.id, part.id);
        return asRow(sheet, heldRow(source, part, as));
      }),
    holdNothing: (written, sheet) =>
      once(`?${written}`, () => {
        const fresh = freshOn(sheet);
        const name = fresh.name(written.slice(written.lastIndexOf('.') + 1));
        const words = `${short(written)}, which stood for nothing${from === '' ? '' : ` in “${short(from)}”`}`;
        return asRow(sheet, heldNothing({ id: fresh.id('r'), name, toLink: words }));
      }),
    standing: (sheet) => standing.get(sheet) ?? new Map(),
    partsOn: (sheet) => {
      const lines = rows.get(sheet);
      const block: Part[] = lines
        ? [{ id: freshOn(sheet).id('p'), kind: 'rows', title: HELD_TITLE, rows: lines }]
        : [];
      return [...block, ...[...(tables.get(sheet)?.values() ?? [])].map(tableOf)];
    },
  };
}

function tableOf({ id, name, rows, title, columns }: HeldTable): Table {
  return { id, kind: 'table', name, title: title ?? HELD_TITLE, length: rows, columns };
}

const MOST_LETTERS = 150;

function short(title: string): string {
  return title.length > MOST_LETTERS ? `${title.slice(0, MOST_LETTERS)}…` : title;
}
