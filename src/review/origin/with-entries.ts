import type { Book, Column, Part, Row, Sheet, Table } from '../../document/index.ts';

/**
 * A project's own formulas over the entries of the template it was started from: what both call by one name on a sheet of one
 * key has the template's entry, tables have its rows, nothing is stated. Lines of the project's own stay as they are. On this
 * the template's cases can be run.
 */
export function withEntriesOf(template: Book, project: Book): Book {
  const sheets = project.sheets.map((sheet): Sheet => {
    const like = template.sheets.find(({ key }) => key === sheet.key);
    return like ? { ...sheet, parts: sheet.parts.map((part) => partWith(part, like)) } : sheet;
  });
  return { ...project, sheets };
}

function partWith(part: Part, like: Sheet): Part {
  if (part.kind === 'rows') {
    const rows = new Map(
      like.parts.flatMap((one) => (one.kind === 'rows' ? one.rows : [])).map((row) => [row.name, row]),
    );
    return { ...part, rows: part.rows.map((row) => rowWith(row, rows.get(row.name))) };
  }
  if (part.kind !== 'table') return part;
  const table = like.parts.find((one): one is Table => one.kind === 'table' && one.name === part.name);
  return table ? tableWith(part, table) : part;
}

/** A line that takes an entry has the template's, also where it was linked since; what is computed is computed. */
function rowWith(row: Row, like: Row | undefined): Row {
  const isEntered = like?.kind === 'given' || like?.kind === 'choice';
  if (isEntered && (row.kind === like.kind || (row.kind === 'calc' && row.link !== undefined)))
    return { ...like, id: row.id };
  if (row.kind === 'calc' || row.kind === 'check') {
    const { stated: _, ...computed } = row;
    return computed;
  }
  return row;
}

function tableWith(table: Table, like: Table): Table {
  const { ids: _, length: __, ...rest } = table;
  const columns = table.columns.map((column): Column => {
    const same = like.columns.find(({ name }) => name === column.name);
    if (column.kind === 'given') {
      if (same?.kind !== 'given') return { ...column, chunks: blankChunks(like) };
      return { ...column, chunks: same.chunks, ...(same.unit !== undefined && { unit: same.unit }) };
    }
    if (column.kind !== 'calc') return column;
    const { stated: ___, ...computed } = column;
    return computed;
  });
  return {
    ...rest,
    ...(like.ids && { ids: like.ids }),
    ...(like.length !== undefined && { length: like.length }),
    columns,
  };
}

/** As many blank cells as the rows of a table, in the chunks of one of its own columns. */
function blankChunks(like: Table): null[][] {
  const given = like.columns.find((one) => one.kind === 'given');
  return given?.kind === 'given' ? given.chunks.map((chunk) => chunk.map(() => null)) : [];
}
