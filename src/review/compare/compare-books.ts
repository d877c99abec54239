import type { Notebook } from '../../notebook/index.ts';
import { causeFinder } from './causes.ts';
import type { BookComparison, Difference } from './difference.ts';
import { editedBook, editedColumns, editedLines, editedParts, editedSheets } from './edited.ts';
import { editedCells, editedRows, hasOtherRows, rowMatching, type TablePair } from './edited-rows.ts';
import { follow } from './follow.ts';
import type { LocatedColumn } from './located.ts';
import { type Matching, matchBooks } from './match-books.ts';
import { matchRows } from './match-rows.ts';
import { namesSaid } from './names-said.ts';
import { ownChanges } from './own-changes.ts';
import type { Pair } from './pairs.ts';
import { sizeOfValues, valueIn } from './values.ts';

/**
 * Compares two books that compute: what a person changed from the old one to the new one, what followed from it, and from
 * which changes. What stated values ease is told as far as both notebooks have worked it out (`judgeStated`).
 */
export function compareBooks(old: Notebook, next: Notebook): BookComparison {
  const notebooks = { before: old, after: next };
  const matching = matchBooks(old.book, next.book);
  const said = namesSaid(old.book, next.book, matching);
  const tables = tablePairs(matching, notebooks);
  const ofBook = editedBook(old.book, next.book, said);
  const edits = [
    ...ofBook,
    ...editedSheets(matching, said),
    ...editedParts(matching, said),
    ...withSizes(editedLines(matching, said), notebooks),
    ...editedColumns(matching, said),
    ...tables.flatMap((table) => [
      ...editedRows(table),
      ...table.columns.flatMap((columns) => editedCells(table, columns, notebooks, said)),
    ]),
  ];
  const own = ownChanges(edits, matching.idAfter);
  const { followed, things } = follow(matching, tables, notebooks, own);
  const settings = ofBook.flatMap((one) =>
    one.kind === 'book' && one.field.startsWith('settings.') ? [one.field] : [],
  );
  const causes = causeFinder(things, notebooks, settings.length > 0 ? [{ by: settings }] : []);
  return {
    differences: [
      ...edits,
      ...followed.map((one) => ({ ...one, causes: causes.of(one.subject.after?.id ?? '') })),
    ],
    tables: tables.filter((table) => isTold(table, edits)).map(rowMatching),
  };
}

function tablePairs(matching: Matching, notebooks: Pair<Notebook>): readonly TablePair[] {
  const columns = new Map<string, Pair<LocatedColumn>[]>();
  for (const pair of matching.columns.both) {
    const known = columns.get(pair.after.table.id);
    if (known) known.push(pair);
    else columns.set(pair.after.table.id, [pair]);
  }
  return matching.parts.both.flatMap((pair): TablePair[] => {
    const [before, after] = [pair.before.part, pair.after.part];
    if (before.kind !== 'table' || after.kind !== 'table') return [];
    const own = columns.get(after.id) ?? [];
    const lengths = {
      before: before.length ?? notebooks.before.rowsOf(`${pair.before.sheet.key}.${before.name}`) ?? 0,
      after: after.length ?? notebooks.after.rowsOf(`${pair.after.sheet.key}.${after.name}`) ?? 0,
    };
    const tables = { before, after };
    return [
      {
        ...pair,
        tables,
        columns: own,
        rows: matchRows(tables, lengths, own, before.id === after.id),
        isMade: before.length === undefined || after.length === undefined,
      },
    ];
  });
}

/** Whether something is told of rows or cells of a table. */
function isTold(table: TablePair, edits: readonly Difference[]): boolean {
  if (hasOtherRows(table) && !table.isMade) return true;
  const ids = new Set(table.columns.map(({ after }) => after.id));
  return edits.some(
    (one) => 'subject' in one && one.subject.kind === 'cell' && ids.has(one.subject.after?.id ?? ''),
  );
}

/** The edits of entries with how far the values are apart. */
function withSizes(edits: readonly Difference[], notebooks: Pair<Notebook>): readonly Difference[] {
  return edits.map((edit) => {
    if (edit.kind !== 'field' || edit.field !== 'entry') return edit;
    const { before, after } = edit.subject;
    if (!before || !after) return edit;
    const [from, to] = [notebooks.before.result(before.id), notebooks.after.result(after.id)];
    const size = sizeOfValues(valueIn(from), valueIn(to), notebooks.after.model.registry);
    return size ? { ...edit, size } : edit;
  });
}
