import {
  type Book,
  type Edit,
  type Fresh,
  findSheet,
  freshFor,
  insertSheet,
  joinEdits,
  moveSheet,
  type Part,
  removeSheet,
  type Sheet,
  setSheetField,
  startWithIds,
  withoutOriginOf,
} from '../../../document/index.ts';
import { type Item, type Notebook, namesUsed, usesInPart } from '../../../notebook/index.ts';
import { groupedSheets } from '../../../record/index.ts';
import { intoGroupLabel } from './describe-move.ts';
import { sheetKeyRefusal, sheetRespelling } from './rename-sheet.ts';

/** An edit, and the sheet shown after it. */
export interface SheetChange {
  readonly edit: Edit;
  readonly sheet: string;
}

/** A key that the book has room for, made from a title: `Pile bearing` gives `pile_bearing`. */
export function keyFor(book: Book, title: string): string {
  const letters = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^[_\d]+|_+$/g, '')
    .slice(0, 40);
  const stem = letters === '' ? 'sheet' : letters;
  let key = stem;
  for (let n = 2; sheetKeyRefusal(book, key); n += 1) key = `${stem}_${n}`;
  return key;
}

/** Puts an empty sheet behind another one, or at the end. */
export function addSheet(
  book: Book,
  after: string | undefined,
  sheet: Pick<Sheet, 'key' | 'title' | 'group'>,
): SheetChange {
  const at = book.sheets.findIndex(({ key }) => key === after);
  const index = at < 0 ? book.sheets.length : at + 1;
  return { edit: insertSheet(index, { ...sheet, parts: [] }), sheet: sheet.key };
}

/** Puts a second sheet like the one with the key behind it; what it says of itself it says of the second one. */
export function duplicateSheet(book: Book, key: string): SheetChange | undefined {
  const sheet = findSheet(book, key);
  if (!sheet) return undefined;
  const fresh = freshFor(book, sheet);
  const copyKey = keyFor(book, key);
  const ids = new Map<string, string>();
  const parts = sheet.parts.map((part) => withFreshIds(part, fresh, ids));
  const start = sheet.start && startWithIds(sheet.start, (id) => ids.get(id) ?? fresh.id('x'));
  const title = `${sheet.title || sheet.key}, copy`;
  const copy: Sheet = { ...sheet, key: copyKey, title, ...(start && { start }), parts };
  const respell = sheetRespelling(book, key, copyKey);
  const uses = parts.flatMap((part) =>
    usesInPart(copyKey, part, (written, _, table) =>
      respell(written, key, table && `${key}${table.slice(copyKey.length)}`),
    ),
  );
  const insert = insertSheet(book.sheets.indexOf(sheet) + 1, copy);
  return { edit: joinEdits(`duplicate sheet ${key}`, [insert, ...uses]), sheet: copyKey };
}

/** Notes in `ids` which id each of them had. */
function withFreshIds(part: Part, fresh: Fresh, ids: Map<string, string>): Part {
  const free = <Item extends { readonly id: string }>(item: Item, prefix: string): Item => {
    const id = fresh.id(prefix);
    ids.set(item.id, id);
    return { ...item, id };
  };
  const own = free(part, 'p');
  if (own.kind === 'rows') return { ...own, rows: own.rows.map((row) => free(row, 'r')) };
  if (own.kind !== 'table') return own;
  return { ...own, columns: own.columns.map((column) => free(column, 'k')) };
}

/** Takes a sheet out, and off the list of origins the one that no other sheet has. */
export function removeSheetEdit(book: Book, key: string): Edit {
  const removal = removeSheet(key);
  return { ...removal, patches: [...removal.patches, ...withoutOriginOf(book, key)] };
}

/**
 * Moves a sheet by one in the order it is read in. Across the edge of its group it joins the group it comes to, which the
 * label says; the only sheet of a group keeps it, with its heading, and moves past the whole of the other.
 */
export function moveSheetBy(book: Book, key: string, by: -1 | 1): Edit | undefined {
  const groups = [...groupedSheets(book).values()];
  const read = groups.flat();
  const at = read.findIndex((sheet) => sheet.key === key);
  const [sheet, neighbour] = [read[at], read[at + by]];
  if (!sheet || !neighbour) return undefined;
  const others = book.sheets.filter((one) => one.key !== key);
  const inGroup = groups.findIndex((sheets) => sheets.includes(sheet));
  const stays = groups[inGroup]?.includes(neighbour) ?? false;
  if (!stays && sheet.group && groups[inGroup]?.length === 1) {
    // A group stands where its first sheet does.
    const next = groups[by > 0 ? inGroup + 2 : inGroup - 1]?.[0];
    return moveSheet(key, next ? others.indexOf(next) : others.length);
  }
  const behind = stays === by > 0;
  const move = moveSheet(key, others.indexOf(neighbour) + (behind ? 1 : 0));
  if (stays) return move;
  const label = intoGroupLabel(sheet.title || sheet.key, sheet.group, neighbour.group);
  return joinEdits(label, [setSheetField(key, 'group', neighbour.group), move]);
}

/** The lines and columns of other sheets that refer to a sheet. */
export function usersOfSheet(notebook: Notebook, key: string): readonly Item[] {
  return [...notebook.model.items.values()].filter((item) => {
    if (item.sheet === key) return false;
    if (item.kind === 'input')
      return item.row.kind === 'choice' && (item.row.from ?? '').startsWith(`${key}.`);
    return [...namesUsed(item)].some((id) => id.startsWith(`${key}.`));
  });
}
