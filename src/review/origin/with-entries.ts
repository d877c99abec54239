import {
  type Book,
  type Chunk,
  type Column,
  chunksOfCells,
  type Part,
  type Row,
  type Table,
} from '../../document/index.ts';
import { itemId, namesOf, startedPairs } from '../../notebook/index.ts';

/**
 * A project's own formulas over the entries of the template its sheets came from: what was a line of the template has its
 * entry, tables have its rows, and stated is what the template states. Lines of the project's own stay as they are. On this
 * the template's cases can be run.
 */
export function withEntriesOf(template: Book, project: Book): Book {
  const names = namesOf(template);
  const like = new Map<string, Like>();
  for (const { was, is } of startedPairs(project)) {
    const found = was && names.get(was.id);
    if (found && is) like.set(itemId(is), found);
  }
  const sheets = project.sheets.map((sheet) => ({
    ...sheet,
    parts: sheet.parts.map((part) => partWith(part, like)),
  }));
  return { ...project, sheets };
}

/** What a line, table or column takes its entries from. */
type Like =
  | { readonly kind: 'row'; readonly row: Row }
  | { readonly kind: 'table'; readonly table: Table }
  | { readonly kind: 'column'; readonly column: Column };

type Likes = ReadonlyMap<string, Like>;

function partWith(part: Part, like: Likes): Part {
  if (part.kind === 'rows') {
    const rows = part.rows.map((row) => {
      const found = like.get(row.id);
      return rowWith(row, found?.kind === 'row' ? found.row : undefined);
    });
    return { ...part, rows };
  }
  if (part.kind !== 'table') return part;
  const found = like.get(part.id);
  return found?.kind === 'table' ? tableWith(part, found.table, like) : part;
}

/** A line that takes an entry has the template's, also where it was linked since; what is computed is computed. */
function rowWith(row: Row, like: Row | undefined): Row {
  if (!like) return withoutStated(row);
  if (like.kind === 'given' && row.kind === 'given') {
    const { unit: _, ...line } = row;
    return { ...line, entry: like.entry, ...(like.unit !== undefined && { unit: like.unit }) };
  }
  // What it chooses from, a column that may be called otherwise here, is its own.
  if (like.kind === 'choice' && row.kind === 'choice') return { ...row, entry: like.entry };
  if (isLinked(row, like)) return { ...like, id: row.id, name: row.name };
  const computed = withoutStated(row);
  if (computed.kind === 'calc' && like.kind === 'calc' && like.stated)
    return { ...computed, stated: like.stated };
  if (computed.kind === 'check' && like.kind === 'check' && like.stated)
    return { ...computed, stated: like.stated };
  return computed;
}

/** Lines, tables and columns by their ids; parts of several sheets may have the same names. */
export function formerOf(parts: readonly Part[]): Likes {
  const former = new Map<string, Like>();
  for (const part of parts) {
    if (part.kind === 'rows') for (const row of part.rows) former.set(row.id, { kind: 'row', row });
    if (part.kind !== 'table') continue;
    former.set(part.id, { kind: 'table', table: part });
    for (const column of part.columns) former.set(column.id, { kind: 'column', column });
  }
  return former;
}

/** Parts with what was entered and stated in some of their lines and tables, by their ids; all else stays as it is. */
export function partWithFormer(part: Part, former: Likes): Part {
  if (part.kind === 'rows') {
    const rows = part.rows.map((row) => {
      const found = former.get(row.id);
      return found?.kind === 'row' ? rowWithFormer(row, found.row) : row;
    });
    return rows.every((row, at) => row === part.rows[at]) ? part : { ...part, rows };
  }
  const found = part.kind === 'table' ? former.get(part.id) : undefined;
  return part.kind === 'table' && found?.kind === 'table' ? tableWith(part, found.table, former) : part;
}

/** A line that had been linked is linked again. */
function rowWithFormer(row: Row, former: Row): Row {
  const isEntry = row.kind === 'given' || row.kind === 'choice';
  if (former.kind === 'calc' && former.link && isEntry) return { ...former, name: row.name };
  return rowWith(row, former);
}

function isLinked(row: Row, like: Row): boolean {
  return row.kind === 'calc' && row.link?.kind === like.kind;
}

function withoutStated(row: Row): Row {
  if (row.kind !== 'calc' && row.kind !== 'check') return row;
  const { stated: _, ...computed } = row;
  return computed;
}

function tableWith(table: Table, like: Table, likes: Likes): Table {
  const { ids: _, length: __, ...rest } = table;
  const columns = table.columns.map((column): Column => {
    const found = likes.get(column.id);
    const same = found?.kind === 'column' ? found.column : undefined;
    if (column.kind === 'given') {
      if (same?.kind !== 'given') return { ...column, chunks: blankChunks(like) };
      return { ...column, chunks: same.chunks, ...(same.unit !== undefined && { unit: same.unit }) };
    }
    if (column.kind !== 'calc') return column;
    const { stated: ___, ...computed } = column;
    return same?.kind === 'calc' && same.stated ? { ...computed, stated: same.stated } : computed;
  });
  return {
    ...rest,
    ...(like.ids && { ids: like.ids }),
    ...(like.length !== undefined && { length: like.length }),
    columns,
  };
}

/** As many blank cells as the rows of a table. */
function blankChunks({ length = 0 }: Table): readonly Chunk[] {
  return chunksOfCells(Array.from({ length }, () => null));
}
